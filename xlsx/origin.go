package xlsx

import (
	"regexp"
	"strings"

	"slabwright/checks"
	"slabwright/working"
)

// keepGiven remembers where an assumption stands.
func (b *book) keepGiven(a checks.Assumption, cell string) {
	b.given = append(b.given, givenCell{a.What, a.Symbol, a.Unit, a.Value, cell})
}

// givenCell is one assumption and its cell.
type givenCell struct {
	what, symbol, unit string
	value              float64
	cell               string
}

var sheetNamed = regexp.MustCompile(`sheet ([\w-]+)`)

// origin is the cell a number comes from: an assumption for a fact of the job, a line
// above for what was worked out; "" where it is a constant of the rule and typed in.
func (b *book) origin(sheet string, in working.Input) string {
	if in.Known == "" {
		return ""
	}
	if in.Known != "worked out" {
		if cell := b.fact(in); cell != "" {
			return cell
		}
	}
	for _, search := range b.searches(sheet, in) {
		for _, symbol := range []bool{true, false} {
			for _, id := range search {
				if cell := lineOf(b.sheets[id], in, symbol); cell != "" {
					return cell
				}
			}
		}
	}
	return b.factOf(b.loadOf[sheet], in)
}

// searches are the sheets a worked-out number may come from, the likeliest first:
// its own, the one its words name, those of the same load, those of no load.
func (b *book) searches(sheet string, in working.Input) [][]string {
	all := [][]string{{sheet}}
	if m := sheetNamed.FindStringSubmatch(in.What); m != nil {
		all = append(all, []string{m[1]})
	}
	var same, common []string
	for i := len(b.written) - 1; i >= 0; i-- {
		switch id := b.written[i]; b.loadOf[id] {
		case "":
			common = append(common, id)
		case b.loadOf[sheet]:
			same = append(same, id)
		}
	}
	return append(all, same, common)
}

// fact finds an assumption by its words, or by symbol, unit and value.
func (b *book) fact(in working.Input) string {
	for _, g := range b.given {
		if g.what == in.What && g.unit == in.Unit && same(g.value, in.Value) {
			return g.cell
		}
	}
	for _, g := range b.given {
		if g.symbol == in.Symbol && g.unit == in.Unit && same(g.value, in.Value) && !strings.Contains(g.what, ": ") {
			return g.cell
		}
	}
	return ""
}

// factOf finds an assumption of a load, or of none, that has this value and unit and
// goes under another letter.
func (b *book) factOf(load string, in working.Input) string {
	for _, g := range b.given {
		of, _, ofLoad := strings.Cut(g.what, ": ")
		if g.unit == in.Unit && same(g.value, in.Value) && (ofLoad && of == load && load != "") {
			return g.cell
		}
	}
	for _, g := range b.given {
		if g.unit == in.Unit && same(g.value, in.Value) && !strings.Contains(g.what, ": ") {
			return g.cell
		}
	}
	return ""
}

// lineInput is the cell of an input of the last line of a sheet, by its symbol.
func (b *book) lineInput(sheet, symbol string) string {
	lines := b.sheets[sheet]
	if len(lines) == 0 {
		return ""
	}
	return ref(workingSheet, lines[len(lines)-1].inputs[symbol])
}
