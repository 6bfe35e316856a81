package earlyage

import (
	"embed"
	"maps"

	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares every published value in testdata/published with what this
// package and the marching scheme under it give.
func Checks() []source.Result {
	return source.Prove(published, "testdata/published", quantities)
}

// quantities are our answers to the tables, by subject.
var quantities = func() map[string]source.Func {
	all := map[string]source.Func{}
	for _, subject := range []map[string]source.Func{exactQuantities, marchedQuantities, heatQuantities, dryingQuantities, slabQuantities} {
		maps.Copy(all, subject)
	}
	return all
}()
