package layout

import (
	"fmt"

	"slabwright/plan"
)

// RemoveFixture returns the slab without one fixture and without the block-out round
// it. Joints that ended at it run on to the next edge or joint.
func RemoveFixture(s plan.Slab, id string) (plan.Slab, error) {
	kept := append(s.Fixtures[:0:0], s.Fixtures...)
	for i, f := range kept {
		if f.ID != id {
			continue
		}
		after := withJoints(s)
		after.Fixtures = append(kept[:i], kept[i+1:]...)
		after.Joints = outsideOf(after.Joints, f)
		return checked(s, settle(after))
	}
	return s, plan.Problem{Field: "fixture", Found: fmt.Sprintf("%q", id), Want: "the id of a fixture of the slab", Mend: "Choose one on the plan."}
}

// outsideOf leaves out the isolation joints that are rings round a fixture.
func outsideOf(joints []plan.Joint, f plan.Fixture) []plan.Joint {
	var out []plan.Joint
	middle := plan.Ring(f.Shape).Centroid()
	for _, j := range joints {
		if j.Kind == plan.Isolation && isRing(j) && plan.Ring(j.Path).Contains(middle) {
			continue
		}
		out = append(out, j)
	}
	return out
}
