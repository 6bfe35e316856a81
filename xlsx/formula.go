package xlsx

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

// cellFormula writes a formula of a working for a spreadsheet, each symbol replaced
// by its cell. The error says where a formula cannot be written; its answer is then
// typed in.
//
// It reads what working.Line.Rework reads: + − · / ^, raised digits, roots, brackets,
// bars, π, e and the functions of the table below.
func cellFormula(formula string, cells map[string]string) (text string, err error) {
	w := &writer{text: []rune(strings.TrimSpace(formula)), cells: cells}
	defer func() {
		if p := recover(); p != nil {
			stop, ok := p.(cannot)
			if !ok {
				panic(p)
			}
			err = fmt.Errorf("formula %q: %s", formula, string(stop))
		}
	}()
	text = w.sum()
	if w.at < len(w.text) {
		w.stop("cannot go on at " + string(w.text[w.at:]))
	}
	return text, nil
}

// cannot is what a writer stops with.
type cannot string

type writer struct {
	text  []rune
	at    int
	cells map[string]string
}

func (w *writer) stop(why string) { panic(cannot(why)) }

func (w *writer) next() rune {
	for w.at < len(w.text) && (w.text[w.at] == ' ' || w.text[w.at] == '\u202f') {
		w.at++
	}
	if w.at < len(w.text) {
		return w.text[w.at]
	}
	return 0
}

func (w *writer) take(any string) bool {
	if c := w.next(); c != 0 && strings.ContainsRune(any, c) {
		w.at++
		return true
	}
	return false
}

func (w *writer) sum() string {
	s := w.product()
	for {
		switch {
		case w.take("+"):
			s += "+" + w.product()
		case w.take("−-"):
			s += "-" + w.product()
		default:
			return s
		}
	}
}

func (w *writer) product() string {
	s := w.signed()
	for {
		switch {
		case w.take("·×*"):
			s += "*" + w.signed()
		case w.take("/"):
			s += "/" + w.signed()
		default:
			return s
		}
	}
}

// signed writes a leading minus as a factor: in a spreadsheet −2² is 4.
func (w *writer) signed() string {
	if w.take("−-") {
		return "(-1)*" + w.signed()
	}
	return w.power()
}

const raisedDigits = "⁰¹²³⁴⁵⁶⁷⁸⁹"

func (w *writer) power() string {
	s := w.atom()
	if c := w.next(); c == '⁻' || c != 0 && strings.ContainsRune(raisedDigits, c) {
		s += "^(" + w.raised() + ")"
	}
	if w.take("^") {
		sign := ""
		if w.take("−-") {
			sign = "-"
		}
		s += "^(" + sign + w.atom() + ")"
	}
	return s
}

func (w *writer) raised() string {
	s := ""
	if w.take("⁻") {
		s = "-"
	}
	for {
		i := strings.IndexRune(raisedDigits, w.next())
		if w.next() == 0 || i < 0 {
			return s
		}
		s += strconv.Itoa(len([]rune(raisedDigits[:i])))
		w.at++
	}
}

// names of functions in a spreadsheet.
var names = map[string]string{"sqrt": "SQRT", "ln": "LN", "log10": "LOG10", "exp": "EXP", "abs": "ABS", "sin": "SIN", "cos": "COS", "tan": "TAN",
	"sinh": "SINH", "cosh": "COSH", "tanh": "TANH", "max": "MAX", "min": "MIN", "erf": "ERF"}

func (w *writer) atom() string {
	switch {
	case w.take("("):
		return w.closed(")")
	case w.take("["):
		return w.closed("]")
	case w.take("{"):
		return w.closed("}")
	case w.take("|"):
		return "ABS" + w.closed("|")
	case w.take("√"):
		return "SQRT(" + w.atom() + ")"
	case unicode.IsDigit(w.next()):
		return w.number()
	}
	return w.word()
}

func (w *writer) closed(by string) string {
	s := w.sum()
	if !w.take(by) {
		w.stop("no " + by)
	}
	return "(" + s + ")"
}

func (w *writer) number() string {
	start := w.at
	for w.at < len(w.text) && (unicode.IsDigit(w.text[w.at]) || w.text[w.at] == '.') {
		w.at++
	}
	s := string(w.text[start:w.at])
	if unicode.IsLetter(w.next()) || w.next() == '(' {
		return s + "*" + w.power()
	}
	return s
}

func (w *writer) word() string {
	w.next()
	start := w.at
	for w.at < len(w.text) && symbolRune(w.text, w.at) {
		w.at++
	}
	word := string(w.text[start:w.at])
	if f, ok := names[word]; ok && w.take("([") {
		s := w.sum()
		for w.take(",;") {
			s += "," + w.sum()
		}
		if !w.take(")]") {
			w.stop("no ) after " + word)
		}
		return f + "(" + s + ")"
	}
	switch cell, ok := w.cells[word]; {
	case ok:
		return cell
	case word == "π":
		return "PI()"
	case word == "e":
		return "EXP(1)"
	}
	w.stop(fmt.Sprintf("no cell for %q", word))
	return ""
}

func symbolRune(runes []rune, i int) bool {
	r := runes[i]
	return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' || r == '\'' || r >= '₀' && r <= 'ₜ' || r == ',' && i+1 < len(runes) && unicode.IsLetter(runes[i+1])
}
