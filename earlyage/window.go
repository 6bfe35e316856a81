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
	ClosesEarly, ClosesLate time.Time
	Gap                     bool    // it closes before it opens
	Risk                    float64 // chance of a crack accepted
	RiskAtOpen, RiskAtBest  float64 // chance of having cracked by then
	ByStress                bool    // closed by the stress of the expected course, not by the chance
	Why                     string
	Basis                   []string
	Curve                   []Chance

	opens, best, closes float64 // hours, NaN where never
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
// strength by a lognormal law.
func (m *Members) Window(saw Saw, risk float64) CutWindow {
	if risk <= 0 {
		risk = DefaultRisk
	}
	w := CutWindow{Saw: saw, Risk: risk, placed: m.Pour.Column.Placed}
	w.Curve = m.curve(saw)
	expected := m.members[0]
	w.opens = reached(m.Hours, expected.history.EdgeFc, saw.Edge)
	stress := reached(m.Hours, expected.ratio, StressShare)
	chance := reached(m.Hours, cracked(w.Curve), risk)
	w.closes = earlier(stress, chance)
	w.ByStress = w.closes == stress
	w.best = w.bestTime()
	clock := func(hours float64) time.Time {
		if math.IsNaN(hours) {
			return time.Time{}
		}
		return expected.history.Clock(hours)
	}
	w.Opens, w.Best, w.Closes = clock(w.opens), clock(w.best), clock(w.closes)
	low, high := m.spread(func(b member) float64 { return reached(m.Hours, b.history.EdgeFc, b.edgeStrength(saw)) })
	w.OpensEarly, w.OpensLate = clock(low), clock(high)
	low, high = m.spread(func(b member) float64 { return reached(m.Hours, b.ratio, StressShare) })
	w.ClosesEarly, w.ClosesLate = clock(low), clock(high)
	w.Gap = w.closes <= w.opens || math.IsNaN(w.opens)
	w.RiskAtOpen, w.RiskAtBest = w.chanceAt(w.opens).Cracked, w.chanceAt(w.best).Cracked
	w.Why, w.Basis = w.reasons(m)
	return w
}

// edgeStrength is the edge strength this member needs, MPa.
func (b member) edgeStrength(s Saw) float64 {
	if b.edge < 0.5 {
		return s.EdgeLow + 2*b.edge*(s.Edge-s.EdgeLow)
	}
	return s.Edge + (2*b.edge-1)*(s.EdgeHigh-s.Edge)
}

// curve is how the members stand at each time of the run.
func (m *Members) curve(saw Saw) []Chance {
	out := make([]Chance, len(m.Hours))
	share := 1 / float64(len(m.members))
	for i := range out {
		out[i].Hours = m.Hours[i]
		for _, b := range m.members {
			if b.history.EdgeFc[i] >= b.edgeStrength(saw) {
				out[i].Ready += share
			}
			out[i].Cracked += share * CrackChance(b.ratio[i], m.Pour.Doubt.Tensile)
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

// spread returns the tenth and nine-tenth points of a time over the members; never
// counts as latest and comes back as NaN.
func (m *Members) spread(of func(member) float64) (low, high float64) {
	var times []float64
	for _, b := range m.members {
		t := of(b)
		if math.IsNaN(t) {
			t = math.Inf(1)
		}
		times = append(times, t)
	}
	sort.Float64s(times)
	pick := func(share float64) float64 {
		t := times[int(math.Round(share*float64(len(times)-1)))]
		if math.IsInf(t, 1) {
			return math.NaN()
		}
		return t
	}
	return pick(0.1), pick(0.9)
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
