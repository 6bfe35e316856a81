package job

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime"
	"sync"

	"slabwright/causes"
	"slabwright/plan"
	"slabwright/restraint"
	"slabwright/walk"
)

// hypothesis is a cause that the slab in plan can be replayed without.
type hypothesis struct {
	cause   string
	also    bool   // only a way to prevent it: it does not say what the cause is
	words   string // what is done otherwise: "every joint cut by 19:30"
	change  []planChange
	replays causes.Replays
}

// replaysOfCauses is the slab replayed as it was and without each cause it can be
// replayed without, all drawn alike.
type replaysOfCauses struct {
	asWas  causes.Replays
	others []hypothesis
	well   causes.Replays // everything done otherwise at once
	until  float64
}

// hypothesisMembers is how many members each sample of a diagnosis has.
const hypothesisMembers = 5

// leastMembers is how many they have where the job asks for few members.
const leastMembers = 2

// Samples of hypotheses are coarser than those of a replay shown by itself: they are
// only set beside each other, and places are told to half a metre.
const (
	hypothesisSize = 1.15 // m, longest side of a triangle
	hypothesisFine = 0.45 // m, the same where stress crowds
)

// hypothesisHours are the hours such a sample steps through.
func hypothesisHours(until float64) (out []float64) {
	for h := 0.0; h < math.Min(until, 49); h += 3 {
		out = append(out, h)
	}
	for h := 60.0; h < until; h *= 1.45 {
		out = append(out, h)
	}
	return append(out, until)
}

// hypotheses replays the slab with and without each cause and adds what that says to
// the findings' evidence. Where the slab cannot be replayed the findings keep the
// answer that the rest of the evidence gives.
func (d *diagnosis) hypotheses(from, to float64) error {
	if !d.anyReplayable() {
		return nil
	}
	r, err := d.replayCauses(from, to)
	var unknown NotKnown
	switch {
	case errors.As(err, &unknown):
		d.lack("pours", "clock, mix, thickness and weather of every pour", "so causes are not set against replays of the slab")
		return nil
	case err != nil:
		return err
	}
	for _, run := range d.sheets {
		d.scoreFinding(run, r)
	}
	return nil
}

// replayable reports whether a finding is of the kind a replay in plan tells of.
func replayable(f walk.Finding) bool {
	return throughCrack(f) || f.Kind == walk.JointNotOpen && f.Joint != ""
}

func (d *diagnosis) anyReplayable() bool {
	for _, run := range d.sheets {
		if replayable(run.finding) {
			return true
		}
	}
	return false
}

// replayCauses runs all samples. Progress runs from one share of the whole to another.
func (d *diagnosis) replayCauses(from, to float64) (*replaysOfCauses, error) {
	r := &replaysOfCauses{until: d.replayedHours()}
	base, err := d.planInputs(r.until)
	if err != nil {
		return nil, err
	}
	r.others = d.hypothesesOf(base)
	var all []planChange
	for _, h := range r.others {
		if !h.also {
			all = append(all, h.change...)
		}
	}
	sets := [][]planChange{nil, all}
	for _, h := range r.others {
		sets = append(sets, h.change)
	}
	replays, err := d.replaySets(sets, r.until, from, to)
	if err != nil {
		return nil, err
	}
	r.asWas, r.well = replays[0], replays[1]
	for i := range r.others {
		r.others[i].replays = replays[2+i]
	}
	return r, nil
}

// replayedHours is how long the slab is followed: to the last walk, two years at most.
func (d *diagnosis) replayedHours() float64 {
	const twoYears = 2 * 365 * 24.0
	w := d.lastWalk()
	if w == nil {
		return twoYears
	}
	age := w.Date.Sub(d.replayStart()).Hours()
	return math.Min(math.Max(age, 24), twoYears)
}

// replaySets replays the slab with each set of changes, member by member alike, as many
// at a time as there are cores. The answer does not depend on their number.
func (d *diagnosis) replaySets(sets [][]planChange, until, from, to float64) ([]causes.Replays, error) {
	count := hypothesisMembers
	if own := d.job.Basis.Members; own > 0 {
		count = min(count, max(leastMembers, own/6))
	}
	all := make([]causes.Replays, len(sets))
	members := make([]func() func(int) restraint.Model, len(sets)) // each lays its net at the first call
	for i, changes := range sets {
		m, doubt, err := d.planModel(until, changes...)
		if err != nil {
			return nil, err
		}
		m.Settings.Size, m.Settings.Fine, m.Settings.Workers = hypothesisSize, hypothesisFine, 1
		m = m.Quick()
		members[i] = sync.OnceValue(func() func(int) restraint.Model { return m.Spread(count, d.job.Basis.Seed, doubt) })
		all[i] = make(causes.Replays, count)
	}
	hours := hypothesisHours(until)
	run := func(k int) {
		set, member := k%len(sets), k/len(sets)
		m := members[set]()(member)
		replayed, _ := m.Replay(d.ctx, hours, nil, nil)
		if replayed != nil {
			all[set][member] = replayedLines(m, replayed)
		}
	}
	return all, d.eachOf(d.ctx, count*len(sets), run, from, to)
}

// eachOf runs tasks 0 to n-1 on all cores and says how many are done.
func (d *diagnosis) eachOf(ctx context.Context, n int, run func(int), from, to float64) error {
	next, done := make(chan int), make(chan struct{})
	var group sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for k := range next {
				run(k)
				done <- struct{}{}
			}
		})
	}
	go func() {
		defer close(done)
		for k := range n {
			if ctx.Err() != nil {
				break
			}
			next <- k
		}
		close(next)
		group.Wait()
	}()
	finished := 0
	for range done {
		finished++
		d.say(fmt.Sprintf("causes against replays, %d of %d", finished, n), from+(to-from)*float64(finished)/float64(n))
	}
	return ctx.Err()
}

// replayedLines is what opened in one replay.
func replayedLines(m restraint.Model, r *restraint.Replay) []causes.ReplayedLine {
	paths := map[string]plan.Polyline{}
	for _, l := range m.Lines {
		paths[l.ID] = l.Path
	}
	lines := []causes.ReplayedLine{}
	for _, e := range r.Events {
		l := causes.ReplayedLine{Path: e.Path, Hour: e.Hour}
		if e.Kind != restraint.CrackLine {
			l.Joint = e.Line
			path := paths[e.Line]
			a, _, _ := path.Nearest(e.Path[0])
			b, _, _ := path.Nearest(e.Path[len(e.Path)-1])
			l.Ends = [2]float64{math.Min(a, b), math.Max(a, b)}
		}
		lines = append(lines, l)
	}
	return lines
}
