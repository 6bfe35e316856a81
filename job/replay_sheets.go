package job

import (
	"fmt"

	"slabwright/restraint"
	"slabwright/source"
	"slabwright/working"
)

// sheets puts what the replay stands on among the workings: its concrete against the
// code, its greatest tension against a strip on its base, its openings and its lift
// against their closed forms.
func (r *replayRun) sheets() {
	s := working.Sheet{ID: "replay", Title: "The slab in plan through time, with its hand checks", Basis: []string{
		"Plane stress on a base that holds like a spring and slips; lines open where tension passes strength. Free strain, stiffness, strength and curl come from the column of each pour, followed on with a mean year.",
		"A crack opens where strength is passed and the work this sets free is what tearing takes; curl that it lets go counts in both."}}
	r.concreteLines(&s)
	r.peakLine(&s)
	r.openingLine(&s)
	r.liftLine(&s)
	r.d.book.Add(s)
	r.out.Workings = []string{s.ID}
}

// concreteLines set shrinkage and creep of the first pour beside the code.
func (r *replayRun) concreteLines(s *working.Sheet) {
	p := r.in.pours[0]
	hours := p.hours[len(p.hours)-1]
	last := len(p.hours) - 1
	drying, autogenous := -1e6*p.history.Drying[last], -1e6*p.history.Autogenous[last]
	en := source.Cite("en1992", "3.1.4")
	code := 1e6 * r.d.longTerm(p.run.mix).Shrinkage(hours/hoursPerDay)
	s.Add(working.New("ε_s", "shrinkage, "+hoursWords(hours)+" after placing, mean of the depth", "ε_d + ε_a", drying+autogenous, "µm/m", source.Cite("own", ""),
		working.In("ε_d", drying, "µm/m", "drying, by diffusion from the top"), working.In("ε_a", autogenous, "µm/m", "autogenous")).
		Beside("mean shrinkage by the code for this thickness and humidity", code, en, "the column dries through one face and knows no cracks; the code's curve is a fit to many members"))
	marched := p.fullRestraint(1)
	worst := 0
	for i, v := range p.history.FullRestraint {
		if v > p.history.FullRestraint[worst] {
			worst = i
		}
	}
	rate := marched[worst]
	s.Add(working.New("σ_r", "stress of full restraint at its greatest, "+hoursWords(p.hours[worst])+" after placing, by the creep that the plan goes by", "σ", rate, "MPa", source.Cite("mechanics", ""), working.In("σ", rate, "MPa", "marched")).
		Beside("the same by the column, whose creep remembers the age at loading", p.history.FullRestraint[worst], en, "the plan's creep forgets the age at which a stress came; it is fitted over the whole time"))
}

// peakLine sets the greatest tension in plan beside a strip on its base.
func (r *replayRun) peakLine(s *working.Sheet) {
	best := 0
	for i, f := range r.result.Fields {
		if f.Beside.Model > r.result.Fields[best].Beside.Model {
			best = i
		}
	}
	b := r.result.Fields[best].Beside
	s.Add(working.New("σ_max", fmt.Sprintf("greatest tension in plan at the hours kept, %s after the first truck, at (%.1f, %.1f)", hoursWords(r.result.Fields[best].Hour), b.At.X, b.At.Y),
		"σ", b.Model/1e6, "MPa", source.Cite("mechanics", ""), working.In("σ", b.Model/1e6, "MPa", "mean over 0.15 m")).
		Beside("strip on its base from one free end to the next", b.Hand/1e6, source.Cite("mechanics", ""), r.byName(b.Why)))
}

// openingLine sets the mean opening of the sawn joints that work beside the closed form.
func (r *replayRun) openingLine(s *working.Sheet) {
	sum, n := 0.0, 0.0
	for _, o := range r.result.Openings {
		if o.Kind == restraint.SawnLine {
			sum, n = sum+o.Mean, n+1
		}
	}
	if n == 0 {
		return
	}
	mean := 1000 * sum / n
	p := r.in.pours[0]
	opened := r.result.Events[0].Hour
	fall := p.at(opened, r.in.shrink).Strain - p.at(r.result.Until, r.in.shrink).Strain
	spacing := r.d.meanPanelLength()
	s.Add(working.New("w", "mean opening of the sawn joints that opened, at the end", "w_sum/n", mean, "mm", source.Cite("mechanics", ""),
		working.In("w_sum", 1000*sum, "mm", "sum of their means"), working.In("n", n, "", "joints")).
		Beside(fmt.Sprintf("base letting 0.8 of the shortening through at %.1f m of joint spacing", spacing), 1000*restraint.JointOpening(0.8, spacing, 1, fall, 0), source.Cite("aashto1993", ""),
			"joints that stay shut leave theirs to the others; bars across joints hold them; cracks take a part"))
}

// liftLine sets the greatest lift of the plate beside the closed form of a corner.
func (r *replayRun) liftLine(s *working.Sheet) {
	most, at := 0.0, -1
	for i, f := range r.out.Field.Frames {
		for _, p := range f.Panels {
			if p.Lift > most {
				most, at = p.Lift, i
			}
		}
	}
	if at < 0 {
		return
	}
	f := r.out.Field.Frames[at]
	corner, edge := r.cornerByHand(f.Hours)
	s.Add(working.New("z", fmt.Sprintf("greatest lift of a corner, %s after the first truck, top less bottom %.0f K", hoursWords(f.Hours), f.Gap), "z", most, "mm", source.Cite("own", ""),
		working.In("z", most, "mm", "plate on ground that cannot pull")).
		Beside(fmt.Sprintf("two long edges added, each %.1f mm and off the ground over %.2f m", 1000*edge.Edge, edge.Lifted), 1000*corner, source.Cite("mechanics", ""),
			"dowels hold a corner to its neighbours, and a short panel has less weight to bend it"))
}
