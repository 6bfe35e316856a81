package earlyage

import (
	"context"
	"fmt"
	"math"
	"slices"
	"time"
)

// mostRuns is how many placing times of a pour are run; windows between come by
// interpolation.
const mostRuns = 5

// PanelWindows returns the cut window of each panel of a pour, by the time it was
// placed, in the order given. The pour is run with the same seed at up to five
// placing times spread over those of the panels; between two of them hours after
// placing, chances and ranges are taken linear in the placing time, and the chance so
// found says when its window closes. With runs an hour and a half apart openings were
// within ten minutes and closings within 36 of runs of their own. Weather and
// covers keep their clock: a cover that goes on at noon lies on younger concrete sooner
// after placing. What was observed belongs to the pour as it was given; since the
// same seed gives the same members, their weights go to every panel.
func PanelWindows(ctx context.Context, p Pour, placedAt []time.Time, saw Saw, risk float64) ([]CutWindow, error) {
	if len(placedAt) == 0 {
		return nil, nil
	}
	if p.Observed.any() {
		m, err := RunMembers(ctx, p)
		if err != nil {
			return nil, err
		}
		p.weighed, p.Observed = m, Observed{}
	}
	times := runTimes(placedAt)
	windows := make([]CutWindow, len(times))
	for i, t := range times {
		w, err := Window(ctx, p.placedAt(t), saw, risk)
		if err != nil {
			return nil, fmt.Errorf("panel placed at %s: %w", t.Format("2 Jan 15:04"), err)
		}
		windows[i] = w
	}
	out := make([]CutWindow, len(placedAt))
	for i, t := range placedAt {
		out[i] = between(times, windows, t)
	}
	return out, nil
}

// runTimes are the distinct placing times, or five spread evenly from first to last.
func runTimes(placedAt []time.Time) []time.Time {
	times := slices.Clone(placedAt)
	slices.SortFunc(times, time.Time.Compare)
	times = slices.CompactFunc(times, time.Time.Equal)
	if len(times) <= mostRuns {
		return times
	}
	first, last := times[0], times[len(times)-1]
	times = times[:0]
	for k := range mostRuns {
		times = append(times, first.Add(last.Sub(first)*time.Duration(k)/(mostRuns-1)))
	}
	return times
}

// placedAt returns the pour placed at a time, with covers going on and off by the
// clock they had.
func (p Pour) placedAt(t time.Time) Pour {
	by := t.Sub(p.Column.Placed)
	if by == 0 {
		return p
	}
	p = p.Later(by)
	covers := make([]Cover, 0, len(p.Column.Covers))
	for _, c := range p.Column.Covers {
		if c.Off != 0 {
			if c.Off -= by.Hours(); c.Off <= 0 {
				continue // it was off before this panel was placed
			}
		}
		c.On = math.Max(0, c.On-by.Hours())
		covers = append(covers, c)
	}
	p.Column.Covers = covers
	return p
}

// between is the window at a placing time between those that were run.
func between(times []time.Time, windows []CutWindow, t time.Time) CutWindow {
	i, _ := slices.BinarySearchFunc(times, t, time.Time.Compare)
	if i < len(times) && times[i].Equal(t) || i == 0 {
		return windows[min(i, len(times)-1)]
	}
	if i == len(times) {
		return windows[i-1]
	}
	return windows[i-1].mixed(&windows[i], float64(t.Sub(times[i-1]))/float64(times[i].Sub(times[i-1])), t)
}

// mixed is the window of concrete placed at a time, a share of the way from one window
// to another.
func (a *CutWindow) mixed(b *CutWindow, share float64, placed time.Time) CutWindow {
	w := *a
	if share > 0.5 {
		w = *b
	}
	w.placed = placed
	mix := func(x, y float64) float64 { return mixedHours(x, y, share) }
	w.Curve = make([]Chance, len(a.Curve))
	for k, c := range a.Curve {
		d := b.chanceAt(c.Hours)
		w.Curve[k] = Chance{Hours: c.Hours, Ready: c.Ready + share*(d.Ready-c.Ready), Cracked: c.Cracked + share*(d.Cracked-c.Cracked)}
	}
	w.opens, w.best, w.stress = mix(a.opens, b.opens), mix(a.best, b.best), mix(a.stress, b.stress)
	w.closes = earlier(w.stress, reached(hoursOf(w.Curve), cracked(w.Curve), w.Risk))
	w.ByStress = w.closes == w.stress
	w.Opens, w.Best, w.Closes = w.clock(w.opens), w.clock(w.best), w.clock(w.closes)
	w.OpensEarly = w.clock(earlier(mix(a.hours(a.OpensEarly), b.hours(b.OpensEarly)), w.opens))
	w.OpensLate = w.clock(later(mix(a.hours(a.OpensLate), b.hours(b.OpensLate)), w.opens))
	w.ClosesEarly = w.clock(earlier(mix(a.hours(a.ClosesEarly), b.hours(b.ClosesEarly)), w.closes))
	w.ClosesLate = w.clock(later(mix(a.hours(a.ClosesLate), b.hours(b.ClosesLate)), w.closes))
	w.Gap = w.closes <= w.opens || math.IsNaN(w.opens)
	w.RiskAtOpen, w.RiskAtBest = mix(a.RiskAtOpen, b.RiskAtOpen), mix(a.RiskAtBest, b.RiskAtBest)
	return w
}

// mixedHours is a share of the way from one time to another; of two where one is never
// (NaN) it is the nearer.
func mixedHours(x, y, share float64) float64 {
	switch {
	case math.IsNaN(x) != math.IsNaN(y) && share <= 0.5:
		return x
	case math.IsNaN(x) != math.IsNaN(y):
		return y
	}
	return x + share*(y-x)
}

// hours turns a clock time of the window into hours after placing, never (zero) into
// NaN, and clock turns them back.
func (w *CutWindow) hours(at time.Time) float64 {
	if at.IsZero() {
		return math.NaN()
	}
	return at.Sub(w.placed).Hours()
}

func (w *CutWindow) clock(hours float64) time.Time {
	if math.IsNaN(hours) {
		return time.Time{}
	}
	return w.placed.Add(time.Duration(math.Round(hours*3600)) * time.Second)
}

func hoursOf(curve []Chance) []float64 {
	out := make([]float64, len(curve))
	for i, c := range curve {
		out[i] = c.Hours
	}
	return out
}
