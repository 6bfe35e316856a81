package report

import (
	"fmt"
	"math"
	"time"

	"slabwright/internal/draw"
	"slabwright/internal/page"
)

// PlasticChart is the fresh slab to final set: drying against bleeding, the water on
// the surface, and the chances of cracks by each hour; nil where it was not followed.
func PlasticChart(c *Content, p *PourDay) *draw.Scene {
	if len(p.Plastic) < 2 {
		return nil
	}
	strong := func(color draw.Color) draw.Pen { return draw.Pen{Color: color, Width: 0.5} }
	dashed := func(color draw.Color) draw.Pen { return draw.Pen{Color: color, Width: 0.4, Dash: []float64{1.6, 0.7}} }
	m := draw.Multiples{Width: 172, Columns: 3, Title: "The fresh slab of " + p.Name, Ink: ink, Cells: []draw.Chart{
		plasticCell(p, "rate, kg/m² per hour", 0.2, []plasticCurve{{"drying", strong(vermilion), func(h PlasticHour) float64 { return h.Drying }}, {"bleeding", dashed(chalk), func(h PlasticHour) float64 { return h.Bleeding }}}),
		plasticCell(p, "water, kg/m²", 0.2, []plasticCurve{{"on top", strong(chalk), func(h PlasticHour) float64 { return h.Film }}, {"drawn out", dashed(vermilion), func(h PlasticHour) float64 { return h.Deficit }}}),
		plasticCell(p, "chance by then", 1, []plasticCurve{{"tearing", strong(vermilion), func(h PlasticHour) float64 { return h.Shrinkage }}, {"over bars", dashed(ink), func(h PlasticHour) float64 { return h.Settlement }}})}}
	if p.DryingLimit != nil {
		m.Cells[0].Limits = []draw.Limit{{At: *p.DryingLimit, Name: "planned"}}
		m.Cells[0].Y = upTo(m.Cells[0].Y.Title, 0, math.Max(m.Cells[0].Y.Max, *p.DryingLimit), 3)
	}
	if p.FilmGone != nil {
		for i := range m.Cells[:2] {
			m.Cells[i].Marks = []draw.Mark{{At: p.FilmGone.Sub(plasticStart(p)).Hours(), Words: "film gone", Pen: draw.Pen{Color: vermilion, Width: 0.25}}}
		}
	}
	last := p.Plastic[len(p.Plastic)-1]
	m.Desc = fmt.Sprintf("By %s hours after placing: chance of plastic shrinkage cracks %s, of cracks over bars %s.", fixed(last.Hours, 1), chanceFigure(last.Shrinkage), chanceFigure(last.Settlement))
	return m.Scene()
}

// plasticStart is the time from which the hours of the fresh slab count.
func plasticStart(p *PourDay) time.Time {
	first := p.Plastic[0]
	return first.Time.Add(-time.Duration(first.Hours * float64(time.Hour)))
}

type plasticCurve struct {
	name string
	pen  draw.Pen
	of   func(PlasticHour) float64
}

func plasticCell(p *PourDay, title string, least float64, curves []plasticCurve) draw.Chart {
	last := p.Plastic[len(p.Plastic)-1].Hours
	ch := draw.Chart{Height: 41, Title: title, NameSpace: 17, CloseNames: true, Ink: ink, Quiet: quiet, Paper: paper}
	ch.X = upTo("h after placing", 0, math.Max(last, 1), 4)
	ch.X.Max = math.Max(last, 1)
	ch.X.Labels = upToHour(ch.X.Labels, ch.X.Max)
	top := least
	for _, k := range curves {
		curve := draw.Curve{Name: k.name, Pen: k.pen}
		for _, h := range p.Plastic {
			curve.X, curve.Y = append(curve.X, h.Hours), append(curve.Y, k.of(h))
			top = math.Max(top, k.of(h))
		}
		ch.Curves = append(ch.Curves, curve)
	}
	ch.Y = upTo(title, 0, top, 3)
	return ch
}

func plasticTable(c *Content, p *PourDay) table {
	clk := clockOf(c.Head)
	number := func(head string) page.Column { return page.Column{Head: head, Share: 12, Align: page.AlignDecimal} }
	t := table{caption: "The fresh slab hour by hour", columns: []page.Column{{Head: "Time", Share: 16}, number("Hours after placing"), number("Drying kg/m²h"), number("Bleeding kg/m²h"), number("On the surface kg/m²"), number("Drawn out kg/m²"),
		number("Chance of shrinkage cracks by then"), number("of cracks over bars")}}
	for _, h := range p.Plastic {
		t.rows = append(t.rows, []page.Text{page.Plain(clk.short(h.Time)), page.Plain(fixed(h.Hours, 1)), page.Plain(fixed(h.Drying, 2)), page.Plain(fixed(h.Bleeding, 2)), page.Plain(fixed(h.Film, 2)), page.Plain(fixed(h.Deficit, 2)),
			page.Plain(fixed(h.Shrinkage, 2)), page.Plain(fixed(h.Settlement, 2))})
	}
	return t
}
