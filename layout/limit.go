package layout

import (
	"fmt"
	"math"

	"slabwright/flexure"
	"slabwright/plan"
	"slabwright/restraint"
)

// SpacingFacts are what the spacing of joints follows from. All of them are of the
// time that is worst, usually the first dry months.
type SpacingFacts struct {
	Thickness      float64 // m
	Modulus        float64 // of elasticity, eased by creep, Pa
	Poisson        float64
	Support        float64 // of the ground against settlement, N/m³
	Expansion      float64 // 1/K
	Difference     float64 // top less bottom, drying counted as cooling, K; negative: top short
	UnitWeight     float64 // N/m³
	Friction       float64 // of slab on base
	ShearStiffness float64 // of the base before it slips, N/m³
	Strain         float64 // free shortening held against (drying and cooling), positive
	Tensile        float64 // mean strength in direct tension, Pa
	Flexural       float64 // mean strength in bending, Pa
	Scatter        float64 // coefficient of variation of strength and stress together
	Risk           float64 // wanted: chance that one panel cracks away from its joints
	Stone          string  // "small", "large" or "low slump", for the rule of thumb; "" for large
	Known          map[string]string
}

// UsualSpacingFacts returns facts of an ordinary mix (32 MPa) on crushed stone for a
// thickness in metres, every one a default.
func UsualSpacingFacts(thickness float64) SpacingFacts {
	known := map[string]string{}
	for _, s := range []string{"E", "ν", "k", "α", "ΔT", "γ", "μ", "k_s", "ε", "f_ct", "f", "V", "p"} {
		known[s] = "default"
	}
	return SpacingFacts{Thickness: thickness, Modulus: 15e9, Poisson: 0.2, Support: 40e6, Expansion: 10e-6, Difference: -25,
		UnitWeight: 24000, Friction: 1.5, ShearStiffness: 100e6, Strain: 400e-6, Tensile: 2.4e6, Flexural: 3.4e6,
		Scatter: 0.20, Risk: 0.05, Known: known}
}

// Check returns everything in the facts that cannot be right, all at once.
func (f SpacingFacts) Check() []plan.Problem {
	var bad []plan.Problem
	need := func(field string, v, low, high float64, unit, mend string) {
		if !(v >= low && v <= high) {
			bad = append(bad, plan.Problem{Field: "spacing." + field, Found: fmt.Sprintf("%g %s", v, unit),
				Want: fmt.Sprintf("%g to %g %s", low, high, unit), Mend: mend})
		}
	}
	need("thickness", f.Thickness, 0.04, 1, "m", "Lengths are in metres: 150 mm is 0.15.")
	need("modulus", f.Modulus, 1e9, 1e11, "Pa", "15 GPa is usual for slow movement.")
	need("poisson", f.Poisson, 0.05, 0.35, "", "0.2 is usual.")
	need("support", f.Support, 1e6, 1e9, "N/m³", "40 MN/m³ is 40e6.")
	need("expansion", f.Expansion, 4e-6, 2e-5, "1/K", "10e-6 is usual.")
	need("difference", f.Difference, -100, 100, "K", "Top less bottom over the whole thickness.")
	need("unit weight", f.UnitWeight, 10000, 40000, "N/m³", "24 kN/m³ is 24000.")
	need("friction", f.Friction, 0.05, 10, "", "1.5 is usual on crushed stone.")
	need("shear stiffness", f.ShearStiffness, 1e5, 1e11, "N/m³", "100 MN/m³ is usual on stone.")
	need("strain", f.Strain, 0, 0.005, "", "400 microstrain is 400e-6.")
	need("tensile", f.Tensile, 1e5, 1e7, "Pa", "2.4 MPa is 2.4e6.")
	need("flexural", f.Flexural, 1e5, 2e7, "Pa", "3.4 MPa is 3.4e6.")
	need("scatter", f.Scatter, 0.01, 0.6, "", "0.20 is 20 %.")
	need("risk", f.Risk, 1e-4, 0.5, "", "0.05 is one panel in twenty.")
	if _, ok := thumbOf(f.Stone); !ok {
		bad = append(bad, plan.Problem{Field: "spacing.stone", Found: fmt.Sprintf("%q", f.Stone),
			Want: "small, large or low slump", Mend: "Leave it out for large."})
	}
	return bad
}

// Limit is how long a panel may be, and why.
type Limit struct {
	Facts  SpacingFacts
	Panel  float64 // longest side wanted, m
	Model  float64 // by the models of curl and base friction, m; infinite where they allow any
	Thumb  float64 // by so many times the thickness, m
	Cap    float64 // whatever the thickness, m
	Use    float64 // greatest share of strength that meets the risk
	Govern string  // model, thumb, cap or given
}

// SpacingLimit returns the longest side of a panel: the least of what the models
// allow at the wanted risk, the rule of thumb and the usual cap. The facts must pass
// Check; it panics otherwise.
func SpacingLimit(f SpacingFacts) Limit {
	if bad := f.Check(); len(bad) > 0 {
		panic("layout: SpacingLimit of unchecked facts: " + bad[0].Error())
	}
	times, _ := thumbOf(f.Stone)
	l := Limit{Facts: f, Thumb: restraint.SpacingRule(times, f.Thickness), Cap: spacingCap, Use: UseForRisk(f.Scatter, f.Risk)}
	l.Model = f.lengthAt(l.Use)
	l.Panel, l.Govern = l.Thumb, "thumb"
	if l.Cap < l.Panel {
		l.Panel, l.Govern = l.Cap, "cap"
	}
	if l.Model < l.Panel {
		l.Panel, l.Govern = l.Model, "model"
	}
	l.Panel = math.Max(leastLimit, math.Floor(l.Panel*20+1e-9)/20)
	return l
}

// GivenLimit returns a limit that the engineer chose, metres, with the facts kept
// for the chance.
func GivenLimit(panel float64, f SpacingFacts) Limit {
	l := SpacingLimit(f)
	l.Panel, l.Govern = panel, "given"
	return l
}

// spacingCap is the longest side of a plain panel whatever its thickness, m.
//
// Source: ACI 360R-06, 18 ft, seen in an excerpt.
const spacingCap = 5.5

// limitSlack is how far over the limit a panel still counts as within it: a rule of so
// many times the thickness is not known to a hundredth, and two strips of 5.5 m are
// no worse than three of 3.7 m at a limit of 5.4 m.
//
// Source: common practice, no source.
const limitSlack = 1.02

// leastLimit is the shortest limit that is worth laying out for, m: panels shorter
// than a metre and a half are paving stones.
const leastLimit = 1.5

// UseForRisk returns the share of the mean strength that the stress may reach so
// that the chance of passing it is the wanted risk, both log-normal.
//
//	scatter   coefficient of variation of strength over stress   [–]
//	risk      wanted                                             [–], below 0.5
//
// Result below 1. Source: reliability of two log-normal values, textbook.
func UseForRisk(scatter, risk float64) float64 {
	s := math.Sqrt(math.Log(1 + scatter*scatter))
	return math.Exp(-s * normalQuantile(1-risk))
}

// RiskOfUse returns the chance that a stress of this share of the mean strength
// passes the strength: the inverse of [UseForRisk].
func RiskOfUse(scatter, use float64) float64 {
	if use <= 0 {
		return 0
	}
	s := math.Sqrt(math.Log(1 + scatter*scatter))
	return 0.5 * math.Erfc(-math.Log(use)/s/math.Sqrt2)
}

// normalQuantile returns the value below which a standard normal lies with chance p.
func normalQuantile(p float64) float64 { return math.Sqrt2 * math.Erfinv(2*p-1) }

// Use returns the share of its strength that a panel of these sides uses: curl in
// bending and base friction in tension, each over its own strength, added.
//
// Curl cannot bend the panel flat against more than its weight, so the lesser of the
// two counts. Adding the shares is the straight line between pure tension and pure
// bending (statics of a section that cracks at its face).
func (f SpacingFacts) Use(length, width float64) (curl, friction float64) {
	c := flexure.Curl(f.curl(length, width))
	bend := math.Min(math.Max(math.Abs(c.Along), math.Abs(c.Edge)), c.Weight)
	b := restraint.BaseFriction(f.base(length))
	return bend / f.Flexural, b.Stress / f.Tensile
}

func (f SpacingFacts) curl(length, width float64) flexure.CurlInput {
	return flexure.CurlInput{ID: "spacing-curl", Title: fmt.Sprintf("Curl of a panel %.2f by %.2f m", length, width), Length: length, Width: width,
		Thickness: f.Thickness, Modulus: f.Modulus, Poisson: f.Poisson, Support: f.Support, Expansion: f.Expansion, Difference: f.Difference,
		UnitWeight: f.UnitWeight, Strength: f.Flexural, Known: f.Known}
}

func (f SpacingFacts) base(length float64) restraint.FrictionInput {
	return restraint.FrictionInput{ID: "spacing-friction", Title: fmt.Sprintf("Base friction over %.2f m", length), Length: length, Thickness: f.Thickness,
		Friction: f.Friction, UnitWeight: f.UnitWeight, ShearStiffness: f.ShearStiffness, Modulus: f.Modulus, Strain: f.Strain,
		Ageing: 0.8, Creep: 0, Strength: f.Tensile, Known: f.Known}
}

// lengthAt returns the side of the square panel that uses this share of its
// strength, infinite when none up to 60 m does. The curl coefficient has a crest, so
// the first length that passes is sought from below.
func (f SpacingFacts) lengthAt(use float64) float64 {
	over := func(length float64) bool {
		c, b := f.Use(length, length)
		return c+b > use
	}
	const step = 0.25
	for length := step; length <= 60; length += step {
		if !over(length) {
			continue
		}
		low, high := length-step, length
		for range 40 {
			if mid := (low + high) / 2; mid > 0 && over(mid) {
				high = mid
			} else {
				low = mid
			}
		}
		return low
	}
	return math.Inf(1)
}
