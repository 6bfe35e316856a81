package steel

import (
	"math"
	"strings"

	"slabwright/source"
)

const mmPerInch = 25.4

// foundOr returns a value, or NaN when it was not found.
func foundOr(value float64, ok bool) float64 {
	if !ok {
		return math.NaN()
	}
	return value
}

func trimmerIn(in source.Inputs) Trimmer {
	return Trimmer{Bars: int(in.Num("bars")), Diameter: in.Num("d"), Spacing: 100, Length: 1000, Within: 500}
}

var areaQuantities = map[string]source.Func{
	"circle area": func(in source.Inputs) float64 { return CircleArea(in.Num("d")) },
	"bar area": func(in source.Inputs) float64 {
		b, ok := FindBar(in.Word("bar"))
		return foundOr(b.Area, ok)
	},
	"us bar area": func(in source.Inputs) float64 {
		b, ok := FindBar("No. " + in.Word("no"))
		return foundOr(b.Area/(mmPerInch*mmPerInch), ok)
	},
	"mesh area": func(in source.Inputs) float64 {
		m, ok := FindMesh(in.Word("mesh"))
		return foundOr(m.Area, ok)
	},
	"mesh area from wire": func(in source.Inputs) float64 {
		m, ok := FindMesh(in.Word("mesh"))
		return foundOr(AreaPerMetre(m.Wire, m.Pitch), ok)
	},
	"drag steel": func(in source.Inputs) float64 {
		return in.NumOr("per", 1) * DragSteel(in.Num("F"), in.Num("L"), in.Num("w"), in.Num("fs"))
	},
	"tie steel": tieIn,
	"tie spacing": func(in source.Inputs) float64 {
		return in.Num("bar") / tieIn(in)
	},
	"tie length": func(in source.Inputs) float64 {
		return TieLength(in.Num("fs"), in.Num("d"), in.Num("bond"), in.Num("allowance"))
	},
	"en k": func(in source.Inputs) float64 { return SelfStressFactorEN(in.Num("h")) },
	"en minimum steel": func(in source.Inputs) float64 {
		return MinimumSteelEN(in.Num("kc"), SelfStressFactorEN(in.Num("h")), in.Num("fct"), in.Num("act"), in.Num("stress"))
	},
	"as restrained steel": func(in source.Inputs) float64 { return foundOr(RestrainedSteelAS(in.Word("control"), in.Num("D"))) },
	"trimmer area":        func(in source.Inputs) float64 { return TrimmerArea(trimmerIn(in)) },
	"trimmer length":      func(in source.Inputs) float64 { return LeastTrimmerLength(in.Num("d")) },
	"trimmer meets": func(in source.Inputs) float64 {
		if TrimmerMeets(trimmerIn(in)) {
			return 1
		}
		return 0
	},
}

func tieIn(in source.Inputs) float64 {
	return TieSteel(in.Num("F"), in.Num("edge"), in.Num("w"), in.Num("fs"))
}

// ofCrack answers a step of the crack width of a row.
func ofCrack(f func(c crackCase) float64) source.Func {
	return func(in source.Inputs) float64 { return f(crackIn(in)) }
}

// crackCase is a rectangular section in bending on the way to its crack width.
type crackCase struct{ h, x, stress, hcef, rho, spacing, strain float64 }

func crackIn(in source.Inputs) (c crackCase) {
	const es = 200000
	fck, b, d, as := in.Num("fck"), in.Num("b"), in.Num("d"), in.Num("As")
	fct, ratio := 0.3*math.Pow(fck, 2.0/3), es/(22000*math.Pow((fck+8)/10, 0.3))
	c.h = in.Num("h")
	c.x = NeutralAxis(b, d, as, ratio)
	c.stress = SteelStress(in.Num("M"), d, c.x, as)
	c.hcef = EffectiveDepthEN(c.h, d, c.x)
	c.rho = as / (b * c.hcef)
	c.spacing = CrackSpacingEN(in.Num("c"), 0.8, 0.5, in.Num("phi"), c.rho)
	c.strain = MeanStrainEN(c.stress, in.Num("kt"), fct, c.rho, ratio, es)
	return c
}

var crackQuantities = map[string]source.Func{
	"crack x":            ofCrack(func(c crackCase) float64 { return c.x }),
	"crack stress":       ofCrack(func(c crackCase) float64 { return c.stress }),
	"crack hcef":         ofCrack(func(c crackCase) float64 { return c.hcef }),
	"crack rho":          ofCrack(func(c crackCase) float64 { return c.rho }),
	"crack spacing":      ofCrack(func(c crackCase) float64 { return c.spacing }),
	"crack strain":       ofCrack(func(c crackCase) float64 { return c.strain }),
	"crack width":        ofCrack(func(c crackCase) float64 { return CrackWidthEN(c.spacing, c.strain) }),
	"wide crack spacing": ofCrack(func(c crackCase) float64 { return WideSpacingEN(c.h, c.x) }),
	"wide from": func(in source.Inputs) float64 {
		s := 0.0 // the first spacing, in half millimetres, that is too wide
		for !BarsWideApartEN(s+0.5, in.Num("c"), in.Num("phi")) {
			s += 0.5
		}
		return s
	},
	"end restraint strain": func(in source.Inputs) float64 {
		return EndRestraintStrain(in.Num("ratio"), in.Num("rho"), 1, 1, in.Num("fct"), in.Num("Es"))
	},
	"gergely-lutz in": func(in source.Inputs) float64 {
		return CrackWidthGergelyLutz(in.Num("beta"), in.Num("fs_ksi")*mpaPerKsi, in.Num("dc_in")*mmPerInch, in.Num("A_in2")*mmPerInch*mmPerInch) / mmPerInch
	},
	"frosch": func(in source.Inputs) float64 {
		return CrackWidthFrosch(in.Num("fs"), in.Num("Es"), in.Num("beta"), in.Num("dc"), in.Num("s"))
	},
	"largest bar":    func(in source.Inputs) float64 { return foundOr(LargestBarEN(in.Num("stress"))) },
	"widest spacing": func(in source.Inputs) float64 { return foundOr(WidestSpacingEN(in.Num("stress"))) },
	"crack limit": func(in source.Inputs) float64 {
		l, ok := CrackLimitFor(strings.ReplaceAll(in.Word("exposure"), "_", " "))
		return foundOr(l.Width, ok)
	},
}
