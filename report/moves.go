package report

import (
	"fmt"
	"math"
	"strings"

	"slabwright/internal/draw"
	"slabwright/internal/page"
)

// MovesChart is how far each unknown moves the opening and the closing of the cut
// window over its range; nil where that was not worked out.
func MovesChart(p *PourDay) *draw.Scene {
	if len(p.Moves) == 0 {
		return nil
	}
	b := draw.Bars{Width: 172, Title: "What moves the cut window, " + p.Name, WordSpace: 52, BehindSpace: 48, Fills: []draw.Color{washBlue, washWarm}, Ink: ink, Quiet: quiet, Paper: paper}
	low, high := 0.0, 1.0
	for _, m := range p.Moves {
		b.Rows = append(b.Rows, draw.Bar{Words: cut(m.What, 40), Values: []float64{m.Opens, m.Closes}, Behind: fmt.Sprintf("%.0f"+thin+"%%, %s to %s", 100*m.Share, m.Low, m.High)})
		low, high = math.Min(low, math.Min(m.Opens, m.Closes)), math.Max(high, math.Max(m.Opens, m.Closes))
	}
	b.Axis = upTo("minutes later over its range: upper bar the opening, lower bar the closing", low, high, 6)
	b.Desc = fmt.Sprintf("The widest is %s: %s min on the opening, %s min on the closing.", p.Moves[0].What, fixed(p.Moves[0].Opens, 0), fixed(p.Moves[0].Closes, 0))
	return b.Scene()
}

func movesTable(p *PourDay) table {
	t := table{caption: "Which unknown moves the window most", columns: []page.Column{{Head: "Unknown", Share: 26}, {Head: "From", Share: 13}, {Head: "To", Share: 13}, {Head: "Known", Share: 12},
		{Head: "Opens later by min", Share: 12, Align: page.AlignRight}, {Head: "Closes later by min", Share: 12, Align: page.AlignRight}, {Head: "Share of the spread", Share: 12, Align: page.AlignDecimal}}}
	for _, m := range p.Moves {
		t.rows = append(t.rows, []page.Text{page.Plain(m.What), page.Plain(m.Low), page.Plain(m.High), page.Plain(or(m.Known, "–")), page.Plain(fixed(m.Opens, 0)), page.Plain(fixed(m.Closes, 0)), page.Plain(fixed(m.Share, 2))})
	}
	return t
}

// measuredBlocks says what measurements on site did to the answer.
func measuredBlocks(p *PourDay, r *refs) []block {
	m := p.Measured
	if m == nil {
		return nil
	}
	b := []block{heading{3, "What the measurements did to the answer", ""}}
	text := sentence(m.Text)
	if left := fixed(m.Members, 0); m.Members > 0 && !strings.Contains(text, "leave "+left+" ") {
		text += fmt.Sprintf(" They leave the weight of about %s of the slabs drawn.", left)
	}
	b = append(b, para{text: page.Plain(text), note: r.list("Working ", m.Working)})
	if len(m.Used) > 0 {
		b = append(b, para{text: lead("Measured: ", m.Used), small: true})
	}
	if len(m.Warnings) > 0 {
		b = append(b, bulletsOf(m.Warnings))
	}
	return b
}
