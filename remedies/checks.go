package remedies

import (
	"embed"
	"strings"

	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares the choice of remedies and their quantities with what
// published guides say.
func Checks() []source.Result {
	return source.Prove(published, "testdata/published", quantities)
}

var quantities = map[string]source.Func{
	"option_fits": func(in source.Inputs) float64 {
		v := rules[in.Word("remedy")](situationOf(in))
		switch {
		case v.refused:
			return -1
		case v.fits:
			return 1
		}
		return 0
	},
	"stitches": func(in source.Inputs) float64 {
		length := in.Num("length")
		return *bars(&length, stitchPitch)
	},
	"opening_mm": func(in source.Inputs) float64 {
		return 1000 * Opening(in.Num("L"), in.Num("eps"), in.Num("alpha"), in.Num("drop"), 0)
	},
	"least_rout_mm": func(source.Inputs) float64 { return 1000 * leastRout },
	"least_seal_C":  func(source.Inputs) float64 { return leastSealDegree },
}

// situationOf builds the situation a published row describes; what the row does not
// name is not known.
func situationOf(in source.Inputs) Situation {
	number := func(name string, factor float64) *float64 {
		if _, ok := in[name]; !ok {
			return nil
		}
		v := in.Num(name) * factor
		return &v
	}
	s := Situation{Pattern: "line", Movement: in["movement"], Rocking: in["rocking"], Hollow: in["hollow"],
		Traffic: strings.ReplaceAll(in["traffic"], "-", " "), Exposure: in["exposure"],
		Width: number("width", 0.001), Step: number("step", 0.001), Thickness: number("thickness", 0.001),
		LoadTransfer: number("transfer", 1), LoadRatio: number("load", 1)}
	if p, ok := in["pattern"]; ok {
		s.Pattern = p
	}
	return s
}
