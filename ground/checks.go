package ground

import (
	"embed"
	"math"
	"strings"

	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares every published value in testdata/published with what this
// package gives.
func Checks() []source.Result {
	return source.Prove(published, "testdata/published", quantities)
}

// foundOr returns a value, or NaN when it was not found.
func foundOr(value float64, ok bool) float64 {
	if !ok {
		return math.NaN()
	}
	return value
}

// frictionIn returns the friction of a row's base.
func frictionIn(in source.Inputs) (Friction, bool) {
	return FrictionOf(strings.ReplaceAll(in.Word("base"), "_", " "))
}

var quantities = map[string]source.Func{
	"cbr":              func(in source.Inputs) float64 { return CBRFromSubgrade(in.Num("k")) },
	"k of cbr":         func(in source.Inputs) float64 { return SubgradeFromCBR(in.Num("CBR")) },
	"stiffness of cbr": func(in source.Inputs) float64 { return StiffnessFromCBR(in.Num("CBR")) },
	"sand":             func(in source.Inputs) float64 { return ModulusOnSand(in.Num("k"), in.Num("B")) },
	"clay":             func(in source.Inputs) float64 { return ModulusOnClay(in.Num("k"), in.Num("B")) },
	"chart":            func(in source.Inputs) float64 { return foundOr(SubgradeFromChart(in.Num("CBR"))) },
	"chart pci": func(in source.Inputs) float64 {
		return foundOr(SubgradeFromChart(in.Num("CBR"))) / PoundsPerCubicInch
	},
	"subbase": func(in source.Inputs) float64 {
		k, err := ModulusOnSubbase(in.Word("kind"), in.Num("k_pci")*PoundsPerCubicInch, in.Num("inches")*0.0254)
		return foundOr(k/PoundsPerCubicInch, err == nil)
	},
	"plate divisor": func(in source.Inputs) float64 { return foundOr(PlateDivisor(in.Num("d"))) },
	"friction": func(in source.Inputs) float64 {
		f, ok := frictionIn(in)
		return foundOr(f.Value, ok)
	},
	"friction low": func(in source.Inputs) float64 {
		f, ok := frictionIn(in)
		return foundOr(f.Low, ok)
	},
	"friction high": func(in source.Inputs) float64 {
		f, ok := frictionIn(in)
		return foundOr(f.High, ok)
	},
	"friction stress": func(in source.Inputs) float64 { return FrictionStress(in.Num("mu"), in.Num("gamma"), in.Num("L")) },
	"friction stress MPa": func(in source.Inputs) float64 {
		return FrictionStress(in.Num("mu"), in.Num("gamma"), in.Num("L")) / 1000
	},
}
