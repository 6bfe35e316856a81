package restraint

import (
	"math"

	"slabwright/plan"
)

// Taken are the values to take where the plan does not know one, and what no plan
// knows. Those that were used belong in the assumptions.
type Taken struct {
	Sawn      func(joint string) float64 // hour at which a joint is sawn; +Inf for never
	Thickness float64                    // m
	Groove    float64                    // depth of groove over thickness
	Diameter  float64                    // of dowels and ties, m
	Spacing   float64                    // of dowels and ties, m
	Clear     float64                    // of the first dowel to a crossing, m
	Support   float64                    // of a dowel by the concrete, N/m³
	TieFree   float64                    // length on which a tie can stretch, m
	Strip     float64                    // give of an isolation strip, m
}

// UsualTaken returns values that are common practice: groove 1/4 of the depth, dowels
// of 20 mm at 300 mm, a strip of 10 mm of which half can be pressed together.
func UsualTaken(thickness float64, sawn func(joint string) float64) Taken {
	return Taken{Sawn: sawn, Thickness: thickness, Groove: 0.25, Diameter: 0.020, Spacing: 0.3, Clear: 0.15,
		Support: 200e9, TieFree: 0.1, Strip: 0.005}
}

const steelModulus = 200e9 // Pa

// LinesOf returns the joints of a plan as lines.
func LinesOf(s plan.Slab, t Taken) []Line {
	var out []Line
	thick := s.Thickness.Or(t.Thickness)
	for _, j := range s.Joints {
		l := Line{ID: j.ID, Path: j.Path}
		switch j.Kind {
		case plan.Sawn:
			l.Kind = SawnLine
			depth := math.Min(0.9, j.Groove.Or(t.Groove*thick)/thick)
			l.From, l.Share, l.FaceShare = t.Sawn(j.ID), NetSectionTension(depth), NetSectionBending(depth)
		case plan.Formed:
			l.Kind = FormedLine
		default:
			l.Kind, l.Give = IsolationLine, t.Strip
		}
		l.Bars = t.bars(j)
		out = append(out, l)
	}
	return out
}

// bars returns what lies across a joint as springs, nil for nothing.
func (t Taken) bars(j plan.Joint) *Bars {
	dowelled, tied := j.Transfer.Is("dowelled") || j.Dowels != nil, j.Transfer.Is("tied")
	if !dowelled && !tied {
		return nil
	}
	d := plan.Dowels{}
	if j.Dowels != nil {
		d = *j.Dowels
	}
	diameter, spacing := d.Diameter.Or(t.Diameter), d.Spacing.Or(t.Spacing)
	side := DowelSideStiffness(diameter, t.Support, steelModulus)
	b := &Bars{Along: side / spacing, Clear: d.Clear.Or(t.Clear), Diameter: diameter}
	switch {
	case tied, d.FreeAlong.Is("no"):
		b.Across = BarStretchStiffness(diameter, t.TieFree, steelModulus) / spacing
	case d.Skew != nil:
		b.Across = MisalignedStiffness(side, d.Skew.Value) / spacing
	}
	if d.FreeSide.Is("yes") {
		b.Along = 0
	}
	return b
}

// HoldsOf returns what holds the slab at fixtures: rigid where concrete was cast
// against them, with the give of a strip where they are isolated all round. One whose
// isolation nobody knows, or that is isolated in part, counts as cast against. One that
// no edge of the slab lies along holds nothing and is left out.
func HoldsOf(s plan.Slab, t Taken) []Hold {
	var out []Hold
	for _, f := range s.Fixtures {
		if len(f.Shape) < 2 || f.Kind == plan.Duct {
			continue
		}
		h := Hold{ID: f.ID, Path: f.Shape}
		if f.Opening {
			h.Path = append(append([]plan.Point(nil), f.Shape...), f.Shape[0])
		}
		if f.Isolated.Is("yes") {
			h.Give = t.Strip
		}
		if m := (Model{Slab: s}); m.rings() != nil && !m.edged(h.Path) {
			continue
		}
		out = append(out, h)
	}
	return out
}
