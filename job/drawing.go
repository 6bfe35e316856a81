package job

import (
	"errors"
	"fmt"
	"math"
	"sort"
	"strings"

	"slabwright/internal/dxf"
	"slabwright/plan"
	"slabwright/source"
)

// DrawingChoice says what of a drawing is taken for what. Layer names in any case.
type DrawingChoice struct {
	Unit     dxf.Unit // of the drawing; None: as the file says
	Outline  string   // layer of the edge of the slab
	Columns  string   // layer of columns; empty: none
	Openings string   // layer of pits, drains and other openings; empty: none
	Joints   string   // layer of joints; empty: none
	Kind     plan.JointKind
	Join     float64 // how far apart ends may lie and still be joined, m; 0: [DrawingJoin]
}

// DrawingJoin is how far apart the ends of two lines may lie and still be one corner,
// in metres. Chosen by the project: above the slips of a drawing, below a gap meant.
const DrawingJoin = 0.005

// farAway is how far from the axes a drawing may lie before it is brought to them, m:
// national grids put sites hundreds of kilometres out.
const farAway = 1000.0

// mostOnLayer is how many lines one layer may have: a yard of a thousand panels has two
// thousand joints.
const mostOnLayer = 5000

// UnitUnknown is the error of a drawing that does not say its unit.
type UnitUnknown struct{ Width, Height float64 } // in units of the drawing

func (e UnitUnknown) Error() string {
	var asks []string
	for _, u := range []dxf.Unit{dxf.Millimetre, dxf.Metre, dxf.Inch, dxf.Foot} {
		m, _ := u.Metres()
		asks = append(asks, fmt.Sprintf("%s if it is %.4g by %.4g m", u, e.Width*m, e.Height*m))
	}
	return fmt.Sprintf("the drawing does not say its unit ($INSUNITS is 0). It is %.6g by %.6g units: say --units %s", e.Width, e.Height, strings.Join(asks, ", "))
}

// ReadDrawing puts the outline, openings, columns and joints of a drawing into a
// slab, in metres; what else the slab has is kept. The notes say what was left out,
// moved or taken for granted. The drawing's lengths are those on the ground.
func ReadDrawing(slab plan.Slab, data []byte, c DrawingChoice) (plan.Slab, []string, error) {
	d, err := dxf.Read(data, dxf.Options{Unit: c.Unit})
	if err != nil {
		return slab, nil, err
	}
	t := taken{d: d, c: c}
	if err := t.scale(); err != nil {
		return slab, nil, err
	}
	for _, name := range []string{c.Outline, c.Columns, c.Openings, c.Joints} {
		if err := t.layer(name); err != nil {
			return slab, nil, err
		}
	}
	out := slab
	if err := t.outline(&out); err != nil {
		return slab, nil, err
	}
	t.columns(&out)
	if c.Joints != "" {
		out.Joints = t.joints()
	}
	t.tell()
	return out, t.notes, nil
}

// DrawingLayers describes the layers of a drawing, one a line, for choosing.
func DrawingLayers(data []byte) ([]string, error) {
	d, err := dxf.Read(data, dxf.Options{})
	if err != nil {
		return nil, err
	}
	var lines []string
	for _, l := range d.Layers {
		if l.Lines+l.Texts == 0 {
			continue
		}
		words := fmt.Sprintf("%q: %s, %d of them closed, %s", l.Name, many(l.Lines, "line"), l.Closed, many(l.Texts, "text"))
		if l.Hidden {
			words += ", switched off"
		}
		lines = append(lines, words)
	}
	return lines, nil
}

// taken is a drawing being taken apart.
type taken struct {
	d     *dxf.Drawing
	c     DrawingChoice
	per   float64    // metres per unit
	shift plan.Point // added after scaling
	notes []string
}

// scale finds how long a unit is.
func (t *taken) scale() error {
	unit := t.c.Unit
	if unit == dxf.None {
		unit = t.d.Unit
	}
	per, known := unit.Metres()
	if !known {
		low, high, _ := t.d.Box()
		return UnitUnknown{high.X - low.X, high.Y - low.Y}
	}
	if t.d.Unit != dxf.None && t.d.Unit != unit {
		t.notes = append(t.notes, fmt.Sprintf("The file says its unit is %s; it was read in %s, as you said.", t.d.Unit, unit))
	}
	t.per = per
	return nil
}

// layer refuses a name the drawing does not have, with those it has.
func (t *taken) layer(name string) error {
	if name == "" {
		return nil
	}
	switch n := len(t.d.On(name)); {
	case n > mostOnLayer:
		return fmt.Errorf("layer %q has %d lines, more than a slab has (%d at most); choose a layer that holds the slab's own alone", name, n, mostOnLayer)
	case n > 0:
		return nil
	}
	var names []string
	for _, l := range t.d.Layers {
		if l.Lines > 0 {
			names = append(names, fmt.Sprintf("%q", l.Name))
		}
	}
	if len(names) == 0 {
		return fmt.Errorf("the drawing has no lines at all, on no layer. %s", strings.Join(append(t.d.Notes, "Export it again with its lines in model space."), " "))
	}
	return fmt.Errorf("the drawing has no lines on a layer %q; it has lines on %s", name, strings.Join(names, ", "))
}

// join is the tolerance in units of the drawing.
func (t *taken) join() float64 {
	if t.c.Join > 0 {
		return t.c.Join / t.per
	}
	return DrawingJoin / t.per
}

// place turns a point of the drawing into metres on the slab's axes, to a hundredth
// of a millimetre: digits beyond are dust of the drawing program.
func (t *taken) place(p dxf.Point) plan.Point {
	const dust = 1e-5
	round := func(v float64) float64 { return math.Round(v/dust) * dust }
	q := plan.Point{X: p.X * t.per, Y: p.Y * t.per}.Plus(t.shift)
	return plan.Point{X: round(q.X), Y: round(q.Y)}
}

func (t *taken) places(points []dxf.Point) []plan.Point {
	out := make([]plan.Point, len(points))
	for i, p := range points {
		out[i] = t.place(p)
	}
	return out
}

// outline takes the largest closed line for the edge of the slab and those within it
// for openings.
func (t *taken) outline(slab *plan.Slab) error {
	j := dxf.Join(t.d.On(t.c.Outline), t.join())
	if len(j.Closed) == 0 {
		return t.notClosed(j)
	}
	sort.SliceStable(j.Closed, func(a, b int) bool { return math.Abs(j.Closed[a].Area()) > math.Abs(j.Closed[b].Area()) })
	edge := plan.Ring(t.places(j.Closed[0].Points))
	if low, high := edge.Box(); math.Max(math.Abs(low.X), math.Max(math.Abs(low.Y), math.Max(math.Abs(high.X), math.Abs(high.Y)))) > farAway {
		t.shift = low.Times(-1)
		t.notes = append(t.notes, fmt.Sprintf("The drawing lies far from its axes: (%.3f, %.3f) m of it is now (0, 0).", low.X, low.Y))
		edge = t.places(j.Closed[0].Points)
	}
	slab.Outline = edge
	slab.Fixtures = keptFixtures(slab.Fixtures)
	for _, l := range j.Closed[1:] {
		t.opening(slab, l, plan.Pit)
	}
	if t.c.Openings != "" {
		for _, l := range dxf.Join(t.d.On(t.c.Openings), t.join()).Closed {
			t.opening(slab, l, plan.Pit)
		}
	}
	if n := len(j.Open); n > 0 {
		t.notes = append(t.notes, fmt.Sprintf("%d lines on layer %q are no part of a closed outline and were left out.", n, t.c.Outline))
	}
	return nil
}

// keptFixtures are those a drawing of the outline does not show again: what stands
// beside the slab or lies within its depth.
func keptFixtures(all []plan.Fixture) []plan.Fixture {
	var kept []plan.Fixture
	for _, f := range all {
		if !f.Opening {
			kept = append(kept, f)
		}
	}
	return kept
}

// notClosed says why a layer gives no outline: where ends come near without meeting.
func (t *taken) notClosed(j dxf.Joined) error {
	best, at := math.Inf(1), dxf.Point{}
	for i, a := range j.Open {
		ends := []dxf.Point{a.Points[0], a.Points[len(a.Points)-1]}
		for k, b := range j.Open {
			for e, p := range ends {
				for f, q := range []dxf.Point{b.Points[0], b.Points[len(b.Points)-1]} {
					if (i != k || e != f) && p.To(q) > t.join() && p.To(q) < best {
						best, at = p.To(q), p
					}
				}
			}
		}
	}
	words := fmt.Sprintf("the lines on layer %q close no outline", t.c.Outline)
	if len(j.Branches) > 0 {
		b := j.Branches[0]
		return fmt.Errorf("%s: three or more lines meet at (%g, %g) of the drawing, so which are the edge is not known; choose a layer that holds the edge alone", words, b.X, b.Y)
	}
	if math.IsInf(best, 1) {
		return errors.New(words + "; choose another layer with --outline")
	}
	return fmt.Errorf("%s: the narrowest gap is %.1f mm, at (%g, %g) of the drawing; close it there, or join ends up to that far apart with --join", words, best*t.per*1000, at.X, at.Y)
}

// opening adds a hole that lies within the outline.
func (t *taken) opening(slab *plan.Slab, l dxf.Line, kind plan.FixtureKind) {
	shape := plan.Ring(t.places(l.Points))
	if !plan.Ring(slab.Outline).Contains(shape.Centroid()) {
		t.notes = append(t.notes, fmt.Sprintf("A closed line of layer %q at (%.3f, %.3f) m lies outside the slab and was left out.", l.Layer, shape.Centroid().X, shape.Centroid().Y))
		return
	}
	n := 1
	for _, f := range slab.Fixtures {
		if f.Kind == kind {
			n++
		}
	}
	slab.Fixtures = append(slab.Fixtures, plan.Fixture{ID: freshID(slab, strings.ToUpper(string(kind))+"-"), Name: fmt.Sprintf("%s %d", kind, n), Kind: kind, Shape: shape, Opening: true})
}

// freshID returns the prefix with the first number no fixture has.
func freshID(slab *plan.Slab, prefix string) string {
	for n := 1; ; n++ {
		id := fmt.Sprintf("%s%d", prefix, n)
		used := false
		for _, f := range slab.Fixtures {
			used = used || f.ID == id
		}
		if !used {
			return id
		}
	}
}

func (t *taken) columns(slab *plan.Slab) {
	if t.c.Columns == "" {
		return
	}
	j := dxf.Join(t.d.On(t.c.Columns), t.join())
	for _, l := range j.Closed {
		t.opening(slab, l, plan.Column)
	}
	if n := len(j.Open); n > 0 {
		t.notes = append(t.notes, fmt.Sprintf("%d lines on layer %q close no column and were left out.", n, t.c.Columns))
	}
}

// joints takes straight pieces in one line for one joint, others as they are drawn.
func (t *taken) joints() []plan.Joint {
	var paths []plan.Polyline
	var pieces []plan.Segment
	for _, l := range t.d.On(t.c.Joints) {
		path := plan.Polyline(t.places(l.Points))
		switch {
		case l.Closed:
			paths = append(paths, append(path, path[0]))
		case len(path) == 2:
			pieces = append(pieces, plan.Segment{A: path[0], B: path[1]})
		default:
			paths = append(paths, path)
		}
	}
	for _, s := range inLine(pieces, t.join()*t.per) {
		paths = append(paths, plan.Polyline{s.A, s.B})
	}
	sort.SliceStable(paths, func(i, k int) bool {
		a, b := paths[i][0], paths[k][0]
		return a.Y < b.Y-plan.JointReach || a.Y <= b.Y+plan.JointReach && a.X < b.X
	})
	kind := t.c.Kind
	if kind == "" {
		kind = plan.Sawn
		t.notes = append(t.notes, "The joints are taken as sawn; say --kind formed or --kind isolation where they are not.")
	}
	joints := make([]plan.Joint, len(paths))
	for i, p := range paths {
		joints[i] = plan.Joint{ID: fmt.Sprintf("J%d", i+1), Kind: kind, Path: p}
	}
	return joints
}

// inLine merges straight pieces that lie in one line and touch or overlap.
func inLine(pieces []plan.Segment, tol float64) []plan.Segment {
	all := append([]plan.Segment{}, pieces...)
	for i := 0; i < len(all); i++ {
		for k := i + 1; k < len(all); {
			if whole, ok := merge(all[i], all[k], tol); ok {
				all[i] = whole
				all = append(all[:k], all[k+1:]...)
				k = i + 1 // the longer piece may now touch others
				continue
			}
			k++
		}
	}
	for i, s := range all {
		if s.B.X < s.A.X-tol || math.Abs(s.B.X-s.A.X) <= tol && s.B.Y < s.A.Y {
			all[i] = plan.Segment{A: s.B, B: s.A}
		}
	}
	return all
}

// merge returns two pieces as one where they lie in one line with no gap above tol.
func merge(a, b plan.Segment, tol float64) (plan.Segment, bool) {
	d, ok := a.B.Minus(a.A).Unit()
	if !ok {
		return b, b.Length() > 0 && a.Distance(b) <= tol
	}
	low, high := 0.0, a.Length()
	for _, p := range []plan.Point{b.A, b.B} {
		r := p.Minus(a.A)
		if math.Abs(d.Cross(r)) > tol {
			return a, false
		}
	}
	p, q := b.A.Minus(a.A).Dot(d), b.B.Minus(a.A).Dot(d)
	if math.Min(p, q) > high+tol || math.Max(p, q) < low-tol {
		return a, false
	}
	ends := []struct {
		at float64
		p  plan.Point
	}{{0, a.A}, {high, a.B}, {p, b.A}, {q, b.B}}
	sort.SliceStable(ends, func(i, k int) bool { return ends[i].at < ends[k].at })
	return plan.Segment{A: ends[0].p, B: ends[3].p}, true
}

// tell adds what the reader left out.
func (t *taken) tell() {
	for _, s := range t.d.Skipped {
		t.notes = append(t.notes, fmt.Sprintf("%d %s left out (first at line %d): %s.", s.Count, s.Kind, s.First, s.Why))
	}
	t.notes = append(t.notes, t.d.Notes...)
}

// TakeDrawing puts a drawing into the job's first slab. Pours that took in the whole
// slab take in the new outline. Nothing is changed on an error.
func (j *Job) TakeDrawing(data []byte, c DrawingChoice) ([]string, error) {
	slab := plan.Slab{ID: "A", Name: j.Title}
	if len(j.Slabs) > 0 {
		slab = j.Slabs[0]
	}
	before := slab.Outline
	slab, notes, err := ReadDrawing(slab, data, c)
	if err != nil {
		return nil, err
	}
	if bad := slab.Check(); len(bad) > 0 {
		var all []string
		for _, p := range bad {
			all = append(all, p.Error())
		}
		return nil, fmt.Errorf("the slab drawn cannot be: %s", strings.Join(all, " "))
	}
	if len(j.Slabs) == 0 {
		j.Slabs = []plan.Slab{slab}
	} else {
		j.Slabs[0] = slab
	}
	for i := range j.Pours {
		if samePlace(j.Pours[i].Area, before) {
			j.Pours[i].Area = append([]plan.Point(nil), slab.Outline...)
		}
	}
	if slab.Thickness == nil && j.Planned.Thickness != nil {
		j.Slabs[0].Thickness = &source.Fact{Value: j.Planned.Thickness.Value, Known: source.Assumed, Note: "as planned"}
	}
	return notes, nil
}

// samePlace reports whether two rings are the same points.
func samePlace(a, b []plan.Point) bool {
	if len(a) != len(b) || len(a) == 0 {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}
