package concrete

import (
	"embed"

	"slabwright/source"
)

//go:embed testdata/published/*.csv
var published embed.FS

// Checks compares every published value in testdata/published with what this
// package gives.
func Checks() []source.Result {
	return source.Prove(published, "testdata/published", quantities)
}

// quantities are our answers to the tables, by subject.
var quantities = source.Together(hydrationQuantities, strengthQuantities, settlementQuantities,
	creepENQuantities, creepMCQuantities, creepACIQuantities, creepGLQuantities, creepB3Quantities, creepB4Quantities, creepASQuantities)

var settlementQuantities = map[string]source.Func{
	"settlement cracking": func(in source.Inputs) float64 {
		return 100 * SettlementCracking(in.Num("cover_in")*25.4, in.Num("slump_in")*25.4, in.Num("bar")*25.4/8)
	},
	"bleed water":      func(in source.Inputs) float64 { return BleedWater(in.Num("h")/1000, in.Num("percent")/100) },
	"bleed settlement": func(in source.Inputs) float64 { return 1000 * BleedSettlement(in.Num("h")/1000, in.Num("percent")/100) },
}
