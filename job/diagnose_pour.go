package job

import (
	"errors"
	"fmt"
	"math"
	"time"

	"slabwright/climate"
	"slabwright/concrete"
	"slabwright/earlyage"
	"slabwright/internal/march"
	"slabwright/plan"
	"slabwright/report"
	"slabwright/site"
	"slabwright/source"
)

// pourRun is one pour followed through its first days.
type pourRun struct {
	d        *diagnosis
	pour     site.Pour
	mix      concrete.Mix
	placed   func(plan.Point) time.Time // clock time concrete came to a place
	centre   time.Time                  // of the placing: the time the column stands for
	weather  climate.Exposure
	model    earlyage.Pour
	members  *earlyage.Members
	history  *earlyage.History
	wet      *earlyage.CutWindow
	early    *earlyage.CutWindow
	drying   climate.DryingRecord
	panelWet map[string]*earlyage.CutWindow // by panel
	limit    *float64                       // longest uncut length, m, in a what-if; nil: the strip
	brief    bool                           // only the window is wanted
	day      report.PourDay

	plan *planPour // followed on for the replay in plan

	dryingSheet, windowSheet string
}

// runHours is how long a pour is followed, when the weather goes that far: in two
// days cut window, early cracks and the first nights are settled.
const runHours = 48.0

// followPours runs every pour whose clock is known.
func (d *diagnosis) followPours() error {
	for i, p := range d.job.Pours {
		d.say("pour "+p.Name, 0.05+0.6*float64(i)/float64(len(d.job.Pours)))
		run := &pourRun{d: d, pour: p, placed: d.placing(p)}
		run.day = report.PourDay{ID: p.ID, Name: p.Name, End: p.End, DryingLimit: known(d.job.Planned.MaxDrying)}
		d.pours = append(d.pours, run)
		if p.Start == nil {
			d.lack(fmt.Sprintf("pours[%d].start", i), "when pour "+p.Name+" began", "so its drying, set and cut window are not given")
			continue
		}
		run.centre = middleOf(p)
		run.day.Start = *p.Start
		if err := run.follow(i); err != nil {
			return fmt.Errorf("pour %s: %w", p.ID, err)
		}
		d.content.Pours = append(d.content.Pours, run.day)
		if err := d.ctx.Err(); err != nil {
			return err
		}
	}
	d.symbols()
	return nil
}

// middleOf returns the middle of a pour's placing.
func middleOf(p site.Pour) time.Time {
	if p.End == nil {
		return *p.Start
	}
	return p.Start.Add(p.End.Sub(*p.Start) / 2)
}

// placing returns when concrete came to a place of a pour: when the truck that
// went there began, or else the middle of the pour.
func (d *diagnosis) placing(p site.Pour) func(plan.Point) time.Time {
	return func(at plan.Point) time.Time {
		for _, t := range p.Trucks {
			if t.Started != nil && len(t.Area) >= 3 && plan.Ring(t.Area).Contains(at) {
				return *t.Started
			}
		}
		if p.Start == nil {
			return time.Time{}
		}
		return middleOf(p)
	}
}

// placedBeside is when concrete came to a joint: the later side of it.
func (p *pourRun) placedBeside(at plan.Point) time.Time {
	return p.placed(at)
}

// pourOf returns the pour a place lies in, or nil.
func (d *diagnosis) pourOf(at plan.Point) *pourRun {
	for _, p := range d.pours {
		if len(p.pour.Area) >= 3 && plan.Ring(p.pour.Area).Contains(at) {
			return p
		}
	}
	var nearest *pourRun
	least := nearEdge
	for _, p := range d.pours {
		if len(p.pour.Area) < 3 {
			continue
		}
		if away := plan.Ring(p.pour.Area).Distance(at); away < least {
			nearest, least = p, away
		}
	}
	return nearest
}

// nearEdge is how far outside a pour's drawn area a place still belongs to it,
// metres: a finding on its edge.
const nearEdge = 0.05

// follow works out one pour: weather, drying, column, window, cuts.
func (p *pourRun) follow(i int) error {
	d := p.d
	series, err := d.weatherOf(i)
	if err != nil {
		return err
	}
	if series == nil {
		d.lack(fmt.Sprintf("pours[%d].weather", i), "the weather of pour "+p.pour.Name, "so its drying, set and cut window are not given")
		p.day.NotGiven = append(p.day.NotGiven, "No weather record: drying, set and cut window are not given.")
		p.departuresAndTrucks()
		return nil
	}
	p.weather = climate.Exposure{Series: *series, Place: d.place()}
	if p.weather.Shelters, err = p.shelters(); err != nil {
		return err
	}
	p.day.Weather = "Weather: " + series.Source.String() + "."
	if ok, err := p.readMix(i); err != nil || !ok {
		p.departuresAndTrucks()
		return err
	}
	if d.slab.Thickness == nil {
		d.lack("slabs[0].thickness_m", "how thick the slab is", "so temperature, set, cut window, curl and wheel stress are not given")
		p.day.NotGiven = append(p.day.NotGiven, "Thickness not known: temperature, set and cut window are not given.")
		p.departuresAndTrucks()
		return nil
	}
	if err := p.column(); err != nil {
		if p.unsettled(err) {
			return nil
		}
		return err
	}
	if err := p.dry(); err != nil {
		return err
	}
	p.hours()
	p.plastic()
	p.windows()
	if p.brief {
		return nil
	}
	p.sensitivities()
	p.measured()
	if err := p.panelWindows(p.model); err != nil {
		return err
	}
	p.cuts()
	p.departuresAndTrucks()
	p.sentences()
	return nil
}

// unsettled notes that the model of the slab through its depth found no answer, so that
// the rest of the job is still answered; false for any other error.
func (p *pourRun) unsettled(err error) bool {
	var none *march.Unsettled
	if !errors.As(err, &none) {
		return false
	}
	p.history, p.wet, p.early = nil, nil, nil
	p.day.NotGiven = append(p.day.NotGiven, "The model of the slab through its depth did not settle: temperature, set and cut window are not given.")
	p.departuresAndTrucks()
	return true
}

// place is where the slab lies, with the middle of Europe's latitude put in when
// nobody gave one: the sun needs it.
func (d *diagnosis) place() climate.Place {
	pl := d.job.Place
	return climate.Place{
		Latitude:  d.use(pl.Latitude, 50, "latitude", "°", "not given; sets the height of the sun", "slab temperature by a few K"),
		Longitude: d.use(pl.Longitude, 0, "longitude", "°", "not given; sets the hour of noon", "slab temperature by a few K"),
		Altitude:  d.use(pl.Altitude, 50, "altitude", " m", "not given", "very little"),
	}
}

// readMix turns the mix of the job into the plain numbers of the model; ok is false
// when a fact that nobody knows keeps it from running.
func (p *pourRun) readMix(i int) (ok bool, err error) {
	d := p.d
	var facts *site.Mix
	for k := range d.job.Mixes {
		if d.job.Mixes[k].ID == p.pour.Mix {
			facts = &d.job.Mixes[k]
		}
	}
	if facts == nil || facts.Strength == nil {
		d.lack(fmt.Sprintf("pours[%d].mix", i), "the strength of the concrete of pour "+p.pour.Name, "so its set, strength and cut window are not given")
		p.day.NotGiven = append(p.day.NotGiven, "Concrete strength not known: set, strength and cut window are not given.")
		return false, nil
	}
	p.mix, err = d.concreteMix(*facts)
	if err != nil {
		return false, err
	}
	p.mix.PlacingTemperature = d.use(p.pour.Concrete, 20, "concrete temperature at placing, "+p.pour.Name, " °C", "not measured; a usual value", "set and cut window by about an hour for 3 K")
	if p.pour.Bleed != nil {
		p.mix.BleedShare = d.use(p.pour.Bleed, 0, "bleed water, "+p.pour.Name, " kg/m²", "", "when the surface starts to dry") / 1000 / d.slab.Thickness.Or(0.15)
	}
	return true, p.mix.Check()
}

// peakFirstHours is the highest drying rate of the first six hours, in kg/m2/s, with
// the spread of the published forms as its range.
func (p *pourRun) peakFirstHours() *source.Fact {
	best, low, high := math.Inf(-1), 0.0, 0.0
	for _, r := range p.drying.Rows {
		if h := r.Time.Sub(*p.pour.Start).Hours(); h >= 0 && h <= 6 && r.Uno > best {
			best, low, high = r.Uno, r.Lowest(), r.Highest()
		}
	}
	if math.IsInf(best, -1) {
		return nil
	}
	const hour = 3600
	low, high = low/hour, high/hour
	return &source.Fact{Value: best / hour, Low: &low, High: &high, Known: source.Recorded}
}

// temperatureDrop is the fall of the slab's mean temperature from its peak within
// 72 h of placing, K.
func (p *pourRun) temperatureDrop() *source.Fact {
	if p.history == nil {
		return nil
	}
	peak, drop := math.Inf(-1), 0.0
	for i, h := range p.history.Hours {
		if h > 72 {
			break
		}
		mean := (p.history.Surface[i] + p.history.Mid[i] + p.history.Bottom[i]) / 3
		peak = math.Max(peak, mean)
		drop = math.Max(drop, peak-mean)
	}
	return &source.Fact{Value: drop, Known: source.Recorded}
}
