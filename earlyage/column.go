package earlyage

import (
	"math"
	"time"

	"slabwright/climate"
	"slabwright/internal/march"
)

// Layer is a material under the slab.
type Layer struct {
	Name         string
	Thickness    float64 // m
	Conductivity float64 // W/mK
	Capacity     float64 // J/m3K
}

// Column is one place of a slab and everything that acts on it.
type Column struct {
	Concrete  Concrete
	Thickness float64 // of the slab, m
	Below     []Layer // base, then soil, 2 m in all or more

	Placed             time.Time
	PlacingTemperature float64                     // °C
	Ground             func(depth float64) float64 // °C at placing, depth from the underside of the slab

	Weather      Weather
	WindFactor   float64 // on the wind, 1 as given
	AirShift     float64 // K added to the air temperature, 0 as given
	Absorptivity float64 // of the open surface to the sun
	Emissivity   float64
	Covers       []Cover
	Drying       climate.DryingForm

	CutDepth float64 // depth of the zone the saw cuts, m; 0: a quarter of the slab
	Until    float64 // h after placing
	Profiles bool    // keep temperature and stress by layer at every time

	Progress func(hours float64) // called now and then; may be nil

	moister  float64 // added to the humidity of the air
	cloudier float64 // share of the sky covered beyond the given, or less

	sampled *record  // weather asked already
	curves  *curves  // of the cement and the pores, tabulated already
	scratch *History // a history that may be written over
	finer   int      // times as many layers, to see what they cost in accuracy; 0: 1
	shorter int      // times as many steps, likewise
}

// Usual surface values of fresh grey concrete. From memory.
const (
	DefaultAbsorptivity = 0.60
	DefaultEmissivity   = 0.90
)

// The slab's layers are fine at its top, where it dries, and at its underside.
const (
	upperIntervals, upperGrowth = 12, 1.35
	lowerIntervals, lowerGrowth = 6, 1.2
	groundGrowth                = 1.4
)

// grid returns the nodes of slab and ground, and the index of the slab's lower
// face.
func (c Column) grid() (g march.Grid, bottom int) {
	finer := max(1, c.finer)
	root := func(growth float64) float64 { return math.Pow(growth, 1/float64(finer)) }
	middle := c.Thickness / 2
	g = march.Graded(0, middle, upperIntervals*finer, root(upperGrowth)).
		Then(march.Graded(middle, c.Thickness, lowerIntervals*finer, 1/root(lowerGrowth)))
	bottom = len(g) - 1
	last := g[bottom] - g[bottom-1]
	growth := root(groundGrowth)
	for _, l := range c.Below {
		// intervals growing from the one above until the layer is filled
		n := int(math.Ceil(math.Log(1+l.Thickness/last*(growth-1)/growth) / math.Log(growth)))
		n = max(n, 2)
		start := g[len(g)-1]
		next := march.Graded(start, start+l.Thickness, n, growth)
		last = next[n] - next[n-1]
		g = g.Then(next)
	}
	return g, bottom
}

// layers are the materials of the grid.
func (c Column) layers() []march.Layer {
	to := c.Thickness
	fresh := c.Concrete.Density * c.Concrete.SpecificHeat(0, c.PlacingTemperature)
	out := []march.Layer{{To: to, Conductivity: c.Concrete.Conductivity(0), Capacity: fresh}}
	for _, l := range c.Below {
		to += l.Thickness
		out = append(out, march.Layer{To: to, Conductivity: l.Conductivity, Capacity: l.Capacity})
	}
	return out
}

// times returns the steps of the run in hours: minutes at first, less than an hour to
// the fourteenth day, a day growing to a week after it (see coarseStep), with a step ending at every cover's clock time.
func (c Column) times() []float64 {
	stages := []struct{ to, step float64 }{{6, 1.0 / 12}, {30, 1.0 / 4}, {72, 2.0 / 3}, {fineDays * 24, 0.8}, {math.Inf(1), 0}}
	events := []float64{}
	for _, cover := range c.Covers {
		events = append(events, cover.On, cover.Off)
	}
	out := []float64{0}
	now := 0.0
	for _, s := range stages {
		end := math.Min(s.to, c.Until)
		for now < end-1e-9 {
			step := s.step
			if step == 0 {
				step = coarseStep(now)
			}
			next := math.Min(now+step/float64(max(1, c.shorter)), end)
			for _, e := range events {
				if e > now+1e-6 && e < next-1e-6 {
					next = e
				}
			}
			now = next
			out = append(out, now)
		}
	}
	return out
}
