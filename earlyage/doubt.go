package earlyage

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"slabwright/source"
)

// Doubt says how far the uncertain facts of a pour may be off about what the pour
// says, where nothing better is given. Each is spread evenly over its range,
// friction and edge strength over their own low to high. A field of zero takes its
// fact as known. Facts of the job go in with [Doubt.Given].
type Doubt struct {
	Placing     float64 // temperature of the concrete, ± K
	Heat        float64 // heat of the cement, ± share
	Fineness    float64 // speed of the cement (its time constant), ± share
	Wind        float64 // ± share
	Air         float64 // temperature of the air, ± K: a forecast, or a station away from the slab
	Thermal     float64 // coefficient of thermal expansion, ± share
	Tensile     float64 // coefficient of variation of tensile strength about its mean
	Scatter     float64 // of that coefficient itself, ±
	WaterBinder float64 // water over binder, ±: water added at site, wet aggregate
	Binder      float64 // content, ± share
	Humidity    float64 // of the air, ± fraction
	Cloud       float64 // share of the sky, ±
	Subgrade    float64 // modulus of subgrade reaction, ± share
	Thickness   float64 // ± m
	SetShift    float64 // of final set by admixtures, ± h

	given map[string]source.Fact
}

// DefaultDoubt is used where the engineer gives none. The spread of tensile
// strength is that of the fractiles 0.7 and 1.3 of EN 1992-1-1 Table 3.1; the
// rest is our own judgement.
var DefaultDoubt = Doubt{Placing: 2, Heat: 0.10, Fineness: 0.10, Wind: 0.30, Air: 1, Thermal: 0.10, Tensile: 0.18,
	Scatter: 0.04, WaterBinder: 0.02, Binder: 0.02, Humidity: 0.05, Cloud: 0.15, Subgrade: 0.40, Thickness: 0.008, SetShift: 0.3}

// none reports whether no doubt was given at all.
func (d Doubt) none() bool {
	return d.Placing == 0 && d.Heat == 0 && d.Fineness == 0 && d.Wind == 0 && d.Air == 0 && d.Thermal == 0 && d.Tensile == 0 &&
		d.Scatter == 0 && d.WaterBinder == 0 && d.Binder == 0 && d.Humidity == 0 && d.Cloud == 0 && d.Subgrade == 0 && d.Thickness == 0 && d.SetShift == 0
}

// Given returns the doubt with a fact of the job put in by its key (see
// [UnknownKeys]): the pour is then taken at the fact's value. Its own low and high
// are the range. Without them a fact that was measured leaves the error of a usual
// instrument, one that was recorded half of the doubt there was, and an assumed one
// all of it.
func (d Doubt) Given(key string, f source.Fact) Doubt {
	if !slices.ContainsFunc(unknowns, func(k unknownKind) bool { return k.key == key }) {
		panic("earlyage: no unknown with the key " + key)
	}
	d.given = maps.Clone(d.given)
	if d.given == nil {
		d.given = map[string]source.Fact{}
	}
	d.given[key] = f
	return d
}

// Unknown is a number of the pour that is not known exactly, spread evenly from Low
// to High over the members.
type Unknown struct {
	Key, Name, Unit  string
	Low, Value, High float64
	Known            source.Known
}

// UnknownKeys returns the keys of everything that may be in doubt, in their order.
func UnknownKeys() []string {
	var keys []string
	for _, k := range unknowns {
		keys = append(keys, k.key)
	}
	return keys
}

// unknownKind is one thing that may be in doubt.
type unknownKind struct {
	key, name, unit string
	base            func(p *Pour) float64             // what the pour says
	spread          func(p *Pour) (low, high float64) // about it, where no fact is given
	instrument      float64                           // what a measurement leaves, ±
	least, most     float64                           // no model goes beyond
	set             func(v *variation, value float64) // puts a value into a member
}

// about is a range of plus and minus about what the pour says.
func about(base, half float64) (low, high float64) { return base - half, base + half }

// The order is that of the dimensions of the sample.
var unknowns = []unknownKind{
	{"placing", "temperature of the concrete at placing", "°C", func(p *Pour) float64 { return p.Column.PlacingTemperature },
		func(p *Pour) (float64, float64) { return about(p.Column.PlacingTemperature, p.Doubt.Placing) }, 0.5, 1, 45,
		func(v *variation, x float64) { v.column.PlacingTemperature = x }},
	{"heat", "heat of the cement", "J/g", func(p *Pour) float64 { return p.Column.Concrete.Hydration.Heat },
		func(p *Pour) (float64, float64) {
			return about(p.Column.Concrete.Hydration.Heat, p.Doubt.Heat*p.Column.Concrete.Hydration.Heat)
		}, 10, 0, 700, func(v *variation, x float64) { v.column.Concrete.Hydration.Heat = x }},
	{"speed", "speed of the cement over the expected", "-", func(*Pour) float64 { return 1 },
		func(p *Pour) (float64, float64) { return about(1, p.Doubt.Fineness) }, 0.03, 0.3, 3,
		func(v *variation, x float64) { v.speed = x }},
	{"wind", "wind over the given", "-", func(p *Pour) float64 { return p.Column.WindFactor },
		func(p *Pour) (float64, float64) { return about(p.Column.WindFactor, p.Doubt.Wind*p.Column.WindFactor) }, 0.1, 0.01, 5,
		func(v *variation, x float64) { v.column.WindFactor = x }},
	{"friction", "friction on the base", "-", func(p *Pour) float64 { return p.Restraint.Friction },
		func(p *Pour) (float64, float64) { return p.Restraint.FrictionLow, p.Restraint.FrictionHigh }, 0.1, 0, 5,
		func(v *variation, x float64) { v.restraint.Friction = x }},
	{"edge", "place in the range of edge strengths", "-", func(*Pour) float64 { return 0.5 },
		func(*Pour) (float64, float64) { return 0, 1 }, 0.15, 0, 1,
		func(v *variation, x float64) { v.edge = x }},
	{"air", "air warmer than given", "K", func(p *Pour) float64 { return p.Column.AirShift },
		func(p *Pour) (float64, float64) { return about(p.Column.AirShift, p.Doubt.Air) }, 0.3, -15, 15,
		func(v *variation, x float64) { v.column.AirShift = x }},
	{"expansion", "coefficient of thermal expansion", "1/K", func(p *Pour) float64 { return p.Column.Concrete.Expansion },
		func(p *Pour) (float64, float64) {
			return about(p.Column.Concrete.Expansion, p.Doubt.Thermal*p.Column.Concrete.Expansion)
		}, 0.4e-6, 4e-6, 16e-6, func(v *variation, x float64) { v.column.Concrete.Expansion = x }},
	{"scatter", "coefficient of variation of tensile strength", "-", func(p *Pour) float64 { return p.Doubt.Tensile },
		func(p *Pour) (float64, float64) { return about(p.Doubt.Tensile, p.Doubt.Scatter) }, 0.02, 0.01, 0.6,
		func(v *variation, x float64) { v.scatter = x }},
	{"water_binder", "water over binder", "-", func(p *Pour) float64 { return p.Column.Concrete.Hydration.WaterBinder },
		func(p *Pour) (float64, float64) {
			return about(p.Column.Concrete.Hydration.WaterBinder, p.Doubt.WaterBinder)
		}, 0.01, 0.25, 0.9,
		func(v *variation, x float64) { v.ratio = x }},
	{"binder", "binder content", "kg/m3", func(p *Pour) float64 { return p.Column.Concrete.Hydration.Binder },
		func(p *Pour) (float64, float64) {
			return about(p.Column.Concrete.Hydration.Binder, p.Doubt.Binder*p.Column.Concrete.Hydration.Binder)
		}, 3, 100, 700, func(v *variation, x float64) { v.column.Concrete.Hydration.Binder = x }},
	{"humidity", "humidity of the air above the given", "-", func(*Pour) float64 { return 0 },
		func(p *Pour) (float64, float64) { return about(0, p.Doubt.Humidity) }, 0.03, -0.5, 0.5,
		func(v *variation, x float64) { v.column.moister = x }},
	{"cloud", "sky covered beyond the given", "-", func(*Pour) float64 { return 0 },
		func(p *Pour) (float64, float64) { return about(0, p.Doubt.Cloud) }, 0.1, -0.5, 1,
		func(v *variation, x float64) { v.column.cloudier = x }},
	{"subgrade", "modulus of subgrade reaction", "N/mm3", func(p *Pour) float64 { return p.Restraint.Subgrade },
		func(p *Pour) (float64, float64) {
			return about(p.Restraint.Subgrade, p.Doubt.Subgrade*p.Restraint.Subgrade)
		}, 0.005, 0.0025, 0.99,
		func(v *variation, x float64) { v.restraint.Subgrade = x }},
	{"thickness", "thickness of the slab", "m", func(p *Pour) float64 { return p.Column.Thickness },
		func(p *Pour) (float64, float64) { return about(p.Column.Thickness, p.Doubt.Thickness) }, 0.003, 0.05, 1.5,
		func(v *variation, x float64) { v.thickness = x }},
	{"set_shift", "final set later than the mix says", "h", func(*Pour) float64 { return 0 },
		func(p *Pour) (float64, float64) { return about(0, p.Doubt.SetShift) }, 0.25, -6, 24,
		func(v *variation, x float64) { v.setShift = x }},
}

// Unknowns returns everything about the pour that is not known exactly, with its
// range: from its doubt, or from the fact that was given.
func (p Pour) Unknowns() []Unknown {
	if p.Doubt.none() {
		p.Doubt = DefaultDoubt.with(p.Doubt.given)
	}
	out := make([]Unknown, 0, len(unknowns))
	for _, k := range unknowns {
		u := Unknown{Key: k.key, Name: k.name, Unit: k.unit, Value: k.base(&p), Known: source.Default}
		u.Low, u.High = k.spread(&p)
		if f, ok := p.Doubt.given[k.key]; ok {
			u = u.narrowed(f, k.instrument)
		}
		u.Low, u.High = math.Max(u.Low, math.Min(k.least, u.Value)), math.Min(u.High, math.Max(k.most, u.Value))
		out = append(out, u)
	}
	return out
}

func (d Doubt) with(given map[string]source.Fact) Doubt { d.given = given; return d }

// narrowed is the unknown once a fact about it is given.
func (u Unknown) narrowed(f source.Fact, instrument float64) Unknown {
	below, above := u.Value-u.Low, u.High-u.Value
	u.Value, u.Known = f.Value, f.Known
	if f.Low != nil || f.High != nil {
		u.Low, u.High = f.Bounds()
		return u
	}
	switch f.Known {
	case source.Measured:
		below, above = math.Min(below, instrument), math.Min(above, instrument)
	case source.Recorded:
		below, above = below/2, above/2
	}
	u.Low, u.High = u.Value-below, u.Value+above
	return u
}

// doubtProblems is what cannot be right about the facts given.
func (p Pour) doubtProblems() error {
	var wrong []string
	for i, u := range p.Unknowns() {
		k := unknowns[i]
		if f, ok := p.Doubt.given[u.Key]; ok && (!(u.Low <= u.Value && u.Value <= u.High) || !(f.Value >= k.least && f.Value <= k.most)) {
			wrong = append(wrong, fmt.Sprintf("%s %.4g %s (%.4g to %.4g) must lie between its low and its high and within %.4g to %.4g %s.",
				u.Name, u.Value, u.Unit, u.Low, u.High, k.least, k.most, u.Unit))
		}
	}
	if wrong != nil {
		return fmt.Errorf("facts of the pour: %s", strings.Join(wrong, " "))
	}
	return nil
}
