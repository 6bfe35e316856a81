package plan

import (
	"math"
	"sort"
)

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
