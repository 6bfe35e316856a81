package layout

import (
	"fmt"
	"math"

	"slabwright/plan"
)

// meet draws a joint from an inside corner to the edge: in line with one of its sides
// or away from it, the shortest that makes no sharp angle and no narrow strip.
func (x breach) meet(e *examined, limit float64) *Mend {
	corner, ok := e.cornerAt(x.at)
	if !ok {
		return nil
	}
	g := newGround(e.slab, ringBlocks(e.slab))
	var best plan.Polyline
	for _, way := range []plan.Point{corner.Sides[0].Times(-1), corner.Sides[1].Times(-1), e.into(x.at)} {
		if _, narrow := e.stripAt(x, limit); narrow {
			break
		}
		end, hit := g.firstHit(x.at.Plus(way.Times(fuzz)), way, 1000)
		path := plan.Polyline{x.at, end}
		if !hit || path.Length() < shortest || best != nil && path.Length() >= best.Length() || !fits(e.slab, g, path) {
			continue
		}
		best = path
	}
	if best == nil {
		return x.barsAcross(e, limit)
	}
	s := withJoints(e.slab)
	s.Joints = append(s.Joints, plan.Joint{ID: nextID(s), Kind: plan.Sawn, Path: best})
	return &Mend{fmt.Sprintf("Draw a joint from the corner to the edge, %.2f m.", best.Length()), s}
}

// barsAcross notes bars across the corner.
func (x breach) barsAcross(e *examined, limit float64) *Mend {
	b := Brief{}
	b.Spacing.Panel = limit
	t := b.trimmer(e, x)
	words := fmt.Sprintf("Lay %d bars %s across the corner, %.2f m long: they keep a crack narrow, they do not stop it.", t.Bars, t.Bar, t.Length)
	return &Mend{words, crossedBy(e.slab, []Trimmer{t})}
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
