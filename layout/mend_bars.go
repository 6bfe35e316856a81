package layout

import (
	"fmt"

	"slabwright/plan"
	"slabwright/source"
)

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
				out.Fixtures[i].Isolated = assumed("yes", "mended on the plan")
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
		return &Mend{fmt.Sprintf("Use dowels with soft sides, or plates, in %s.", x.joint), dowels(func(d *plan.Dowels) { d.FreeSide = assumed("yes", "mended on the plan") })}
	case "dowel thin":
		out.Joints[at].Dowels, out.Joints[at].Transfer = nil, assumed("none", "too thin for round dowels")
		return &Mend{fmt.Sprintf("Leave the dowels of %s out and thicken the edges, or use plates.", x.joint), out}
	case "transfer":
		d, why := DowelFor(s.Thickness.Or(0))
		if d == nil {
			return &Mend{"No dowel fits: " + why + ".", s}
		}
		out.Joints[at].Dowels, out.Joints[at].Transfer = d, assumed("dowelled", "mended on the plan")
		return &Mend{fmt.Sprintf("Put dowels of %.0f mm at %.0f mm in %s.", d.Diameter.Value*1000, d.Spacing.Value*1000, x.joint), out}
	case "steel":
		out.Steel = append([]plan.BarZone{}, s.Steel...)
		for i := range out.Steel {
			if out.Steel[i].ID == x.other {
				out.Steel[i].AtJoints = assumed("cut", "mended on the plan")
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
			out.Joints = append(out.Joints, plan.Joint{ID: nextID(out), Kind: plan.Isolation, Path: p, Transfer: assumed("none", "a soft strip through the whole depth")})
		}
		out, err := checked(s, settle(out))
		if err != nil {
			return nil
		}
		return &Mend{fmt.Sprintf("Draw a block-out turned 45 degrees round %s.", x.fixture), out}
	}
	return nil
}
