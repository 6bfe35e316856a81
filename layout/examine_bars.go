package layout

import "slabwright/plan"

// holds looks at what stands in or beside the slab: is it free of it?
func (e *examined) holds() {
	for _, f := range e.slab.Fixtures {
		if f.Kind == plan.Duct || len(f.Shape) < 2 {
			continue
		}
		enclosed := false
		for _, j := range e.slab.Joints {
			enclosed = enclosed || j.Kind == plan.Isolation && surrounds(j, f, e.slab)
		}
		switch {
		case !f.Isolated.Is("yes") && !enclosed:
			e.add(breach{rule: "isolation", fixture: f.ID, at: f.Shape[0]})
		case f.Kind == plan.Column && len(f.Shape) >= 3 && !enclosed && plan.Ring(e.slab.Outline).Contains(plan.Ring(f.Shape).Centroid()):
			e.add(breach{rule: "column", fixture: f.ID, at: plan.Ring(f.Shape).Centroid()})
		}
	}
}

// surrounds reports whether an isolation joint goes round a fixture, by itself or with
// the slab's edge.
func surrounds(j plan.Joint, f plan.Fixture, s plan.Slab) bool {
	at := plan.Ring(f.Shape).Centroid()
	if len(f.Shape) < 3 || len(j.Path) < 3 {
		return false
	}
	if isRing(j) {
		return plan.Ring(j.Path).Contains(at)
	}
	ring := plan.Ring(j.Path)
	low, high := ring.Box()
	return ring.Distance(at) < 1 && at.X > low.X-1 && at.X < high.X+1 && at.Y > low.Y-1 && at.Y < high.Y+1 &&
		plan.Ring(s.Outline).Distance(j.Path[0]) < plan.JointReach && plan.Ring(s.Outline).Distance(j.Path[len(j.Path)-1]) < plan.JointReach
}

// bars looks at dowels, load transfer and mesh.
func (e *examined) bars(b Brief) {
	thickness := e.slab.Thickness.OrNaN()
	for _, j := range e.slab.Joints {
		if len(j.Path) < 2 {
			continue
		}
		middle, _ := plan.Polyline(j.Path).At(plan.Polyline(j.Path).Length() / 2)
		if j.Dowels != nil && thickness < leastDowelled {
			e.add(breach{rule: "dowel thin", joint: j.ID, at: middle, value: thickness})
		}
		if e.crossed(j, b) && (j.Kind == plan.Formed && j.Dowels == nil && !j.Transfer.Is("keyed") && !j.Transfer.Is("tied") || j.Kind == plan.Sawn && j.Transfer.Is("none")) {
			e.add(breach{rule: "transfer", joint: j.ID, at: middle})
		}
	}
	e.crossings()
	for _, z := range e.slab.Steel {
		if z.AtJoints.Is("continuous") && len(e.slab.Joints) > 0 {
			e.add(breach{rule: "steel", other: z.ID, at: e.slab.Outline[0]})
		}
	}
}

// crossed reports whether wheels cross a joint: along the paths drawn on the slab, or
// anywhere where the brief says so and none are drawn.
func (e *examined) crossed(j plan.Joint, b Brief) bool {
	for _, w := range e.slab.Wheels {
		if plan.Polyline(w.Path).Distance(j.Path) <= w.Width/2 {
			return true
		}
	}
	return b.Wheels.Cross && len(e.slab.Wheels) == 0
}

// crossings looks at dowels both ways.
func (e *examined) crossings() {
	joints := map[string]plan.Joint{}
	for _, j := range e.slab.Joints {
		joints[j.ID] = j
	}
	said := map[string]bool{}
	for _, x := range e.slab.Crossings() {
		for i, id := range x.Joints {
			own, other := joints[id], joints[x.Joints[1-i]]
			if own.Dowels == nil || other.Dowels == nil {
				continue
			}
			if clear := own.Dowels.Clear.Or(own.Dowels.Spacing.Or(0) / 2); clear < clearOfCrossing-1e-6 && !said["clear"+id] {
				said["clear"+id] = true
				e.add(breach{rule: "dowel clear", joint: id, other: other.ID, at: x.At, value: clear})
			}
			if !own.Dowels.FreeSide.Is("yes") && !said["side"+id] {
				said["side"+id] = true
				e.add(breach{rule: "dowel sideways", joint: id, other: other.ID, at: x.At})
			}
		}
	}
}
