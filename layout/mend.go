package layout

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/source"
	"slabwright/steel"
)

// leastDowelled is the thickness, m, under which round dowels have no guidance.
const leastDowelled = steel.LeastDowelledThickness / 1000

// mend returns the change that makes a breach go away, nil where none is known or the
// one known cannot be made here.
func (x breach) mend(e *examined, limit float64) *Mend {
	s := e.slab
	switch x.rule {
	case "sliver":
		return x.widen(e, limit)
	case "sharp":
		return x.squareUp(e)
	case "corner":
		return x.meet(e)
	case "tee":
		return goOn(s, x.joint, x.at)
	case "loose":
		fixed := settle(s)
		return &Mend{fmt.Sprintf("Run %s on to the next edge or joint.", x.joint), fixed}
	case "spacing", "aspect":
		return x.halve(e, limit)
	case "shape":
		return nil // it follows from the outline; the corner's own warning has the mend
	}
	return x.mendBars(s)
}

// widen takes away a joint beside a sliver where what is left is short enough, or
// moves it away.
func (x breach) widen(e *examined, limit float64) *Mend {
	p := plan.PanelByID(e.panels, x.panel)
	id, away := "", plan.Point{}
	best := 0.0
	for _, side := range p.Sides {
		d, ok := side.To.Minus(side.From).Unit()
		if l := side.Segment().Length(); ok && side.Joint != "" && l > best && math.Abs(d.Cross(plan.Direction(p.LongDirection))) < 0.3 {
			best, id, away = l, side.Joint, d.Left().Times(-1)
		}
	}
	if id == "" {
		return nil
	}
	i, err := jointIndex(e.slab, id)
	if err != nil {
		return nil
	}
	if s := without(e.slab, i); longest(s) <= limit*1.001 {
		return &Mend{fmt.Sprintf("Leave %s out: the panels beside it are short enough without it.", id), s}
	}
	by := 1.0 - x.value
	if s, err := MoveJoint(e.slab, id, away.Times(by)); err == nil {
		return &Mend{fmt.Sprintf("Move %s by %.2f m, so that the strip beside it is 1 m wide.", id, by), s}
	}
	return nil
}

func longest(s plan.Slab) (length float64) {
	panels, err := s.Panels()
	if err != nil {
		return math.Inf(1)
	}
	for _, p := range panels {
		length = math.Max(length, p.Length)
	}
	return length
}

// squareUp turns the end of a joint at a sharp corner by short legs.
func (x breach) squareUp(e *examined) *Mend {
	g := newGround(e.slab, ringBlocks(e.slab))
	for i, j := range e.slab.Joints {
		if j.ID != x.joint || len(j.Path) < 2 {
			continue
		}
		path := plan.Polyline(j.Path)
		atStart := path[0].To(x.at) <= plan.JointReach
		if atStart {
			path = backwards(path)
		}
		if path[len(path)-1].To(x.at) > plan.JointReach {
			return nil
		}
		turned, ok := g.turned(path)
		if !ok {
			return nil
		}
		if atStart {
			turned = backwards(turned)
		}
		s := withJoints(e.slab)
		s.Joints[i].Path = turned
		return &Mend{fmt.Sprintf("Turn the end of %s towards the square by short legs.", x.joint), s}
	}
	return nil
}

// meet draws a joint from an inside corner to the edge: in line with one of its sides
// or away from it, the shortest that makes no sharp angle and no narrow strip.
func (x breach) meet(e *examined) *Mend {
	corner, ok := e.cornerAt(x.at)
	if !ok {
		return nil
	}
	g := newGround(e.slab, ringBlocks(e.slab))
	var best plan.Polyline
	for _, way := range []plan.Point{corner.Sides[0].Times(-1), corner.Sides[1].Times(-1), e.into(x.at)} {
		end, hit := g.firstHit(x.at.Plus(way.Times(fuzz)), way, 1000)
		path := plan.Polyline{x.at, end}
		if !hit || path.Length() < shortest || best != nil && path.Length() >= best.Length() || !fits(e.slab, g, path) {
			continue
		}
		best = path
	}
	if best == nil {
		return x.barsAcross(e.slab)
	}
	s := withJoints(e.slab)
	s.Joints = append(s.Joints, plan.Joint{ID: nextID(s), Kind: plan.Sawn, Path: best})
	return &Mend{fmt.Sprintf("Draw a joint from the corner to the edge, %.2f m.", best.Length()), s}
}

// barsAcross notes bars across the inside corners of a fixture.
func (x breach) barsAcross(s plan.Slab) *Mend {
	if x.fixture == "" {
		return nil
	}
	s.Fixtures = append([]plan.Fixture{}, s.Fixtures...)
	for i := range s.Fixtures {
		if s.Fixtures[i].ID == x.fixture {
			s.Fixtures[i].Trimmers = taken("yes", "no joint can meet its corners")
		}
	}
	return &Mend{fmt.Sprintf("Lay bars across the corners of %s, %.0f mm² within %.1f m: they keep a crack narrow, they do not stop it.", x.fixture, steel.LeastTrimmerArea, steel.TrimmerZone/1000), s}
}

// fits reports whether a new joint meets edges and joints at 60 degrees or more and
// runs beside none of them so near that it makes a sliver.
func fits(s plan.Slab, g *ground, path plan.Polyline) bool {
	n := len(path)
	if g.sharpest(path[n-2], path[n-1]) < plan.SharpBelow || g.sharpest(path[1], path[0]) < plan.SharpBelow {
		return false
	}
	for _, j := range s.Joints {
		for _, o := range plan.Polyline(j.Path).Pieces() {
			for _, p := range path.Pieces() {
				d, _ := p.B.Minus(p.A).Unit()
				e, _ := o.B.Minus(o.A).Unit()
				if _, _, ok := p.Cross(o); ok && math.Abs(d.Cross(e)) < math.Sin(plan.SharpBelow*math.Pi/180) && !touches(p, o) {
					return false
				}
			}
		}
	}
	return !beside(s, path)
}

// touches reports whether two pieces only meet at an end of the first.
func touches(p, o plan.Segment) bool {
	_, a := o.Nearest(p.A)
	_, b := o.Nearest(p.B)
	return math.Min(a, b) <= plan.SnapTolerance
}

func (e *examined) cornerAt(at plan.Point) (plan.Corner, bool) {
	for _, p := range e.panels {
		for _, c := range p.InsideCorners {
			if c.At.To(at) <= 2*plan.SnapTolerance {
				return c, true
			}
		}
	}
	return plan.Corner{}, false
}

// goOn runs a joint that stops at the side of a panel on, through what it stops at, to
// the edge.
func goOn(s plan.Slab, id string, at plan.Point) *Mend {
	i, err := jointIndex(s, id)
	if err != nil {
		return nil
	}
	path := plan.Polyline(append([]plan.Point{}, s.Joints[i].Path...))
	atStart := path[0].To(at) <= plan.JointReach
	if atStart {
		path = backwards(path)
	}
	n := len(path)
	d, _ := path[n-1].Minus(path[n-2]).Unit()
	g := newGround(s, ringBlocks(s))
	end, hit := g.firstHit(at.Plus(d.Times(fuzz)), d, 1000)
	if !hit {
		return nil
	}
	path = straighten(append(path, end))
	if atStart {
		path = backwards(path)
	}
	out := withJoints(s)
	out.Joints[i].Path = path
	return &Mend{fmt.Sprintf("Run %s on to the edge, %.2f m more.", id, at.To(end)), out}
}

// halve draws a joint across a long panel, from edge to edge so that it stops at no
// panel's side: at the share of its length that makes the parts short enough, or at
// one near it where that meets something.
func (x breach) halve(e *examined, limit float64) *Mend {
	p := plan.PanelByID(e.panels, x.panel)
	if p.Length/2 < narrowest+0.4 || p.Width < narrowest {
		return nil
	}
	parts := math.Max(2, math.Ceil(p.Length/limit-1e-3))
	share := math.Floor(parts/2) / parts
	g := newGround(e.slab, ringBlocks(e.slab))
	low, way := panelStart(p)
	for _, off := range []float64{0, 0.07, -0.07, 0.14, -0.14} {
		at := low.Plus(way.Times((share + off) * p.Length))
		s, ok := acrossSlab(e.slab, plan.Sawn, at, p.LongDirection+90)
		if !ok || !allFit(e.slab, g, s.Joints[len(e.slab.Joints):]) {
			continue
		}
		return &Mend{fmt.Sprintf("Draw a joint across %s from edge to edge, %.2f m from its end.", x.panel, (share+off)*p.Length), s}
	}
	return nil
}

// panelStart returns the middle of one end of the least rectangle round a panel and
// the direction along it.
func panelStart(p *plan.Panel) (plan.Point, plan.Point) {
	way := plan.Direction(p.LongDirection)
	least, across := math.Inf(1), 0.0
	for _, c := range p.Rectangle {
		least = math.Min(least, c.Dot(way))
		across += c.Dot(way.Left()) / float64(len(p.Rectangle))
	}
	return way.Times(least).Plus(way.Left().Times(across)), way
}

func allFit(s plan.Slab, g *ground, joints []plan.Joint) bool {
	for _, j := range joints {
		if !fits(s, g, j.Path) {
			return false
		}
	}
	return true
}

// beside reports whether a new joint would run beside an edge or a joint so near that
// it makes a sliver.
func beside(s plan.Slab, path plan.Polyline) bool {
	for _, p := range path.Pieces() {
		d, _ := p.B.Minus(p.A).Unit()
		for _, o := range stops(s, -1) {
			e, ok := o.B.Minus(o.A).Unit()
			if !ok || math.Abs(d.Cross(e)) > 0.3 {
				continue
			}
			t0, t1 := o.A.Minus(p.A).Dot(d), o.B.Minus(p.A).Dot(d)
			if math.Min(math.Max(t0, t1), p.Length())-math.Max(math.Min(t0, t1), 0) < 0.2 {
				continue
			}
			if math.Min(math.Abs(o.A.Minus(p.A).Cross(d)), math.Abs(o.B.Minus(p.A).Cross(d))) < narrowest {
				return true
			}
		}
	}
	return false
}

// mendBars mends what is known of fixtures, bars and mesh rather than drawn.
func (x breach) mendBars(s plan.Slab) *Mend {
	out := withJoints(s)
	at := -1
	for i, j := range s.Joints {
		if j.ID == x.joint {
			at = i
		}
	}
	dowels := func(change func(d *plan.Dowels)) plan.Slab {
		d := *s.Joints[at].Dowels
		change(&d)
		out.Joints[at].Dowels = &d
		return out
	}
	switch x.rule {
	case "isolation":
		out.Fixtures = append([]plan.Fixture{}, s.Fixtures...)
		for i := range out.Fixtures {
			if out.Fixtures[i].ID == x.fixture {
				out.Fixtures[i].Isolated = taken("yes", "mended on the plan")
			}
		}
		return &Mend{fmt.Sprintf("Put a soft strip through the whole depth all round %s.", x.fixture), out}
	case "column":
		return x.blockOut(s)
	case "dowel clear":
		return &Mend{fmt.Sprintf("Leave %.1f m on each side of crossings without dowels in %s.", clearOfCrossing, x.joint),
			dowels(func(d *plan.Dowels) {
				d.Clear = &source.Fact{Value: clearOfCrossing, Known: source.Assumed, By: madeBy, Note: "mended on the plan"}
			})}
	case "dowel sideways":
		return &Mend{fmt.Sprintf("Use dowels with soft sides, or plates, in %s.", x.joint), dowels(func(d *plan.Dowels) { d.FreeSide = taken("yes", "mended on the plan") })}
	case "dowel thin":
		out.Joints[at].Dowels, out.Joints[at].Transfer = nil, taken("none", "too thin for round dowels")
		return &Mend{fmt.Sprintf("Leave the dowels of %s out and thicken the edges, or use plates.", x.joint), out}
	case "transfer":
		d, why := DowelFor(s.Thickness.Or(0))
		if d == nil {
			return &Mend{"No dowel fits: " + why + ".", s}
		}
		out.Joints[at].Dowels, out.Joints[at].Transfer = d, taken("dowelled", "mended on the plan")
		return &Mend{fmt.Sprintf("Put dowels of %.0f mm at %.0f mm in %s.", d.Diameter.Value*1000, d.Spacing.Value*1000, x.joint), out}
	case "steel":
		out.Steel = append([]plan.BarZone{}, s.Steel...)
		for i := range out.Steel {
			if out.Steel[i].ID == x.other {
				out.Steel[i].AtJoints = taken("cut", "mended on the plan")
			}
		}
		return &Mend{fmt.Sprintf("Cut %s at every joint.", x.other), out}
	}
	return nil
}

// blockOut draws the block-out of a column along the joints nearest to it.
func (x breach) blockOut(s plan.Slab) *Mend {
	low, _ := plan.Ring(s.Outline).Box()
	f := straight(low, mainDirections(plan.Ring(s.Outline).Anticlockwise())[0])
	for _, c := range s.Fixtures {
		if c.ID != x.fixture {
			continue
		}
		b, ok := diamondOf(c, f, s.Outline)
		if !ok {
			return nil
		}
		out := withJoints(s)
		for _, p := range outlineClip(s, b.ring) {
			out.Joints = append(out.Joints, plan.Joint{ID: nextID(out), Kind: plan.Isolation, Path: p, Transfer: taken("none", "a soft strip through the whole depth")})
		}
		out, err := checked(s, settle(out))
		if err != nil {
			return nil
		}
		return &Mend{fmt.Sprintf("Draw a block-out turned 45 degrees round %s.", x.fixture), out}
	}
	return nil
}
