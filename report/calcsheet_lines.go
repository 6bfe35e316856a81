package report

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"unicode"

	"slabwright/checks"
	"slabwright/internal/page"
	"slabwright/working"
)

// calcWorkings sets every sheet in three columns: reference, formula with the numbers
// put in and the answer, result.
func calcWorkings(d *page.Document, c *checks.Calc) {
	d.WideHeading(2, "Workings", "calc-workings")
	d.WideSmall(page.Quiet("Every line can be worked again with the numbers printed; an answer may then differ in its last figure. A symbol is explained where it first stands on a sheet. ✓ an independent way comes out within 20 %; ▲ it does not, and the line says why. Behind a reference: s seen in an excerpt or another code, m from memory, to be looked up before it is relied on; full titles stand at the end."))
	for _, s := range c.Sheets {
		calcWorking(d, c, s)
	}
}

var sheetNamed = regexp.MustCompile(`sheet ([\w-]+)`)

// numberedSheets puts the numbers of sheets for their names in the words of inputs.
func numberedSheets(c *checks.Calc, l working.Line) working.Line {
	inputs := append([]working.Input(nil), l.Inputs...)
	for i := range inputs {
		inputs[i].What = sheetNamed.ReplaceAllStringFunc(inputs[i].What, func(words string) string {
			if n := c.Number(strings.TrimPrefix(words, "sheet ")); n != "" {
				return "sheet " + n
			}
			return words
		})
	}
	l.Inputs = inputs
	return l
}

func calcWorking(d *page.Document, c *checks.Calc, s checks.Sheet) {
	t := page.Table{Whole: true, Tight: true, Gap: 1.3, Size: 8, Columns: []page.Column{{Head: "Reference", Share: 26}, {Head: "Working", Share: 88}, {Head: "Result", Share: 23}}}
	told := map[string]bool{}
	last := ""
	for _, l := range s.Lines {
		reference := citeText(l.Source)
		t.OnNewPage = append(t.OnNewPage, reference)
		shown := reference
		if reference.String() == last {
			shown = page.Quiet("″")
		}
		last = reference.String()
		t.Rows = append(t.Rows, []page.Text{shown, calcLine(numberedSheets(c, l), told), calcResult(l)})
	}
	note := mathText(sentences(s.Basis), page.Run{Quiet: true})
	d.Keep(min(d.TableStart(t)+16+d.Measure(note, d.Right()-d.Left(), page.SmallSize), 90))
	d.WideHeading(3, s.Number+"  "+s.Title, "calc-"+s.ID)
	if len(s.Basis) > 0 {
		d.WideSmall(note)
	}
	d.Table(t)
}

// calcLine is what a line finds, its formula, its numbers, its answer, and the
// independent check under it.
func calcLine(l working.Line, told map[string]bool) page.Text {
	t := page.Quiet(sentenceCase(l.What))
	t = append(t, page.Run{Words: "\n"})
	t = page.Join(t, mathText(l.Symbol, page.Run{}), page.Plain(" = "))
	if l.Formula != l.Symbol {
		t = page.Join(t, mathText(l.Formula, page.Run{}))
		if l.Numbers != l.Formula {
			t = page.Join(t, page.Plain("\n = "), mathText(plainZeros(l.Numbers), page.Run{}))
		}
		t = page.Join(t, page.Plain(" = "))
	}
	t = page.Join(t, page.Bold(valued(l.Text, l.Unit)))
	if given := symbolWords(l, told); len(given) > 0 {
		t = page.Join(t, page.Plain("\n"), given)
	}
	if k := l.Check; k != nil {
		t = page.Join(t, page.Plain("\n"), page.Italic("Check. "), mathText(sentenceCase(k.What), page.Run{}), page.Plain(": "+valued(working.Figure(k.Value, 3), k.Unit)))
		if k.Flag {
			t = page.Join(t, page.Plain(". "), mathText(or(sentence(k.Reason), "No reason given."), page.Run{Bold: true}))
		} else {
			t = page.Join(t, page.Plain("."))
		}
		t = page.Join(t, page.Quiet(" "), citeText(k.Source))
	}
	return t
}

// symbolWords explains the inputs of a line that have not been explained above.
func symbolWords(l working.Line, told map[string]bool) page.Text {
	var t page.Text
	for _, in := range l.Inputs {
		key := in.Symbol + in.What
		if in.What == "" || told[key] || !strings.Contains(l.Formula, in.Symbol) {
			continue
		}
		told[key] = true
		if len(t) > 0 {
			t = append(t, page.Run{Words: "; ", Quiet: true})
		}
		t = append(t, mathText(in.Symbol, page.Run{Quiet: true})...)
		words := " " + in.What
		if in.Unit != "" && in.Unit != "–" {
			words += ", " + in.Unit
		}
		switch in.Known {
		case "", "worked out":
		default:
			words += " (" + in.Known + ")"
		}
		t = append(t, mathText(words, page.Run{Quiet: true})...)
	}
	return t
}

// calcResult is the right column: the answer, the verdict, the flag of the check.
func calcResult(l working.Line) page.Text {
	t := page.Bold(valued(l.Text, l.Unit))
	switch l.Verdict {
	case "pass":
		t = page.Join(t, page.Plain("  met"))
	case "fail":
		t = page.Join(t, page.Bold("  not met ▲"))
	}
	if k := l.Check; k != nil {
		mark := "✓"
		if k.Flag {
			mark = "▲"
		}
		apart := page.Run{Words: fmt.Sprintf("%s %s apart", mark, apartWords(k.Apart)), Bold: k.Flag, Quiet: !k.Flag}
		t = page.Join(t, page.Plain("\n"), page.Text{apart})
	}
	return t
}

func apartWords(apart float64) string {
	if apart > 2 {
		return fmt.Sprintf("%s times", working.Figure(1+apart, 2))
	}
	return fmt.Sprintf("%.0f"+thin+"%%", math.Round(100*apart))
}

var zeros = regexp.MustCompile(`(\d+)\.(\d*?)0+(\D|$)`)

// plainZeros takes the noughts off the ends of decimals: 20.00 is 20, 0.0500 is 0.05.
func plainZeros(s string) string {
	s = zeros.ReplaceAllString(s, "$1.$2$3")
	return strings.NewReplacer(". ", " ", ".)", ")", ".,", ",", ".·", "·", ".^", "^", ".²", "²", ".³", "³", ".⁴", "⁴", ".;", ";").Replace(strings.TrimSuffix(s, "."))
}

// mathText sets a formula: what stands behind _ is lowered, what stands behind ^ is
// raised, sqrt is a root.
func mathText(formula string, dress page.Run) page.Text {
	var t page.Text
	runes := []rune(strings.ReplaceAll(formula, "sqrt(", "√("))
	put := func(words string, shift int) {
		if words == "" {
			return
		}
		r := dress
		r.Words, r.Shift = words, shift
		t = append(t, r)
	}
	start := 0
	for i := 0; i < len(runes); {
		switch runes[i] {
		case '_':
			put(string(runes[start:i]), 0)
			end := i + 1
			for end < len(runes) && lowered(runes, end) {
				end++
			}
			put(string(runes[i+1:end]), -1)
			i, start = end, end
		case '^':
			put(string(runes[start:i]), 0)
			const longest = 7 // letters that can be read in small print
			from, to, end := raisedPart(runes, i+1)
			if to-from > longest {
				put("^", 0)
				i, start = i+1, i+1
				continue
			}
			put(strings.ReplaceAll(string(runes[from:to]), " ", ""), 1)
			i, start = end, end
		default:
			i++
		}
	}
	put(string(runes[start:]), 0)
	return t
}

// lowered reports whether the letter at i belongs to an index.
func lowered(runes []rune, i int) bool {
	r := runes[i]
	return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' || r == ',' && i+1 < len(runes) && unicode.IsLetter(runes[i+1])
}

// raisedPart is what stands behind ^: a number, a word, or a bracket without its
// bracket when nothing but a plain quotient is in it.
func raisedPart(runes []rune, i int) (from, to, end int) {
	if i < len(runes) && runes[i] == '(' {
		depth := 0
		for end = i; end < len(runes); end++ {
			switch runes[end] {
			case '(':
				depth++
			case ')':
				depth--
			}
			if depth == 0 {
				return i + 1, end, end + 1
			}
		}
	}
	for end = i; end < len(runes) && (unicode.IsDigit(runes[end]) || runes[end] == '.' || unicode.IsLetter(runes[end])); end++ {
	}
	return i, end, end
}
