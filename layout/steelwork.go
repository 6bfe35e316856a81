package layout

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/steel"
)

// trimmers returns the bars across the inside corners that no joint meets.
func (b Brief) trimmers(e *examined) []Trimmer {
	var out []Trimmer
	for _, x := range e.breaches {
		if x.rule == "corner" || x.rule == "bars" {
			out = append(out, b.trimmer(e, x))
		}
	}
	return out
}

// trimmer returns the bars across one inside corner.
func (b Brief) trimmer(e *examined, x breach) Trimmer {
	bar, _ := steel.FindBar(b.Steel.trimmer())
	length := steel.LeastTrimmerLength(bar.Diameter) / 1000
	bisector := e.into(x.at)
	middle := x.at.Plus(bisector.Times(0.05))
	across := bisector.Left().Times(length / 2)
	return Trimmer{At: x.at, From: middle.Minus(across), To: middle.Plus(across), Fixture: x.fixture,
		Bars: int(math.Ceil(steel.LeastTrimmerArea/bar.Area - 1e-9)), Bar: bar.Designation, Diameter: bar.Diameter / 1000,
		Spacing: steel.LeastTrimmerSpacing / 1000, Length: length, Why: e.whyBars(x, b.limit())}
}

// whyBars says what a joint to the corner would make.
func (e *examined) whyBars(x breach, limit float64) string {
	width, narrow := e.stripAt(x, limit)
	if !narrow || !(width > 0.01) {
		return "no joint meets this corner"
	}
	if width < narrowStrip*limit {
		return fmt.Sprintf("a joint to this corner would leave a strip of %.2f m", width)
	}
	return fmt.Sprintf("a joint to this corner would leave a panel of %.2f m more than %.1f times as long as wide", width, AspectWanted)
}

// crossedBy returns the slab with bars noted at the corners that no joint meets, and for
// the fixtures they belong to.
func crossedBy(s plan.Slab, bars []Trimmer) plan.Slab {
	s.Fixtures = append([]plan.Fixture{}, s.Fixtures...)
	s.CornerBars = append([]plan.CornerBars{}, s.CornerBars...)
	for _, t := range bars {
		for i := range s.Fixtures {
			if f := &s.Fixtures[i]; f.ID == t.Fixture && !f.Trimmers.Is("yes") {
				f.Trimmers = assumed("yes", "no joint meets its corners")
			}
		}
		if s.BarsAt(t.At) {
			continue
		}
		d := t.From.Minus(t.To)
		s.CornerBars = append(s.CornerBars, plan.CornerBars{ID: freeBars(s), At: t.At, Angle: roundTo(math.Atan2(d.Y, d.X)*180/math.Pi, 0.01), Bars: t.Bars,
			Diameter: fact(t.Diameter, t.Bar), Spacing: fact(t.Spacing, "as usual"), Length: fact(t.Length, "as usual"), Note: t.Why})
	}
	return s
}

func roundTo(v, step float64) float64 { return math.Round(v/step) * step }

// freeBars returns an id for the next bars across a corner.
func freeBars(s plan.Slab) string {
	for n := len(s.CornerBars) + 1; ; n++ {
		if id := fmt.Sprintf("CB%d", n); freeID(s, id) == id {
			return id
		}
	}
}

// into returns the direction from an inside corner into the concrete.
func (e *examined) into(at plan.Point) plan.Point {
	for _, p := range e.panels {
		for _, c := range p.InsideCorners {
			if c.At.To(at) > 2*plan.SnapTolerance {
				continue
			}
			if d, ok := c.Sides[0].Plus(c.Sides[1]).Times(-1).Unit(); ok {
				return d
			}
			return c.Sides[0].Left()
		}
	}
	return plan.Point{X: 1}
}

// meshCuts returns what is done to the mesh at each joint.
func (b Brief) meshCuts(s plan.Slab) []MeshCut {
	if b.Steel.Mesh == "" {
		return nil
	}
	do := map[string]MeshCut{
		"cut":        {Do: "cut", Note: "all wires cut below the groove, so that the joint can open"},
		"half":       {Do: "cut half", Note: "every second wire cut: the rest yields as the joint opens"},
		"continuous": {Do: "run through", Note: "the joint is tied: it opens little, and the next one takes its movement"},
	}[b.Steel.across()]
	var out []MeshCut
	for _, j := range s.Joints {
		c := do
		if j.Kind != plan.Sawn {
			c = MeshCut{Do: "stop", Note: "50 mm short of the joint on both sides"}
		}
		c.Joint = j.ID
		out = append(out, c)
	}
	return out
}

// zone returns the mesh as steel of the slab.
func (b Brief) zone(s plan.Slab) plan.BarZone {
	m, _ := steel.FindMesh(b.Steel.Mesh)
	return plan.BarZone{ID: freeID(s, "MESH"), Name: m.Designation, PitchX: fact(m.Pitch/1000, m.Designation), PitchY: fact(m.Pitch/1000, m.Designation),
		Diameter: fact(m.Wire/1000, m.Designation), AtJoints: assumed(b.Steel.across(), "as the brief asks")}
}

// steelDensity of bars, kg/m³.
const steelDensity = 7850.0

// Sheet of mesh as sold, m; what laps take is counted over it. Source: BS 4483, from
// memory.
const (
	sheetLength = 4.8
	sheetWidth  = 2.4
)

// quantities adds up what the layout takes.
func (b Brief) quantities(e *examined, trimmers []Trimmer, pours int) Quantities {
	q := Quantities{Pours: pours}
	area := 0.0
	for i, p := range e.panels {
		area += p.Area
		if !e.block[i] {
			q.Panels++
		}
	}
	for _, j := range e.slab.Joints {
		length := plan.Polyline(j.Path).Length()
		switch j.Kind {
		case plan.Sawn:
			q.Sawn += length
		case plan.Formed:
			q.Formed += length
		default:
			q.Isolation += length
		}
		if j.Dowels != nil {
			n := len(dowelsOf(e.slab, j))
			q.Dowels += n
			q.DowelMass += float64(n) * steel.CircleArea(j.Dowels.Diameter.Value) * j.Dowels.Length.Value * steelDensity
		}
	}
	q.Isolation += isolatedSides(e.slab)
	if m, ok := steel.FindMesh(b.Steel.Mesh); ok {
		lap := b.Steel.Lap
		if lap == 0 {
			lap = 0.4
		}
		laps := 1 / ((1 - lap/sheetLength) * (1 - lap/sheetWidth))
		q.Mesh = 2 * m.Area * 1e-6 * steelDensity * area * laps
	}
	for _, t := range trimmers {
		q.Trimmer += float64(t.Bars) * steel.CircleArea(t.Diameter) * t.Length * steelDensity
	}
	return q
}

// isolatedSides returns the length of strip along fixtures that are isolated along
// their own sides: those without a block-out round them.
func isolatedSides(s plan.Slab) float64 {
	length := 0.0
	for _, f := range s.Fixtures {
		if !f.Isolated.Is("yes") || f.Kind == plan.Duct {
			continue
		}
		if f.Opening {
			length += plan.Ring(f.Shape).Perimeter()
		} else {
			length += plan.Polyline(f.Shape).Length()
		}
	}
	return length
}

// freeID returns an id that nothing in the slab has.
func freeID(s plan.Slab, want string) string {
	used := map[string]bool{}
	for _, f := range s.Fixtures {
		used[f.ID] = true
	}
	for _, j := range s.Joints {
		used[j.ID] = true
	}
	for _, z := range s.Steel {
		used[z.ID] = true
	}
	for _, w := range s.Wheels {
		used[w.ID] = true
	}
	for _, c := range s.CornerBars {
		used[c.ID] = true
	}
	id := want
	for n := 2; used[id]; n++ {
		id = fmt.Sprintf("%s-%d", want, n)
	}
	return id
}

// cost returns what a layout costs by the user's rates.
func (r Rates) cost(q Quantities) float64 {
	return r.Sawn*q.Sawn + r.Formed*q.Formed + r.Isolation*q.Isolation + r.Dowel*float64(q.Dowels) + r.Steel*(q.Mesh+q.Trimmer) + r.StripStart*float64(q.Pours)
}

// dowelsOf returns the dowels of one joint. Only the joints that come near it are
// looked at, which counts on a yard with hundreds.
func dowelsOf(s plan.Slab, j plan.Joint) []plan.Bar {
	low, high := plan.Ring(j.Path).Box()
	near := plan.Slab{Joints: []plan.Joint{j}}
	for _, o := range s.Joints {
		l, h := plan.Ring(o.Path).Box()
		if o.ID != j.ID && l.X <= high.X+1 && h.X >= low.X-1 && l.Y <= high.Y+1 && h.Y >= low.Y-1 {
			near.Joints = append(near.Joints, o)
		}
	}
	return near.DowelBars(j)
}
