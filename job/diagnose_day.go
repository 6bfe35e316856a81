package job

import (
	"fmt"
	"math"
	"sort"
	"time"

	"slabwright/causes"
	"slabwright/climate"
	"slabwright/earlyage"
	"slabwright/plan"
	"slabwright/report"
	"slabwright/source"
	"slabwright/working"
)

// dry works out the drying rate hour by hour in the three published forms, at the
// surface temperature the column found.
func (p *pourRun) dry() error {
	from := p.pour.Start.Truncate(time.Hour)
	to := from.Add(30 * time.Hour)
	if _, end := p.weather.Series.Span(); to.After(end) {
		to = end.Truncate(time.Hour)
	}
	concrete := func(t time.Time) float64 { return p.history.At(t.Sub(p.centre).Hours()).Surface }
	record, err := climate.DryingDay(p.weather, concrete, from, to, time.Hour)
	if err != nil {
		return err
	}
	p.drying = record
	for _, r := range record.Rows {
		feel, err := p.weather.At(r.Time)
		if err != nil {
			return err
		}
		p.day.Drying = append(p.day.Drying, report.DryingHour{Time: r.Time, Air: r.Air, Humidity: r.Humidity, Wind: r.WindAtSlab,
			Sun: feel.SolarDown, Concrete: r.Concrete, Uno: r.Uno, UnoUS: r.UnoUS, Menzel: r.Menzel})
	}
	peak := p.peakWhileFresh()
	p.dryingSheet = "drying-" + p.pour.ID
	series := p.weather.Series
	h, err := series.At(peak.Time)
	if err != nil {
		return err
	}
	sheet := climate.DryingSheet(p.dryingSheet, peak.Concrete, h.Air, h.Humidity, h.Wind, series.WindHeight, climate.RoughnessOpenGround)
	sheet.Title = fmt.Sprintf("Drying rate of %s at its highest before set, %s", p.pour.Name, p.d.clock(peak.Time))
	p.d.book.Add(sheet)
	p.day.Workings = append(p.day.Workings, p.dryingSheet)
	return nil
}

// peakWhileFresh is the hour of highest drying from the start of placing until it is
// covered or set, the time in which it can crack the surface.
func (p *pourRun) peakWhileFresh() climate.DryingRow {
	until := p.setHours()
	for _, c := range p.pour.Cure {
		if c.On != nil {
			until = math.Min(until, c.On.Sub(*p.pour.Start).Hours())
		}
	}
	best := p.drying.Rows[0]
	for _, r := range p.drying.Rows {
		hours := r.Time.Sub(*p.pour.Start).Hours()
		if hours >= 0 && hours <= until && r.Uno >= best.Uno {
			best = r
		}
	}
	return best
}

// setHours is final set of the surface in hours after placing, or the six hours of
// the guides when it was not reached.
func (p *pourRun) setHours() float64 {
	if h := p.history.FinalSet.Surface; !math.IsNaN(h) {
		return h
	}
	return 6
}

// hours fills the column hour by hour for 48 h and every 4 h after, with the share
// of tensile strength used by the uncut slab.
func (p *pourRun) hours() {
	end := p.history.Hours[len(p.history.Hours)-1]
	for h := 0.0; h <= end; {
		p.day.Column = append(p.day.Column, p.columnHour(h))
		if h < 48 {
			h++
		} else {
			h += 4
		}
	}
	p.day.InitialSet = p.clockOrNil(p.history.InitialSet.Surface)
	p.day.FinalSet = p.clockOrNil(p.history.FinalSet.Surface)
	p.day.FilmGone = p.clockOrNil(p.history.FilmGone)
}

func (p *pourRun) columnHour(h float64) report.ColumnHour {
	m := p.history.At(h)
	share, low, high := p.members.Share(h)
	return report.ColumnHour{Time: p.history.Clock(h), Hours: h, Top: m.Surface, Middle: m.Mid, Bottom: m.Bottom,
		Strength: m.Fc, Tensile: m.Fct, Modulus: m.E, Share: share, ShareLow: low, ShareHigh: high}
}

func (p *pourRun) clockOrNil(hours float64) *time.Time {
	if math.IsNaN(hours) {
		return nil
	}
	t := p.history.Clock(hours)
	return &t
}

// windows works out the cut window for the ordinary and the early-entry saw.
func (p *pourRun) windows() {
	hardness := sawHardness(p.mix.AggregateKind)
	basis := p.d.job.Basis
	for _, kind := range []struct {
		key  string
		edge *source.Fact
		into **earlyage.CutWindow
	}{{"ordinary", basis.EdgeWet, &p.wet}, {"early-entry", basis.EdgeEarly, &p.early}} {
		saw, ok := earlyage.SawFor(kind.key, hardness)
		if !ok {
			panic("job: no saw for " + hardness + " aggregate")
		}
		if kind.edge != nil {
			saw.Edge = kind.edge.Value
			saw.EdgeLow, saw.EdgeHigh = kind.edge.Bounds()
		}
		w := p.members.Window(saw, basis.Risk.Or(earlyage.DefaultRisk))
		*kind.into = &w
	}
	p.windowSheet = "window-" + p.pour.ID
	sheet := p.members.WindowWorking(*p.wet, p.windowSheet, p.pour.Name)
	p.d.book.Add(sheet)
	p.day.Workings = append(p.day.Workings, p.windowSheet)
	p.day.Window = p.windowOf(p.wet, "wet")
	early := p.windowOf(p.early, "early-entry")
	p.day.Early = &early
}

// sawHardness says how hard an aggregate is on the saw; common practice, no source.
func sawHardness(aggregate string) string {
	switch aggregate {
	case "limestone", "sandstone":
		return "soft"
	case "quartzite", "basalt", "granite":
		return "hard"
	}
	return "medium"
}

func (p *pourRun) windowOf(w *earlyage.CutWindow, saw string) report.Window {
	at := func(t time.Time) *time.Time {
		if t.IsZero() {
			return nil
		}
		return &t
	}
	closesEarly := w.ClosesEarly
	if !w.Closes.IsZero() && (closesEarly.IsZero() || closesEarly.After(w.Closes)) {
		closesEarly = w.Closes // closed by the chance before the expected course came to its limit
	}
	return report.Window{Saw: saw, Opens: at(w.Opens), OpensLow: at(w.OpensEarly), OpensHigh: at(w.OpensLate), Best: at(w.Best),
		Closes: at(w.Closes), ClosesLow: at(closesEarly), ClosesHigh: at(w.ClosesLate), Why: w.Why, Working: p.windowSheet}
}

// cuts sets each sawn joint against the window of the panels beside it.
func (p *pourRun) cuts() {
	d := p.d
	for _, c := range p.pour.Saw {
		if c.Start == nil {
			continue
		}
		placed := p.placedBeside(d.jointMiddle(c.Joint))
		w := p.windowOfJoint(c.Joint)
		chance := w.cracked(*c.Start)
		row := report.CutRow{Joint: c.Joint, At: *c.Start, Hours: c.Start.Sub(placed).Hours(), State: w.state(*c.Start), By: d.partyName(c.By), Edge: c.Edge.Or("")}
		row.Chance = &report.Chance{P: chance, Low: chance, High: chance, About: causes.About(chance)}
		depth := c.Depth
		if j := d.joint(c.Joint); j != nil {
			if j.Groove != nil {
				depth = j.Groove
			}
			row.Opened = j.Opened.Or("")
		}
		if depth != nil {
			v, share := depth.Value, depth.Value/d.slab.Thickness.Value
			row.Depth, row.DepthShare = &v, &share
		}
		p.day.Cuts = append(p.day.Cuts, row)
	}
	sort.SliceStable(p.day.Cuts, func(a, b int) bool { return p.day.Cuts[a].At.Before(p.day.Cuts[b].At) })
}

// symbols puts the state of each joint on the drawing.
func (d *diagnosis) symbols() {
	rows := map[string]report.CutRow{}
	for _, p := range d.content.Pours {
		for _, c := range p.Cuts {
			rows[c.Joint] = c
		}
	}
	for _, j := range d.slab.Joints {
		s := report.JointSymbol{ID: j.ID, Opened: j.Opened.Or("")}
		if c, ok := rows[j.ID]; ok {
			s.CutAt, s.Hours, s.State, s.DepthShare = &c.At, &c.Hours, c.State, c.DepthShare
		} else if cut := d.cutOf(j.ID); cut != nil {
			s.CutAt = cut.Start
		} else if j.Kind == plan.Sawn {
			s.State = "no record"
		}
		d.content.Plan.Symbols = append(d.content.Plan.Symbols, s)
	}
}

// departuresAndTrucks fills the truck table and the marks of the hour ruler.
func (p *pourRun) departuresAndTrucks() {
	d := p.d
	mark := func(t *time.Time, kind, what string) {
		if t != nil {
			p.day.Events = append(p.day.Events, report.Event{At: *t, Kind: kind, What: what})
		}
	}
	mark(p.pour.Start, "truck", "first concrete")
	mark(p.pour.End, "truck", "last concrete")
	mark(p.pour.FinishStart, "finish", "finishing began")
	mark(p.pour.FinishEnd, "finish", "finishing ended")
	mark(p.day.InitialSet, "set", "initial set of the surface")
	mark(p.day.FinalSet, "set", "final set of the surface")
	mark(p.day.FilmGone, "set", "bleed water used up")
	for _, c := range p.pour.Cure {
		mark(c.On, "cure", c.Kind+" on")
		mark(c.Off, "cure", c.Kind+" off")
	}
	for _, c := range p.pour.Saw {
		mark(c.Start, "cut", "joint "+c.Joint+" cut")
	}
	for _, x := range p.pour.Departures {
		mark(x.At, "departure", x.What)
	}
	mark(p.day.Window.Opens, "window", "cut window opens")
	mark(p.day.Window.Closes, "window", "cut window closes")
	sort.SliceStable(p.day.Events, func(a, b int) bool { return p.day.Events[a].At.Before(p.day.Events[b].At) })
	for _, t := range p.pour.Trucks {
		row := report.TruckRow{Ticket: t.Ticket, Start: t.Started, AskedBy: d.partyName(t.AskedBy)}
		row.Volume, row.Slump = known(t.Volume), known(t.Slump)
		row.Concrete, row.WaterAdded = known(t.Concrete), known(t.WaterAdded)
		if t.Batched != nil && t.Finished != nil {
			age := t.Finished.Sub(*t.Batched).Minutes()
			row.AgeMin = &age
		}
		row.Note = d.waterNote(p, t.WaterAdded)
		p.day.Trucks = append(p.day.Trucks, row)
	}
}

func known(f *source.Fact) *float64 {
	if f == nil {
		return nil
	}
	v := f.Value
	return &v
}

// waterNote says what water added at the truck did to the water-cement ratio, with
// its working.
func (d *diagnosis) waterNote(p *pourRun, added *source.Fact) string {
	if added == nil || added.Value == 0 {
		return ""
	}
	for _, m := range d.job.Mixes {
		if m.ID != p.pour.Mix || m.Cement == nil || m.Water == nil {
			continue
		}
		before, after := m.Water.Value/m.Cement.Value, (m.Water.Value+added.Value)/m.Cement.Value
		id := "water-" + p.pour.ID
		if d.book.Find(id) == nil {
			sheet := working.Sheet{ID: id, Title: "Water added at a truck of " + p.pour.Name}
			sheet.Add(working.New("w/c", "as ordered", "W/C", before, "", source.Cite("practice", ""),
				working.In("W", m.Water.Value, "kg/m³", "water"), working.In("C", m.Cement.Value, "kg/m³", "cement")),
				working.New("w/c", "after the water was added", "(W + w)/C", after, "", source.Cite("practice", ""),
					working.In("W", m.Water.Value, "kg/m³", "water"), working.In("w", added.Value, "L/m³", "water added"), working.In("C", m.Cement.Value, "kg/m³", "cement")))
			d.book.Add(sheet)
			p.day.Workings = append(p.day.Workings, id)
		}
		return fmt.Sprintf("water over cement rose from %.2f to %.2f", before, after)
	}
	return ""
}

// sentences says what the day shows, in plain words.
func (p *pourRun) sentences() {
	d := p.d
	say := func(format string, args ...any) {
		p.day.Sentences = append(p.day.Sentences, fmt.Sprintf(format, args...))
	}
	peak := p.peakWhileFresh()
	say("While %s was fresh and open its surface could dry at up to %.1f kg/m²·h (at %s; %.1f to %.1f by the three published forms). Above 1.0 precautions are asked for; from 0.5 for mixes that bleed little.",
		p.pour.Name, peak.Uno, d.clock(peak.Time), peak.Lowest(), peak.Highest())
	switch {
	case p.day.FilmGone == nil:
	case p.history.FilmGone < fromTheStart:
		say("From the start it could lose water faster than bleeding brought it up; until set the surface could crack by drying.")
	default:
		say("Its bleed water was used up at %s; from then until set the surface could crack by drying.", d.clock(*p.day.FilmGone))
	}
	if text := p.plasticSentence(); text != "" {
		say("%s", text)
	}
	if p.day.FinalSet != nil {
		say("The surface reached final set at %s, %.1f h after placing.", d.clock(*p.day.FinalSet), p.history.FinalSet.Surface)
	}
	say("%s", p.windowSentence())
	for _, c := range p.day.Cuts {
		if c.State != "in the window" {
			say("Joint %s was cut at %s, %.0f h after placing: %s.", c.Joint, d.clock(c.At), c.Hours, c.State)
		}
		if c.DepthShare != nil && *c.DepthShare < quarter {
			say("Joint %s is %.0f mm deep, %.2f of the thickness; a quarter is usual.", c.Joint, 1000**c.Depth, *c.DepthShare)
		}
	}
}

// fromTheStart is how soon after placing a film that is gone never stood, hours.
const fromTheStart = 0.25

// quarter is the usual depth of an ordinary cut as a share of the slab, with a
// millimetre or two of reading.
const quarter = 0.24

func (p *pourRun) windowSentence() string {
	w := p.day.Window
	switch {
	case w.Opens == nil:
		return "For an ordinary wet saw the edge did not get its strength in the time looked at."
	case p.wet.Gap:
		return fmt.Sprintf("For an ordinary wet saw there was no window: the edge was ready at %s, but by %s the slab was likely to have cracked.", p.d.clock(*w.Opens), p.d.clock(*w.Closes))
	case w.Closes == nil:
		return fmt.Sprintf("For an ordinary wet saw the window opened at %s and did not close in the time looked at.", p.d.clock(*w.Opens))
	}
	return fmt.Sprintf("For an ordinary wet saw the window opened at %s and closed at %s.", p.d.clock(*w.Opens), p.d.clock(*w.Closes))
}

func (d *diagnosis) partyName(id string) string {
	for _, p := range d.job.Parties {
		if p.ID == id {
			return p.Name
		}
	}
	return id
}
