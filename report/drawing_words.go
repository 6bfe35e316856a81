package report

import (
	"math"

	"slabwright/internal/draw"
)

// jointWords writes each joint's id along it, with the hours from placing to
// sawing and what became of it where known.
func (p *planSheet) jointWords() {
	const letters = 2.3
	g := p.s.Group("joint-names", "", draw.Paper)
	symbols := map[string]JointSymbol{}
	for _, s := range p.c.Plan.Symbols {
		symbols[s.ID] = s
	}
	for _, j := range p.c.Plan.Slab.Joints {
		path := p.onPaper(j.Path)
		words := j.ID
		if s, ok := symbols[j.ID]; ok {
			if s.Hours != nil {
				words += " " + fixed(*s.Hours, 0) + thin + "h"
			}
			if s.Opened == "no" {
				words += " not opened"
			}
		}
		p.alongJoint(g, path, words, letters, p.reachOf(j)+1.35)
	}
}

// alongJoint writes words along a path where they stand clear, else over lines,
// else at its middle whatever is there; away is how far off the path, mm.
func (p *planSheet) alongJoint(g *draw.Group, path []draw.Point, words string, letters, away float64) {
	w := draw.WidthOf(words, letters) + 0.6
	put := func(share, side float64, strict, force bool) bool {
		s := stationAt(path, share)
		angle := math.Atan2(-s.uy, s.ux) * 180 / math.Pi
		if angle > 91 {
			angle -= 180
		} else if angle < -89 {
			angle += 180
		}
		sin, cos := math.Sincos(angle * math.Pi / 180)
		bw, bh := w*math.Abs(cos)+letters*math.Abs(sin), w*math.Abs(sin)+letters*math.Abs(cos)
		up := draw.Point{X: -side * away * sin, Y: -side * away * cos}
		if _, ok := p.labels.search(s.at, bw, bh, up, 0, strict); !ok && !force {
			return false
		}
		base := draw.Point{X: up.X + letters*0.3*sin, Y: up.Y + letters*0.3*cos}
		g.Add(draw.Text{At: s.at, Lift: base, Words: words, Height: letters, Anchor: draw.Middle, Angle: angle, Color: chalk, Halo: paper})
		return true
	}
	for _, strict := range []bool{true, false} {
		for _, share := range []float64{0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6, 0.22, 0.78} {
			if put(share, 1, strict, false) || put(share, -1, strict, false) {
				return
			}
		}
	}
	put(0.5, 1, false, true)
}

// fixtureNames writes each fixture's name in it, upright where it is too narrow,
// or beside it where it is too small.
func (p *planSheet) fixtureNames() {
	const letters = 2.4
	g := p.s.Group("fixture-names", "", draw.Paper)
	for _, f := range p.c.Plan.Slab.Fixtures {
		ring := p.clipRing(f.Shape)
		if len(ring) == 0 {
			continue
		}
		in := around(ring)
		mid := draw.Point{X: (in.x0 + in.x1) / 2, Y: (in.y0 + in.y1) / 2}
		words := or(f.Name, f.ID)
		w := draw.WidthOf(words, letters)
		if in.x1-in.x0 < w && in.y1-in.y0 > w && in.x1-in.x0 > letters {
			g.Add(draw.Text{At: mid, Lift: draw.Point{X: letters * 0.34}, Words: words, Height: letters, Anchor: draw.Middle, Angle: 90, Color: ink})
			continue
		}
		wanted := draw.Point{}
		if in.y1-in.y0 < letters {
			wanted.Y = -letters
		}
		off, _ := p.labels.free(mid, w, letters, wanted, 9)
		g.Add(draw.Text{At: mid, Lift: draw.Point{X: off.X, Y: off.Y + letters*0.34}, Words: words, Height: letters, Anchor: draw.Middle, Color: ink, Halo: paper})
	}
}

// pourNames writes the name and start of each pour in its lower left corner.
func (p *planSheet) pourNames() {
	const letters = 2.5
	clk := clockOf(p.c.Head)
	g := p.s.Group("pour-names", "", draw.Paper)
	for _, pour := range p.c.Plan.Pours {
		if len(pour.Area) == 0 {
			continue
		}
		corner := p.to.At(draw.Point(pour.Area[0]))
		for _, q := range pour.Area {
			if a := p.to.At(draw.Point(q)); a.Y-a.X > corner.Y-corner.X {
				corner = a
			}
		}
		words := or(pour.Name, pour.ID)
		if pour.Start != nil {
			words += " · " + clk.hour(*pour.Start)
		}
		w := draw.WidthOf(words, letters)
		off, _ := p.labels.free(corner, w, letters+0.4, draw.Point{X: w/2 + 1.5, Y: -2.4}, 15)
		g.Add(draw.Text{At: corner, Lift: draw.Point{X: off.X, Y: off.Y + letters*0.34}, Words: words, Height: letters, Anchor: draw.Middle, Bold: true, Color: quiet, Halo: paper})
	}
}

func (p *planSheet) panelNames() {
	const letters = 2.6
	g := p.s.Group("panel-names", "", draw.Paper)
	for _, panel := range p.c.Plan.Panels {
		at := p.to.At(draw.Point(panel.Centroid))
		off, _ := p.labels.free(at, draw.WidthOf(panel.ID, letters), letters, draw.Point{}, 12)
		g.Add(draw.Text{At: at, Lift: draw.Point{X: off.X, Y: off.Y + letters*0.34}, Words: panel.ID, Height: letters, Anchor: draw.Middle, Color: quiet, Halo: paper})
	}
}

// measures draws the overall length and width outside the plan.
func (p *planSheet) measures() {
	low, high := extent(p.c)
	a, b := p.to.At(draw.Point(low)), p.to.At(draw.Point(high))
	g := p.s.Group("measures", "Overall lengths", draw.Paper)
	const letters = 2.5
	y := a.Y + 6
	g.Add(draw.Line{Points: []draw.Point{{X: a.X, Y: y}, {X: b.X, Y: y}}, Pen: penMeasure, Start: draw.Tick, End: draw.Tick},
		draw.Text{At: draw.Point{X: (a.X + b.X) / 2, Y: y + 0.9}, Words: with(fixed(high.X-low.X, 2), "m"), Height: letters, Anchor: draw.Middle, Color: ink, Halo: paper})
	x := a.X - 6
	g.Add(draw.Line{Points: []draw.Point{{X: x, Y: a.Y}, {X: x, Y: b.Y}}, Pen: penMeasure, Start: draw.Tick, End: draw.Tick},
		draw.Text{At: draw.Point{X: x + 0.9, Y: (a.Y + b.Y) / 2}, Words: with(fixed(high.Y-low.Y, 2), "m"), Height: letters, Anchor: draw.Middle, Angle: 90, Color: ink, Halo: paper})
}
