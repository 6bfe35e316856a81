package layout

import (
	"embed"
	"strings"

	"slabwright/plan"
	"slabwright/restraint"
	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares every published row of this package with our functions.
func Checks() []source.Result { return source.Prove(published, "testdata/published", quantities) }

var quantities = map[string]source.Func{
	"thumb": func(in source.Inputs) float64 {
		times, _ := thumbOf(strings.ReplaceAll(in.Word("stone"), "-", " "))
		return restraint.SpacingRule(times, in.Num("h"))
	},
	"quantile": func(in source.Inputs) float64 { return normalQuantile(in.Num("p")) },
	"use":      func(in source.Inputs) float64 { return UseForRisk(in.Num("V"), in.Num("p")) },
	"any": func(in source.Inputs) float64 {
		risks := make([]float64, int(in.Num("n")))
		for i := range risks {
			risks[i] = in.Num("p")
		}
		return anyOf(risks, in.Num("rho"))
	},
	"dowel diameter": dowelRow(func(d *plan.Dowels) float64 { return d.Diameter.Value }),
	"dowel length":   dowelRow(func(d *plan.Dowels) float64 { return d.Length.Value }),
	"dowel spacing":  dowelRow(func(d *plan.Dowels) float64 { return d.Spacing.Value }),
	"dowel clear":    dowelRow(func(d *plan.Dowels) float64 { return d.Clear.Value }),
}

// dowelRow reads one size, mm, of the dowels at a thickness in mm.
func dowelRow(size func(d *plan.Dowels) float64) source.Func {
	return func(in source.Inputs) float64 {
		d, why := DowelFor(in.Num("h") / 1000)
		if d == nil {
			panic(why)
		}
		return size(d) * 1000
	}
}
