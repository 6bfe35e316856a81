package report

import (
	"fmt"
	"math"
	"strings"

	"slabwright/internal/draw"
	"slabwright/plan"
)

// Sheet is the room a drawing has on a paper size, mm.
type Sheet struct {
	Paper         string
	Width, Height float64
}

// Sheets a plan is drawn for: the field left by the margins.
var (
	SheetA4 = Sheet{"A4", 182, 222}
	SheetA3 = Sheet{"A3", 392, 262}
)

// PlanSVG returns the drawing of the slab with its findings for an A4 sheet.
func PlanSVG(c *Content) []byte { return PlanFor(c, SheetA4, false).SVG() }

// PlanFor returns the drawing of the slab with its findings, at the largest scale
// of the list that fits the sheet, with north arrow, scale bar and key. Bars are
// drawn on demand: they are many.
func PlanFor(c *Content, s Sheet, bars bool) *draw.Scene {
	const foot = 37.0
	p := newPlanSheet(c, s.Width, s.Height-foot, sheetEdges)
	p.s.Height = p.fieldHeight + foot
	p.bars = bars
	p.all()
	p.measures()
	p.footer(p.fieldHeight+2, s.Paper)
	return p.s
}

// PlanSmall returns the plan without key for a corner of a page, to fit a box;
// only is the finding to show, empty for all.
func PlanSmall(c *Content, width, height float64, only string) *draw.Scene {
	p := newPlanSheet(c, width, height, edges{3, 3, 3, 3})
	p.small, p.only = true, only
	p.s.Height = p.fieldHeight
	p.all()
	return p.s
}

// planSheet is a plan being drawn.
type planSheet struct {
	c           *Content
	s           *draw.Scene
	to          draw.Transform
	n           float64 // scale 1:n
	fieldHeight float64
	labels      *draw.Labels
	small, bars bool
	only        string
}

// edges is the room round a plan, mm.
type edges struct{ left, top, right, foot float64 }

// sheetEdges leave room for the overall lengths at the left and below.
var sheetEdges = edges{left: 9, top: 9, right: 3, foot: 10}

func newPlanSheet(c *Content, width, height float64, e edges) *planSheet {
	low, high := extent(c)
	span := func(n float64) (float64, float64) {
		return (high.X-low.X)*1000/n + e.left + e.right, (high.Y-low.Y)*1000/n + e.top + e.foot
	}
	n := 0.0
	for _, try := range draw.Scales {
		if w, h := span(try); w <= width && h <= height {
			n = try
			break
		}
	}
	if e != sheetEdges || n == 0 { // a small plan need not be at a round scale
		n = math.Max((high.X-low.X)*1000/(width-e.left-e.right), (high.Y-low.Y)*1000/(height-e.top-e.foot))
	}
	_, h := span(n)
	p := &planSheet{c: c, n: n, fieldHeight: h}
	middle := draw.Point{X: e.left + (width-e.left-e.right)/2, Y: e.top + (h-e.top-e.foot)/2}
	p.to = draw.Fit(draw.Point(low), draw.Point(high), 1000/n, middle)
	p.labels = draw.NewLabels(width, h)
	p.s = draw.New(width, h, "Plan of "+or(c.Head.SlabName, c.Head.SlabID), planInWords(c))
	return p
}

// extent is the box round the slab. What stands beside it is drawn as far as the
// sheet reaches.
func extent(c *Content) (low, high plan.Point) {
	low, high = plan.Point{X: math.Inf(1), Y: math.Inf(1)}, plan.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	grow := func(points []plan.Point) {
		for _, q := range points {
			low.X, low.Y = math.Min(low.X, q.X), math.Min(low.Y, q.Y)
			high.X, high.Y = math.Max(high.X, q.X), math.Max(high.Y, q.Y)
		}
	}
	grow(c.Plan.Slab.Outline)
	if !(high.X > low.X) || !(high.Y > low.Y) {
		return plan.Point{}, plan.Point{X: 1, Y: 1}
	}
	return low, high
}

// planInWords says what the drawing shows to those who cannot see it.
func planInWords(c *Content) string {
	low, high := extent(c)
	var s strings.Builder
	fmt.Fprintf(&s, "Slab of %s m², %s m by %s m overall, %d panels, %d joints, %d fixtures, %d findings.",
		fixed(c.Plan.Area, 0), fixed(high.X-low.X, 1), fixed(high.Y-low.Y, 1),
		len(c.Plan.Panels), len(c.Plan.Slab.Joints), len(c.Plan.Slab.Fixtures), len(c.Findings))
	for _, f := range c.Findings {
		fmt.Fprintf(&s, " %s: %s, %s.", f.Finding.ID, f.Title, strings.TrimSuffix(f.Place, "."))
	}
	if len(c.Plan.Unseen) > 0 {
		fmt.Fprintf(&s, " %d places could not be seen.", len(c.Plan.Unseen))
	}
	return s.String()
}

// all draws every layer, what lies under first.
func (p *planSheet) all() {
	p.ground()
	if p.bars {
		p.barLines()
	}
	p.keepClear()
	p.fixtures()
	p.unseen()
	p.joints()
	p.dowels()
	p.outline()
	p.findings()
	if !p.small {
		p.findingWidths()
		p.jointWords()
		p.fixtureNames()
		p.pourNames()
		p.panelNames()
	}
}

func points(pts []plan.Point) []draw.Point {
	out := make([]draw.Point, len(pts))
	for i, q := range pts {
		out[i] = draw.Point(q)
	}
	return out
}

// ground lays a wash under every other pour, so that strips are told apart.
func (p *planSheet) ground() {
	g := p.s.Group("pours", "", p.to)
	for i, pour := range p.c.Plan.Pours {
		fill := paper
		if i%2 == 1 {
			fill = wash
		}
		area := &draw.Group{Class: "pour", Title: "Pour " + or(pour.Name, pour.ID)}
		edge := penPour
		if p.small {
			edge.Color = none
		}
		area.Add(draw.Area{Ring: points(pour.Area), Fill: fill, Pen: edge})
		g.Add(area)
	}
}

func (p *planSheet) barLines() {
	g := p.s.Group("bars", "Mesh and bars", p.to)
	for _, l := range p.c.Plan.BarLines {
		g.Add(draw.Line{Points: points(l[:]), Pen: penBar})
	}
}

func (p *planSheet) fixtures() {
	for _, f := range p.c.Plan.Slab.Fixtures {
		g := p.s.Group("fixture", or(f.Name, f.ID)+", "+string(f.Kind), draw.Paper)
		if len(f.Shape) < 3 || f.Kind == plan.Wall || f.Kind == plan.Building {
			heavy := draw.Pen{Color: ink, Width: 1.1}
			if p.small {
				heavy.Width = 0.7
			}
			for _, run := range p.clipLine(f.Shape) {
				g.Add(draw.Line{Points: run, Pen: heavy})
			}
			continue
		}
		fill := wash
		if f.Opening {
			fill = paper
		}
		g.Add(draw.Area{Ring: p.clipRing(f.Shape), Fill: fill, Pen: penFixture})
		if f.Isolated.Is("yes") {
			g.Add(draw.DoubleRing(p.onPaper(f.Shape), penIsolation, isolationHalf))
		}
		if f.Opening && len(f.Shape) == 4 && !p.small {
			hair, on := draw.Pen{Color: quiet, Width: 0.12}, p.onPaper(f.Shape)
			g.Add(draw.Line{Points: []draw.Point{on[0], on[2]}, Pen: hair}, draw.Line{Points: []draw.Point{on[1], on[3]}, Pen: hair})
		}
	}
}

func (p *planSheet) unseen() {
	if p.only != "" {
		return // a locator shows one thing
	}
	for _, u := range p.c.Plan.Unseen {
		g := p.s.Group("unseen", "Could not see: "+u.Why, p.to)
		g.Add(draw.Area{Ring: points(u.Area), Hatch: unseenHatch, Pen: penUnseen})
	}
}

func (p *planSheet) outline() {
	g := p.s.Group("outline", "Edge of the slab", p.to)
	pen := penOutline
	if p.small {
		pen.Width = 0.35
	}
	g.Add(draw.Area{Ring: points(p.c.Plan.Slab.Outline), Pen: pen})
	for _, f := range p.c.Plan.Slab.Fixtures {
		if f.Opening && len(f.Shape) > 2 {
			pen := penOpening
			if p.small {
				pen.Width = 0.3
			}
			g.Add(draw.Area{Ring: points(f.Shape), Pen: pen})
		}
	}
}
