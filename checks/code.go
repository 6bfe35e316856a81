package checks

import (
	_ "embed"
	"math"
	"strings"

	"slabwright/concrete"
	"slabwright/internal/table"
	"slabwright/source"
	"slabwright/working"
)

//go:embed factors.csv
var factorsCSV string

var factors = table.Read("factors.csv", factorsCSV)

// Code is a family of codes: its title, its factors and its laws. It is a value of
// the input, never a switch of the program.
type Code struct {
	Key   string // EN, ACI, AS
	Title string
	laws  laws
}

// law is a formula with its result, where it stands and the symbols only it uses.
type law struct {
	formula string
	value   float64
	cite    source.Citation
	inputs  []working.Input
}

// laws are what differs between the families.
type laws struct {
	modulus  func(strength float64) law                            // of elasticity [MPa]
	flexural func(strength, thickness float64) law                 // strength in bending [MPa], thickness in mm
	allowed  func(flexural float64, kind Kind, passes float64) law // of it that may be used under a load [MPa]
	service  func(flexural float64) law                            // of it that curl and load together may use [MPa]
	rupture  func(flexural float64) law                            // mean flexural strength, for fatigue [MPa]
	tensile  func(strength float64) law                            // in direct tension when it cracks [MPa]
	punching func(p punch) shear
}

var codes = []Code{
	{"EN", "EN 1992-1-1 with Concrete Society TR34", lawsEN},
	{"ACI", "ACI 318-19 with ACI 360R", lawsACI},
	{"AS", "AS 3600:2018 with CCAA T48", lawsAS},
}

// Codes returns every family.
func Codes() []Code { return append([]Code(nil), codes...) }

// CodeOf returns a family by its key or by the code of a job ("EN 1992-1-1", "AS
// 3600"; MC2010 counts as EN); ok is false for another word.
func CodeOf(key string) (c Code, ok bool) {
	key = strings.ToUpper(strings.TrimSpace(key))
	if strings.HasPrefix(key, "MC") || key == "" {
		key = "EN"
	}
	for _, c := range codes {
		if key == c.Key || strings.HasPrefix(key, c.Key+" ") {
			return c, true
		}
	}
	return Code{}, false
}

// factor returns a factor of the table factors.csv for a kind of load; "any" rows
// stand for every kind.
func (c Code) factor(name string, kind Kind) law { return factorOf(c.Key, name, kind) }

func factorOf(code, name string, kind Kind) law {
	for i := range factors.Rows {
		of := factors.Text(i, "load")
		if factors.Text(i, "code") == code && factors.Text(i, "factor") == name && (of == string(kind) || of == "any") {
			return law{"", factors.Number(i, "value"), source.Cite(factors.Text(i, "source"), factors.Text(i, "place")).As(source.Memory), nil}
		}
	}
	panic("checks: no factor " + name + " of " + code + " for " + string(kind))
}

var lawsEN = laws{
	modulus: func(f float64) law {
		return law{"22000 · ((f_c + 8) / 10)^0.3", concrete.MeanModulusEN(concrete.MeanStrengthEN(f)), source.Cite("en1992", "Table 3.1"), nil}
	},
	flexural: func(f, h float64) law {
		return law{"max(1.6 − h / 1000, 1) · " + tensileEN(f), concrete.FlexuralRatioEN(h) * concrete.MeanTensileEN(f), source.Cite("en1992", "(3.23) and Table 3.1"), nil}
	},
	allowed: func(flexural float64, _ Kind, _ float64) law { return fractileEN(flexural) },
	service: fractileEN,
	rupture: whole,
	tensile: func(f float64) law {
		return law{tensileEN(f), concrete.MeanTensileEN(f), source.Cite("en1992", "Table 3.1"), nil}
	},
	punching: punchingTR34,
}

func tensileEN(f float64) string {
	if f > 50 {
		return "2.12 · ln(1 + (f_c + 8) / 10)"
	}
	return "0.3 · f_c^(2/3)"
}

// fractileEN is the strength that one sample in twenty falls below.
func fractileEN(flexural float64) law {
	p := concrete.TensileFractile5EN
	return law{"p_5 · f_fl", p * flexural, source.Cite("en1992", "Table 3.1, 5 % fractile"), []working.Input{working.In("p_5", p, "–", "share of the mean that 1 in 20 falls below")}}
}

var lawsACI = laws{
	modulus: func(f float64) law {
		return law{"4700 · sqrt(f_c)", concrete.ModulusACI(f), source.Cite("aci318", "19.2.2.1(b)"), nil}
	},
	flexural: func(f, _ float64) law {
		return law{"0.75 · sqrt(f_c)", RuptureACI360(f), source.Cite("aci360", "modulus of rupture, 9 √f_c in psi"), nil}
	},
	allowed: func(flexural float64, kind Kind, _ float64) law {
		n := factorOf("ACI", "safety on bending", kind)
		return law{"f_fl / n", flexural / n.value, n.cite, []working.Input{working.In("n", n.value, "–", "safety on the modulus of rupture")}}
	},
	service: func(flexural float64) law {
		return law{"0.62 / 0.75 · f_fl", 0.62 / 0.75 * flexural, source.Cite("aci318", "19.2.3.1, 7.5 √f_c in psi"), nil}
	},
	rupture: whole,
	tensile: func(f float64) law {
		return law{"0.0069 · sqrt(2400 · f_c)", concrete.DirectTensionACI(2400, f), source.Cite("aci209", "(2-4)"), nil}
	},
	punching: punchingACI,
}

// whole is the strength of the code itself.
func whole(flexural float64) law {
	return law{"1 · f_fl", flexural, source.Cite("own", "the strength of the code as it stands"), nil}
}

// RuptureACI360 returns the modulus of rupture that slabs on ground are designed with,
// MPa, from f'c in MPa: 9 √f'c in psi, a fifth above the 7.5 √f'c of ACI 318, which is
// meant for deflections.
//
// Source: ACI 360R-10, from memory.
func RuptureACI360(strength float64) float64 { return 0.75 * math.Sqrt(strength) }

var lawsAS = laws{
	modulus: modulusAS,
	flexural: func(f, _ float64) law {
		return law{"0.6 · sqrt(f_c)", concrete.FlexuralTensileAS(f), source.Cite("as3600", "3.1.1.3"), nil}
	},
	allowed: func(flexural float64, kind Kind, passes float64) law {
		k1 := factorOf("AS", "k1", kind)
		k2 := RepetitionFactorAS(passes)
		return law{"k_1 · k_2 · f_fl", k1.value * k2 * flexural, k1.cite, []working.Input{working.In("k_1", k1.value, "–", "material factor"),
			working.In("k_2", k2, "–", "repetitions: 0.73 − 0.0846 · (log10 of the passes − 3), at most 1")}}
	},
	service: whole,
	rupture: func(flexural float64) law {
		return law{"1.4 · f_fl", concrete.MeanTensileFactorAS * flexural, source.Cite("as3600", "3.1.1.3, mean"), nil}
	},
	tensile: func(f float64) law {
		return law{"1.4 · 0.36 · sqrt(f_c)", concrete.MeanTensileFactorAS * concrete.AxialTensileAS(f), source.Cite("as3600", "3.1.1.3"), nil}
	},
	punching: punchingAS,
}

func modulusAS(f float64) law {
	mean := concrete.MeanInSituAS(f)
	formula := "2400^1.5 · 0.043 · sqrt(f_cmi)"
	if mean > 40 {
		formula = "2400^1.5 · max(0.043 · sqrt(40), 0.024 · sqrt(f_cmi) + 0.12)"
	}
	return law{formula, concrete.ModulusAS(2400, mean), source.Cite("as3600", "3.1.2"), []working.Input{working.In("f_cmi", mean, "MPa", "mean strength in place, Table 3.1.2")}}
}

// RepetitionFactorAS returns k2, by which the flexural strength is eased for the
// number of passes of a load: 0.84 for 50, 0.65 for 8000, 0.51 for 400 000; never
// above 1.
//
//	passes   over the life, 1 and more   [–]
//
// Source: CCAA T48 Industrial floors and pavements, k2 = 0.73 − 0.0846 (log10 N − 3),
// from memory.
func RepetitionFactorAS(passes float64) float64 {
	return math.Min(1, 0.73-0.0846*(math.Log10(math.Max(passes, 1))-3))
}
