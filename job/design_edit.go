package job

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"slabwright/layout"
	"slabwright/plan"
	"slabwright/report"
	"slabwright/site"
)

// Edit is one change to a joint plan, as the app asks for it. Do is the verb; the other
// fields are those it needs, in metres.
type Edit struct {
	Do     string     `json:"do"`
	ID     string     `json:"id,omitempty"`     // of the joint, panel or fixture
	By     plan.Point `json:"by_m,omitzero"`    // how far to move it
	From   plan.Point `json:"from_m,omitzero"`  // ends of a new joint
	To     plan.Point `json:"to_m,omitzero"`    //
	At     plan.Point `json:"at_m,omitzero"`    // middle of a new pit or column
	Size   plan.Point `json:"size_m,omitzero"`  // its sides
	Kind   string     `json:"kind,omitempty"`   // of a new joint: sawn, formed, isolation
	Across string     `json:"across,omitempty"` // side that a new joint halves: long, short
}

// planEdits are the verbs.
var planEdits = map[string]func(plan.Slab, Edit) (plan.Slab, error){
	"move joint":     func(s plan.Slab, e Edit) (plan.Slab, error) { return layout.MoveJoint(s, e.ID, e.By) },
	"remove joint":   func(s plan.Slab, e Edit) (plan.Slab, error) { return layout.RemoveJoint(s, e.ID) },
	"add joint":      addJoint,
	"halve panel":    halvePanel,
	"add pit":        func(s plan.Slab, e Edit) (plan.Slab, error) { return addOpening(s, e, plan.Pit) },
	"add column":     func(s plan.Slab, e Edit) (plan.Slab, error) { return addOpening(s, e, plan.Column) },
	"move fixture":   func(s plan.Slab, e Edit) (plan.Slab, error) { return layout.MoveFixture(s, e.ID, e.By) },
	"remove fixture": func(s plan.Slab, e Edit) (plan.Slab, error) { return layout.RemoveFixture(s, e.ID) },
}

// Edit does one thing to a slab and holds the result against the rules. What cannot be
// done is an error that says where and why; the slab given stays as it is.
func (g *Designer) Edit(ctx context.Context, slab plan.Slab, e Edit) (report.Layout, error) {
	do, ok := planEdits[e.Do]
	if !ok {
		return report.Layout{}, fmt.Errorf("%q is not something that can be done to a joint plan", e.Do)
	}
	changed, err := do(slab, e)
	if err != nil {
		return report.Layout{}, err
	}
	return g.Look(ctx, changed)
}

func addJoint(s plan.Slab, e Edit) (plan.Slab, error) {
	switch k := plan.JointKind(e.Kind); k {
	case plan.Sawn, plan.Formed, plan.Isolation:
		return layout.AddJoint(s, k, []plan.Point{e.From, e.To})
	}
	return s, fmt.Errorf("a joint is sawn, formed or isolation, not %q", e.Kind)
}

// halvePanel saws a panel in two through its middle, across its long or its short side.
func halvePanel(s plan.Slab, e Edit) (plan.Slab, error) {
	panels, err := s.Panels()
	if err != nil {
		return s, err
	}
	p := plan.PanelByID(panels, e.ID)
	if p == nil {
		return s, fmt.Errorf("there is no panel %s", e.ID)
	}
	way, half := plan.Direction(p.LongDirection).Left(), p.Width/2
	if e.Across == "short" {
		way, half = plan.Direction(p.LongDirection), p.Length/2
	}
	reach := way.Times(half)
	return layout.AddJoint(s, plan.Sawn, []plan.Point{p.Centroid.Minus(reach), p.Centroid.Plus(reach)})
}

// addOpening puts an isolated rectangle into the slab.
func addOpening(s plan.Slab, e Edit, kind plan.FixtureKind) (plan.Slab, error) {
	if !(e.Size.X > 0 && e.Size.Y > 0) {
		return s, fmt.Errorf("a %s needs two sides longer than nothing; it has %.2f by %.2f m", kind, e.Size.X, e.Size.Y)
	}
	x, y := e.Size.X/2, e.Size.Y/2
	shape := []plan.Point{{X: e.At.X - x, Y: e.At.Y - y}, {X: e.At.X + x, Y: e.At.Y - y}, {X: e.At.X + x, Y: e.At.Y + y}, {X: e.At.X - x, Y: e.At.Y + y}}
	made, err := layout.AddPit(s, freeName(s, kind), shape)
	if err != nil {
		return s, err
	}
	made.Fixtures[len(made.Fixtures)-1].Kind = kind
	return made, nil
}

// freeName is "pit 2" where there is one pit already.
func freeName(s plan.Slab, kind plan.FixtureKind) string {
	n := 1
	for _, f := range s.Fixtures {
		if f.Kind == kind && strings.TrimSpace(f.Name) != "" {
			n++
		}
	}
	return fmt.Sprintf("%s %d", kind, n)
}

// TakeJoints puts the joints, fixtures, steel and corner bars of a joint plan into the
// first slab of the job, sawn joints parted at the forms, and leaves out what was
// planned for the sawing of joints that are no more. A slab that has been walked keeps
// its joints: they are what was seen.
func (j *Job) TakeJoints(s plan.Slab) error {
	if len(j.Slabs) == 0 {
		return NotKnown{"the job has no slab to put the joints in"}
	}
	if len(j.Walks) > 0 {
		return errors.New("this slab has been walked, so its joints are what was seen and stay; start a job of the next slab with \"slabwright new\" and take the joints there")
	}
	own := &j.Slabs[0]
	s = layout.CutAtForms(s)
	own.Joints, own.Fixtures, own.Steel, own.CornerBars = s.Joints, s.Fixtures, s.Steel, s.CornerBars
	j.dropCuts()
	return nil
}

// dropCuts leaves out what was planned for the sawing of joints that are no more.
func (j *Job) dropCuts() {
	there := map[string]bool{}
	for _, joint := range j.Slabs[0].Joints {
		there[joint.ID] = true
	}
	for i := range j.Pours {
		j.Pours[i].Saw = slices.DeleteFunc(j.Pours[i].Saw, func(c site.Cut) bool { return !there[c.Joint] })
	}
}

// PoursOffForms returns the pours of the job whose area does not end at the edge of the
// first slab or at its formed joints: they were drawn for other strips.
func (j *Job) PoursOffForms() []string {
	if len(j.Slabs) == 0 {
		return nil
	}
	slab := j.Slabs[0]
	ends := []plan.Polyline{append(slices.Clone(slab.Outline), slab.Outline[0])}
	for _, joint := range slab.Joints {
		if joint.Kind != plan.Sawn {
			ends = append(ends, joint.Path)
		}
	}
	var off []string
	for _, p := range j.Pours {
		for _, side := range plan.Ring(p.Area).Sides() {
			near := false
			for _, line := range ends {
				_, _, d := line.Nearest(side.At(0.5))
				near = near || d <= formReach
			}
			if !near {
				off = append(off, p.ID)
				break
			}
		}
	}
	return off
}

// formReach is how far the edge of a pour may lie from the form it ends at, m.
const formReach = 0.05
