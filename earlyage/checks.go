package earlyage

import (
	"embed"

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
var quantities = source.Together(exactQuantities, marchedQuantities, heatQuantities, dryingQuantities, slabQuantities)
