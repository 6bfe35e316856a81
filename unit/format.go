package unit

import (
	_ "embed"
	"math"
	"strconv"
	"strings"
)

// System is the system of units a person reads.
type System string

// The two systems.
const (
	Metric System = "metric"
	US     System = "US"
)

// thin is the narrow no-break space set between a number and its unit.
const thin = "\u202f"

//go:embed display.csv
var displayCSV string

type display struct {
	from     float64
	unit     string
	decimals int
}

var displays = readDisplays(displayCSV)

func readDisplays(text string) map[string][]display {
	table := map[string][]display{}
	for _, row := range readTable("display.csv", text) {
		from, err1 := strconv.ParseFloat(row[2], 64)
		decimals, err2 := strconv.Atoi(row[4])
		if err1 != nil || err2 != nil {
			panic("unit: display.csv: row " + strings.Join(row, ","))
		}
		if row[3] != "ftin" {
			must(Quantity(row[0]), row[3])
		}
		key := row[0] + ":" + row[1]
		table[key] = append(table[key], display{from, row[3], decimals})
	}
	return table
}

// Format writes a value given in the base unit of its quantity, in the unit and to
// the decimals of display.csv, with a narrow space before the unit and a true
// minus. A value that is no number is "not known".
func Format(q Quantity, value float64, s System) string {
	if math.IsNaN(value) {
		return "not known"
	}
	if math.IsInf(value, 0) {
		return "without limit"
	}
	d := chosen(q, value, s)
	if d.unit == "ftin" {
		return feetInches(value)
	}
	u := must(q, d.unit)
	return trueMinus(fixed(u.fromBase(value), d.decimals)) + space(u.Name) + raised(u.Name)
}

// Step returns the smallest difference Format shows at this size, in the base
// unit: a value read back from its text is within half of it.
func Step(q Quantity, value float64, s System) float64 {
	d := chosen(q, value, s)
	if d.unit == "ftin" {
		return 0.0254 / 16
	}
	return must(q, d.unit).Factor * math.Pow10(-d.decimals)
}

func chosen(q Quantity, value float64, s System) display {
	rows := displays[string(q)+":"+string(s)]
	if rows == nil {
		panic("unit: no way to write " + string(q) + " in system " + string(s))
	}
	d := rows[0]
	for _, row := range rows[1:] {
		if math.Abs(value) >= row.from {
			d = row
		}
	}
	return d
}

// fixed writes so many decimals and never "-0".
func fixed(v float64, decimals int) string {
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	return text
}

func trueMinus(s string) string { return strings.Replace(s, "-", "−", 1) }

func space(name string) string {
	if name == "deg" {
		return ""
	}
	return thin
}

// raised prints m3 as m³ and degrees as their sign.
func raised(name string) string {
	if name == "deg" {
		return "°"
	}
	return strings.NewReplacer("m2", "m²", "m3", "m³", "ft2", "ft²", "ft3", "ft³", "yd3", "yd³").Replace(name)
}

// feetInches writes to the nearest sixteenth of an inch: 6 1/2″, 3′-6 1/2″.
func feetInches(metres float64) string {
	sign := ""
	if metres < 0 {
		sign, metres = "−", -metres
	}
	sixteenths := int64(math.Round(metres / 0.0254 * 16))
	feet, rest := sixteenths/192, sixteenths%192
	inches := strconv.FormatInt(rest/16, 10)
	if n, d := rest%16, int64(16); n > 0 {
		for n%2 == 0 {
			n, d = n/2, d/2
		}
		part := strconv.FormatInt(n, 10) + "/" + strconv.FormatInt(d, 10)
		if rest < 16 && feet == 0 {
			inches = part
		} else {
			inches += " " + part
		}
	}
	if feet == 0 {
		return sign + inches + "″"
	}
	return sign + strconv.FormatInt(feet, 10) + "′-" + inches + "″"
}
