package layout

import (
	_ "embed"

	"slabwright/internal/table"
)

//go:embed spacing_rules.csv
var spacingRulesCSV string

var thumbs = table.Read("spacing_rules.csv", spacingRulesCSV)

// thumbOf returns how many times the thickness a panel may be long for a kind of
// stone; "" is "large".
func thumbOf(stone string) (times float64, ok bool) {
	if stone == "" {
		stone = "large"
	}
	i := thumbs.Find(stone)
	if i < 0 {
		return 0, false
	}
	return thumbs.Number(i, "times"), true
}
