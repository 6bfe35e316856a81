package plan

import (
	"fmt"
	"math"

	"slabwright/source"
)

// outsideTolerance is how far a joint or an opening may run over the outline
// before it is a problem, metres: more is a slip of the tape or of the finger.
const outsideTolerance = JointReach

// Check returns everything in the slab's shapes that cannot be as written, all at
// once. Fields are named from the slab ("joints[3].path_m[1]"); the caller puts the
// slab's own place before them with [Under]. It never changes the slab.
func (s Slab) Check() []Problem {
	problems := s.checkIDs()
	problems = append(problems, s.checkNumbers()...)
	outline := s.checkOutline()
	problems = append(problems, outline...)
	usable := len(outline) == 0
	for i := range s.Fixtures {
		problems = append(problems, s.checkFixture(i, usable)...)
	}
	for i := range s.Joints {
		problems = append(problems, s.checkJoint(i, usable)...)
	}
	for i, z := range s.Steel {
		problems = append(problems, z.check(fmt.Sprintf("steel[%d]", i))...)
	}
	for i := range s.CornerBars {
		problems = append(problems, s.checkCornerBars(i, usable)...)
	}
	for i, w := range s.Wheels {
		field := fmt.Sprintf("wheel_paths[%d]", i)
		if Polyline(w.Path).Length() == 0 {
			problems = append(problems, Problem{Field: field + ".path_m", Found: "a wheel path without length",
				Want: "two or more points", Mend: "Draw the line the wheels follow, or leave it out."})
		}
		problems = append(problems, checkRange(field+".width_m", &source.Fact{Value: w.Width}, 0.05, 20, "m")...)
	}
	return problems
}

// Inside reports whether p is in the slab's concrete or within tol metres of it:
// inside the outline and in no opening.
func (s Slab) Inside(p Point, tol float64) bool {
	if s.contains(p) {
		return true
	}
	if Ring(s.Outline).Distance(p) <= tol {
		return true
	}
	for _, f := range s.openings() {
		if Ring(f.Shape).Contains(p) && Ring(f.Shape).Distance(p) <= tol {
			return true
		}
	}
	return false
}

// Outside returns the first point of a line or area that is not in the slab within
// tol metres, and false when all are.
func (s Slab) Outside(points []Point, tol float64) (int, bool) {
	for i, p := range points {
		if !s.Inside(p, tol) {
			return i, true
		}
	}
	return 0, false
}

func (s Slab) checkIDs() []Problem {
	var problems []Problem
	first := map[string]string{}
	see := func(field, id string) {
		switch was, twice := first[id]; {
		case id == "":
			problems = append(problems, Problem{Field: field + ".id", Found: "no id",
				Want: "a short name of its own, such as J4", Mend: "Give it one; findings refer to it."})
		case twice:
			problems = append(problems, Problem{Field: field + ".id", Found: fmt.Sprintf("id %q, also of %s", id, was),
				Want: "an id used once in the slab", Mend: "Rename one of the two."})
		default:
			first[id] = field
		}
	}
	for i, f := range s.Fixtures {
		see(fmt.Sprintf("fixtures[%d]", i), f.ID)
	}
	for i, j := range s.Joints {
		see(fmt.Sprintf("joints[%d]", i), j.ID)
	}
	for i, z := range s.Steel {
		see(fmt.Sprintf("steel[%d]", i), z.ID)
	}
	for i, w := range s.Wheels {
		see(fmt.Sprintf("wheel_paths[%d]", i), w.ID)
	}
	for i, c := range s.CornerBars {
		see(fmt.Sprintf("corner_bars[%d]", i), c.ID)
	}
	return problems
}

func (s Slab) checkNumbers() []Problem {
	problems := checkRange("thickness_m", s.Thickness, 0.04, 1, "m")
	return append(problems, checkRange("bearing_deg", s.Bearing, 0, 360, "degrees")...)
}

// checkRange returns a problem when a fact lies outside its range; a length that
// fits once it is divided by 1000 was probably meant in millimetres.
func checkRange(field string, fact *source.Fact, low, high float64, unit string) []Problem {
	if fact == nil {
		return nil
	}
	v := fact.Value
	if lo, hi := fact.Bounds(); !(lo <= v && v <= hi) {
		return []Problem{{Field: field, Found: fmt.Sprintf("%g %s with a range of %g to %g", v, unit, lo, hi),
			Want: "a value inside its own range", Mend: "Swap low and high, or widen the range."}}
	}
	if v >= low && v <= high {
		return nil
	}
	p := Problem{Field: field, Found: fmt.Sprintf("%g %s", v, unit), Want: fmt.Sprintf("%g to %g %s", low, high, unit)}
	if milli := v / 1000; unit == "m" && milli >= low && milli <= high {
		p.Mend = fmt.Sprintf("Lengths are in metres: did you mean %g?", milli)
	} else {
		p.Mend = "Leave it out if nobody knows it."
	}
	return []Problem{p}
}

func (s Slab) checkOutline() []Problem {
	return checkRing("outline_m", "the outline", s.Outline)
}

// checkRing checks a ring of points: enough of them, finite, with an area, not
// crossing itself.
func checkRing(field, name string, points []Point) []Problem {
	for i, p := range points {
		if bad := checkFinite(fmt.Sprintf("%s[%d]", field, i), p); bad != nil {
			return []Problem{*bad}
		}
	}
	if len(points) < 3 {
		return []Problem{{Field: field, Found: fmt.Sprintf("%s has %d points", name, len(points)),
			Want: "three or more", Mend: "Walk round the edge and mark each corner."}}
	}
	ring := cleanRing(points)
	if len(ring) >= 3 && ring.flat() { // a bow tie encloses nothing either: say where it crosses
		if crossings := ring.selfCrossings(field, name, points); len(crossings) > 0 && !onOneLine(ring) {
			return crossings
		}
	}
	if len(ring) < 3 || ring.flat() {
		p := points[0]
		return []Problem{{Field: field, Place: &p, Found: fmt.Sprintf("%s encloses %.3g m²", name, Ring(points).Area()),
			Want: "an area", Mend: "The points lie on one line or on top of each other; look for a missing corner."}}
	}
	return ring.selfCrossings(field, name, points)
}

// onOneLine reports whether all points of a ring lie on one straight line.
func onOneLine(ring Ring) bool {
	for i := range ring {
		if Turn(ring[0], ring[1], ring[i]) != 0 {
			return false
		}
	}
	return true
}

func checkFinite(field string, p Point) *Problem {
	const farthest = 1e5 // 100 km: map coordinates belong in the anchor, not in the shapes
	if math.Abs(p.X) <= farthest && math.Abs(p.Y) <= farthest {
		return nil
	}
	return &Problem{Field: field, Found: fmt.Sprintf("(%g, %g)", p.X, p.Y), Want: "metres within 100 km of the origin",
		Mend: "Measure from a corner of the slab; put map coordinates in the anchor."}
}

// flat reports whether all points lie on one line within the snapping tolerance.
func (r Ring) flat() bool {
	_, width, _, _ := leastRectangle(r)
	return width <= SnapTolerance
}

// selfCrossings names every place where the ring crosses or touches itself.
func (r Ring) selfCrossings(field, name string, points []Point) []Problem {
	var problems []Problem
	sides := r.Sides()
	for i := range sides {
		for j := i + 1; j < len(sides); j++ {
			place, bad := sides[i].meets(sides[j], j == i+1, i == 0 && j == len(sides)-1)
			if !bad {
				continue
			}
			problems = append(problems, Problem{Field: fmt.Sprintf("%s[%d]", field, indexOf(points, sides[j].A)), Place: &place,
				Found: fmt.Sprintf("the side from point %d meets the side from point %d of %s", indexOf(points, sides[j].A), indexOf(points, sides[i].A), name),
				Want:  "sides that meet only at their ends", Mend: "Two points are probably in the wrong order."})
		}
	}
	return problems
}

func indexOf(points []Point, p Point) int {
	for i, q := range points {
		if q == p {
			return i
		}
	}
	return 0
}

// meets reports whether two sides of a ring meet where they should not: next is
// set when o follows s, last when s follows o round the ring's end.
func (s Segment) meets(o Segment, next, last bool) (Point, bool) {
	if next || last {
		shared, a, b := s.B, s.A, o.B
		if last {
			shared, a, b = s.A, s.B, o.A
		}
		back := Turn(a, shared, b) == 0 && a.Minus(shared).Dot(b.Minus(shared)) > 0
		return shared, back
	}
	if t, _, ok := s.Cross(o); ok {
		return s.At(t), true
	}
	if s.Overlap(o, 0) > 0 {
		t, _ := s.Nearest(o.A)
		return s.At(t), true
	}
	return Point{}, false
}
