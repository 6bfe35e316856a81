package flexure

import (
	"fmt"
	"math"

	"slabwright/plan"
)

// Load is something that presses on the slab: a wheel, the foot of a post, a pallet,
// a wall. Give either Radius (a circle), or Area (any convex outline), or Line. It
// may stand across a joint; it may not reach over the edge.
type Load struct {
	ID     string       `json:"id"`
	Force  float64      `json:"force_n"`            // down; of the whole load
	At     plan.Point   `json:"at"`                 // middle of a circle
	Radius float64      `json:"radius_m,omitempty"` // of a circle
	Area   []plan.Point `json:"area_m,omitempty"`   // of a patch
	Line   []plan.Point `json:"line_m,omitempty"`   // of a line load
	Name   string       `json:"name,omitempty"`     // "front left wheel"
	Stays  bool         `json:"stays,omitempty"`    // a post or store, not a passing wheel
	Group  string       `json:"group,omitempty"`    // of wheels of one axle
}

// RoundWheel returns a wheel whose contact is a circle, found from the tyre pressure.
//
//	force [N]   pressure [Pa], 0.5 to 1 MPa for trucks, 1 to 1.4 for solid tyres under a stacker
func RoundWheel(id string, at plan.Point, force, pressure float64) Load {
	return Load{ID: id, Name: "wheel", At: at, Force: force, Radius: EqualAreaRadius(force / pressure)}
}

// Post returns the foot of a rack or column, a square plate of a given side, turned
// by an angle in degrees.
func Post(id string, at plan.Point, force, side, angle float64) Load {
	l := Patch(id, at, force, side, side, angle)
	l.Name, l.Stays = "post", true
	return l
}

// Patch returns a rectangle of length along and width across a direction given in
// degrees anticlockwise from x: a tyre's contact, a pallet.
func Patch(id string, middle plan.Point, force, length, width, angle float64) Load {
	along := plan.Direction(angle)
	across := along.Left()
	corner := func(a, b float64) plan.Point {
		return middle.Plus(along.Times(a * length / 2)).Plus(across.Times(b * width / 2))
	}
	return Load{ID: id, Name: "patch", At: middle, Force: force, Area: []plan.Point{corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)}}
}

// Wall returns a load along a line, N/m.
func Wall(id string, line []plan.Point, perMetre float64) Load {
	return Load{ID: id, Name: "line load", Line: line, Force: perMetre * plan.Polyline(line).Length(), Stays: true}
}

// Axle is two or four wheels that roll together.
type Axle struct {
	Force    float64 // on the axle, N
	Track    float64 // between the middles of its two sides, m
	Pair     float64 // between the two tyres of a side, m; 0 for single tyres
	Pressure float64 // of the tyres, Pa
}

// At returns the wheels of the axle with its middle at a place, rolling in a
// direction given in degrees anticlockwise from x.
func (a Axle) At(id string, middle plan.Point, heading float64) []Load {
	across := plan.Direction(heading).Left()
	places := []float64{-a.Track / 2, a.Track / 2}
	if a.Pair > 0 {
		places = []float64{-(a.Track + a.Pair) / 2, -(a.Track - a.Pair) / 2, (a.Track - a.Pair) / 2, (a.Track + a.Pair) / 2}
	}
	var wheels []Load
	for i, y := range places {
		w := RoundWheel(fmt.Sprintf("%s-%d", id, i+1), middle.Plus(across.Times(y)), a.Force/float64(len(places)), a.Pressure)
		w.Group = id
		wheels = append(wheels, w)
	}
	return wheels
}

// circleSides is how many sides stand for a circle, whose area the polygon keeps.
const circleSides = 48

// ring returns the outline of a circle or patch, anticlockwise; nil for a line.
func (l Load) ring() plan.Ring {
	if len(l.Area) > 0 {
		return plan.Ring(l.Area).Anticlockwise()
	}
	if !(l.Radius > 0) {
		return nil
	}
	const turn = 2 * math.Pi / circleSides
	r := l.Radius * math.Sqrt(turn/math.Sin(turn))
	var ring plan.Ring
	for i := range circleSides {
		ring = append(ring, l.At.Plus(plan.Point{X: r * math.Cos(turn*float64(i)), Y: r * math.Sin(turn*float64(i))}))
	}
	return ring
}

// middle returns where the load has its centre.
func (l Load) middle() plan.Point {
	switch {
	case len(l.Area) > 0:
		return plan.Ring(l.Area).Centroid()
	case len(l.Line) > 0:
		at, _ := plan.Polyline(l.Line).At(plan.Polyline(l.Line).Length() / 2)
		return at
	}
	return l.At
}

// radius returns that of the circle of equal area; 0 for a line.
func (l Load) radius() float64 {
	if len(l.Area) > 0 {
		return EqualAreaRadius(plan.Ring(l.Area).Area())
	}
	return l.Radius
}

// hangOver is the share of a load that may lie over the edge before it is refused:
// what the sides of a polygon reach out of a circle that touches the edge.
const hangOver = 0.005

func (p Plate) checkLoads(loads []Load) []error {
	b := bounds{}
	for i, l := range loads {
		field := fmt.Sprintf("loads[%d] %s", i, l.ID)
		b.need(field+" force", l.Force, 0, 1e9, "N")
		shapes := 0
		for _, has := range []bool{l.Radius > 0, len(l.Area) > 0, len(l.Line) > 0} {
			if has {
				shapes++
			}
		}
		if shapes != 1 {
			b.say(field, fmt.Sprintf("%d shapes", shapes), "one of radius, area and line", "Give the contact of a wheel as a circle or an outline.")
			continue
		}
		if bad := l.checkShape(); bad != "" {
			b.say(field, bad, "a convex outline", "Split it in convex parts.")
			continue
		}
		if place, share := p.offSlab(l); share > hangOver {
			b = append(b, plan.Problem{Field: field, Place: &place, Found: fmt.Sprintf("%.0f %% of the load lies off the slab", 100*share),
				Want: "all of it on the slab", Mend: "Move it in from the edge or the opening, or give the part that stands on the slab."})
		}
	}
	return b
}

func (l Load) checkShape() string {
	if len(l.Line) > 0 {
		if len(l.Line) < 2 || plan.Polyline(l.Line).Length() == 0 {
			return "a line without length"
		}
		return ""
	}
	for _, q := range append([]plan.Point{l.At}, l.Area...) {
		if !(math.Abs(q.X) < 1e7 && math.Abs(q.Y) < 1e7) {
			return "a place that is no number"
		}
	}
	if l.Radius > 100 {
		return fmt.Sprintf("a radius of %g m", l.Radius)
	}
	ring := l.ring()
	if len(ring) < 3 || !(ring.Area() > 0) {
		return "an outline without area"
	}
	for i, q := range ring {
		if ring[(i+1)%len(ring)].Minus(q).Cross(ring[(i+2)%len(ring)].Minus(q)) < -1e-12*ring.Area() {
			return "an outline that turns inwards"
		}
	}
	return ""
}

// offSlab returns about which share of a load lies off the slab, and where. It looks
// at the middles of about a thousand equal parts.
func (p Plate) offSlab(l Load) (where plan.Point, share float64) {
	points := l.samples()
	off := 0
	for _, q := range points {
		if !p.Slab.Inside(q, 1e-6) {
			off++
			where = q
		}
	}
	return where, float64(off) / float64(len(points))
}

// samples returns the middles of equal parts of a load.
func (l Load) samples() (points []plan.Point) {
	if line := plan.Polyline(l.Line); len(line) > 0 {
		const parts = 1000
		for i := range parts {
			at, _ := line.At(line.Length() * (float64(i) + 0.5) / parts)
			points = append(points, at)
		}
		return points
	}
	ring := l.ring()
	low, high := ring.Box()
	const across = 36
	for i := range across {
		for j := range across {
			q := plan.Point{X: low.X + (high.X-low.X)*(float64(i)+0.5)/across, Y: low.Y + (high.Y-low.Y)*(float64(j)+0.5)/across}
			if ring.Contains(q) {
				points = append(points, q)
			}
		}
	}
	return points
}
