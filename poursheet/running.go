package poursheet

import (
	"math"
	"sort"

	"slabwright/internal/draw"
	"slabwright/plan"
)

// running is one running dimension: so far from the setting-out point along an axis.
type running struct {
	at   float64 // along the axis, local, m
	from float64 // across it: the nearest end of what is dimensioned
}

// together is how far apart two places may lie and still be one dimension: half a
// millimetre, what is written.
const together = 0.0005

// alongX and alongY tell the axes apart.
type axis int

const (
	alongX axis = iota
	alongY
)

func (a axis) of(p plan.Point) float64 {
	if a == alongX {
		return p.X
	}
	return p.Y
}

func (a axis) across(p plan.Point) float64 { return (1 - a).of(p) }

// square reports whether a joint stands square to an axis all its length: one
// dimension says where it is.
func square(j plan.Joint, a axis) bool {
	for _, p := range j.Path {
		if math.Abs(a.of(p)-a.of(j.Path[0])) > together {
			return false
		}
	}
	return len(j.Path) > 1
}

// SkewJoints returns the joints that one running dimension does not set out: bent
// or not square to the axes. They are set out by their points.
func (d Drawing) SkewJoints() []string {
	var ids []string
	for _, j := range d.Slab.Joints {
		if !square(j, alongX) && !square(j, alongY) {
			ids = append(ids, j.ID)
		}
	}
	return ids
}

// jointMarks returns where joints stand along an axis.
func (d Drawing) jointMarks(a axis) []running {
	var all []running
	for _, j := range d.Slab.Joints {
		if !square(j, a) {
			continue
		}
		from := math.Inf(1)
		for _, p := range j.Path {
			from = math.Min(from, a.across(p))
		}
		all = append(all, running{a.of(j.Path[0]), from})
	}
	return merged(all)
}

// edgeMarks returns where corners of the outline and of openings stand along an axis.
func (d Drawing) edgeMarks(a axis) []running {
	var all []running
	add := func(points []plan.Point) {
		for _, p := range points {
			all = append(all, running{a.of(p), a.across(p)})
		}
	}
	add(d.Slab.Outline)
	for _, f := range d.Slab.Fixtures {
		if f.Opening {
			add(f.Shape)
		}
	}
	for i := range all {
		all[i].from = -all[i].from // measured from the far side
	}
	all = merged(all)
	for i := range all {
		all[i].from = -all[i].from
	}
	return all
}

// merged puts dimensions in order, those at one place once.
func merged(all []running) []running {
	sort.SliceStable(all, func(i, k int) bool { return all[i].at < all[k].at })
	var kept []running
	for _, r := range all {
		if n := len(kept); n > 0 && r.at-kept[n-1].at <= together {
			kept[n-1].from = math.Min(kept[n-1].from, r.from)
			continue
		}
		kept = append(kept, r)
	}
	return kept
}

// strips draws the running dimensions: joints below and at the left, edges and
// openings above and at the right.
func (s *sheet) strips() {
	s.strip(alongX, s.d.jointMarks(alongX), true)
	s.strip(alongY, s.d.jointMarks(alongY), true)
	s.strip(alongX, s.d.edgeMarks(alongX), false)
	s.strip(alongY, s.d.edgeMarks(alongY), false)
}

// strip draws one line of running dimensions with the setting-out point as its zero.
func (s *sheet) strip(a axis, marks []running, joints bool) {
	const letters, pitch, gap = 2.7, 3.3, 4.0
	if len(marks) == 0 {
		return
	}
	marks = merged(append(marks, running{a.of(s.origin), a.across(s.origin)}))
	title, pen, color := "Running dimensions of edges and openings", penThin, draw.Ink
	if joints {
		title, color = "Running dimensions of joints", draw.Chalk
	}
	g := s.s.Group("running", title, draw.Paper)
	at := make([]float64, len(marks))
	for i, m := range marks {
		at[i] = s.along(a, m.at)
	}
	base, out := s.strips0(a, joints)
	g.Add(draw.Line{Points: s.axisLine(a, base, at[0], at[len(at)-1]), Pen: pen})
	zero := s.along(a, a.of(s.origin))
	for i, words := range spread(at, pitch) {
		m := marks[i]
		g.Add(draw.Line{Points: s.crossLine(a, at[i], base-out, s.across(a, m.from)), Pen: penWitness})
		if math.Abs(at[i]-zero) < 1e-6 {
			g.Add(draw.Disc{At: s.place(a, at[i], base), Radius: 0.9, Pen: pen, Fill: draw.White})
		} else {
			g.Add(draw.Line{Points: s.crossLine(a, at[i], base-1.1, base+1.1), Pen: pen})
		}
		g.Add(draw.Line{Points: []draw.Point{s.place(a, at[i], base+out*0.35), s.place(a, words, base+out*0.8)}, Pen: penHair})
		g.Add(s.number(a, words, base+out, out > 0, s.d.Units.length(m.at-a.of(s.origin)), letters, color, joints))
	}
}

// strips0 returns where a strip lies across its axis and which way its numbers stand
// off it, mm.
func (s *sheet) strips0(a axis, joints bool) (base, out float64) {
	const off, toNumbers = 3.5, 3.0
	switch {
	case a == alongX && joints:
		return s.field.Y1 + off, toNumbers
	case a == alongX:
		return s.field.Y0 - off, -toNumbers
	case joints:
		return s.field.X0 - off, -toNumbers
	}
	return s.field.X1 + off, toNumbers
}

// along and across turn local metres into mm on paper along an axis and across it.
func (s *sheet) along(a axis, v float64) float64 {
	if a == alongX {
		return s.to.At(draw.Point{X: v}).X
	}
	return s.to.At(draw.Point{Y: v}).Y
}

func (s *sheet) across(a axis, v float64) float64 { return s.along(1-a, v) }

func (s *sheet) place(a axis, along, across float64) draw.Point {
	if a == alongX {
		return draw.Point{X: along, Y: across}
	}
	return draw.Point{X: across, Y: along}
}

func (s *sheet) axisLine(a axis, across, from, to float64) []draw.Point {
	return []draw.Point{s.place(a, from, across), s.place(a, to, across)}
}

func (s *sheet) crossLine(a axis, along, from, to float64) []draw.Point {
	return []draw.Point{s.place(a, along, from), s.place(a, along, to)}
}

// number writes a dimension: upright along x, level along y.
func (s *sheet) number(a axis, along, across float64, outward bool, words string, letters float64, color draw.Color, bold bool) draw.Text {
	t := draw.Text{At: s.place(a, along, across), Words: words, Height: letters, Color: color, Bold: bold}
	if a == alongX {
		t.Angle, t.Lift = 90, draw.Point{X: letters * 0.34}
		t.Anchor = draw.Left
		if outward {
			t.Anchor = draw.Right
		}
		return t
	}
	t.Lift = draw.Point{Y: letters * 0.34}
	t.Anchor = draw.Right
	if outward {
		t.Anchor = draw.Left
	}
	return t
}

// spread moves places apart until neighbours stand no nearer than pitch, each run of
// moved ones centred on where they belong. Places in falling order stay so.
func spread(at []float64, pitch float64) []float64 {
	n := len(at)
	sign := 1.0
	if n > 1 && at[n-1] < at[0] {
		sign = -1
	}
	type run struct {
		sum   float64 // of where each belongs less its place in the run
		count int
	}
	var runs []run
	for i := range at {
		runs = append(runs, run{sign * at[i], 1})
		for k := len(runs) - 1; k > 0; k-- {
			a, b := runs[k-1], runs[k]
			if b.sum/float64(b.count)-a.sum/float64(a.count) >= pitch*float64(a.count) {
				break
			}
			runs = append(runs[:k-1], run{a.sum + b.sum - pitch*float64(a.count*b.count), a.count + b.count})
		}
	}
	out := make([]float64, 0, n)
	for _, r := range runs {
		start := r.sum / float64(r.count)
		for k := range r.count {
			out = append(out, sign*(start+pitch*float64(k)))
		}
	}
	return out
}
