package earlyage

import (
	"context"
	"math"

	"slabwright/concrete"
	"slabwright/internal/march"
)

// Run follows the column from placing to its end.
func (c Column) Run(ctx context.Context) (*History, error) {
	if err := c.Check(); err != nil {
		return nil, err
	}
	r := newRun(c)
	times := c.times()
	r.history.grow(len(times), c.Profiles)
	r.record(0)
	for k := 1; k < len(times); k++ {
		if k%16 == 0 {
			if err := ctx.Err(); err != nil {
				return nil, err
			}
			if c.Progress != nil {
				c.Progress(times[k])
			}
		}
		for at := times[k-1]; at < times[k]; {
			part := r.untilTurn(at, times[k]-at)
			if err := r.step(at, part, k); err != nil {
				return nil, err
			}
			if at += part; times[k]-at < shortest {
				at = times[k]
			}
		}
		r.record(times[k])
	}
	r.finish()
	return r.history, nil
}

// run is a column on its way.
type run struct {
	Column
	heat          *march.Marcher
	local         *hydrating
	surface       *surface
	top           *topFace
	account       account
	poreLoss      float64 // water the pores gave in this step, kg/m2
	daysPerSecond float64 // days at 20 °C in a second of equivalent age
	poresDone     bool    // they have been moved over it
	water         *moisture
	film          bleeding
	table         *ageing
	history       *History
	slab          march.Grid
	bottom        int
	middle        int       // node at mid-depth
	edge          []float64 // share of each node in the mean over the zone the saw cuts
	all           []float64 // and over the whole slab
	below         float64   // heat capacity of the ground's part of the lowest node
	volumes       []float64

	setFrom, setTo float64 // equivalent age at initial and final set, h

	degree        []float64
	section       section
	free          []float64 // free strain of each layer since its set
	change        []float64
	autogenous    []float64 // shrinkage by layer since its set
	drying        []float64 // shrinkage by layer
	modulus       []float64 // by layer, in the middle of the step
	before        []float64 // temperature at the start of the step
	fade          fade
	self          []relaxing
	axial, curl   relaxing
	mean, slope   float64 // free mean strain and curvature so far
	initial, last []float64
	now           []aged // the concrete of each layer at the end of the step
	crazed        float64
}

// newtonTolerance is the correction, K, at which Newton's method stops. It goes on
// with the square, so what is left after it is below 1e-6 K.
const newtonTolerance = 0.002

func newRun(c Column) *run {
	g, bottom := c.grid()
	r := &run{Column: c, slab: g[:bottom+1], bottom: bottom, table: newAgeing(c.Concrete),
		setFrom: c.Concrete.Hydration.InitialSet(), setTo: c.Concrete.Hydration.FinalSet(), crazed: math.NaN()}
	r.middle = r.slab.Index(c.Thickness / 2)
	r.sampled = c.ask().changed(c.moister, c.cloudier)
	if !r.curves.suit(c.Concrete.Hydration) {
		r.curves = newCurves(c.Concrete.Hydration, concrete.HydrationReference_C)
	}
	r.daysPerSecond = c.Concrete.Hydration.DaysAt20(1.0 / 3600)
	r.startHeat(g)
	r.water = newMoisture(r.slab, c.Concrete.Diffusion)
	r.film = bleeding{bleed: c.Concrete.Bleed, Gone: math.NaN()}
	cut := c.CutDepth
	if cut == 0 {
		cut = c.Thickness / 4
	}
	r.edge, r.all = shares(r.slab, cut), shares(r.slab, c.Thickness)
	r.startStress()
	r.history = c.scratch
	if r.history == nil {
		r.history = &History{}
	}
	r.history.Placed, r.history.Depth = c.Placed, r.slab
	return r
}

// startHeat lays the slab on the ground, each at its own temperature.
func (r *run) startHeat(g march.Grid) {
	r.surface = &surface{weather: r.sampled, wind: r.WindFactor, warmer: r.AirShift, open: bare(r.Absorptivity, r.Emissivity),
		covers: r.Covers, drying: r.Drying, wet: 1, time: math.NaN()}
	r.surface.lay(0)
	r.volumes = r.slab.Volumes()
	r.local = newHydrating(r.Concrete.Hydration, r.curves, r.volumes)
	layers := r.layers()
	p := march.Layered(g, layers...)
	r.top = &topFace{surface: r.surface}
	p.Top, p.Local = r.top, r.local
	p.Bottom = march.Held(march.Constant(r.Ground(g[len(g)-1] - r.Thickness)))
	start := make([]float64, len(g))
	for i, x := range g {
		start[i] = r.PlacingTemperature
		if i > r.bottom {
			start[i] = r.Ground(x - r.Thickness)
		}
	}
	r.heat = march.New(p, 0, start)
	r.heat.Tolerance = newtonTolerance
	r.below = p.Capacity[r.bottom] - layers[0].Capacity*r.volumes[r.bottom]
}

// startStress makes room for strain and stress by layer.
func (r *run) startStress() {
	n := r.bottom + 1
	for _, s := range []*[]float64{&r.degree, &r.free, &r.change, &r.autogenous, &r.drying, &r.modulus, &r.before, &r.initial, &r.last} {
		*s = make([]float64, n)
	}
	for i := range r.initial {
		r.initial[i], r.last[i] = math.NaN(), math.NaN()
	}
	r.now = make([]aged, n)
	r.section = section{depth: r.slab, rest: make([]float64, n)}
	creep := r.Concrete.Creep
	r.fade = newFade(creep)
	r.self = make([]relaxing, n)
	for i := range r.self {
		r.self[i] = newRelaxing(creep)
	}
	r.axial, r.curl = newRelaxing(creep), newRelaxing(creep)
}

// step moves everything over one step.
func (r *run) step(hours, dt float64, k int) error {
	copy(r.before, r.heat.Value[:r.bottom+1])
	r.surface.lay(hours + dt/2)
	if hours < 72 || k%6 == 0 || dt > 1 {
		r.refresh(dt * 3600)
	}
	const pores, heat = "water of the pores under the surface", "heat of slab and ground"
	if err := r.wetAhead(hours, dt); err != nil {
		return placed(err, hours, dt, pores)
	}
	if err := r.account.heatStep(r.heat, dt*3600); err != nil {
		return placed(err, hours, dt, heat)
	}
	r.noteSets(hours, dt)
	if err := r.dry(hours, dt); err != nil {
		return placed(err, hours, dt, pores)
	}
	r.strain(hours, dt)
	return nil
}

// refresh brings conductivity and heat capacity to the degree of hydration and
// the temperature that the middle of a step of dt seconds will have.
func (r *run) refresh(dt float64) {
	for i, age := range r.heat.Hidden {
		rate, _ := r.local.Rate(i, r.heat.Value[i])
		r.degree[i], _ = r.local.degree(age + rate*dt/2)
	}
	for i := range r.bottom {
		k := r.Concrete.Conductivity((r.degree[i] + r.degree[i+1]) / 2)
		r.heat.Conductance[i] = k / (r.slab[i+1] - r.slab[i])
	}
	for i, v := range r.volumes {
		r.heat.Capacity[i] = v * r.Concrete.Density * r.Concrete.SpecificHeat(r.degree[i], r.heat.Ahead(i, dt/2))
	}
	r.heat.Capacity[r.bottom] += r.below
}
