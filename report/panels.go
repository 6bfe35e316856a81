package report

import (
	"fmt"
	"math"
	"sort"
	"strings"
	"time"

	"slabwright/internal/draw"
	"slabwright/internal/page"
)

// mostPanels is how many panels are drawn; the table has them all.
const mostPanels = 12

// panelsInOrder returns the panels in the order to cut them.
func panelsInOrder(p *PourDay) []PanelWindow {
	all := append([]PanelWindow(nil), p.Panels...)
	sort.SliceStable(all, func(i, j int) bool { return all[i].Order < all[j].Order })
	return all
}

// cutsOf returns the cuts on the sides of a panel as sawn, in the order of the pour.
func cutsOf(c *Content, p *PourDay, panel string) []CutRow {
	sides := map[string]bool{}
	for _, known := range c.Plan.Panels {
		if known.ID == panel {
			for _, side := range known.Sides {
				sides[side.Joint] = true
			}
		}
	}
	var cuts []CutRow
	for _, cut := range p.Cuts {
		if sides[cut.Joint] {
			cuts = append(cuts, cut)
		}
	}
	return cuts
}

// hoursIn is how long after concrete came to the panel a cut was made.
func (w PanelWindow) hoursIn(cut CutRow) float64 { return cut.At.Sub(w.Placed).Hours() }

// mostGap is how far apart, in hours, points of a curve may lie and still be joined.
const mostGap = 3.0

// at reads the curve between its points; false outside it and where its points lie
// too far apart to say.
func (w PanelWindow) at(hours float64) (ready, cracked float64, ok bool) {
	for i := 0; i+1 < len(w.Curve); i++ {
		a, b := w.Curve[i], w.Curve[i+1]
		if hours < a.Hours || hours > b.Hours || b.Hours <= a.Hours || b.Hours-a.Hours > mostGap {
			continue
		}
		t := (hours - a.Hours) / (b.Hours - a.Hours)
		return a.Ready + t*(b.Ready-a.Ready), a.Cracked + t*(b.Cracked-a.Cracked), true
	}
	return 0, 0, false
}

// panelCuts says when the sides of a panel were cut and how likely it had cracked
// by then.
func panelCuts(c *Content, p *PourDay, w PanelWindow) (when, cracked string) {
	clk := clockOf(c.Head)
	var times, chances []string
	for _, cut := range cutsOf(c, p, w.Panel) {
		times = append(times, cut.Joint+" "+clk.short(cut.At))
		if _, chance, ok := w.at(w.hoursIn(cut)); ok {
			chances = append(chances, cut.Joint+" "+chanceFigure(chance))
		} else if cut.Chance != nil {
			chances = append(chances, cut.Joint+" "+cut.Chance.About)
		}
	}
	return or(strings.Join(times, "\n"), "not sawn here"), or(strings.Join(chances, "\n"), "–")
}

// chanceFigure is a chance that has no range, to no more than two figures.
func chanceFigure(p float64) string {
	switch {
	case p < 0.005:
		return "under 1 in 100"
	case p < 0.095 || p > 0.905 && p < 0.995:
		return fmt.Sprintf("%.0f in 100", p*100)
	case p >= 0.995:
		return "over 99 in 100"
	}
	return fmt.Sprintf("%.0f in 10", math.Round(p*10))
}

// panelsTable is the cut window of each panel on its own clock.
func panelsTable(c *Content, p *PourDay, r *refs) table {
	clk := clockOf(c.Head)
	t := table{caption: "Cut window of each panel, in the order to cut", whole: true, tight: true, size: denseSize, columns: []page.Column{{Head: "Order", Share: 5, Align: page.AlignRight}, {Head: "Panel", Share: 6}, {Head: "Placed", Share: 9},
		{Head: "Wet saw opens (range)", Share: 23}, {Head: "best", Share: 9}, {Head: "closes (range)", Share: 24}, {Head: "Early-entry opens", Share: 10}, {Head: "Cut at", Share: 13}, {Head: "Cracked by then", Share: 17}}}
	for _, w := range panelsInOrder(p) {
		cut, cracked := panelCuts(c, p, w)
		t.rows = append(t.rows, []page.Text{page.Plain(fmt.Sprint(w.Order)), panelName(p, w, r), page.Plain(clk.short(w.Placed)),
			page.Plain(clk.spanShort(w.Wet.Opens, w.Wet.OpensLow, w.Wet.OpensHigh, "not found")), page.Plain(clk.shortOr(w.Wet.Best, "–")),
			page.Plain(clk.spanShort(w.Wet.Closes, w.Wet.ClosesLow, w.Wet.ClosesHigh, "not in the time looked at")),
			page.Plain(clk.shortOr(w.Early.Opens, "–")), page.Plain(cut), page.Plain(cracked)})
	}
	return t
}

// panelName is the panel with its working where that is not the one of the pour.
func panelName(p *PourDay, w PanelWindow, r *refs) page.Text {
	name := page.Bold(w.Panel)
	if w.Wet.Working == p.Window.Working {
		return name
	}
	return append(name, r.list(" ", w.Wet.Working)...)
}

// PanelsChart is, for each panel, the chance that the edge is ready and the chance
// that the slab has cracked elsewhere against the hour of a cut, with the cuts as
// made; nil where there are no panels.
func PanelsChart(c *Content, p *PourDay) *draw.Scene {
	m := draw.Multiples{Width: 172, Columns: 4, Title: "Chances against the hour of the cut, " + p.Name, Ink: ink, Key: []draw.KeyEntry{
		{Words: "edge ready", Pen: penReady}, {Words: "cracked elsewhere", Pen: penCracked}, {Words: "window", Fill: washBlue}, {Words: "range of its ends", Fill: wash}, {Words: "cut as made", Pen: penAsCut}}}
	from, to := panelHours(c, p)
	for _, w := range panelsInOrder(p) {
		if len(m.Cells) < mostPanels && len(w.Curve) > 1 {
			m.Cells = append(m.Cells, panelCell(c, p, w, from, to))
		}
	}
	if len(m.Cells) == 0 {
		return nil
	}
	if n := len(m.Cells); n <= 5 {
		m.Columns = max(3, n)
	}
	m.Desc = fmt.Sprintf("%d panels; the table beside it has the figures.", len(m.Cells))
	return m.Scene()
}

var (
	penReady   = draw.Pen{Color: green, Width: 0.5}
	penCracked = draw.Pen{Color: vermilion, Width: 0.5, Dash: []float64{1.6, 0.7}}
	penAsCut   = draw.Pen{Color: chalk, Width: 0.35, Dash: []float64{0.6, 0.5}}
)

// panelHours are the hours after placing worth drawing: from before the first edge is
// ready to after the last window closes and the last cut is made.
func panelHours(c *Content, p *PourDay) (from, to float64) {
	const around = 4.0
	from, to = math.Inf(1), 0
	known := 0.0
	for _, w := range p.Panels {
		if n := len(w.Curve); n > 0 {
			known = math.Max(known, w.Curve[n-1].Hours)
		}
		if w.Wet.Opens != nil {
			opens := w.Wet.Opens.Sub(w.Placed).Hours()
			from, to = math.Min(from, opens-around), math.Max(to, opens+around)
		}
		if w.Wet.Closes != nil {
			to = math.Max(to, w.Wet.Closes.Sub(w.Placed).Hours()+around)
		}
		for _, cut := range cutsOf(c, p, w.Panel) {
			from, to = math.Min(from, w.hoursIn(cut)-1), math.Max(to, w.hoursIn(cut)+1)
		}
	}
	from = math.Max(0, math.Floor(from))
	if to = math.Ceil(math.Min(to, known)); math.IsInf(from, 0) || to <= from {
		return 0, math.Max(known, 1)
	}
	return from, to
}

func panelCell(c *Content, p *PourDay, w PanelWindow, from, to float64) draw.Chart {
	ch := draw.Chart{Height: 35, Title: "Panel " + w.Panel, NoNames: true, Ink: ink, Quiet: quiet, Paper: paper}
	ch.X = draw.Axis{Title: "h after placing", Min: from, Max: to}
	values, _ := draw.Steps(from, to, 4)
	for _, v := range values {
		ch.X.Labels = append(ch.X.Labels, draw.Label{At: v, Words: fixed(v, 0)})
	}
	ch.Y = upTo(fmt.Sprintf("%s, cut as no. %d", w.Panel, w.Order), 0, 1, 2)
	ready, cracked := draw.Curve{Name: "edge ready", Pen: penReady}, draw.Curve{Name: "cracked elsewhere", Pen: penCracked}
	for i, k := range w.Curve {
		if i > 0 && k.Hours-w.Curve[i-1].Hours > mostGap {
			ready.X, ready.Y = append(ready.X, k.Hours), append(ready.Y, math.NaN())
			cracked.X, cracked.Y = append(cracked.X, k.Hours), append(cracked.Y, math.NaN())
		}
		ready.X, ready.Y = append(ready.X, k.Hours), append(ready.Y, k.Ready)
		cracked.X, cracked.Y = append(cracked.X, k.Hours), append(cracked.Y, k.Cracked)
	}
	ch.Curves = []draw.Curve{ready, cracked}
	ch.Spans = windowSpans(w)
	for _, cut := range cutsOf(c, p, w.Panel) {
		ch.Marks = append(ch.Marks, draw.Mark{At: w.hoursIn(cut), Words: cut.Joint, Pen: penAsCut})
	}
	return ch
}

// windowSpans shades a window and, over it, the ranges of its ends.
func windowSpans(w PanelWindow) []draw.Span {
	hours := func(t *time.Time) float64 { return t.Sub(w.Placed).Hours() }
	var spans []draw.Span
	if w.Wet.Opens != nil {
		span := draw.Span{From: hours(w.Wet.Opens), To: math.Inf(1), Fill: washBlue, NoEdges: true}
		if w.Wet.Closes != nil {
			span.To = hours(w.Wet.Closes)
		}
		spans = append(spans, span)
	}
	for _, ends := range [][2]*time.Time{{w.Wet.OpensLow, w.Wet.OpensHigh}, {w.Wet.ClosesLow, w.Wet.ClosesHigh}} {
		if ends[0] != nil && ends[1] != nil {
			spans = append(spans, draw.Span{From: hours(ends[0]), To: hours(ends[1]), Fill: wash, NoEdges: true})
		}
	}
	return spans
}

// panelCurves is the curves of the panels as a table.
func panelCurves(p *PourDay) table {
	t := table{caption: "Chances against the hour of the cut, wet saw", columns: []page.Column{{Head: "Panel", Share: 20}, {Head: "Hours after placing", Share: 25, Align: page.AlignDecimal},
		{Head: "Edge ready", Share: 25, Align: page.AlignDecimal}, {Head: "Cracked elsewhere", Share: 30, Align: page.AlignDecimal}}}
	for _, w := range panelsInOrder(p) {
		for _, k := range w.Curve {
			t.rows = append(t.rows, []page.Text{page.Plain(w.Panel), page.Plain(fixed(k.Hours, 1)), page.Plain(fixed(k.Ready, 2)), page.Plain(fixed(k.Cracked, 2))})
		}
	}
	return t
}
