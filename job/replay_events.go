package job

import (
	"fmt"
	"math"

	"slabwright/plan"
	"slabwright/report"
	"slabwright/restraint"
)

// events puts what opened and cracked into rows, in order of time.
func (r *replayRun) events() {
	before := map[string]bool{}
	for i, e := range r.result.Events {
		r.out.Events = append(r.out.Events, r.event(e, r.result.Events[:i], before[e.Line]))
		before[e.Line] = true
	}
}

func (r *replayRun) event(e restraint.Event, earlier []restraint.Event, further bool) report.ReplayEvent {
	crack := e.Kind == restraint.CrackLine
	row := report.ReplayEvent{At: r.clockOf(e.Hour), Hours: round(e.Hour, 2), Placed: round(e.Hour-r.in.placedAt(e.At), 1), Line: e.Line, Crack: crack, Further: further,
		Path: roundPath(e.Path), Length: round(e.Length, 2), Share: round(e.Share, 3), Stress: round(r.pull(e)/1e6, 3), Freed: round(e.Freed, 1), Needed: round(e.Needed, 1)}
	if p := plan.PanelAt(r.d.panels, e.At); p != nil {
		row.Panel = p.ID
	}
	row.What, row.Where = eventWhat(e, further), r.where(e, row.Panel)
	hand := r.handAt(e, earlier)
	row.Hand, row.Held = round(hand.stress/1e6, 3), hand.why(r.pull(e), r)
	row.Why = r.whyThere(e, row)
	row.Since = round(stepBefore(e.Hour), 2)
	row.Seen, row.Finding = r.seen(e)
	return row
}

// pull is the tension in plan that opened a line, Pa. Over a groove it is what is left of
// the tension used once the curl that the groove feels is taken off.
func (r *replayRun) pull(e restraint.Event) float64 {
	pour := r.in.pourAt(e.At)
	if e.Kind == restraint.CrackLine || pour == nil {
		return e.Stress
	}
	c := pour.at(e.Hour, r.in.shrink)
	for _, l := range r.model.Lines {
		if l.ID == e.Line {
			return math.Max(0, (e.Share*c.Strength-c.Face/l.FaceShare)*l.Share)
		}
	}
	return e.Stress
}

// stepBefore is the hour of the step before one of the usual hours: a line opened
// somewhere between.
func stepBefore(hour float64) float64 {
	if hour <= 74 {
		return hour
	}
	before := 72.0
	for h := 96.0; h < hour-1e-6; h *= 1.25 {
		before = h
	}
	return before
}

func eventWhat(e restraint.Event, further bool) string {
	switch {
	case e.Kind == restraint.CrackLine && further:
		return "Crack " + e.Line + " grows"
	case e.Kind == restraint.CrackLine:
		return "Crack " + e.Line + " starts"
	case further:
		return "Joint " + e.Line + " opens further"
	}
	return "Joint " + e.Line + " cracks below its groove"
}

// where says in words where an event is.
func (r *replayRun) where(e restraint.Event, panel string) string {
	from, to := e.Path[0], e.Path[len(e.Path)-1]
	ends := fmt.Sprintf("from (%.1f, %.1f) to (%.1f, %.1f)", from.X, from.Y, to.X, to.Y)
	if e.Kind != restraint.CrackLine {
		if j := r.d.joint(e.Line); j != nil && e.Length > 0.95*plan.Polyline(j.Path).Length() {
			return "over its whole length"
		}
		return fmt.Sprintf("over %.1f m, %s", e.Length, ends)
	}
	words := ""
	if panel != "" {
		words = "in panel " + panel + " "
	}
	words += fmt.Sprintf("over %.1f m, %s", e.Length, ends)
	if near := r.nearestThing(e); near != "" {
		words += ", " + near
	}
	return words
}

// nearThing is how near a corner, a fixture or a joint must be to name it, m.
const nearThing = 0.7

// nearestThing names the inside corner, fixture or joint that a crack starts at.
func (r *replayRun) nearestThing(e restraint.Event) string {
	for _, p := range []plan.Point{e.Path[0], e.Path[len(e.Path)-1]} {
		for _, c := range r.corners {
			if p.To(c.At) < 0.15 || c.At.To(e.At) < nearThing {
				return fmt.Sprintf("at the inside corner %s (%.1f, %.1f)", r.d.cornerName(c.Fixture), c.At.X, c.At.Y)
			}
		}
	}
	for _, f := range r.in.slab.Fixtures {
		if len(f.Shape) < 2 {
			continue
		}
		path := plan.Polyline(append(append([]plan.Point(nil), f.Shape...), f.Shape[0]))
		if _, _, away := path.Nearest(e.At); away < nearThing {
			return "at the " + r.d.fixtureName(f.ID)
		}
	}
	for _, j := range r.in.slab.Joints {
		if _, _, away := plan.Polyline(j.Path).Nearest(e.At); away < nearThing {
			return fmt.Sprintf("%.0f mm from joint %s", 1000*away, j.ID)
		}
	}
	return ""
}

// whyThere says what the place had of its strength and what pulled.
func (r *replayRun) whyThere(e restraint.Event, row report.ReplayEvent) string {
	pour := r.in.pourAt(e.At)
	words := fmt.Sprintf("tension in plan %.2f MPa", row.Stress)
	if pour != nil {
		c := pour.at(e.Hour, r.in.shrink)
		words += fmt.Sprintf(" and curl held down %.2f MPa, strength %.2f MPa", c.Face/1e6, c.Strength/1e6)
		if e.Kind == restraint.SawnLine {
			words += ", less what the groove takes of it"
		}
	}
	return fmt.Sprintf("%s: %.0f %% of the strength is used", words, 100*e.Share)
}

// handFigure is a strip on its base from one free end to the next, across an event.
type handFigure struct {
	stress, near, length float64
	at                   plan.Point
}

// handAt works out what the base alone can bring across the place of an event: the least
// of nothing giving, the base sliding from the nearer free end, and the base giving like
// a spring.
func (r *replayRun) handAt(e restraint.Event, earlier []restraint.Event) handFigure {
	way, ok := e.Path[len(e.Path)-1].Minus(e.Path[0]).Unit()
	pour := r.in.pourAt(e.At)
	if !ok || pour == nil {
		return handFigure{}
	}
	across := way.Left()
	free := r.freeLines(e.Line, earlier, !r.nearCorner(e.At))
	ahead, back := rayTo(free, e.At, across), rayTo(free, e.At, across.Times(-1))
	thick := r.in.slab.Thickness.Value
	h := handFigure{near: math.Min(ahead, back), length: ahead + back, at: e.At}
	c := pour.at(e.Hour, r.in.shrink)
	full := math.Max(0, 1e6*pour.fullAt(e.Hour))
	elastic := full
	if strain := full / math.Max(c.Modulus, 1); strain > 0 && !math.IsInf(h.length, 1) {
		elastic = restraint.ElasticBedStress(c.Modulus, strain, h.length, thick, r.in.base.Stiffness)
	}
	h.stress = math.Min(full, math.Min(elastic, r.in.base.Limit(thick)*h.near/thick))
	return h
}

// why says what the hand figure leaves out, where it is over a fifth off.
func (h handFigure) why(stress float64, r *replayRun) string {
	if h.stress > 0 && math.Abs(stress/h.stress-1) <= 0.2 {
		return ""
	}
	if r.nearCorner(h.at) {
		return "tension crowds at the inside corner; the hand figure is the mean of a strip on its base"
	}
	for _, f := range r.in.slab.Fixtures {
		if len(f.Shape) > 2 && plan.Ring(f.Shape).Distance(h.at) < 2 {
			return "held by the " + r.d.fixtureName(f.ID) + ", which the hand figure leaves out"
		}
	}
	for _, j := range r.in.slab.Joints {
		if _, _, away := plan.Polyline(j.Path).Nearest(h.at); away < 2 && j.Dowels != nil && !j.Dowels.FreeSide.Is("yes") {
			return "dowels across joint " + j.ID + " hold sideways, which the hand figure leaves out"
		}
	}
	if stress > h.stress {
		return "the slab beside the strip pulls on it too"
	}
	return "the base drags in two directions at once"
}

// nearCorner reports whether a place lies where an inside corner crowds the tension.
func (r *replayRun) nearCorner(at plan.Point) bool {
	for _, c := range r.corners {
		if c.At.To(at) < 1 {
			return true
		}
	}
	return false
}

// freeLines are the edges, joints and cracks that are open by an event; those of openings
// only where asked for.
func (r *replayRun) freeLines(but string, earlier []restraint.Event, openings bool) (free []plan.Segment) {
	add := func(path []plan.Point) { free = append(free, plan.Polyline(path).Pieces()...) }
	add(append(append([]plan.Point(nil), r.in.slab.Outline...), r.in.slab.Outline[0]))
	for _, f := range r.in.slab.Fixtures {
		if openings && f.Opening && len(f.Shape) > 2 {
			add(append(append([]plan.Point(nil), f.Shape...), f.Shape[0]))
		}
	}
	for _, j := range r.in.slab.Joints {
		if j.Kind != plan.Sawn {
			add(j.Path)
		}
	}
	for _, e := range earlier {
		if e.Line != but {
			add(e.Path)
		}
	}
	return free
}

// rayTo is how far it is in a direction to the nearest of some lines, infinite for none.
func rayTo(lines []plan.Segment, from, way plan.Point) float64 {
	nearest := math.Inf(1)
	for _, s := range lines {
		along := s.B.Minus(s.A)
		det := way.Cross(along)
		if math.Abs(det) < 1e-12 {
			continue
		}
		far, share := s.A.Minus(from).Cross(along)/det, s.A.Minus(from).Cross(way)/det
		if far > 1e-6 && share >= -1e-9 && share <= 1+1e-9 {
			nearest = math.Min(nearest, far)
		}
	}
	return nearest
}

func openingRow(o restraint.Opening) report.ReplayOpening {
	return report.ReplayOpening{Line: o.Line, Crack: o.Kind == restraint.CrackLine, Open: round(o.Open, 2), Length: round(o.Length, 2), Mean: round(o.Mean, 6), Widest: round(o.Widest, 6)}
}
