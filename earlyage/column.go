package earlyage

import (
	"fmt"
	"math"
	"strings"
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
	Absorptivity float64 // of the open surface to the sun
	Emissivity   float64
	Covers       []Cover
	Drying       climate.DryingForm

	CutDepth float64 // depth of the zone the saw cuts, m; 0: a quarter of the slab
	Until    float64 // h after placing
	Profiles bool    // keep temperature and stress by layer at every time

	Progress func(hours float64) // called now and then; may be nil

	sampled *record // weather asked already
}

// Usual surface values of fresh grey concrete. From memory.
const (
	DefaultAbsorptivity = 0.60
	DefaultEmissivity   = 0.90
)

// Check returns everything about the column that cannot be right, all at once.
func (c Column) Check() error {
	var wrong []string
	say := func(format string, values ...any) { wrong = append(wrong, fmt.Sprintf(format, values...)) }
	inside := func(what string, v, low, high float64, unit, hint string) {
		if !(v >= low && v <= high) {
			say("%s %.4g %s is outside %g to %g %s. %s", what, v, unit, low, high, unit, hint)
		}
	}
	inside("Slab thickness", c.Thickness, 0.05, 1.5, "m", "Enter metres: 150 mm is 0.15.")
	inside("Placing temperature", c.PlacingTemperature, 1, 45, "°C", "Below 1 °C it freezes, above 45 °C the set model was never compared.")
	inside("Absorptivity", c.Absorptivity, 0, 1, "", "Grey concrete 0.5 to 0.65, black sheet 0.93.")
	inside("Emissivity", c.Emissivity, 0, 1, "", "Concrete 0.88 to 0.95.")
	inside("Length of the run", c.Until, 1, 10*365*24, "h", "Give hours after placing.")
	inside("Wind factor", c.WindFactor, 0, 5, "", "1 leaves the wind as given.")
	var deep float64
	for i, l := range c.Below {
		deep += l.Thickness
		if !(l.Thickness > 0 && l.Conductivity > 0 && l.Capacity > 0) {
			say("Layer %d under the slab (%s) needs thickness, conductivity and heat capacity above zero.", i+1, l.Name)
		}
	}
	if deep < 2 {
		say("The layers under the slab are %.2f m deep in all; at least 2 m is needed for the soil to take the heat. Make the last layer thicker.", deep)
	}
	for _, cover := range c.Covers {
		if cover.Off != 0 && cover.Off <= cover.On {
			say("Cover %q comes off at %.2f h, not after it went on at %.2f h.", cover.Name, cover.Off, cover.On)
		}
	}
	if c.Weather == nil && c.sampled == nil || c.Ground == nil || c.Concrete.Properties == nil {
		panic("earlyage: a column needs weather, ground and concrete")
	}
	if c.Weather != nil && len(wrong) == 0 {
		for _, hours := range []float64{0, c.Until / 2, c.Until} {
			at := c.Placed.Add(time.Duration(hours * float64(time.Hour)))
			if p := c.Weather(at).problem(); p != "" {
				say("Weather at %s: %s.", at.UTC().Format("2006-01-02 15:04 UTC"), p)
			}
		}
	}
	if wrong != nil {
		return fmt.Errorf("early-age column: %s", strings.Join(wrong, " "))
	}
	return nil
}

const slabIntervals = 16

// grid returns the nodes of slab and ground, and the index of the slab's lower
// face.
func (c Column) grid() (g march.Grid, bottom int) {
	g = march.TwoSided(0, c.Thickness, slabIntervals/2, 1.25)
	bottom = len(g) - 1
	last := c.Thickness / slabIntervals
	for _, l := range c.Below {
		const growth = 1.4
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

// times returns the steps of the run in hours: minutes at first, half hours to the
// fourteenth day, days after it, with a step ending at every cover's clock time.
func (c Column) times() []float64 {
	stages := []struct{ to, step float64 }{{6, 1.0 / 12}, {30, 1.0 / 6}, {72, 1.0 / 3}, {fineDays * 24, 0.5}, {math.Inf(1), 24}}
	events := []float64{}
	for _, cover := range c.Covers {
		events = append(events, cover.On, cover.Off)
	}
	out := []float64{0}
	now := 0.0
	for _, s := range stages {
		end := math.Min(s.to, c.Until)
		for now < end-1e-9 {
			next := math.Min(now+s.step, end)
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
