package checks

import (
	"context"
	"embed"
	"fmt"
	"math"
	"strings"

	"slabwright/flexure"
	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares every published value in testdata/published with what this package
// gives.
func Checks() []source.Result { return source.Prove(published, "testdata/published", quantities) }

// spaced reads a word whose blanks are written as _.
func spaced(in source.Inputs, name string) string { return strings.ReplaceAll(in.Word(name), "_", " ") }

var quantities = map[string]source.Func{
	"k2": func(in source.Inputs) float64 { return RepetitionFactorAS(in.Num("N")) },
	"wear": func(in source.Inputs) float64 {
		a, ok := AbrasionFor("EN", spaced(in, "use"))
		return known(a.Wear, ok)
	},
	"wear strength": func(in source.Inputs) float64 {
		a, ok := AbrasionFor(in.Word("code"), spaced(in, "use"))
		return known(a.Strength, ok)
	},
	"exposure": func(in source.Inputs) float64 {
		v, _, ok := ExposureStrength(in.Word("code"), spaced(in, "class"))
		return known(v, ok)
	},
	"punch ACI": func(in source.Inputs) float64 { return punchingACI(punchRow(in)).capacity.value },
	"punch AS":  func(in source.Inputs) float64 { return punchingAS(punchRow(in)).capacity.value },
	"pair collapse": func(in source.Inputs) float64 {
		return PairCollapse(in.Num("a"), in.Num("x"), in.Num("Mp"), in.Num("Mn"))
	},
	"edge moment":    func(in source.Inputs) float64 { return 1 / EdgeLineLoad(in.Num("lambda"), 1) },
	"stress carried": func(in source.Inputs) float64 { return StressCarried(in.Num("lte")) },
	"chain":          chain,
	"aci360 rupture": func(in source.Inputs) float64 {
		const psi = 0.00689476 // MPa
		return RuptureACI360(in.Num("psi")*psi) / psi
	},
}

func known(v float64, ok bool) float64 {
	if !ok {
		return math.NaN()
	}
	return v
}

func punchRow(in source.Inputs) punch {
	return punch{place: flexure.Position(in.Word("at")), along: in.Num("b1"), across: in.Num("b2"), thickness: in.Num("h"), strength: in.Num("fc"), concrete: 1.5, resistance: 1}
}

// chain takes a row's slab through [Run] and reads demand or capacity of one check.
// Lengths in mm, k in MN/m³, shrinkage in µε; what the row leaves out is of no
// consequence to the check it asks for.
func chain(in source.Inputs) float64 {
	r, err := Run(context.Background(), chainInput(in))
	if err != nil {
		panic(fmt.Sprintf("checks: %s: %v", in.Word("row"), err))
	}
	row := r.Find(in.Word("row"))
	switch {
	case row == nil:
		return math.NaN()
	case in.Word("take") == "capacity":
		return row.Capacity
	}
	return row.Demand
}

func chainInput(in source.Inputs) Input {
	f := func(v float64) source.Fact { return source.Fact{Value: v, Known: source.Recorded} }
	p := func(v float64) *source.Fact { x := f(v); return &x }
	word := func(name, or string) string {
		if v, ok := in[name]; ok {
			return v
		}
		return or
	}
	code, _ := CodeOf(in.Word("code"))
	c := Input{
		Code:     code,
		Slab:     Slab{f(in.Num("h") / 1000), f(5), f(4)},
		Concrete: Concrete{Strength: f(in.NumOr("fck", 32)), Poisson: f(0.2), UnitWeight: f(24), Expansion: f(1e-5), Shrinkage: f(in.NumOr("eps", 400) * 1e-6)},
		Ground:   Ground{Support: f(in.NumOr("k", 50)), CBR: p(in.NumOr("cbr", 8)), Friction: f(in.NumOr("mu", 1.5)), Base: word("base", "granular")},
		Joint:    Joint{Transfer: Transfer(word("transfer", "interlock")), Spacing: f(in.NumOr("S", 5)), Cooling: f(in.NumOr("dT", 15)), Filler: p(0.25), FillWidth: p(0.01)},
		Steel:    &Steel{Diameter: f(0.008), Spacing: f(0.2), Cover: f(0.04), Yield: f(in.NumOr("fy", 500)), Free: f(in.NumOr("Lf", 12)), Held: true},
		Use:      Use{Control: "moderate"},
		Loads: []Load{{ID: "P", Kind: Post, Force: p(20), PlateX: p(in.NumOr("plate", 100) / 1000), PlateY: p(in.NumOr("plate", 100) / 1000)},
			{ID: "L", Kind: Line, PerMetre: p(10)}},
	}
	if _, ok := in["E"]; ok {
		c.Concrete.Modulus = p(in.Num("E"))
	}
	if _, ok := in["radius"]; ok { // the pressure that gives this contact radius
		c.Loads = append(c.Loads, Load{ID: "W", Kind: Wheel, Force: p(in.Num("force")), Pressure: p(1000 * in.Num("force") / (math.Pi * sq(in.Num("radius"))))})
	}
	return c
}
