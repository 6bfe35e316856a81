package unit

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

// Quantity is what is measured: length, stress and so on.
type Quantity string

// Every quantity of the table, with its base unit.
const (
	LengthOf      Quantity = "length"                 // m
	StressOf      Quantity = "stress"                 // MPa
	TemperatureOf Quantity = "temperature"            // °C
	DifferenceOf  Quantity = "temperature difference" // K
	SpeedOf       Quantity = "speed"                  // m/s
	DensityOf     Quantity = "density"                // kg/m3
	DryingOf      Quantity = "drying rate"            // kg/m2/h
	ForceOf       Quantity = "force"                  // kN
	PressureOf    Quantity = "pressure"               // kPa
	DurationOf    Quantity = "duration"               // h
	AngleOf       Quantity = "angle"                  // degrees
	WaterOf       Quantity = "water dose"             // L/m3
	SupportOf     Quantity = "support"                // MN/m3
	ShareOf       Quantity = "share"                  // 0 to 1
	VolumeOf      Quantity = "volume"                 // m3
	ExpansionOf   Quantity = "expansion"              // 1/K
)

// Unit is one row of factors.csv: value in the base unit = value·Factor + Offset.
type Unit struct {
	Name      string
	Quantity  Quantity
	Factor    float64
	Offset    float64
	Formula   string // the factor as it stands in the table
	Exactness string // exact, nominal
	Source    string
	Also      []string
}

//go:embed factors.csv
var factorsCSV string

var (
	units    = readUnits(factorsCSV)
	spelling = spellings(units)
)

// Units returns the units of a quantity in the order of the table, base first.
func Units(q Quantity) []Unit {
	var of []Unit
	for _, u := range units {
		if u.Quantity == q {
			of = append(of, u)
		}
	}
	return of
}

// Names returns the names of the units of a quantity, base first.
func Names(q Quantity) []string {
	var names []string
	for _, u := range Units(q) {
		names = append(names, u.Name)
	}
	return names
}

// Find returns the unit of a quantity that a person spelled so.
func Find(q Quantity, text string) (Unit, bool) {
	key := plainUnit(text)
	if i, ok := spelling[string(q)+":"+key]; ok {
		return units[i], true
	}
	// all small or all capital letters: mpa, MPA. Mixed ones (mPa) mean something else.
	lower := strings.ToLower(key)
	if key == lower || key == strings.ToUpper(key) {
		if i, ok := spelling[string(q)+":?"+lower]; ok && i >= 0 {
			return units[i], true
		}
	}
	return Unit{}, false
}

// Convert turns a value of a quantity from one unit into another. It panics on a
// unit that is not in the table: that is a programmer's mistake.
func Convert(q Quantity, value float64, from, to string) float64 {
	return must(q, to).fromBase(must(q, from).toBase(value))
}

func must(q Quantity, name string) Unit {
	u, ok := Find(q, name)
	if !ok {
		panic("unit: no unit " + name + " of " + string(q))
	}
	return u
}

func (u Unit) toBase(v float64) float64   { return v*u.Factor + u.Offset }
func (u Unit) fromBase(v float64) float64 { return (v - u.Offset) / u.Factor }

func readUnits(text string) []Unit {
	var table []Unit
	for _, row := range readTable("factors.csv", text) {
		u := Unit{Name: row[0], Quantity: Quantity(row[1]), Formula: row[2], Exactness: row[4], Source: row[5]}
		var err error
		if u.Factor, err = product(row[2]); err != nil {
			panic("unit: factors.csv: " + row[0] + ": " + err.Error())
		}
		if u.Offset, err = product(row[3]); err != nil {
			panic("unit: factors.csv: " + row[0] + ": " + err.Error())
		}
		if row[6] != "" {
			u.Also = strings.Split(row[6], "|")
		}
		table = append(table, u)
	}
	return table
}

// spellings maps "quantity:plain spelling" to the row, and "quantity:?lower case"
// to the row, or -1 where two units differ by case only.
func spellings(table []Unit) map[string]int {
	rows := map[string]int{}
	for i, u := range table {
		for _, s := range append([]string{u.Name}, u.Also...) {
			key := plainUnit(s)
			if other, taken := rows[string(u.Quantity)+":"+key]; taken && other != i {
				panic("unit: factors.csv: two units of " + string(u.Quantity) + " are spelled " + s)
			}
			rows[string(u.Quantity)+":"+key] = i
			low := string(u.Quantity) + ":?" + strings.ToLower(key)
			if other, taken := rows[low]; taken && other != i {
				rows[low] = -1
			} else {
				rows[low] = i
			}
		}
	}
	return rows
}

// product works out "231*16.387064/1000": factors and divisors, left to right.
func product(text string) (float64, error) {
	value, op := 1.0, byte('*')
	for start, i := 0, 0; i <= len(text); i++ {
		if i < len(text) && text[i] != '*' && text[i] != '/' {
			continue
		}
		v, err := strconv.ParseFloat(text[start:i], 64)
		if err != nil {
			return 0, fmt.Errorf("factor %q: %w", text, err)
		}
		if op == '*' {
			value *= v
		} else {
			value /= v
		}
		if i < len(text) {
			op, start = text[i], i+1
		}
	}
	return value, nil
}

func readTable(name, text string) [][]string {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	r.LazyQuotes = true
	rows, err := r.ReadAll()
	if err != nil {
		panic("unit: " + name + ": " + err.Error())
	}
	return rows[1:]
}

var unitSigns = strings.NewReplacer(" ", "", "·", "", "⋅", "", "^", "", "**", "", "²", "2", "³", "3",
	"⁻¹", "-1", "⁻", "-", " per ", "/", "sq.ft", "ft2", "cu.yd", "yd3")

// plainUnit strips what does not tell units apart: spaces, dots, raised digits.
func plainUnit(text string) string {
	s := strings.TrimSpace(plainSpaces(text))
	s = strings.ReplaceAll(s, " per ", "/")
	return unitSigns.Replace(s)
}
