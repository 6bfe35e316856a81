package working

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"

	"slabwright/source"
)

// Input is one symbol of a formula with the number put in for it.
type Input struct {
	Symbol string  `json:"symbol"`
	Value  float64 `json:"value"`
	Unit   string  `json:"unit,omitempty"`
	What   string  `json:"what,omitempty"`  // meaning on site
	Known  string  `json:"known,omitempty"` // measured, recorded, assumed, default
}

// In returns an input for a line's formula.
func In(symbol string, value float64, unit, what string) Input {
	return Input{Symbol: symbol, Value: value, Unit: unit, What: what}
}

// Check is an independent value beside a line: a closed form, a bound or a hand
// estimate.
type Check struct {
	What   string          `json:"what"`
	Value  float64         `json:"value"`
	Unit   string          `json:"unit"`
	Source source.Citation `json:"source"`
	Apart  float64         `json:"apart"`            // |value/line - 1|
	Flag   bool            `json:"flag"`             // more than FlagApart apart
	Reason string          `json:"reason,omitempty"` // why they may differ
}

// FlagApart is how far a check may be from its line, as a share, before it is
// flagged. Chosen by the project (20 %), not from a standard.
const FlagApart = 0.20

// Line is one step of a calculation.
type Line struct {
	Symbol  string          `json:"symbol"`
	What    string          `json:"what"`
	Formula string          `json:"formula"`
	Numbers string          `json:"numbers"`
	Value   float64         `json:"value"`
	Unit    string          `json:"unit"`
	Text    string          `json:"text"` // value as printed, to sensible digits
	Source  source.Citation `json:"source"`
	Inputs  []Input         `json:"inputs,omitempty"`
	Check   *Check          `json:"check,omitempty"`
	Verdict string          `json:"verdict,omitempty"` // pass, fail, note
}

// New returns a line whose Numbers and Text are made from the rest. Value is the
// full-precision result; it is never rounded between lines.
func New(symbol, what, formula string, value float64, unit string, src source.Citation, inputs ...Input) Line {
	return Line{
		Symbol: symbol, What: what, Formula: formula, Value: value, Unit: unit,
		Text: Figure(value, 3), Numbers: Substitute(formula, inputs), Source: src, Inputs: inputs,
	}
}

// Beside returns the line with an independent check put beside it.
func (l Line) Beside(what string, value float64, src source.Citation, reason string) Line {
	apart := math.Abs(value/l.Value - 1)
	if l.Value == 0 {
		apart = math.Abs(value)
	}
	l.Check = &Check{What: what, Value: value, Unit: l.Unit, Source: src, Apart: apart, Flag: !(apart <= FlagApart), Reason: reason}
	return l
}

// Sheet is one calculation: what it is for, what it stands on, its lines.
type Sheet struct {
	ID    string   `json:"id"`    // short and stable: "window-strip-2"
	Title string   `json:"title"` // "Cut window of strip 2"
	Basis []string `json:"basis,omitempty"`
	Lines []Line   `json:"lines"`
}

// Add appends lines to the sheet.
func (s *Sheet) Add(lines ...Line) { s.Lines = append(s.Lines, lines...) }

// Book is every sheet of a job, in the order they were worked.
type Book struct {
	Sheets []Sheet `json:"sheets"`
}

// Add appends a sheet; it panics when the ID is taken.
func (b *Book) Add(s Sheet) {
	if b.Find(s.ID) != nil {
		panic("working: sheet " + s.ID + " added twice")
	}
	b.Sheets = append(b.Sheets, s)
}

// Find returns the sheet with this ID, or nil.
func (b *Book) Find(id string) *Sheet {
	for i := range b.Sheets {
		if b.Sheets[i].ID == id {
			return &b.Sheets[i]
		}
	}
	return nil
}

// Figure writes a value with so many significant digits, without an exponent
// between 1e-4 and 1e7, with a true minus sign.
func Figure(v float64, digits int) string {
	switch {
	case math.IsNaN(v):
		return "not known"
	case math.IsInf(v, 0):
		return "without limit"
	case v == 0:
		return "0"
	}
	var s string
	if a := math.Abs(v); a >= 1e-4 && a < 1e7 {
		decimals := digits - 1 - exponent(a, digits)
		s = strconv.FormatFloat(v, 'f', max(decimals, 0), 64)
	} else {
		s = scientific(v, digits)
	}
	return strings.Replace(s, "-", "−", 1)
}

// exponent returns the power of ten of a value once it is rounded to so many
// digits: 9.999 to three is 10.0, so 1.
func exponent(v float64, digits int) int {
	_, text, _ := strings.Cut(strconv.FormatFloat(v, 'e', digits-1, 64), "e")
	n, err := strconv.Atoi(text)
	if err != nil {
		panic("working: no exponent in " + text)
	}
	return n
}

// scientific writes 2.4·10^-5 as "2.40·10⁻⁵".
func scientific(v float64, digits int) string {
	text := strconv.FormatFloat(v, 'e', digits-1, 64)
	mantissa, exponent, _ := strings.Cut(text, "e")
	n, _ := strconv.Atoi(exponent)
	raised := strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴",
		"5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹").Replace(strconv.Itoa(n))
	return fmt.Sprintf("%s·10%s", mantissa, raised)
}

// Substitute returns the formula with each symbol replaced by its number, to four
// significant digits. A symbol is a run of letters, digits, subscripts, _, ' and
// commas between letters; what is not among the inputs (sqrt, ln, e) stays.
func Substitute(formula string, inputs []Input) string {
	numbers := make(map[string]float64, len(inputs))
	for _, in := range inputs {
		numbers[in.Symbol] = in.Value
	}
	var out strings.Builder
	runes := []rune(formula)
	for i := 0; i < len(runes); {
		if !unicode.IsLetter(runes[i]) {
			out.WriteRune(runes[i])
			i++
			continue
		}
		j := i
		for j < len(runes) && symbolRune(runes, j) {
			j++
		}
		word := string(runes[i:j])
		if v, ok := numbers[word]; ok {
			if i > 0 && (unicode.IsDigit(runes[i-1]) || runes[i-1] == ')') {
				out.WriteRune('·') // 2L is a product and stays one
			}
			word = inPlace(v, runes, i, j)
		}
		out.WriteString(word)
		i = j
	}
	return out.String()
}

func symbolRune(runes []rune, j int) bool {
	r := runes[j]
	if unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' || r == '\'' {
		return true
	}
	if r >= '₀' && r <= 'ₜ' {
		return true
	}
	return r == ',' && j+1 < len(runes) && unicode.IsLetter(runes[j+1])
}

// inPlace writes a number for the symbol at runes[i:j], in parentheses where it
// could be misread: a negative one, or a power of ten that is raised or divided by.
func inPlace(v float64, runes []rune, i, j int) string {
	s := Figure(v, 4)
	raised := j < len(runes) && strings.ContainsRune("^⁰¹²³⁴⁵⁶⁷⁸⁹⁻", runes[j])
	below := i > 0 && strings.HasSuffix(strings.TrimRight(string(runes[:i]), " "), "/")
	if v < 0 || strings.Contains(s, "·") && (raised || below) {
		return "(" + s + ")"
	}
	return s
}
