package flexure

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/source"
)

// closed is what a closed form gives for one load of a plate.
type closed struct {
	position   Position
	form       string // what it is called
	source     source.Citation
	stress     float64 // of the loads alone, Pa
	deflection float64 // of the loads alone, m
	reason     string  // why the plate may differ
	corner     plan.Point
	passed     float64 // share of the load that a joint passes on
}

// border is a free edge, the edge of an opening or a joint beside a load.
type border struct {
	segment plan.Segment
	passed  float64 // load transfer by deflection across it; 0 for an edge
	away    float64 // of the load's middle
}

// borders lists the edges and parting joints of a plate by their distance to a place.
func (p Plate) borders(at plan.Point, radius float64) (list []border) {
	add := func(s plan.Segment, passed float64) {
		if s.Length() > 0 {
			_, away := s.Nearest(at)
			list = append(list, border{s, passed, away})
		}
	}
	for _, r := range append(p.openings(), p.Slab.Outline) {
		for _, s := range r.Sides() {
			add(s, 0)
		}
	}
	for i, t := range p.transfers() {
		if t.Kind == WholeJoint {
			continue
		}
		for _, s := range plan.Polyline(p.Slab.Joints[i].Path).Pieces() {
			add(s, t.Efficiency(p, radius))
		}
	}
	return list
}

// besideEdge is how far from an edge, over l and beyond its radius, a load still counts
// as at the edge; farInside from where on it counts as far from it. Between them lie
// both forms. Chosen by the project from plate solutions.
const (
	besideEdge = 0.25
	farInside  = 1.5
)

// closedFor chooses the closed form for a load from where it stands.
func (p Plate) closedFor(l Load) closed {
	at, a, r := l.middle(), l.radius(), p.stiffness()
	near := []border{}
	nearest := border{away: math.Inf(1)}
	for _, b := range p.borders(at, a) {
		if b.away < nearest.away {
			nearest = b
		}
		if b.away <= a+besideEdge*r {
			near = append(near, b)
		}
	}
	for i, b := range near {
		for _, c := range near[i+1:] {
			if corner, ok := meeting(b.segment, c.segment); ok {
				return p.closedCorner(l, a, r, corner, math.Max(b.passed, c.passed))
			}
		}
	}
	if len(near) > 0 {
		return p.closedEdge(l, a, r, near[0].passed)
	}
	c := p.closedInterior(l, a, r)
	if nearest.away < a+farInside*r {
		edge := p.closedEdge(l, a, r, nearest.passed)
		c.reason = fmt.Sprintf("The load stands between interior and edge, %.2f m from an edge: the edge form gives %.3g MPa and %.3g mm.", nearest.away, edge.stress/1e6, edge.deflection*1e3)
	}
	return c
}

// meeting returns where two edges that are not nearly along one line meet.
func meeting(s, o plan.Segment) (plan.Point, bool) {
	a, _ := s.B.Minus(s.A).Unit()
	b, _ := o.B.Minus(o.A).Unit()
	if math.Abs(a.Cross(b)) < 0.5 {
		return plan.Point{}, false
	}
	for _, q := range [2]plan.Point{s.A, s.B} {
		if _, d := o.Nearest(q); d < plan.JointReach {
			return q, true
		}
	}
	if t, _, ok := s.Cross(o); ok {
		return s.At(t), true
	}
	return plan.Point{}, false
}

// notCounted are the reasons common to all closed forms.
func (p Plate) notCounted() string {
	text := ""
	if p.Warp.Difference != 0 {
		text += " The form has the slab lie on the ground everywhere; warp lifts it here and there."
	}
	if p.theory() == Thick {
		text += " The form is of thin plates."
	}
	if len(p.Zones) > 0 {
		text += " The form has the ground alike everywhere."
	}
	return text
}

func (p Plate) closedInterior(l Load, a, r float64) closed {
	c := closed{position: Interior, form: "exact thin plate without edges, with the other loads of the slab", source: source.Cite("timoshenko", "elastic foundation")}
	c.stress, c.deflection = p.exactInterior(l, a, r)
	c.reason = "The slab has edges." + p.notCounted()
	return c
}

// exactInterior returns the greatest tension underneath and the deflection below a load
// of an unbounded slab, with all other loads as points.
func (p Plate) exactInterior(l Load, a, r float64) (stress, deflection float64) {
	h := p.Thickness
	own := ExactInteriorStress(l.Force, a, h, r, p.Poisson) * h * h / 6
	m := [3]float64{own, own, 0}
	deflection = ExactInteriorDeflection(l.Force, a, r, p.Support)
	at := l.middle()
	for _, o := range p.Loads {
		away := o.middle().Minus(at)
		if away.Norm() == 0 || len(o.Line) > 0 {
			continue
		}
		x := away.Norm() / r
		deflection += o.Force * PointDeflection(x) / (p.Support * r * r)
		if x > 8 {
			continue
		}
		along, across := NeighbourMoments(x, p.Poisson)
		way, _ := away.Unit()
		m[0] += o.Force * (along*way.X*way.X + across*way.Y*way.Y)
		m[1] += o.Force * (along*way.Y*way.Y + across*way.X*way.X)
		m[2] += o.Force * (along - across) * way.X * way.Y
	}
	most, _, _ := principal(m)
	return 6 * most / (h * h), deflection
}

func (p Plate) closedEdge(l Load, a, r, efficiency float64) closed {
	passed := efficiency / (1 + efficiency)
	return closed{position: Edge, form: "wheel touching a free edge, less what a joint passes on", source: source.Cite("westergaard1948", "edge"), passed: passed,
		stress:     (1 - stressPassed(efficiency)) * EdgeStress(Circle, l.Force, a, p.Modulus, p.Thickness, p.Poisson, p.Support),
		deflection: (1 - passed) * EdgeDeflection(Circle, l.Force, a, p.Modulus, p.Thickness, p.Poisson, p.Support),
		reason:     "The form is of one circle that touches a straight edge." + p.notCounted()}
}

func (p Plate) closedCorner(l Load, a, r float64, at plan.Point, efficiency float64) closed {
	passed := efficiency / (1 + efficiency)
	return closed{position: Corner, form: "wheel touching both edges of a free corner, less what a joint passes on", source: source.Cite("ioannides1985", "corner"), corner: at, passed: passed,
		stress:     (1 - passed) * CornerStressIoannides(l.Force, a, p.Thickness, r),
		deflection: (1 - passed) * CornerDeflectionIoannides(l.Force, a, r, p.Support),
		reason:     "The form is of one circle that touches both edges of a square corner." + p.notCounted()}
}

// stressPassed returns the share of the edge stress that a joint takes to its other
// side by the load transfer by deflection, for a wheel of about 0.2 l. The stress on the
// other side falls off quicker than the deflection: at 0.83 it is 0.37 of that under the
// wheel, so 0.27 of the whole is passed on.
//
// Source: our own, a curve through plate solutions of two slabs joined by a shear
// spring: 0.082 → 0.021, 0.423 → 0.126, 0.828 → 0.366, 0.968 → 0.662, 1 → 1.
func stressPassed(efficiency float64) float64 {
	table := [][2]float64{{0, 0}, {0.082, 0.021}, {0.423, 0.126}, {0.828, 0.366}, {0.968, 0.662}, {1, 1}}
	e := math.Max(0, math.Min(1, efficiency))
	for i := 1; i < len(table); i++ {
		if a, b := table[i-1], table[i]; e <= b[0] {
			ratio := a[1] + (e-a[0])/(b[0]-a[0])*(b[1]-a[1])
			return ratio / (1 + ratio)
		}
	}
	return 0.5
}
