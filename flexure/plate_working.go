package flexure

import (
	"fmt"
	"math"
	"strings"

	"slabwright/plan"
	"slabwright/source"
	"slabwright/working"
)

// own cites the plate solution itself.
func (b *Bent) own() source.Citation {
	return source.Cite("own", fmt.Sprintf("%s plate on springs, %d elements", b.Theory, b.Elements))
}

// Working returns the calculation of the plate line by line: what carries what, the
// greatest stresses and deflections, each load and each joint, with a closed form or a
// bound beside every figure that has one. Where they are more than 20 % apart the line
// is flagged and says why that may be.
func (b *Bent) Working() working.Sheet {
	p := b.Plate
	title := p.Title
	if title == "" {
		title = "The slab bent as a plate"
	}
	s := working.Sheet{ID: p.id(), Title: title, Basis: b.basis()}
	s.Add(stiffnessLine(nil, p.Modulus, p.Thickness, p.Poisson, p.Support, b.Stiff))
	s.Add(b.groundLines()...)
	s.Add(b.peakLines()...)
	for i := range p.Loads {
		s.Add(b.loadLines(i)...)
	}
	s.Add(b.warpLines()...)
	for _, j := range b.Joints {
		s.Add(b.jointLines(j)...)
	}
	return s
}

func (b *Bent) basis() []string {
	p := b.Plate
	lines := []string{fmt.Sprintf("Plate theory: %s. %d elements, %d unknowns.", b.Theory, b.Elements, b.Unknowns)}
	if p.Pulls {
		lines = append(lines, "The ground pushes and pulls, as the closed forms have it.")
	} else {
		lines = append(lines, "The ground pushes and cannot pull.")
	}
	return append(lines, "Deflections are down from where the slab without weight would just touch the ground.",
		"Greatest stresses leave out the places within a thickness of inside corners, where bending theory gives no limit.")
}

// groundLines balance forces and say how much of the slab rests.
func (b *Bent) groundLines() []working.Line {
	own, statics := b.own(), source.Cite("mechanics", "statics")
	area := b.Plate.area()
	lines := []working.Line{
		working.New("R", "Weight and loads together", "G + P", (b.Weight+b.Applied)/1e3, "kN", statics,
			working.In("G", b.Weight/1e3, "kN", "weight of the slab"), working.In("P", b.Applied/1e3, "kN", "loads")).
			Beside("pressure of the ground added up", b.Reaction/1e3, own, "They must agree: more than a rounding apart is a mistake."),
		working.New("p_m", "Mean pressure on the ground", "1000 · R / A", (b.Weight+b.Applied)/area, "Pa", statics,
			working.In("R", (b.Weight+b.Applied)/1e3, "kN", "weight and loads"), working.In("A", area, "m²", "plan area")),
		working.New("p", "Greatest pressure on the ground"+at(b.Pressure.At), "p_m · n", b.Pressure.Value, "Pa", own,
			working.In("p_m", (b.Weight+b.Applied)/area, "Pa", "mean"), working.In("n", b.Pressure.Value*area/math.Max(b.Weight+b.Applied, 1e-9), "–", "times the mean")),
	}
	contact := working.New("c", "Share of the slab that touches the ground", "A_c / A", b.Contact, "–", own, working.In("A_c", b.Contact*area, "m²", "area that touches"), working.In("A", area, "m²", "plan area"))
	if !b.Plate.Pulls && b.Plate.UnitWeight > 0 {
		contact = contact.Beside("strips along the edges that a long slab lifts off", b.Plate.stripContact(), source.Cite("own", "edge that curls, statics"),
			"The strip is of a long slab without loads; corners lift further, short panels tip, loads press edges down, joints hold edges to each other.")
	}
	return append(lines, contact)
}

// stripContact is the share of each panel that rests if every edge lifts like that of a
// long slab.
func (p Plate) stripContact() float64 {
	panels, err := p.Slab.Panels()
	if err != nil {
		return 1
	}
	lifted := p.edgeLift().Lifted
	area, rests := 0.0, 0.0
	for _, panel := range panels {
		area += panel.Area
		rests += panel.Area * math.Max(0, 1-2*lifted/panel.Length) * math.Max(0, 1-2*lifted/panel.Width)
	}
	return rests / area
}

// edgeLift is the closed form of an edge that curls up; nothing for ends down.
func (p Plate) edgeLift() EdgeLift {
	free := -p.freeCurvature() * (1 + p.Poisson)
	if free <= 0 {
		return EdgeLift{}
	}
	return EdgeLiftOf(free, PlateStiffness(p.Modulus, p.Thickness, p.Poisson), p.Support, p.weight())
}

func at(q plan.Point) string { return fmt.Sprintf(", at (%.2f, %.2f) m", q.X, q.Y) }

// stressLine is a stress from the moment of the plate.
func (b *Bent) stressLine(symbol, what string, stress float64) working.Line {
	h := b.Plate.Thickness
	return working.New(symbol, what, "6 · m / (1000 · h²)", stress/1e6, "MPa", b.own(),
		working.In("m", stress*h*h/6/1e3, "kN", "bending moment per length, greatest principal one"), working.In("h", h, "m", "thickness"))
}

// faceLine is a stress from the moment and from what the warp leaves at the face.
func (b *Bent) faceLine(symbol, what string, stress, held float64) working.Line {
	if held == 0 {
		return b.stressLine(symbol, what, stress)
	}
	p := b.Plate
	h := p.Thickness
	extra := p.Modulus / (1 - p.Poisson) * held
	return working.New(symbol, what, "6 · m / (1000 · h²) + E · ε / (1 − ν)", stress/1e6, "MPa", b.own(),
		working.In("m", (stress-extra)*h*h/6/1e3, "kN", "bending moment per length, greatest principal one"), working.In("h", h, "m", "thickness"),
		working.In("E", p.Modulus/1e6, "MPa", "modulus"), working.In("ε", held, "–", "strain held back at the face beyond a straight line"), working.In("ν", p.Poisson, "–", "Poisson's ratio"))
}

func (b *Bent) peakLines() []working.Line {
	p := b.Plate
	bound, why := p.stressBound()
	cite := source.Cite("own", "sum of the closed forms of all that acts")
	reason := "It adds up the greatest that each load and the warp make by themselves, wherever they do; the plate has them where they are." + p.notCounted()
	lines := []working.Line{
		b.faceLine("σ_b", "Greatest tension underneath"+at(b.Bottom.At), b.Bottom.Value, p.Warp.Bottom).Beside(why, bound/1e6, cite, reason),
		b.faceLine("σ_t", "Greatest tension on top"+at(b.Top.At), b.Top.Value, p.Warp.Top).Beside(why, bound/1e6, cite, reason),
	}
	deflect := func(symbol, what string, peak Peak) working.Line {
		h, _ := b.At(peak.At)
		return working.New(symbol, what+at(peak.At), "w_0 + w_p", h.Deflection*1e3, "mm", b.own(),
			working.In("w_0", (h.Deflection-h.ByLoads)*1e3, "mm", "by weight and warp"), working.In("w_p", h.ByLoads*1e3, "mm", "by loads"))
	}
	deepest := deflect("w_max", "Greatest deflection", b.Deepest)
	if _, most := p.loadBound(); most > 0 {
		deepest = deepest.Beside("weight, and the closed form of the load that gives most", (p.weight()/p.Support+most)*1e3, cite, "Other loads and warp are not in it."+p.notCounted())
	} else if p.Warp.Difference == 0 {
		deepest = deepest.Beside("weight over support", p.weight()/p.Support*1e3, source.Cite("mechanics", "statics"), "")
	}
	lines = append(lines, deepest)
	highest := deflect("w_min", "Least deflection; below 0 the slab is clear of the ground", b.Highest)
	if lift := p.edgeLift(); lift.Lifted > 0 {
		highest = highest.Beside("edge of a long slab that curls up", (p.weight()/p.Support-lift.Edge)*1e3, source.Cite("own", "edge that curls, statics"),
			"A corner lifts further than an edge; short panels lift less; joints that carry hold edges together.")
	}
	return append(lines, highest)
}

// loadBound returns the greatest stress and deflection of any load by closed form.
func (p Plate) loadBound() (stress, deflection float64) {
	for _, l := range p.Loads {
		if len(l.Line) > 0 {
			continue
		}
		c := p.closedFor(l)
		stress, deflection = math.Max(stress, c.stress), math.Max(deflection, c.deflection)
	}
	return stress, deflection
}

// stressBound adds the greatest closed form of the loads to the warp held flat.
func (p Plate) stressBound() (stress float64, what string) {
	stress, _ = p.loadBound()
	parts := []string{}
	if stress > 0 {
		parts = append(parts, "closed form of the load that gives most")
	}
	if p.Warp.Difference != 0 {
		stress += math.Abs(CurlFullRestraint(p.Modulus, p.Warp.Expansion, p.Warp.Difference, p.Poisson)) + p.Modulus/(1-p.Poisson)*math.Max(0, math.Max(p.Warp.Top, p.Warp.Bottom))
		parts = append(parts, "warp held flat")
	}
	if len(parts) == 0 {
		parts = []string{"nothing bends it"}
	}
	return stress, strings.Join(parts, ", and ")
}

// warpLines set the warp alone beside Bradbury's form, in the panel where the slab is
// stressed most.
func (b *Bent) warpLines() []working.Line {
	p := b.Plate
	panels, err := p.Slab.Panels()
	if p.Warp.Difference == 0 || err != nil {
		return nil
	}
	panel := panels[0]
	for _, q := range panels {
		if q.Area > panel.Area {
			panel = q
		}
	}
	here, ok := b.At(panel.Centroid)
	if !ok {
		return nil
	}
	still := [3]float64{here.Moment[0] - here.Added[0], here.Moment[1] - here.Added[1], here.Moment[2] - here.Added[2]}
	c := Curl(CurlInput{Length: panel.Length, Width: panel.Width, Thickness: p.Thickness, Modulus: p.Modulus, Poisson: p.Poisson, Support: p.Support, Expansion: p.Warp.Expansion, Difference: p.Warp.Difference, UnitWeight: p.UnitWeight})
	bottom, top, _, _ := p.bendingStress(still)
	stress, face := bottom, "underneath"
	if top > bottom {
		stress, face = top, "on top"
	}
	beside := math.Max(math.Abs(c.Along), math.Abs(c.Across))
	line := b.stressLine("σ_w", fmt.Sprintf("Weight and warp alone in the middle of panel %s: tension %s", panel.ID, face), stress).
		Beside("panel that stays on the ground, Westergaard and Bradbury", beside/1e6, source.Cite("bradbury1938", "coefficient C"),
			"The form has the ground pull as well as push and the panel a rectangle without openings: where edges lift the slab is stressed less.")
	critical := math.Max(c.Critical, 1e-9)
	second := b.stressLine("σ_w'", "The same, beside Eisenmann's critical length", stress).
		Beside("by length over the critical length", EisenmannStress(panel.Length, critical, math.Abs(c.Full))/1e6, source.Cite("eisenmann1979", "stress by length"),
			"It counts the weight of the slab, not the stiffness of the ground; short panels part furthest.")
	return []working.Line{line, second}
}
