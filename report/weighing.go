package report

import (
	"fmt"
	"regexp"
	"strings"

	"slabwright/internal/page"
	"slabwright/working"
)

// mostColumns is how many causes stand beside each other in a matrix.
const mostColumns = 5

const matrixSize = 7.0 // points

// weighing is a working of causes as a matrix: what was observed down, the causes
// across, and in each field the chance of the observation under the cause.
type weighing struct {
	observations []string
	weights      []float64 // of each observation in its group
	causes       []weighed
}

// weighed is one column of it.
type weighed struct {
	name                                   string
	likely                                 []float64 // chance of each observation
	prior, tempering, sum, scale, answered float64
}

var observed = regexp.MustCompile(`^s\d+$`)

// weighingOf reads a working of causes; false where a sheet is of another kind.
func weighingOf(s *working.Sheet) (weighing, bool) {
	var m weighing
	var open []working.Line
	for _, l := range s.Lines {
		if observed.MatchString(l.Symbol) {
			open = append(open, l)
			continue
		}
		name, ends := strings.CutPrefix(strings.ToLower(l.What[:min(1, len(l.What))])+l.What[min(1, len(l.What)):], "chance that it is ")
		if l.Symbol != "p" || !ends || len(open) == 0 || !m.column(name, open, l) {
			return m, false
		}
		open = nil
	}
	return m, len(open) == 0 && len(m.causes) > 0
}

// column adds one cause; false where its observations are not those of the first.
func (m *weighing) column(name string, lines []working.Line, last working.Line) bool {
	given := func(l working.Line, symbol string) float64 {
		for _, in := range l.Inputs {
			if in.Symbol == symbol {
				return in.Value
			}
		}
		return 0
	}
	c := weighed{name: name, prior: given(last, "a"), tempering: given(last, "t"), sum: given(last, "S"), scale: given(last, "Z"), answered: last.Value}
	first := len(m.causes) == 0
	if !first && len(lines) != len(m.observations) {
		return false
	}
	for i, l := range lines {
		_, what, ok := strings.Cut(l.What, ": ")
		if !ok {
			return false
		}
		if first {
			m.observations, m.weights = append(m.observations, what), append(m.weights, given(l, "v"))
		} else if m.observations[i] != what {
			return false
		}
		c.likely = append(c.likely, given(l, "P"))
	}
	m.causes = append(m.causes, c)
	return true
}

// table is the matrix with the sums under it.
func (m weighing) table() page.Table {
	causes := m.causes[:min(len(m.causes), mostColumns)]
	t := page.Table{Whole: true, Tight: true, Size: matrixSize, Columns: []page.Column{{Head: "Observation", Share: 46}, {Head: "v", Share: 5, Align: page.AlignDecimal}}}
	for _, c := range causes {
		t.Columns = append(t.Columns, page.Column{Head: "P under " + c.name, Share: 49 / float64(len(causes)), Align: page.AlignRight})
	}
	row := func(what page.Text, v string, of func(weighed) string, bold bool) {
		cells := []page.Text{what, page.Plain(v)}
		for _, c := range causes {
			cells = append(cells, page.Text{{Words: of(c), Bold: bold}})
		}
		t.Rows = append(t.Rows, cells)
	}
	for i, o := range m.observations {
		if m.alike(i) {
			continue
		}
		row(page.Plain(sentenceCase(o)), working.Figure(m.weights[i], 2), func(c weighed) string { return working.Figure(c.likely[i], 2) }, false)
	}
	row(page.Bold("Prior odds a"), "", func(c weighed) string { return working.Figure(c.prior, 3) }, false)
	row(page.Bold("S = Σ v·ln P"), "", func(c weighed) string { return working.Figure(c.sum, 4) }, false)
	row(page.Bold(fmt.Sprintf("Chance a·e^(%s·S)/Z, Z = %s", working.Figure(causes[0].tempering, 2), working.Figure(causes[0].scale, 3))), "",
		func(c weighed) string { return working.Figure(c.answered, 3) }, true)
	return t
}

// alike reports whether an observation is as likely under every cause of the matrix,
// so that it tells none from another.
func (m weighing) alike(i int) bool {
	for _, c := range m.causes {
		if working.Figure(c.likely[i], 2) != working.Figure(m.causes[0].likely[i], 2) {
			return false
		}
	}
	return len(m.causes) > 1
}

// aside tells the observations that are alike under all causes, each with its weight
// and chance, so that the sums can still be redone.
func (m weighing) aside() string {
	var parts []string
	for i, o := range m.observations {
		if m.alike(i) {
			parts = append(parts, fmt.Sprintf("%s (%s, %s)", o, working.Figure(m.weights[i], 2), working.Figure(m.causes[0].likely[i], 2)))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	return "Alike under these causes, with v and P: " + strings.Join(parts, "; ")
}
