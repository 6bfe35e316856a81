package report

import (
	"fmt"
	"math"

	"slabwright/internal/draw"
	"slabwright/internal/page"
)

// profileParts are what is drawn through the depth.
var profileParts = []struct {
	title, column string
	decimals      int
	of            func(Profile) []float64
}{
	{"temperature, °C", "Temperature °C", 1, func(f Profile) []float64 { return f.Temperature }},
	{"humidity in the pores", "Humidity in the pores", 2, func(f Profile) []float64 { return f.Humidity }},
	{"strength, MPa", "Strength MPa", 1, func(f Profile) []float64 { return f.Strength }},
	{"own stress, MPa", "Own stress MPa", 2, func(f Profile) []float64 { return f.Stress }},
}

// profilePens tell the hours apart by weight and dash as well as by colour.
var profilePens = []draw.Pen{
	{Color: quiet, Width: 0.3, Dash: []float64{0.4, 0.7}}, {Color: chalk, Width: 0.4, Dash: []float64{1.6, 0.7}}, {Color: green, Width: 0.45},
	{Color: ink, Width: 0.4, Dash: []float64{3, 0.8}}, {Color: vermilion, Width: 0.55}, {Color: faint, Width: 0.55},
}

// ProfilesChart is the slab through its depth at chosen hours, depth downward; nil
// where there are no profiles.
func ProfilesChart(c *Content, p *PourDay) *draw.Scene {
	deep := len(p.Depths)
	if deep < 2 || len(p.Profiles) == 0 {
		return nil
	}
	clk := clockOf(c.Head)
	m := draw.Multiples{Width: 172, Columns: 4, Title: "Through the depth of " + p.Name, Ink: ink}
	drawn := p.Profiles[:min(len(p.Profiles), len(profilePens))]
	for i, f := range drawn {
		m.Key = append(m.Key, draw.KeyEntry{Words: fmt.Sprintf("%s h, %s", fixed(f.Hours, 0), clk.short(f.Time)), Pen: profilePens[i]})
	}
	for _, part := range profileParts {
		if ch, ok := profileCell(part.title, p.Depths, drawn, part.of); ok {
			m.Cells = append(m.Cells, ch)
		}
	}
	if len(m.Cells) == 0 {
		return nil
	}
	m.Columns = max(3, len(m.Cells))
	m.Desc = fmt.Sprintf("%d profiles over %s mm; the table beside it has the figures.", len(drawn), millimetres(p.Depths[deep-1]))
	return m.Scene()
}

// profileCell is one quantity over the depth at each hour; false where none has it.
func profileCell(title string, depths []float64, profiles []Profile, of func(Profile) []float64) (draw.Chart, bool) {
	ch := draw.Chart{Height: 43, Title: title, NoNames: true, Ink: ink, Quiet: quiet, Paper: paper}
	low, high := math.Inf(1), math.Inf(-1)
	for i, f := range profiles {
		values := of(f)
		if len(values) != len(depths) {
			continue
		}
		curve := draw.Curve{Name: fixed(f.Hours, 0) + " h", Pen: profilePens[i], X: values}
		for k, z := range depths {
			curve.Y = append(curve.Y, -z*1000)
			low, high = math.Min(low, values[k]), math.Max(high, values[k])
		}
		ch.Curves = append(ch.Curves, curve)
	}
	if len(ch.Curves) == 0 || math.IsInf(low, 0) || math.IsNaN(low+high) {
		return ch, false
	}
	if high-low < 1e-6 {
		high = low + 1
	}
	ch.X = upTo("", low, high, 3)
	deepest := depths[len(depths)-1] * 1000
	down := upTo("", 0, deepest, 4)
	ch.Y = draw.Axis{Title: title + " / depth, mm", Min: -deepest, Max: 0}
	for _, l := range down.Labels {
		if l.At <= deepest+1e-9 {
			ch.Y.Labels = append(ch.Y.Labels, draw.Label{At: -l.At, Words: l.Words})
		}
	}
	return ch, true
}

func profilesTable(c *Content, p *PourDay) table {
	clk := clockOf(c.Head)
	t := table{caption: "Through the depth", columns: []page.Column{{Head: "Time", Share: 18}, {Head: "Hours after placing", Share: 12, Align: page.AlignDecimal}, {Head: "Depth mm", Share: 12, Align: page.AlignRight}}}
	for _, part := range profileParts {
		t.columns = append(t.columns, page.Column{Head: part.column, Share: 14, Align: page.AlignDecimal})
	}
	for _, f := range p.Profiles {
		for i, z := range p.Depths {
			row := []page.Text{page.Plain(clk.short(f.Time)), page.Plain(fixed(f.Hours, 0)), page.Plain(millimetres(z))}
			for _, part := range profileParts {
				cell := "–"
				if values := part.of(f); i < len(values) {
					cell = fixed(values[i], part.decimals)
				}
				row = append(row, page.Plain(cell))
			}
			t.rows = append(t.rows, row)
		}
	}
	return t
}
