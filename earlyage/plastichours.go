package earlyage

import (
	"fmt"
	"math"
	"slices"
	"time"

	"slabwright/climate"
	"slabwright/concrete"
)

// PlasticInput is what the plastic stage must know beside the history. Zero values:
// the usual limit, no bars near the top, not floated again.
type PlasticInput struct {
	Limit   float64   // on the drying rate, kg/m2/h; 0: climate.DryingLimit
	Bar     float64   // diameter of the top bars, mm; 0: none, or too deep to matter
	Cover   float64   // over them, mm
	Slump   float64   // mm
	Floated []float64 // hours after placing at which floats or trowels went over the whole surface again
}

// Check returns everything that cannot be right about the input.
func (in PlasticInput) Check() error {
	var wrong []string
	within := func(what string, value, low, high float64, unit, mend string) {
		if !(value >= low && value <= high) {
			wrong = append(wrong, fmt.Sprintf("%s %.4g %s is outside %g to %g %s; %s.", what, value, unit, low, high, unit, mend))
		}
	}
	within("limit on the drying rate", in.Limit, 0, 3, "kg/m2/h", "published limits are 0.5 to 1.0, and 0.2 lb/ft2/h is 1.0")
	within("bar", in.Bar, 0, 40, "mm", "give the diameter in mm")
	if in.Bar > 0 {
		within("cover over the bars", in.Cover, 5, 500, "mm", "give mm from the surface to the bar")
		within("slump", in.Slump, 0, 260, "mm", "give mm; with a bar the slump is needed")
	}
	for _, f := range in.Floated {
		within("time of floating", f, 0, 72, "h", "give hours after placing")
	}
	if wrong != nil {
		return fmt.Errorf("plastic stage: %v", wrong)
	}
	return nil
}

// PlasticHour is one hour of the fresh slab. Rates are means over the hour, the
// rest holds at its end.
type PlasticHour struct {
	Time       time.Time // end of the hour
	Hours      float64   // after placing
	Open       float64   // drying rate of a wet surface without covers, kg/m2/h
	Rate       float64   // water that leaves the concrete, kg/m2/h
	Bleed      float64   // water that comes up, kg/m2/h
	Film       float64   // standing on the surface, kg/m2
	Deficit    float64   // drawn out of the concrete so far, kg/m2
	Suction    float64   // in the pore water at the surface, kPa
	Pull       float64   // level tension it brings, kPa
	Strength   float64   // of the surface against it, kPa
	OverLimit  bool      // the open rate passed the limit
	AfterSet   bool      // initial set is past: no float closes a crack any more
	Settlement float64   // of the surface since placing, mm

	ShrinkageChance  float64 // that the surface has torn by shrinkage so far
	SettlementChance float64 // that it has cracked over the bars so far
}

// PlasticHours returns the fresh slab hour by hour from placing to final set of the
// surface, or to the end of a run that ends before it; the last entry may be a part of
// an hour.
//
// Drying: water leaves at the open rate while a film stands, and out of the
// concrete when it is gone; what is drawn out brings suction, see pull. Settlement:
// cracks over bars come while the surface sinks, which it does as the bleed water
// comes up, and before initial set; the chance at the end is that of
// [concrete.SettlementCracking] and comes in step with the sinking (own reading:
// the table has no times; cracks over bars are reported from 10 minutes to 3 hours
// after placing, Concrete Society TR 22, from memory). A floating before initial
// set closes what has opened so far, so that only what comes after it counts. Where a run
// ends before initial set, what has sunk by its end counts as all of it.
func (h *History) PlasticHours(in PlasticInput) []PlasticHour {
	if err := in.Check(); err != nil {
		panic("earlyage: " + err.Error() + " Call PlasticInput.Check first.")
	}
	w := newPlasticWalk(h, in)
	var out []PlasticHour
	for i := 1; i < len(h.Hours) && h.Hours[i-1] < w.final-1e-9; i++ {
		w.step(i)
		last := i+1 == len(h.Hours) || h.Hours[i] >= w.final-1e-9
		if full := math.Floor(h.Hours[i] + 1e-9); last || full > math.Floor(h.Hours[i-1]+1e-9) {
			out = append(out, w.hour(i))
		}
	}
	return out
}

// plasticWalk goes through a history step by step.
type plasticWalk struct {
	*History
	in             PlasticInput
	initial, final float64 // of the surface, h; the end of the run where not reached
	age, ageEnd    float64 // equivalent age of the surface at initial and final set, h
	pull           pull
	over           bool
	from           int     // entry at which the hour began
	floated        float64 // bleed water that had come up at the last floating, kg/m2
	bled           float64 // at initial set
	settled        float64 // chance of cracks over bars if all of the sinking counts
}

func newPlasticWalk(h *History, in PlasticInput) *plasticWalk {
	w := &plasticWalk{History: h, in: in}
	if w.in.Limit == 0 {
		w.in.Limit = climate.DryingLimit
	}
	end := h.Hours[len(h.Hours)-1]
	orEnd := func(t float64) float64 {
		if math.IsNaN(t) {
			return end
		}
		return t
	}
	w.initial, w.final = orEnd(h.InitialSet.Surface), orEnd(h.FinalSet.Surface)
	w.age, w.ageEnd = h.SetAges[0], h.SetAges[1]
	w.bled = h.seriesAt(h.Bled, w.initial)
	if in.Bar > 0 {
		w.settled = concrete.SettlementCracking(in.Cover, in.Slump, in.Bar)
	}
	return w
}

// step moves the pull and the settlement over one step of the history.
func (w *plasticWalk) step(i int) {
	toFinal := held((w.SurfaceAge[i] - w.age) / (w.ageEnd - w.age))
	keptWet := w.Evaporation[i] == 0 && w.OpenRate[i] > 0
	w.pull.step(w.Drawn[i]-w.Drawn[i-1], w.BleedFilm[i] > 0 || keptWet, w.SurfaceAge[i]/w.age, toFinal)
	w.over = w.over || w.OpenRate[i] > w.in.Limit
	if w.Hours[i] < w.initial && slices.ContainsFunc(w.in.Floated, func(f float64) bool { return f > w.Hours[i-1] && f <= w.Hours[i] }) {
		w.pull.float()
		w.floated = w.Bled[i]
	}
}

// hour closes an hour at an entry of the history.
func (w *plasticWalk) hour(i int) PlasticHour {
	span := w.Hours[i] - w.Hours[w.from]
	mean := func(of func(i int) float64) float64 {
		sum := 0.0
		for k := w.from + 1; k <= i; k++ {
			sum += (w.Hours[k] - w.Hours[k-1]) * of(k)
		}
		return sum / span
	}
	p := PlasticHour{Time: w.Clock(w.Hours[i]), Hours: w.Hours[i],
		Open: mean(func(k int) float64 { return (w.OpenRate[k-1] + w.OpenRate[k]) / 2 }),
		Rate: (w.Lost[i] - w.Lost[w.from]) / span, Bleed: (w.Bled[i] - w.Bled[w.from]) / span,
		Film: w.BleedFilm[i], Deficit: w.Drawn[i],
		Suction: w.pull.Suction, Pull: w.pull.Tension, Strength: w.pull.Strength,
		OverLimit: w.over, AfterSet: w.Hours[i] >= w.InitialSet.Surface, Settlement: w.Bled[i],
		ShrinkageChance: w.pull.chance()}
	if w.bled > 0 {
		p.SettlementChance = w.settled * held((math.Min(w.Bled[i], w.bled)-w.floated)/w.bled)
	}
	w.from, w.over = i, false
	return p
}

// seriesAt returns a series at a time, linear between the entries.
func (h *History) seriesAt(series []float64, hours float64) float64 {
	i, s := h.place(hours)
	return (1-s)*series[i] + s*series[i+1]
}
