package job

import (
	"strings"
	"testing"

	"slabwright/plan"
	"slabwright/source"
	"slabwright/walk"
)

// Five joints that never opened and the crack beside them belong together, and so do
// corner cracks round one crossing; a crack across the joints does not.
func TestFindingsTogether(t *testing.T) {
	d := &diagnosis{slab: plan.Slab{Outline: []plan.Point{{X: 0, Y: 0}, {X: 30, Y: 0}, {X: 30, Y: 5}, {X: 0, Y: 5}}, Thickness: &source.Fact{Value: 0.15, Known: source.Measured}}}
	for i, id := range []string{"J1", "J2", "J3", "J4", "J5"} {
		x := 5 * float64(i+1)
		d.slab.Joints = append(d.slab.Joints, plan.Joint{ID: id, Kind: plan.Sawn, Path: []plan.Point{{X: x, Y: 0}, {X: x, Y: 5}}})
	}
	var err error
	if d.panels, err = d.slab.Panels(); err != nil {
		t.Fatal(err)
	}
	add := func(f walk.Finding) {
		run := &findingRun{finding: f}
		run.relation = plan.Relate(d.slab, d.panels, d.linesOf(f), f.Area)
		d.sheets = append(d.sheets, run)
	}
	add(walk.Finding{ID: "F1", Kind: walk.Crack, Lines: [][]plan.Point{{{X: 12.4, Y: 0}, {X: 12.6, Y: 5}}}})
	for i, j := range []string{"J1", "J2", "J3", "J4"} {
		add(walk.Finding{ID: "F" + string(rune('2'+i)), Kind: walk.JointNotOpen, Joint: j})
	}
	add(walk.Finding{ID: "F6", Kind: walk.Crack, Lines: [][]plan.Point{{{X: 10, Y: 2.5}, {X: 15, Y: 2.4}}}})
	told, groups := d.findingsTogether()
	if len(groups) != 1 || len(groups[0]) != 5 || !strings.Contains(told[0], "F1, F2, F3, F4, F5 belong together: the 4 joints did not open") {
		t.Errorf("%v %q", groups, told)
	}
	d.slab.Joints = append(d.slab.Joints, plan.Joint{ID: "L", Kind: plan.Sawn, Path: []plan.Point{{X: 0, Y: 2.5}, {X: 30, Y: 2.5}}})
	if d.panels, err = d.slab.Panels(); err != nil {
		t.Fatal(err)
	}
	d.sheets = nil
	for i, l := range [][]plan.Point{{{X: 10.4, Y: 2.5}, {X: 10, Y: 2.9}}, {{X: 9.6, Y: 2.5}, {X: 10, Y: 2.1}}, {{X: 20.4, Y: 2.5}, {X: 20, Y: 2.9}}} {
		add(walk.Finding{ID: "C" + string(rune('1'+i)), Kind: walk.Crack, Lines: [][]plan.Point{l}})
	}
	told, groups = d.findingsTogether()
	if len(groups) != 1 || len(groups[0]) != 2 || !strings.Contains(told[0], "C1, C2 lie round one crossing") {
		t.Errorf("%v %q", groups, told)
	}
}
