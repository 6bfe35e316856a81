package earlyage

import (
	"context"
	"math"
	"sort"
	"time"
)

// Basis of the end of a window.
const (
	// DefaultRisk is the chance of a crack elsewhere that is accepted unless the
	// engineer says otherwise. Own judgement.
	DefaultRisk = 0.10
	// StressShare is the share of tensile strength at which the expected course is
	// taken to crack. Design use 0.8 of the 0.7 to 1.0 reported; ACI 207.2R practice,
	// from memory.
	StressShare = 0.80
	// missedChance is the chance of a crack from which a window counts as missed.
	missedChance = 0.50
)

// State is what the clock says about cutting.
type State string

// The four states of a cut.
const (
	TooSoon State = "too soon"
	CutNow  State = "cut now"
	Late    State = "late"
	Missed  State = "missed"
)

// Chance is how the members stand at one time.
type Chance struct {
	Hours   float64
	Ready   float64 // share of members whose edge has its strength
	Cracked float64 // chance that the slab has cracked elsewhere
}

// CutWindow is when a saw can start and when it is too late. Zero times: not within
// the run.
type CutWindow struct {
	Saw                     Saw
	Opens, Best, Closes     time.Time
	OpensEarly, OpensLate   time.Time // a tenth of the members open before, a tenth after
	ClosesEarly, ClosesLate time.Time // likewise, by the same two measures as Closes; zero late: a tenth never close
	Gap                     bool      // it closes before it opens
	Risk                    float64   // chance of a crack accepted
	RiskAtOpen, RiskAtBest  float64   // chance of having cracked by then
	ByStress                bool      // closed by the stress of the expected course, not by the chance
	Why                     string
	Basis                   []string
	Curve                   []Chance

	opens, best, closes float64 // hours, NaN where never
	stress              float64 // when the expected course comes to StressShare, likewise
	placed              time.Time
}

// Window runs a pour and returns the cut window of a saw at an accepted risk.
func Window(ctx context.Context, p Pour, saw Saw, risk float64) (CutWindow, error) {
	m, err := RunMembers(ctx, p)
	if err != nil {
		return CutWindow{}, err
	}
	return m.Window(saw, risk), nil
}

// Window returns the cut window of a saw at an accepted risk (0: [DefaultRisk]).
//
// It opens when the zone the saw cuts has the edge strength in the expected
// course. It closes when the expected course reaches [StressShare] of its tensile
// strength, or when the chance over all members of having cracked passes the
// risk, whichever comes first. Each member's chance counts the scatter of tensile
// strength by a lognormal law. The expected course opens and closes within the
// ranges given: where it lies outside the tenths of the members, the range goes to it.
func (m *Members) Window(saw Saw, risk float64) CutWindow {
	if risk <= 0 {
		risk = DefaultRisk
	}
	w := CutWindow{Saw: saw, Risk: risk, placed: m.Pour.Column.Placed}
	w.Curve = m.curve(saw)
	expected := &m.expected
	w.opens = reached(m.Hours, expected.edgeFc, saw.Edge)
	stress := reached(m.Hours, expected.ratio, StressShare)
	chance := reached(m.Hours, cracked(w.Curve), risk)
	w.closes, w.stress = earlier(stress, chance), stress
	w.ByStress = w.closes == stress
	w.best = w.bestTime()
	w.Opens, w.Best, w.Closes = w.clock(w.opens), w.clock(w.best), w.clock(w.closes)
	low, high := m.spread(func(b *member) float64 { return m.opening(b, saw) })
	w.OpensEarly, w.OpensLate = w.clock(earlier(low, w.opens)), w.clock(later(high, w.opens))
	low, high = m.spread(func(b *member) float64 { return m.closing(b, risk) })
	w.ClosesEarly, w.ClosesLate = w.clock(earlier(low, w.closes)), w.clock(later(high, w.closes))
	w.Gap = w.closes <= w.opens || math.IsNaN(w.opens)
	w.RiskAtOpen, w.RiskAtBest = w.chanceAt(w.opens).Cracked, w.chanceAt(w.best).Cracked
	w.Why, w.Basis = w.reasons(m)
	return w
}

// opening is when a member's edge has the strength it needs, h after placing.
func (m *Members) opening(b *member, saw Saw) float64 {
	return reached(m.Hours, b.edgeFc, b.edgeStrength(saw))
}

// closing is when a member comes to the share of its tensile strength taken to
// crack, or by the scatter of that strength to the accepted risk, h after placing.
func (m *Members) closing(b *member, risk float64) float64 {
	return reached(m.Hours, b.ratio, math.Min(StressShare, RatioAtChance(risk, b.scatter)))
}

// edgeStrength is the edge strength this member needs, MPa.
func (b *member) edgeStrength(s Saw) float64 {
	if b.edge < 0.5 {
		return s.EdgeLow + 2*b.edge*(s.Edge-s.EdgeLow)
	}
	return s.Edge + (2*b.edge-1)*(s.EdgeHigh-s.Edge)
}

// curve is how the members stand at each time of the run.
func (m *Members) curve(saw Saw) []Chance {
	out := make([]Chance, len(m.Hours))
	for i := range out {
		out[i].Hours = m.Hours[i]
	}
	for k := range m.members {
		b := &m.members[k]
		edge := b.edgeStrength(saw)
		spread, last, chance := lognormalSpread(b.scatter), 0.0, 0.0
		for i := range out {
			if b.edgeFc[i] >= edge {
				out[i].Ready += b.weight
			}
			if b.ratio[i] != last {
				last, chance = b.ratio[i], crackChance(b.ratio[i], spread)
			}
			out[i].Cracked += b.weight * chance
		}
	}
	return out
}

func cracked(curve []Chance) []float64 {
	out := make([]float64, len(curve))
	for i, c := range curve {
		out[i] = c.Cracked
	}
	return out
}

// earlier is the smaller of two times of which either may be never (NaN).
func earlier(a, b float64) float64 {
	if math.IsNaN(a) || b < a {
		return b
	}
	return a
}

// later is the larger of two times; never (NaN) is later than any.
func later(a, b float64) float64 {
	if math.IsNaN(a) || math.IsNaN(b) {
		return math.NaN()
	}
	return math.Max(a, b)
}

// bestTime is the first time at which the chance of a ravelled edge and the chance
// of a crack elsewhere are together least, within the window if there is one.
func (w *CutWindow) bestTime() float64 {
	best, least := math.NaN(), math.Inf(1)
	for _, c := range w.Curve {
		if c.Hours < w.opens || math.IsNaN(w.opens) || (w.closes > w.opens && c.Hours > w.closes) {
			continue
		}
		if bad := (1 - c.Ready) + c.Cracked; bad < least-1e-9 {
			best, least = c.Hours, bad
		}
	}
	if math.IsNaN(best) {
		return w.opens
	}
	return best
}

// chanceAt is the curve at a time in hours.
func (w *CutWindow) chanceAt(hours float64) Chance {
	if math.IsNaN(hours) {
		return Chance{Hours: hours}
	}
	i := sort.Search(len(w.Curve), func(i int) bool { return w.Curve[i].Hours >= hours })
	if i == 0 {
		return w.Curve[0]
	}
	if i == len(w.Curve) {
		return w.Curve[i-1]
	}
	a, b := w.Curve[i-1], w.Curve[i]
	s := (hours - a.Hours) / (b.Hours - a.Hours)
	return Chance{Hours: hours, Ready: a.Ready + s*(b.Ready-a.Ready), Cracked: a.Cracked + s*(b.Cracked-a.Cracked)}
}

// At returns the chances at a clock time.
func (w *CutWindow) At(t time.Time) Chance { return w.chanceAt(t.Sub(w.placed).Hours()) }

// State returns what the clock says at a time.
func (w *CutWindow) State(t time.Time) State {
	switch {
	case w.Opens.IsZero() || t.Before(w.Opens):
		return TooSoon
	case w.Closes.IsZero() || !t.After(w.Closes):
		return CutNow
	case w.At(t).Cracked >= missedChance:
		return Missed
	}
	return Late
}
