package job

import (
	"errors"
	"fmt"
	"math"
	"runtime"
	"time"

	"slabwright/plan"
	"slabwright/report"
	"slabwright/restraint"
)

// replayRun is one replay of the slab on its way into the content.
type replayRun struct {
	d       *diagnosis
	in      *planInputs
	model   restraint.Model
	doubt   restraint.Doubt
	result  *restraint.Replay
	chances *restraint.Chances
	corners []plan.Corner
	out     *report.Replay
}

// replay follows the slab in plan and fills Content.Replay. What the job lacks for it is
// told among what is missing. Progress runs from one share of the whole to another.
func (d *diagnosis) replay(o ReplayOptions, from, to float64) error {
	d.say("the slab in plan", from)
	in, err := d.planInputs(o.Hours)
	var unknown NotKnown
	if errors.As(err, &unknown) {
		d.lack("pours", "clock, mix, thickness and weather of every pour", "so the slab is not replayed in plan")
		return nil
	}
	if err != nil {
		return err
	}
	r := &replayRun{d: d, in: in, model: in.model(), doubt: d.planDoubt(), corners: in.slab.InsideCorners()}
	r.out = &report.Replay{Start: in.start, Summary: []string{}, Events: []report.ReplayEvent{}, Openings: []report.ReplayOpening{}, Unmet: []report.UnmetRow{}}
	d.content.Replay = r.out
	stopped := r.expected(o.Hours, from, (from+to)/2)
	if r.result == nil {
		d.content.Replay = nil
		if d.ctx.Err() != nil {
			return d.ctx.Err()
		}
		d.lack("slabs[0]", stopped.Error(), "so the slab is not replayed in plan")
		return nil
	}
	if d.ctx.Err() == nil {
		r.sample(o, (from+to)/2, to)
	}
	r.fill()
	if err := d.ctx.Err(); err != nil {
		r.out.Partial = r.stoppedWords()
		return err
	}
	if stopped != nil {
		r.out.Partial = "It stops " + hoursWords(r.result.Until) + " after the first truck: " + stopped.Error() + "."
	}
	return nil
}

// expected replays the slab with its facts as they are and mean strength everywhere.
func (r *replayRun) expected(hours, from, to float64) error {
	m := r.model
	size := math.Sqrt(r.area()/planArea) * planSize
	m.Settings.Size, m.Settings.Fine = size, size/3
	m.Settings.Scatter, m.Settings.Workers = 0, runtime.GOMAXPROCS(0)
	var err error
	r.result, err = m.Replay(r.d.ctx, restraint.UsualHours(hours), frameHours(hours), func(done, of int, hour float64) {
		r.d.say("the slab in plan, "+hoursWords(hour)+" after the first truck", from+(to-from)*float64(done)/float64(of))
	})
	if r.result != nil && len(r.result.Fields) == 0 {
		r.result = nil
		if err == nil {
			err = errors.New("nothing came of it")
		}
	}
	return err
}

// Longest side of a triangle on a slab of so much area: some 2000 triangles.
const (
	planArea = 350.0 // m²
	planSize = 0.9   // m
)

func (r *replayRun) area() (sum float64) {
	for _, p := range r.d.panels {
		sum += p.Area
	}
	return sum
}

// frameHours are the hours at which the field is kept: through the first two days, then
// weeks, then seasons.
func frameHours(until float64) []float64 {
	var out []float64
	for _, h := range []float64{6, 9, 12, 14, 16, 20, 24, 36, 48, 72, 168, 28 * 24, 90 * 24, 180 * 24, 365 * 24, 545 * 24, 730 * 24} {
		if h < until {
			out = append(out, h)
		}
	}
	return append(out, until)
}

// sample replays the slab many times with its facts spread over their ranges and strength
// scattered over the plan.
func (r *replayRun) sample(o ReplayOptions, from, to float64) {
	m := r.model.Quick()
	m.Settings.Workers = 1
	r.chances, _ = restraint.Samples(r.d.ctx, o.Members, m.Spread(o.Members, r.d.job.Basis.Seed, r.doubt), restraint.UsualHours(o.Hours), chanceCell, runtime.GOMAXPROCS(0), func(done, of int, _ float64) {
		r.d.say(fmt.Sprintf("chances, %d of %d samples", done, of), from+(to-from)*float64(done)/float64(of))
	})
}

// chanceCell is the side of the squares over which chances of cracks are told, m.
const chanceCell = 1.0

// fill puts everything into the content.
func (r *replayRun) fill() {
	r.out.Hours = round(r.result.Until, 2)
	r.events()
	for _, o := range r.result.Openings {
		r.out.Openings = append(r.out.Openings, openingRow(o))
	}
	r.chanceRows()
	r.unmet()
	r.field()
	r.sheets()
	r.summary()
	r.assume()
}

func (r *replayRun) stoppedWords() string {
	words := "Stopped by hand " + hoursWords(r.result.Until) + " after the first truck"
	if r.result.Until >= r.in.until-1 {
		words = "Stopped by hand; the expected course is whole"
	}
	if r.chances != nil {
		return fmt.Sprintf("%s; chances are from the %d samples that were done.", words, r.chances.Members)
	}
	return words + "; no chances were worked out."
}

// summary says what the replay shows, plainest first.
func (r *replayRun) summary() {
	say := func(format string, args ...any) { r.out.Summary = append(r.out.Summary, fmt.Sprintf(format, args...)) }
	joints, cracks := map[string]bool{}, map[string]bool{}
	var first *report.ReplayEvent
	for i := range r.out.Events {
		e := &r.out.Events[i]
		if !e.Crack {
			joints[e.Line] = true
			continue
		}
		cracks[e.Line] = true
		if first == nil {
			first = e
		}
	}
	sawn := r.sawnJoints()
	say("In the expected course %d of %s crack below the groove, and %s start elsewhere by %s.", len(joints), countOf(len(sawn), "sawn joint"), countOf(len(cracks), "crack"), r.d.clockYear(r.clockOf(r.result.Until)))
	if first != nil {
		say("The first crack outside a joint comes on %s, %s.", r.d.clock(first.At), first.Where)
	}
	var shut []string
	for _, id := range sawn {
		if !joints[id] {
			shut = append(shut, id)
		}
	}
	if len(shut) > 0 && len(shut) < len(sawn) {
		say("Not opened: %s.", list(shut))
	}
	if c := r.out.Chances; c != nil {
		say("A crack outside the joints comes in %s of the %d samples.", nIn10(c.Cracked), c.Members)
	}
	met := 0
	for line := range cracks {
		for _, e := range r.out.Events {
			if e.Line == line && e.Finding != "" {
				met++
				break
			}
		}
	}
	if w := r.d.lastWalk(); w != nil {
		say("Of the cracks expected %d lie where one was seen; %s seen on the walk are not in the expected course.", met, countOf(len(r.out.Unmet), "crack"))
	}
}

func (r *replayRun) sawnJoints() (ids []string) {
	for _, j := range r.in.slab.Joints {
		if j.Kind == plan.Sawn {
			ids = append(ids, j.ID)
		}
	}
	return ids
}

// assume puts what the replay takes for granted among the assumptions.
func (r *replayRun) assume() {
	d := r.d
	d.assume("strength over the plan, in the samples", fmt.Sprintf("varies by %.0f %%", 100*usualScatter), "default", "usual within one mix; nobody measured it", "where a crack starts, more than whether")
	d.assume("steel in the slab, in the replay", "left out", "own", "mesh holds a crack together and does not stop it from starting", "widths of cracks across bars, which come out too wide")
	d.assume("a place where something was cast against the slab", "holds it without giving", "default", "isolation was not recorded as complete", "cracks at pits and columns")
}

// Clock and words of hours.

func (r *replayRun) clockOf(hour float64) time.Time {
	return r.in.start.Add(time.Duration(hour * float64(time.Hour))).Round(time.Minute)
}

// clockYear is the clock with its year, for what lies months on.
func (d *diagnosis) clockYear(t time.Time) string { return t.In(d.zone).Format("Mon 2 Jan 2006") }

// hoursWords says a time after placing as a person would.
func hoursWords(h float64) string {
	switch days := h / hoursPerDay; {
	case h < 72:
		return fmt.Sprintf("%.0f h", h)
	case days < 60:
		return fmt.Sprintf("%.0f days", days)
	case days < 700:
		return fmt.Sprintf("%.0f months", days/30.4)
	default:
		return fmt.Sprintf("%.1f years", days/365)
	}
}

func countOf(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// nIn10 says a share of samples in tenths.
func nIn10(share float64) string {
	switch n := math.Round(10 * share); {
	case share == 0:
		return "none"
	case share == 1:
		return "all"
	case n == 0:
		return "fewer than 1 in 20"
	case n == 10:
		return "nearly all"
	default:
		return fmt.Sprintf("about %.0f in 10", n)
	}
}

func round(v float64, decimals int) float64 {
	f := math.Pow(10, float64(decimals))
	return math.Round(v*f) / f
}

func roundAt(p plan.Point) plan.Point { return plan.Point{X: round(p.X, 2), Y: round(p.Y, 2)} }

func roundPath(path []plan.Point) []plan.Point {
	out := make([]plan.Point, len(path))
	for i, p := range path {
		out[i] = roundAt(p)
	}
	return out
}
