package plan

import (
	"math"
	"sort"
)

// traced is a finding made ready to be measured.
type traced struct {
	slab    Slab
	panels  []Panel
	panel   *Panel // holding most of it
	lines   []Polyline
	longest int // of lines, -1 when there is none
	points  []sample
	others  []Polyline
	rel     *Relation
}

// Relate works out everything the plan says of a finding given by its lines, its
// area, or both. Others are further cracks it may be in line with. The slab should
// have passed [Slab.Check]; panels come from [Slab.Panels].
func Relate(s Slab, panels []Panel, lines [][]Point, area []Point, others ...[]Point) Relation {
	rel := Relation{}
	t := traced{slab: s, panels: panels, rel: &rel, longest: -1}
	for _, l := range others {
		t.others = append(t.others, finite(l))
	}
	area = finite(area)
	clean := make([][]Point, len(lines))
	for i, l := range lines {
		clean[i] = finite(l)
	}
	lines = clean
	t.lines = chain(lines)
	for i, l := range t.lines {
		t.points = append(t.points, l.samples(sampleStep)...)
		if t.longest < 0 || l.Length() > t.lines[t.longest].Length() {
			t.longest = i
		}
	}
	if len(t.points) == 0 && len(area) >= 3 {
		t.points = areaSamples(area)
	}
	if len(t.points) == 0 {
		t.points = singles(lines, area)
	}
	if len(t.points) == 0 {
		return rel
	}
	t.place(area)
	t.course()
	t.nearLines()
	t.endings()
	t.corners()
	t.inLine()
	t.crossing()
	t.dowelEnds()
	t.bars()
	t.spacing()
	t.follows()
	t.fixture()
	t.cornerCut()
	return rel
}

// finite returns the points that are places at all; an editor's slip must not turn
// every distance into nothing.
func finite(points []Point) []Point {
	var kept []Point
	for _, p := range points {
		if checkFinite("", p) == nil {
			kept = append(kept, p)
		}
	}
	return kept
}

// singles returns the points of a finding that has no length: a core hole, a
// popout.
func singles(lines [][]Point, area []Point) []sample {
	var all []sample
	for _, l := range append(append([][]Point{}, lines...), area) {
		for _, p := range l {
			all = append(all, sample{at: p, length: 1e-9})
		}
	}
	return all
}

// areaSamples returns points over a patch, each standing for an equal part.
func areaSamples(area Ring) []sample {
	low, high := area.Box()
	step := math.Max(high.X-low.X, high.Y-low.Y) / 24
	var all []sample
	for y := low.Y + step/2; y < high.Y; y += step {
		for _, in := range cut(Point{0, y}, Point{1, 0}, area) {
			n := max(int(math.Round((in.to-in.from)/step)), 1)
			for k := range n {
				x := in.from + (float64(k)+0.5)*(in.to-in.from)/float64(n)
				all = append(all, sample{at: Point{x, y}, length: (in.to - in.from) / float64(n)})
			}
		}
	}
	if len(all) == 0 {
		all = append(all, sample{at: area.Centroid(), length: 1e-9})
	}
	return all
}

// chain joins pieces that meet end to end (exactly two of them at a place) into
// one line each.
func chain(lines [][]Point) []Polyline {
	var all []Polyline
	for _, l := range lines {
		if p := Polyline(l); p.Length() > 0 {
			all = append(all, append(Polyline{}, p...))
		}
	}
	for {
		i, j, joined := nextJoin(all)
		if !joined {
			return all
		}
		all[i] = join(all[i], all[j])
		all = append(all[:j], all[j+1:]...)
	}
}

func nextJoin(all []Polyline) (int, int, bool) {
	for i := range all {
		for _, end := range ends(all[i]) {
			with, count := -1, 0
			for j := range all {
				for _, e := range ends(all[j]) {
					if e.To(end) <= chainReach {
						count++
						if j != i {
							with = j
						}
					}
				}
			}
			if with > i && count == 2 {
				return i, with, true
			}
		}
	}
	return 0, 0, false
}

func ends(l Polyline) []Point { return []Point{l[0], l[len(l)-1]} }

func join(a, b Polyline) Polyline {
	reverse := func(l Polyline) Polyline {
		r := make(Polyline, len(l))
		for i, p := range l {
			r[len(l)-1-i] = p
		}
		return r
	}
	best, out := math.Inf(1), Polyline{}
	for _, p := range []Polyline{a, reverse(a)} {
		for _, q := range []Polyline{b, reverse(b)} {
			if d := p[len(p)-1].To(q[0]); d < best {
				best, out = d, append(append(Polyline{}, p...), q...)
			}
		}
	}
	return out
}

// mean returns the mean of a measure over the finding, weighted by length.
func (t *traced) mean(measure func(sample) float64) float64 {
	var sum, weight float64
	for _, p := range t.points {
		sum += measure(p) * p.length
		weight += p.length
	}
	return sum / weight
}

// share returns the part of the finding for which the test holds.
func (t *traced) share(test func(sample) bool) float64 {
	return t.mean(func(p sample) float64 {
		if test(p) {
			return 1
		}
		return 0
	})
}

// place fills where the finding is.
func (t *traced) place(area Ring) {
	r := t.rel
	r.Centre = Point{t.mean(func(p sample) float64 { return p.at.X }), t.mean(func(p sample) float64 { return p.at.Y })}
	held := make([]float64, len(t.panels))
	for _, p := range t.points {
		for i := range t.panels {
			if t.panels[i].holds(p.at) {
				held[i] += p.length
			}
		}
	}
	best := -1
	for i, h := range held {
		if h > 0 {
			r.Panels = append(r.Panels, t.panels[i].ID)
			if best < 0 || h > held[best]*(1+1e-9) {
				best = i
			}
		}
	}
	if best < 0 {
		best = t.nearestPanel(r.Centre)
	}
	if len(area) >= 3 {
		r.Area = value(area.Area())
	}
	if best < 0 {
		return
	}
	p := &t.panels[best]
	t.panel, r.Panel = p, p.ID
	r.PanelLength, r.PanelWidth, r.PanelAspect = value(p.Length), value(p.Width), value(p.Aspect)
	r.FromCentre = value(r.Centre.To(p.Centroid))
	u := p.Rectangle.along(p.LongDirection)
	r.Along = value(shareOf(u(r.Centre, 0), p.Length))
	r.Across = value(shareOf(u(r.Centre, 90), p.Width))
	if len(area) >= 3 {
		covered := OverlapArea(area, p.Ring)
		for _, h := range p.Openings {
			covered -= OverlapArea(area, h)
		}
		r.AreaShare = value(math.Max(0, covered/p.Area))
	}
	if len(p.SharpCorners) > 0 {
		near := math.Inf(1)
		for _, s := range t.points {
			_, d := nearestCorner(p.SharpCorners, s.at)
			near = math.Min(near, d)
		}
		r.SharpAt = value(near)
	}
}

// along returns a function that measures how far a point is along the rectangle
// in the given direction (turned by the second argument), from its first side.
func (r Ring) along(direction float64) func(Point, float64) float64 {
	return func(p Point, turned float64) float64 {
		d := Direction(direction + turned)
		low := math.Inf(1)
		for _, q := range r {
			low = math.Min(low, q.Dot(d))
		}
		return p.Dot(d) - low
	}
}

func shareOf(at, whole float64) float64 { return math.Max(0, math.Min(1, at/whole)) }

// holds reports whether p lies in the panel's concrete.
func (p Panel) holds(q Point) bool {
	if !p.Ring.Contains(q) {
		return false
	}
	for _, h := range p.Openings {
		if h.Contains(q) && h.Distance(q) > SnapTolerance {
			return false
		}
	}
	return true
}

func (t *traced) nearestPanel(p Point) int {
	best, at := EndReach, -1
	for i := range t.panels {
		if d := t.panels[i].Ring.Distance(p); d < best {
			best, at = d, i
		}
	}
	return at
}

// course fills how long the lines are and which way they run.
func (t *traced) course() {
	r := t.rel
	r.Pieces = len(t.lines)
	if t.longest < 0 {
		return
	}
	var sum, chords float64
	var twice Point // unit vectors at twice the angle, so that a line and its reverse agree
	for _, l := range t.lines {
		sum += l.Length()
		chord := l[len(l)-1].Minus(l[0])
		chords += chord.Norm()
		a := 2 * math.Atan2(chord.Y, chord.X)
		twice = twice.Plus(Point{math.Cos(a), math.Sin(a)}.Times(chord.Norm()))
	}
	longest := t.lines[t.longest]
	r.Length, r.Longest = value(sum), value(longest.Length())
	r.Straight = value(ends(longest)[0].To(ends(longest)[1]) / longest.Length())
	if chords < 0.1*sum || twice.Norm() < 1e-6*chords {
		return // a ring, or lines every way: no direction
	}
	r.Order = value(twice.Norm() / chords)
	r.Direction = value(axisDegrees(Direction(math.Atan2(twice.Y, twice.X) * 90 / math.Pi)))
	if t.panel != nil {
		r.Angle = value(axesApart(*r.Direction, t.panel.LongDirection))
	}
}

func value(v float64) *float64 { return &v }

// spread returns mean and coefficient of variation (n-1) of two or more values.
func spread(values []float64) (mean float64, cov *float64) {
	for _, v := range values {
		mean += v / float64(len(values))
	}
	if len(values) < 2 || mean == 0 {
		return mean, nil
	}
	var sum float64
	for _, v := range values {
		sum += (v - mean) * (v - mean)
	}
	return mean, value(math.Sqrt(sum/float64(len(values)-1)) / mean)
}

// spacing fills how far apart three or more lines lie that run one way. Lines end
// to end on one course count once.
func (t *traced) spacing() {
	const oneWay, oneCourse = 0.8, 0.02
	r := t.rel
	if len(t.lines) < 2 || r.Direction == nil || *r.Order < oneWay {
		return
	}
	across := Direction(*r.Direction + 90)
	var at []float64
	for _, l := range t.lines {
		var sum float64
		for _, p := range l.samples(sampleStep) {
			sum += p.at.Dot(across) * p.length
		}
		at = append(at, sum/l.Length())
	}
	sort.Float64s(at)
	at = distinct(at, oneCourse)
	if len(at) < 2 {
		return
	}
	var gaps []float64
	for i := 1; i < len(at); i++ {
		gaps = append(gaps, at[i]-at[i-1])
	}
	mean, cov := spread(gaps)
	sp := &Spacing{Lines: len(at), Mean: mean, CoV: cov}
	if pitch, zone, ok := t.slab.pitchUnder(r.Centre, *r.Direction); ok {
		sp.BarPitch, sp.Zone, sp.Ratio = value(pitch), zone, value(mean/pitch)
	}
	r.Spacing = sp
}

// pitchUnder returns the pitch of the bars at p that run within BesideAngle of a
// direction; where zones lie over one another, the first.
func (s Slab) pitchUnder(p Point, direction float64) (float64, string, bool) {
	for _, z := range s.Steel {
		if len(z.Area) >= 3 && !Ring(z.Area).Contains(p) {
			continue
		}
		if z.PitchX != nil && axesApart(direction, z.Angle) <= BesideAngle {
			return z.PitchX.Value, z.ID, true
		}
		if z.PitchY != nil && axesApart(direction, z.Angle+90) <= BesideAngle {
			return z.PitchY.Value, z.ID, true
		}
	}
	return 0, "", false
}
