package job

import (
	"fmt"
	"math"
	"time"

	"slabwright/causes"
	"slabwright/climate"
	"slabwright/earlyage"
	"slabwright/plan"
	"slabwright/report"
)

// plastic follows the fresh slab hour by hour to final set: drying against
// bleeding, and the chances of plastic cracks.
func (p *pourRun) plastic() {
	in := p.plasticInput()
	if err := in.Check(); err != nil {
		p.day.NotGiven = append(p.day.NotGiven, "Chances of plastic cracks are not given: "+err.Error())
		return
	}
	hours := p.history.PlasticHours(in)
	for _, h := range hours {
		p.day.Plastic = append(p.day.Plastic, report.PlasticHour{Time: h.Time, Hours: h.Hours, Drying: h.Rate, Bleeding: h.Bleed,
			Film: h.Film, Deficit: h.Deficit, Shrinkage: h.ShrinkageChance, Settlement: h.SettlementChance})
	}
	id := "plastic-" + p.pour.ID
	p.d.book.Add(p.history.PlasticHoursWorking(in, id, p.pour.Name))
	p.day.Workings = append(p.day.Workings, id)
}

// plasticInput is what is known of bars, slump and floating.
func (p *pourRun) plasticInput() earlyage.PlasticInput {
	in := earlyage.PlasticInput{Limit: p.d.job.Planned.MaxDrying.Or(0), Slump: p.mix.Slump}
	for _, z := range p.d.slab.Steel {
		if z.Diameter != nil && z.Cover != nil {
			in.Bar, in.Cover = 1000*z.Diameter.Value, 1000*z.Cover.Value
		}
	}
	if p.pour.FinishStart != nil {
		if h := p.pour.FinishStart.Sub(p.centre).Hours(); h > 0 {
			in.Floated = append(in.Floated, h)
		}
	}
	return in
}

// plasticChance is the chance of plastic shrinkage cracks by final set, and whether
// it was worked out.
func (p *pourRun) plasticChance() (float64, bool) {
	if len(p.day.Plastic) == 0 {
		return 0, false
	}
	return p.day.Plastic[len(p.day.Plastic)-1].Shrinkage, true
}

// plasticSentence says the chances of the plastic stage in plain words.
func (p *pourRun) plasticSentence() string {
	n := len(p.day.Plastic)
	if n == 0 {
		return ""
	}
	last := p.day.Plastic[n-1]
	return fmt.Sprintf("Chance of plastic shrinkage cracks by set: %s; of cracks over the bars: %s.", causes.About(last.Shrinkage), causes.About(last.Settlement))
}

// profileHours are when the slab is shown through its depth, hours after placing.
var profileHours = []float64{2, 6, 12, 18, 24, 48}

// profiles runs the expected course once more, keeping every depth.
func (p *pourRun) profiles(c earlyage.Column) error {
	c.Profiles = true
	c.Until = math.Min(c.Until, profileHours[len(profileHours)-1])
	h, err := c.Run(p.d.ctx)
	if err != nil {
		return err
	}
	p.day.Depths = h.Depth
	at := 0
	for _, want := range profileHours {
		for at+1 < len(h.Hours) && h.Hours[at] < want {
			at++
		}
		if h.Hours[at] < want-1 {
			break
		}
		p.day.Profiles = append(p.day.Profiles, report.Profile{Time: h.Clock(h.Hours[at]), Hours: h.Hours[at],
			Temperature: h.Temperature[at], Humidity: h.PoreHumidity[at], Strength: h.Strength[at], Stress: h.Stress[at]})
	}
	return nil
}

// shelters are what the buildings and trees around the pour keep off it.
func (p *pourRun) shelters() ([]climate.Shelter, error) {
	d := p.d
	if len(d.job.Place.Obstacles) == 0 || len(p.pour.Area) < 3 {
		return nil, nil
	}
	around := climate.Surroundings{Bearing: d.slab.Bearing.Or(0)}
	if d.slab.Bearing == nil {
		d.assume("direction of the plan", "its y axis points north", "default", "no bearing was given; sets which way shadows fall", "sun on the slab near walls")
	}
	for _, o := range d.job.Place.Obstacles {
		if o.Height == nil {
			d.lack("place.obstacles", "how high "+o.Name+" is", "so its shadow is left out")
			continue
		}
		around.Obstacles = append(around.Obstacles, climate.Obstacle{Name: o.Name, Outline: o.Outline, Height: o.Height.Value,
			Under: o.Under.Or(0), Through: o.Through.Or(0), Porous: o.Porous.Or(0)})
	}
	from, to := p.weather.Series.Span()
	if start := p.pour.Start.Add(-shadeMargin); start.After(from) {
		from = start
	}
	if end := p.pour.Start.Add(shadeSpan); end.Before(to) {
		to = end
	}
	if !to.After(from) {
		return nil, nil // the record ends before the pour, which is said elsewhere
	}
	return around.Shelters(d.place(), plan.Ring(p.pour.Area), from, to)
}

// The hours for which shade is worked out: from just before the pour until the run
// ends.
const (
	shadeMargin = time.Hour
	shadeSpan   = (runHours + 4) * time.Hour
)
