package unit

import (
	"embed"

	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares the conversion factors with published ones.
func Checks() []source.Result { return source.Prove(published, "testdata/published", quantities) }

var quantities = conversions()

// conversions answers "from so many of this unit to the base unit" for every
// quantity.
func conversions() map[string]source.Func {
	answers := map[string]source.Func{}
	for _, u := range units {
		q := u.Quantity
		answers[string(q)] = func(in source.Inputs) float64 {
			return must(q, in.Word("unit")).toBase(in.Num("from"))
		}
	}
	return answers
}
