package layout

import (
	"fmt"

	"slabwright/plan"
)

// SnapReach is how near to an edge or a joint the end of a drawn joint has to be to be
// put on it, m: a finger on a plan 20 m wide on a phone covers about as much.
const SnapReach = 0.5

// AddJoint returns the slab with a joint drawn along a path. Ends near an edge, an
// opening or another joint are put on it; other ends run on to the next one, since a
// joint that stops inside a panel goes on as a crack. Where the path crosses openings
// or block-outs it becomes several joints.
//
// The error is a plan.Problem with the place and a likely mend.
func AddJoint(s plan.Slab, kind plan.JointKind, path []plan.Point) (plan.Slab, error) {
	if kind != plan.Sawn && kind != plan.Formed && kind != plan.Isolation {
		return s, plan.Problem{Field: "kind", Found: fmt.Sprintf("%q", kind), Want: "sawn, formed or isolation", Mend: "A joint cut later is sawn."}
	}
	if plan.Polyline(path).Length() < shortest {
		return s, plan.Problem{Field: "path_m", Place: first(path), Found: fmt.Sprintf("a joint %.2f m long", plan.Polyline(path).Length()),
			Want: fmt.Sprintf("%.1f m or more", shortest), Mend: "Tap two places further apart."}
	}
	line := append(plan.Polyline{}, path...)
	line[0] = snapped(s, line[0])
	line[len(line)-1] = snapped(s, line[len(line)-1])
	g := newGround(s, ringBlocks(s))
	pieces := g.clip(line)
	if len(pieces) == 0 {
		return s, plan.Problem{Field: "path_m", Place: first(path), Found: "a joint outside the concrete",
			Want: "a joint inside the outline, clear of openings", Mend: "Start it on an edge."}
	}
	out := withJoints(s)
	for _, p := range pieces {
		out.Joints = append(out.Joints, plan.Joint{ID: nextID(out), Kind: kind, Path: p})
	}
	return checked(s, settle(out))
}

// AddJointAt returns the slab with a joint at a typed distance from a setting-out
// point: square to the direction in which the distance is measured (degrees
// anticlockwise from x), from edge to edge, broken where openings and block-outs are.
func AddJointAt(s plan.Slab, kind plan.JointKind, from plan.Point, degrees, distance float64) (plan.Slab, error) {
	at := from.Plus(plan.Direction(degrees).Times(distance))
	out, ok := acrossSlab(s, kind, at, degrees+90)
	if !ok {
		return s, plan.Problem{Field: "distance", Place: &at, Found: fmt.Sprintf("no concrete at %.3f m", distance),
			Want: "a distance within the slab", Mend: "Look at the setting-out point and the direction; distances are in metres."}
	}
	return checked(s, settle(out))
}

// acrossSlab draws a straight joint through a place from edge to edge.
func acrossSlab(s plan.Slab, kind plan.JointKind, at plan.Point, degrees float64) (plan.Slab, bool) {
	way := plan.Direction(degrees)
	low, high := plan.Ring(s.Outline).Box()
	reach := high.Minus(low).Norm() + at.To(low)
	pieces := newGround(s, ringBlocks(s)).clip(plan.Polyline{at.Minus(way.Times(reach)), at.Plus(way.Times(reach))})
	out := withJoints(s)
	for _, p := range pieces {
		if p.Length() >= shortest {
			out.Joints = append(out.Joints, plan.Joint{ID: nextID(out), Kind: kind, Path: p})
		}
	}
	return out, len(out.Joints) > len(s.Joints)
}

// MoveJoint returns the slab with one joint moved. Its ends are run on or cut back to
// what they stopped at, and joints that stopped at it follow.
func MoveJoint(s plan.Slab, id string, by plan.Point) (plan.Slab, error) {
	i, err := jointIndex(s, id)
	if err != nil {
		return s, err
	}
	old := plan.Polyline(s.Joints[i].Path)
	moved := make(plan.Polyline, len(old))
	for k, p := range old {
		moved[k] = p.Plus(by)
	}
	if old[0] != old[len(old)-1] { // a ring moves as it is
		moved = reach(s, i, old, moved)
	}
	if len(moved) < 2 {
		place := old[0].Plus(by)
		return s, plan.Problem{Field: "joints", Place: &place, Found: fmt.Sprintf("joint %s moved out of the slab", id),
			Want: "a joint inside the outline", Mend: "Move it less far, or remove it."}
	}
	out := withJoints(s)
	out.Joints[i].Path = moved
	for k := range out.Joints {
		if k != i {
			out.Joints[k].Path = followed(s.Joints[k].Path, old, moved)
		}
	}
	return checked(s, settle(out))
}

// RemoveJoint returns the slab without one joint. Joints that stopped at it run on to
// the next edge or joint.
func RemoveJoint(s plan.Slab, id string) (plan.Slab, error) {
	i, err := jointIndex(s, id)
	if err != nil {
		return s, err
	}
	return checked(s, without(s, i))
}

func without(s plan.Slab, i int) plan.Slab {
	out := s
	out.Joints = append(append([]plan.Joint{}, s.Joints[:i]...), s.Joints[i+1:]...)
	return settle(out)
}

// AddPit returns the slab with a pit: an opening, isolated all round. Joints that ran
// through it stop at it.
func AddPit(s plan.Slab, name string, shape []plan.Point) (plan.Slab, error) {
	if name == "" {
		name = "pit"
	}
	out := s
	out.Fixtures = append(append([]plan.Fixture{}, s.Fixtures...), plan.Fixture{ID: freeID(s, "PIT"), Name: name, Kind: plan.Pit, Shape: shape, Opening: true,
		Isolated: assumed("yes", "drawn with the joints")})
	return checked(s, settle(out))
}

// MoveFixture returns the slab with one fixture moved, and the block-out round it.
// Joints that ended at it run on or are cut back.
func MoveFixture(s plan.Slab, id string, by plan.Point) (plan.Slab, error) {
	at := -1
	for i, f := range s.Fixtures {
		if f.ID == id {
			at = i
		}
	}
	if at < 0 {
		return s, plan.Problem{Field: "fixtures", Found: fmt.Sprintf("no fixture %q", id), Want: "the id of a fixture of the slab", Mend: "Tap it on the plan."}
	}
	out := withJoints(s)
	out.Fixtures = append([]plan.Fixture{}, s.Fixtures...)
	shape := s.Fixtures[at].Shape
	out.Fixtures[at].Shape = shifted(shape, by)
	for i, j := range s.Joints {
		if isRing(j) && plan.Ring(j.Path).Contains(plan.Ring(shape).Centroid()) {
			out.Joints[i].Path = shifted(j.Path, by)
		}
	}
	return checked(s, settle(out))
}

func shifted(points []plan.Point, by plan.Point) []plan.Point {
	out := make([]plan.Point, len(points))
	for i, p := range points {
		out[i] = p.Plus(by)
	}
	return out
}

func first(path []plan.Point) *plan.Point {
	if len(path) == 0 {
		return nil
	}
	p := path[0]
	return &p
}

func jointIndex(s plan.Slab, id string) (int, error) {
	for i, j := range s.Joints {
		if j.ID == id {
			if plan.Polyline(j.Path).Length() == 0 {
				return 0, plan.Problem{Field: "joints", Found: fmt.Sprintf("joint %s has no length", id), Want: "two or more points", Mend: "Remove it and draw it again."}
			}
			return i, nil
		}
	}
	return 0, plan.Problem{Field: "joints", Found: fmt.Sprintf("no joint %q", id), Want: "the id of a joint of the slab", Mend: "Tap it on the plan."}
}

// withJoints returns the slab with a list of joints of its own, so that the one given
// stays as it is.
func withJoints(s plan.Slab) plan.Slab {
	s.Joints = append([]plan.Joint{}, s.Joints...)
	return s
}

// nextID returns J and the first number that is free.
func nextID(s plan.Slab) string {
	for n := len(s.Joints) + 1; ; n++ {
		if id := jointID(n); freeID(s, id) == id {
			return id
		}
	}
}

// checked returns the changed slab, or the one before with what the change put wrong.
func checked(before, after plan.Slab) (plan.Slab, error) {
	was := map[string]bool{}
	for _, p := range before.Check() {
		was[p.Found] = true
	}
	var bad Problems
	for _, p := range after.Check() {
		if !was[p.Found] {
			bad = append(bad, p)
		}
	}
	switch {
	case len(bad) == 1:
		return before, bad[0]
	case len(bad) > 1:
		return before, bad
	}
	return after, nil
}
