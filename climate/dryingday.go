package climate

import (
	"fmt"
	"math"
	"time"
)

// DryingRow is the drying of one instant by every published form, in kg/m2/h.
type DryingRow struct {
	Time       time.Time `json:"time"`
	Air        float64   `json:"air_C"`
	Humidity   float64   `json:"humidity"`
	WindAtSlab float64   `json:"wind_at_slab_m_s"`
	Concrete   float64   `json:"concrete_C"`
	Uno        float64   `json:"uno"`
	UnoUS      float64   `json:"uno_us"`
	Menzel     float64   `json:"menzel"`
}

// Highest returns the greatest of the forms, the one to hold against a limit.
func (r DryingRow) Highest() float64 { return math.Max(r.Uno, math.Max(r.UnoUS, r.Menzel)) }

// Lowest returns the least of the forms.
func (r DryingRow) Lowest() float64 { return math.Min(r.Uno, math.Min(r.UnoUS, r.Menzel)) }

// DryingRecord is a stretch of drying rates.
type DryingRecord struct {
	Rows []DryingRow
	Step time.Duration // between rows
}

// DryingDay lists the drying rate from one instant to another by every published
// form, a row every step.
//
//	concrete  temperature of the surface at an instant [°C], measured or modelled
//
// The rates hold while free water stands on the slab.
func DryingDay(e Exposure, concrete func(time.Time) float64, from, to time.Time, step time.Duration) (DryingRecord, error) {
	feels, err := e.Between(from, to, step)
	if err != nil {
		return DryingRecord{}, err
	}
	record := DryingRecord{Step: step}
	for _, f := range feels {
		c := concrete(f.Time)
		if math.IsNaN(c) {
			return DryingRecord{}, fmt.Errorf("drying at %s: the temperature of the concrete is not known", stamp(f.Time))
		}
		rate := func(form DryingForm) float64 { return Drying(form, c, f.Air, f.Humidity, f.WindAtSlab) }
		record.Rows = append(record.Rows, DryingRow{f.Time, f.Air, f.Humidity, f.WindAtSlab, c,
			rate(DryingUno), rate(DryingUnoUS), rate(DryingMenzel)})
	}
	return record, nil
}

// Peak returns the row where the greatest of the forms is greatest.
func (d DryingRecord) Peak() DryingRow {
	peak := d.Rows[0]
	for _, r := range d.Rows[1:] {
		if r.Highest() > peak.Highest() {
			peak = r
		}
	}
	return peak
}

// Notes says where the record leaves the range the formulas were fitted to.
func (d DryingRecord) Notes() []string {
	cold, hot := math.Inf(1), math.Inf(-1)
	for _, r := range d.Rows {
		cold, hot = math.Min(cold, math.Min(r.Concrete, r.Air)), math.Max(hot, math.Max(r.Concrete, r.Air))
	}
	return fitNotes(cold, hot)
}

// fitNotes says whether temperatures leave the range Uno's form was fitted to.
func fitNotes(cold, hot float64) []string {
	const low, high = 15.0, 35.0 // °C
	var notes []string
	if cold < low {
		notes = append(notes, fmt.Sprintf("%.0f °C is below the %.0f °C from which Uno's form was fitted; go by Menzel.", cold, low))
	}
	if hot > high {
		notes = append(notes, fmt.Sprintf("%.0f °C is above the %.0f °C up to which Uno's form was fitted; go by Menzel.", hot, high))
	}
	return notes
}

// Stretch is a time between two instants.
type Stretch struct{ From, To time.Time }

// Above returns the stretches in which a rate passes a limit, the crossings on the
// straight line between rows.
//
//	of     which rate of a row, such as DryingRow.Highest
//	limit  [kg/m2/h], such as DryingLimit
func (d DryingRecord) Above(of func(DryingRow) float64, limit float64) []Stretch {
	var all []Stretch
	for i, r := range d.Rows {
		over := of(r) > limit
		if i == 0 {
			if over {
				all = append(all, Stretch{r.Time, r.Time})
			}
			continue
		}
		last := d.Rows[i-1]
		was := of(last) > limit
		switch {
		case over && was:
			all[len(all)-1].To = r.Time
		case over:
			all = append(all, Stretch{crossing(last, r, of, limit), r.Time})
		case was:
			all[len(all)-1].To = crossing(last, r, of, limit)
		}
	}
	return all
}

// HoursAbove returns how many hours a rate is above a limit.
func (d DryingRecord) HoursAbove(of func(DryingRow) float64, limit float64) float64 {
	hours := 0.0
	for _, s := range d.Above(of, limit) {
		hours += s.To.Sub(s.From).Hours()
	}
	return hours
}

// crossing returns when a rate passes the limit between two rows.
func crossing(a, b DryingRow, of func(DryingRow) float64, limit float64) time.Time {
	share := (limit - of(a)) / (of(b) - of(a))
	return a.Time.Add(time.Duration(share * float64(b.Time.Sub(a.Time))))
}

// Evaporation returns the rate by one form as a function of hours after an instant,
// on the straight line between rows, for [FilmHistory]. Beyond the record the
// first and last rates hold.
func (d DryingRecord) Evaporation(of func(DryingRow) float64, start time.Time) func(hours float64) float64 {
	return func(hours float64) float64 {
		x := (start.Sub(d.Rows[0].Time).Hours() + hours) / d.Step.Hours()
		i := int(math.Floor(x))
		switch {
		case x <= 0:
			return of(d.Rows[0])
		case i >= len(d.Rows)-1:
			return of(d.Rows[len(d.Rows)-1])
		}
		a, b := of(d.Rows[i]), of(d.Rows[i+1])
		return a + (x-float64(i))*(b-a)
	}
}
