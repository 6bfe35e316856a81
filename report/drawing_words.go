package report

import "slabwright/internal/draw"

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
		g.Add(p.labels.Beside(path, draw.Text{Words: words, Height: letters, Color: chalk, Halo: paper}, p.reachOf(j)+1.35))
	}
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
		in := draw.Around(ring)
		mid := draw.Point{X: (in.X0 + in.X1) / 2, Y: (in.Y0 + in.Y1) / 2}
		words := or(f.Name, f.ID)
		w := draw.WidthOf(words, letters)
		if in.X1-in.X0 < w && in.Y1-in.Y0 > w && in.X1-in.X0 > letters {
			g.Add(draw.Text{At: mid, Lift: draw.Point{X: letters * 0.34}, Words: words, Height: letters, Anchor: draw.Middle, Angle: 90, Color: ink})
			continue
		}
		wanted := draw.Point{}
		if in.Y1-in.Y0 < letters {
			wanted.Y = -letters
		}
		off, _ := p.labels.Free(mid, w, letters, wanted, 9)
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
		off, _ := p.labels.Free(corner, w, letters+0.4, draw.Point{X: w/2 + 1.5, Y: -2.4}, 15)
		g.Add(draw.Text{At: corner, Lift: draw.Point{X: off.X, Y: off.Y + letters*0.34}, Words: words, Height: letters, Anchor: draw.Middle, Bold: true, Color: quiet, Halo: paper})
	}
}

func (p *planSheet) panelNames() {
	const letters = 2.6
	g := p.s.Group("panel-names", "", draw.Paper)
	for _, panel := range p.c.Plan.Panels {
		at := p.to.At(draw.Point(panel.Centroid))
		off, _ := p.labels.Free(at, draw.WidthOf(panel.ID, letters), letters, draw.Point{}, 12)
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
