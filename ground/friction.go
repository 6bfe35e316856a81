package ground

import (
	_ "embed"

	"slabwright/internal/table"
)

//go:embed friction.csv
var frictionCSV string

var frictions = table.Read("friction.csv", frictionCSV)

// Friction is one row of the table of base friction. The value is for the first
// slip of a slab; later cycles meet less.
type Friction struct {
	Base             string
	Value, Low, High float64 // coefficient [-]
	Source           string  // key of works.csv
	Known            string
}

// FrictionOf returns the friction of a base by its name, such as "crushed stone" or
// "two sheets polyethylene"; ok is false for another word.
func FrictionOf(base string) (f Friction, ok bool) {
	i := frictions.Find(base)
	if i < 0 {
		return Friction{}, false
	}
	return Friction{base, frictions.Number(i, "value"), frictions.Number(i, "low"), frictions.Number(i, "high"),
		frictions.Text(i, "source"), frictions.Text(i, "known")}, true
}

// Bases returns the names in table order.
func Bases() []string { return frictions.Keys() }

// FrictionStress returns the greatest mean stress that friction can hold in the
// middle of a slab that slips over its whole length: μ·γ·L/2. It grows with the
// length and does not depend on the thickness.
//
//	friction   coefficient [-]
//	weight     of the concrete per volume
//	length     between free ends
//
// Any consistent units: kN/m³ and m give kPa.
//
// Source: subgrade drag (textbook); from memory.
func FrictionStress(friction, weight, length float64) float64 {
	return friction * weight * length / 2
}
