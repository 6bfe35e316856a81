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
	r.history.grow(len(times))
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
		if err := r.step(times[k-1], times[k]-times[k-1], k); err != nil {
			return nil, err
		}
		r.record(times[k])
	}
	r.finish()
	return r.history, nil
}

// run is a column on its way.
type run struct {
	Column
	heat    *march.Marcher
	local   *hydrating
	surface *surface
	water   *moisture
	film    bleeding
	table   *ageing
	history *History
	slab    march.Grid
	bottom  int
	edge    int // lowest node of the zone the saw cuts
	below   []float64
	volumes []float64

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
// with the square, so what is left after it is some 1e-5 K.
const newtonTolerance = 0.01

func newRun(c Column) *run {
	g, bottom := c.grid()
	slab := g[:bottom+1]
	r := &run{Column: c, slab: slab, bottom: bottom, table: newAgeing(c.Concrete),
		setFrom: c.Concrete.Hydration.InitialSet(), setTo: c.Concrete.Hydration.FinalSet()}
	r.sampled = c.ask()
	r.surface = &surface{weather: r.sampled, wind: c.WindFactor, open: bare(c.Absorptivity, c.Emissivity),
		covers: c.Covers, drying: c.Drying, wet: 1, time: -1}
	r.volumes = slab.Volumes()
	r.local = newHydrating(c.Concrete.Hydration, concrete.HydrationReference_C, r.volumes)
	p := march.Layered(g, c.layers()...)
	p.Top, p.Local = r.surface, r.local
	p.Bottom = march.Held(march.Constant(c.Ground(g[len(g)-1] - c.Thickness)))
	start := make([]float64, len(g))
	for i, x := range g {
		start[i] = c.PlacingTemperature
		if i > bottom {
			start[i] = c.Ground(x - c.Thickness)
		}
	}
	r.heat = march.New(p, 0, start)
	r.heat.Tolerance = newtonTolerance
	r.below = []float64{p.Capacity[bottom] - c.layers()[0].Capacity*r.volumes[bottom]}
	r.water = newMoisture(slab, c.Concrete.Diffusion)
	r.film = bleeding{bleed: c.Concrete.Bleed.At, Gone: math.NaN()}
	r.crazed = math.NaN()
	cut := c.CutDepth
	if cut == 0 {
		cut = c.Thickness / 4
	}
	r.edge = max(1, march.Grid(slab).Index(cut))
	n := bottom + 1
	for _, s := range []*[]float64{&r.degree, &r.free, &r.change, &r.autogenous, &r.drying, &r.modulus, &r.before, &r.initial, &r.last} {
		*s = make([]float64, n)
	}
	for i := range r.initial {
		r.initial[i], r.last[i] = math.NaN(), math.NaN()
	}
	r.now = make([]aged, n)
	r.section = section{depth: slab, rest: make([]float64, n)}
	r.fade = newFade(c.Concrete.Creep)
	r.self = make([]relaxing, n)
	for i := range r.self {
		r.self[i] = newRelaxing(c.Concrete.Creep)
	}
	r.axial, r.curl = newRelaxing(c.Concrete.Creep), newRelaxing(c.Concrete.Creep)
	r.history = &History{Placed: c.Placed, Depth: slab}
	return r
}

// step moves everything over one step.
func (r *run) step(hours, dt float64, k int) error {
	copy(r.before, r.heat.Value[:r.bottom+1])
	if hours < 72 || k%6 == 0 {
		r.refresh()
	}
	if err := r.heat.Step(dt * 3600); err != nil {
		return err
	}
	r.noteSets(hours, dt)
	if err := r.dry(hours, dt); err != nil {
		return err
	}
	r.strain(hours, dt)
	return nil
}

// refresh brings conductivity and heat capacity to the present degree of
// hydration.
func (r *run) refresh() {
	for i, age := range r.heat.Hidden {
		r.degree[i], _ = r.local.degree(age)
	}
	for i := range r.bottom {
		k := r.Concrete.Conductivity((r.degree[i] + r.degree[i+1]) / 2)
		r.heat.Conductance[i] = k / (r.slab[i+1] - r.slab[i])
	}
	for i, v := range r.volumes {
		r.heat.Capacity[i] = v * r.Concrete.Density * r.Concrete.SpecificHeat(r.degree[i], r.heat.Value[i])
	}
	r.heat.Capacity[r.bottom] += r.below[0]
}

// noteSets records the clock times of initial and final set by layer.
func (r *run) noteSets(hours, dt float64) {
	initial, final := r.setFrom, r.setTo
	for i, age := range r.heat.Hidden {
		if !math.IsNaN(r.last[i]) {
			continue
		}
		te := age / 3600
		rate, _ := r.local.Rate(i, r.heat.Value[i])
		back := func(level float64) float64 {
			return math.Max(hours, hours+dt-(te-level)/rate)
		}
		if math.IsNaN(r.initial[i]) && te >= initial {
			r.initial[i] = back(initial)
		}
		if te >= final {
			r.last[i] = back(final)
		}
	}
}

// dry moves the water on the surface and in the pores.
func (r *run) dry(hours, dt float64) error {
	s := r.surface
	s.look((hours + dt) * 3600)
	cover := s.cover
	open := s.potential(r.heat.Value[0]) * cover.Evaporation
	if cover.KeptWet {
		open = 0 // what evaporates is added water
	}
	te := r.heat.Hidden[0] / 3600
	hardened := math.Min(math.Max((te-r.setFrom)/(r.setTo-r.setFrom), 0), 1)
	pores := 0.0
	if hardened > 0 {
		pores = r.water.canGive(s.feel.Humidity) * cover.Evaporation
	}
	s.wet = r.film.step(hours, dt, open, hardened, pores)
	if hardened < 1 || r.film.Film > 0 {
		return nil
	}
	rate, err := r.water.step(dt*3600, cover, s.feel.Humidity)
	r.film.rate = rate
	return err
}

// strain adds the free strains of the step and lets the stresses creep.
func (r *run) strain(hours, dt float64) {
	c := &r.Concrete
	final := r.setTo
	for i, age := range r.heat.Hidden {
		now := r.table.at(age / 3600)
		r.modulus[i] = (r.now[i].Modulus + now.Modulus) / 2
		r.now[i] = now
		r.change[i] = 0
		if age/3600 <= final {
			continue
		}
		h := r.water.Value[i]
		drying := c.DryToZero * (1 - h*h*h)
		r.change[i] = c.Expansion*(r.heat.Value[i]-r.before[i]) - (now.autogenous - r.autogenous[i]) - (drying - r.drying[i])
		r.autogenous[i], r.drying[i] = now.autogenous, drying
		r.free[i] += r.change[i]
	}
	r.craze(hours)
	r.section.split(r.change, r.modulus)
	r.mean += r.section.mean
	r.slope += r.section.slope
	r.relax(dt)
}

// craze takes out of the section, for one step, the layers whose tension has come
// to their strength and that go on shrinking: they craze and pull no harder.
func (r *run) craze(hours float64) {
	for i := range r.self {
		if r.modulus[i] > 0 && r.self[i].stress >= r.now[i].Tensile && r.change[i] < 0 {
			r.modulus[i] = 0
			if math.IsNaN(r.crazed) && r.now[i].Tensile > leastTension {
				r.crazed = hours
			}
		}
	}
}

// relax gives the parts of the step's strain to the fibres that hold them.
func (r *run) relax(dt float64) {
	c := &r.Concrete
	r.fade.set(c.Creep, dt/24)
	plane := 1 / (1 - c.Poisson)
	for i := range r.self {
		strain, modulus := -plane*r.section.rest[i], r.modulus[i]
		if modulus <= 0 { // crazing: it only creeps
			strain, modulus = 0, r.now[i].Modulus
		}
		if modulus <= 0 {
			continue
		}
		r.self[i].take(strain, c.Creep, &r.fade, modulus, r.now[i].compliance)
	}
	if r.section.whole <= 0 {
		return
	}
	compliance := r.now[r.bottom/2].compliance
	r.axial.take(-r.section.mean, c.Creep, &r.fade, r.section.whole, compliance)
	r.curl.take(-plane*r.section.slope*r.Thickness/2, c.Creep, &r.fade, r.section.whole, compliance)
}
