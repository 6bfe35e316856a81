package concrete

import _ "embed"

//go:embed cements.csv
var cementsCSV string

var cementKeys, cementRows = readTable("cements.csv", cementsCSV)

// Range is a value with the bounds it is sampled between.
type Range struct{ Value, Low, High float64 }

// Cement is one row of the table of typical cements.
type Cement struct {
	Key, Name string
	Class     CementClass // S, N, R
	Strength  string      // 42.5N and so on
	Binder    Binder      // typical composition and shares
	Ranges    map[string]Range
	Known     string // how the composition is known
}

// Cements returns the keys of the typical cements in table order: "I", "II/V",
// "CEM I 42.5N", "CEM III/A" ...
func Cements() []string { return append([]string(nil), cementKeys...) }

// compounds are the columns of cements.csv that carry a range.
var compounds = []string{"C3S", "C2S", "C3A", "C4AF", "SO3", "FreeCaO", "MgO", "Na2Oeq", "Blaine"}

// TypicalCement returns a typical cement by its key; ok is false for an unknown
// key. Use it only where no mill certificate is at hand, and say so.
func TypicalCement(key string) (c Cement, ok bool) {
	row, ok := cementRows[key]
	if !ok {
		return Cement{}, false
	}
	cell := func(column string) float64 { return number("cements.csv", row, column) }
	c = Cement{Key: key, Name: row["name"], Class: CementClass(row["class"]), Strength: row["strength"],
		Ranges: map[string]Range{}, Known: row["known"]}
	c.Binder = Binder{
		Composition: Composition{C3S: cell("C3S"), C2S: cell("C2S"), C3A: cell("C3A"), C4AF: cell("C4AF"),
			SO3: cell("SO3"), FreeCaO: cell("FreeCaO"), MgO: cell("MgO"), Na2Oeq: cell("Na2Oeq"), Blaine: cell("Blaine")},
		Cement: cell("clinker"), Slag: cell("slag"), Ash: cell("ash"), Filler: cell("filler"),
	}
	if c.Binder.Ash > 0 {
		c.Binder.AshCaO = typicalAshCaO
	}
	for _, q := range compounds {
		c.Ranges[q] = Range{cell(q), cell(q + "_low"), cell(q + "_high")}
	}
	return c, true
}

// typicalAshCaO is the share of CaO in a siliceous (class F) ash when nothing is
// known: 0.05 with a usual range of 0.01 to 0.10. Common practice.
const typicalAshCaO = 0.05

// WithSCM returns the binder with parts of its cement replaced at the plant.
//
//	slag, ash, silicaFume   shares of all binder [-]
//	ashCaO                  CaO in the ash [-]
//
// What the cement itself already holds shrinks in proportion.
func (b Binder) WithSCM(slag, ash, ashCaO, silicaFume float64) Binder {
	rest := 1 - slag - ash - silicaFume
	if rest <= 0 {
		panic("concrete: nothing but additions in the binder")
	}
	if ash+b.Ash*rest > 0 {
		b.AshCaO = (ash*ashCaO + b.Ash*rest*b.AshCaO) / (ash + b.Ash*rest)
	}
	b.Cement *= rest
	b.Filler *= rest
	b.Slag = b.Slag*rest + slag
	b.Ash = b.Ash*rest + ash
	b.SilicaFume = b.SilicaFume*rest + silicaFume
	return b
}
