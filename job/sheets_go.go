package job

import (
	"fmt"
	"time"

	"slabwright/plan"
	"slabwright/poursheet"
	"slabwright/report"
	"slabwright/site"
)

// Thresholds of the go or hold sheet that a job does not set itself.
const (
	// usualDrying is the rate of drying from which measures are taken, kg/m²·h.
	// Source: ACI 305R (0.2 lb/ft²·h), from memory.
	usualDrying = 1.0
	// coldConcrete and hotConcrete bound the concrete at placing, °C. Sources:
	// EN 206 5.2.8 (not below 5), ACI 305R (not above 35, 95 °F), from memory.
	coldConcrete, hotConcrete = 5.0, 35.0
	// coldAir is the air from which cold weather is provided for, °C. Source: ACI 306R
	// (40 °F), from memory.
	coldAir = 4.4
	// plasticChance is the chance of plastic shrinkage cracks from which measures are
	// taken. Chosen by the project: 3 in 10.
	plasticChance = 0.3
	// sawRate is how much joint one saw cuts in an hour, m. Common practice, no source:
	// about 12 m an hour with moving and setting, as in [perCut].
	sawRate = 12.0
	// dayLooked is how long after placing the air is looked at.
	dayLooked = 24 * time.Hour
)

// goSheet sets what is expected against the thresholds.
func (m *sheetMaker) goSheet(pour *site.Pour, day *report.PourDay) poursheet.GoSheet {
	s := poursheet.GoSheet{Title: m.title, Paper: m.crewPaper(), Pour: named(pour.Name, pour.ID), Start: pour.Start, Weather: day.Weather, Decides: m.rings("decide")}
	s.Limits = []poursheet.Limit{m.dryingLimit(pour, day), plasticLimit(day), concreteLimit(pour, true), concreteLimit(pour, false), airLimit(pour, day), m.sawLimit(pour, day)}
	s.Triggers = m.triggers(day)
	s.Hours = forecastHours(pour, day)
	if m.j.Day != nil {
		s.Bears = m.j.Day.Risk
		for _, r := range m.j.Day.Ready {
			s.Ready = append(s.Ready, readyOf(r))
		}
	}
	if len(s.Ready) == 0 {
		for _, what := range []string{"lead finisher", "crew", "spare saw", "lights for the saw", "curing", "wind break or fog", "other date"} {
			s.Ready = append(s.Ready, poursheet.Ready{What: what})
		}
	}
	return s
}

func readyOf(r site.Ready) poursheet.Ready {
	out := poursheet.Ready{What: r.What, Who: r.Who}
	if r.Here != nil {
		yes := r.Here.Is("yes")
		out.Here = &yes
	}
	return out
}

// openUntil is when the surface is no longer open to drying: final set, or twelve
// hours after placing where that is not known.
func openUntil(pour *site.Pour, day *report.PourDay) time.Time {
	if day.FinalSet != nil {
		return *day.FinalSet
	}
	return pour.Start.Add(12 * time.Hour)
}

func (m *sheetMaker) dryingLimit(pour *site.Pour, day *report.PourDay) poursheet.Limit {
	l := poursheet.Limit{What: "Drying of the fresh surface, worst hour", Unit: "kg/m²·h", Decimals: 2, Then: poursheet.Measures, Source: "ACI 305R, from memory",
		Measure: "wind break, fog or a film against drying before the first load; cure at once behind the trowel"}
	most := usualDrying
	if day.DryingLimit != nil {
		most, l.Source = *day.DryingLimit, "as specified"
	}
	l.Most = &most
	for _, h := range day.Drying {
		if h.Time.Before(pour.Start.Add(-time.Hour)) || h.Time.After(openUntil(pour, day)) {
			continue
		}
		if l.Expected == nil || h.Uno > *l.Expected {
			v := h.Uno
			l.Expected, l.When = &v, m.clockOf(h.Time)+", "+doing(pour, day, h.Time)
		}
	}
	return l
}

// clockOf writes a time on the site's clock.
func (m *sheetMaker) clockOf(t time.Time) string {
	zone, err := time.LoadLocation(m.title.Zone)
	if err != nil {
		zone = time.UTC
	}
	return t.In(zone).Format("Mon 15:04")
}

func plasticLimit(day *report.PourDay) poursheet.Limit {
	most := 10 * plasticChance
	l := poursheet.Limit{What: "Chance of plastic shrinkage cracks by set", Unit: "in 10", Most: &most, Then: poursheet.Measures, Source: "chosen by the project",
		Measure: "keep the surface wet or covered until set: fog, film against drying, sheet; start earlier or later in the day"}
	if n := len(day.Plastic); n > 0 {
		v := 10 * day.Plastic[n-1].Shrinkage
		l.Expected = &v
	}
	return l
}

func concreteLimit(pour *site.Pour, cold bool) poursheet.Limit {
	l := poursheet.Limit{What: "Concrete at placing", Unit: "°C", When: "each load"}
	if pour.Concrete != nil {
		l.Expected = &pour.Concrete.Value
	}
	if v := coldConcrete; cold {
		l.Least, l.Then, l.Source = &v, poursheet.Hold, "EN 206 5.2.8, from memory"
		l.Measure = "ask the plant for warmer concrete, or another day"
		return l
	}
	v := hotConcrete
	l.Most, l.Then, l.Source = &v, poursheet.Measures, "ACI 305R, from memory"
	l.Measure = "cooler water or ice at the plant; pour in the cool of the day"
	return l
}

func airLimit(pour *site.Pour, day *report.PourDay) poursheet.Limit {
	least := coldAir
	l := poursheet.Limit{What: "Coldest air in the first day", Unit: "°C", Decimals: 1, Least: &least, Then: poursheet.Measures, Source: "ACI 306R, from memory",
		Measure: "blankets on behind the saw; no pour on frozen ground"}
	for _, h := range day.Drying {
		if h.Time.Before(*pour.Start) || h.Time.After(pour.Start.Add(dayLooked)) {
			continue
		}
		if l.Expected == nil || h.Air < *l.Expected {
			v := h.Air
			l.Expected = &v
		}
	}
	return l
}

// sawLimit holds the length of the cut window against the time one saw needs.
func (m *sheetMaker) sawLimit(pour *site.Pour, day *report.PourDay) poursheet.Limit {
	total := 0.0
	for _, joint := range m.sawnIn(pour) {
		total += plan.Polyline(joint.Path).Length()
	}
	needs := total / sawRate
	l := poursheet.Limit{What: fmt.Sprintf("Cut window, for %.0f m with one saw", total), Unit: "h", Decimals: 1, Least: &needs, Then: poursheet.Measures,
		Source: "12 m/h, common practice", Measure: "a second saw, or an early-entry saw; lights and crew booked for the window"}
	w := m.ofPour(day)
	if w.Opens == nil {
		return l
	}
	if n := len(day.Column); w.Closes == nil && n > 0 {
		v := day.Column[n-1].Time.Sub(*w.Opens).Hours()
		l.Expected = &v
		l.When = "from " + m.clockOf(*w.Opens) + ", no end found"
	}
	if w.Closes != nil {
		v := w.Closes.Sub(*w.Opens).Hours()
		l.Expected = &v
		l.When = m.clockOf(*w.Opens) + " to " + m.clockOf(*w.Closes)
	}
	return l
}

// triggers are the changes on the day at which somebody is rung. Common practice, no
// source, but for the thresholds named above.
func (m *sheetMaker) triggers(day *report.PourDay) []poursheet.Trigger {
	limit := usualDrying
	if day.DryingLimit != nil {
		limit = *day.DryingLimit
	}
	decides, plant := m.rings("decide"), m.rings("plant")
	return []poursheet.Trigger{
		{When: "a new forecast is off by more than 3 °C, 10 % humidity or 2 m/s, or brings rain before final set", Ring: decides},
		{When: fmt.Sprintf("drying measured at the slab passes %.1f kg/m²·h, or concrete comes below %.0f or above %.0f °C", limit, coldConcrete, hotConcrete), Ring: decides},
		{When: "the first load is more than 1 h late: the cut window moves with it", Ring: decides},
		{When: "anything in the list below is not there 2 h before the first load (the plant needs 1 to 2 h to stop)", Ring: plant},
	}
}

// forecastHours are the hours from an hour before placing to a day after, every
// second one beyond set.
func forecastHours(pour *site.Pour, day *report.PourDay) []poursheet.ForecastHour {
	var hours []poursheet.ForecastHour
	set := openUntil(pour, day)
	for i, h := range day.Drying {
		if h.Time.Before(pour.Start.Add(-time.Hour)) || h.Time.After(pour.Start.Add(dayLooked)) || h.Time.After(set.Add(2*time.Hour)) && i%3 != 0 {
			continue
		}
		hours = append(hours, poursheet.ForecastHour{At: h.Time, Air: h.Air, Humidity: h.Humidity, Wind: h.Wind, Concrete: h.Concrete, Dry: h.Uno, Doing: doing(pour, day, h.Time)})
	}
	return hours
}

// doing says what goes on in an hour.
func doing(pour *site.Pour, day *report.PourDay, at time.Time) string {
	within := func(from, to *time.Time) bool {
		return from != nil && to != nil && at.Add(time.Hour).After(*from) && at.Before(*to)
	}
	switch {
	case within(pour.Start, pour.End):
		return "placing"
	case within(pour.FinishStart, pour.FinishEnd):
		return "finishing"
	case within(day.Window.Opens, day.Window.Closes):
		return "cut window of the wet saw"
	case at.Before(*pour.Start):
		return "before the first load"
	case day.FinalSet != nil && !at.Before(*day.FinalSet) && day.Window.Opens != nil && at.Before(*day.Window.Opens):
		return "set, too soon for a wet saw"
	case day.FinalSet != nil && at.Before(*day.FinalSet):
		return "open, not yet set"
	}
	return "curing"
}
