package flexure

import (
	"fmt"
	"math"
	"strings"

	"slabwright/plan"
	"slabwright/source"
	"slabwright/steel"
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

// loadLines say what one load adds, beside its closed form.
func (b *Bent) loadLines(i int) []working.Line {
	p, l := b.Plate, b.Plate.Loads[i]
	if len(l.Line) > 0 {
		return b.lineLoadLines(i)
	}
	c := p.closedFor(l)
	mark := fmt.Sprintf("_%d", i+1)
	here := b.Under[i].Here
	stress, place, face := b.addedStress(c, l, here)
	deflection, still := here.ByLoads, here.Deflection-here.ByLoads
	if c.position != Interior {
		deflection, still = b.addedAtBorder(c, l)
	}
	c.reason += b.besides(i, still)
	name := strings.TrimSpace(l.Name + " " + l.ID)
	lines := []working.Line{
		b.stressLine("σ"+mark, fmt.Sprintf("What the loads add under %s, %s: tension %s%s", name, c.position, face, at(place)), stress).Beside(c.form, c.stress/1e6, c.source, c.reason),
		working.New("w"+mark, fmt.Sprintf("What the loads add to the deflection there, %s", c.position), "w − w_0", deflection*1e3, "mm", b.own(),
			working.In("w", (deflection+still)*1e3, "mm", "all together"), working.In("w_0", still*1e3, "mm", "by weight and warp")).
			Beside(c.form, c.deflection*1e3, c.source, c.reason),
	}
	if p.Strength > 0 && stress > 0 {
		lines = append(lines, b.crackLine(mark, c, l, stress))
	}
	return lines
}

// besides says what else acts at load i that its closed form does not know.
func (b *Bent) besides(i int, still float64) (text string) {
	for k, o := range b.Plate.Loads {
		if k != i && o.middle().To(b.Plate.Loads[i].middle()) < 3*b.Stiff {
			text = " Other loads stand near."
		}
	}
	if still < 0 {
		text += fmt.Sprintf(" Before the loads come the slab is clear of the ground here by %.2f mm.", -still*1e3)
	}
	return text
}

// crackLine is the load at which the slab first cracks, beside that at which it folds.
func (b *Bent) crackLine(mark string, c closed, l Load, stress float64) working.Line {
	p := b.Plate
	folds := CollapseLoad(c.position, l.radius()/b.Stiff, 0, CrackingMoment(p.Strength, p.Thickness))
	return working.New("P_cr"+mark, "Load at which it would first crack, alone", "P · f / σ", l.Force*p.Strength/stress/1e3, "kN", b.own(),
		working.In("P", l.Force/1e3, "kN", "load"), working.In("f", p.Strength/1e6, "MPa", "flexural strength"), working.In("σ", stress/1e6, "MPa", "stress the loads add")).
		Beside("load at which it folds along yield lines, plain concrete", folds/1e3, source.Cite("meyerhof1962", ""),
			"Another state: once cracked underneath the slab carries on until the top cracks as well, at 2 to 3 times the load in the interior.")
}

// addedStress is the stress that the loads add where the closed form has it: below the
// load, or on top some way from the corner.
func (b *Bent) addedStress(c closed, l Load, here Here) (stress float64, place plan.Point, face string) {
	if c.position != Corner {
		place = l.middle()
		if q, ok := b.Plate.borderPoint(l); ok && c.position == Edge {
			q = q.Plus(place.Minus(q).Times(0.02)) // on the load's side of a joint
			if h, on := b.At(q); on {
				here, place = h, q
			}
		}
		stress, _, _, _ = b.Plate.bendingStress(here.Added)
		return stress, place, "underneath"
	}
	way, _ := l.middle().Minus(c.corner).Unit()
	for r := 0.2; r < 2.5; r += 0.02 {
		q := c.corner.Plus(way.Times(r * b.Stiff))
		h, ok := b.At(q)
		if _, top, _, _ := b.Plate.bendingStress(h.Added); ok && top > stress {
			stress, place = top, q
		}
	}
	return stress, place, "on top"
}

// borderPoint returns the point of the nearest edge or joint beside a load.
func (p Plate) borderPoint(l Load) (plan.Point, bool) {
	best, at := math.Inf(1), plan.Point{}
	for _, b := range p.borders(l.middle(), l.radius()) {
		if b.away < best {
			t, _ := b.segment.Nearest(l.middle())
			best, at = b.away, b.segment.At(t)
		}
	}
	return at, best < math.Inf(1)
}

// addedAtBorder is the deflection the loads add at the edge or corner, on the side of
// a joint that goes down further, and what weight and warp make there.
func (b *Bent) addedAtBorder(c closed, l Load) (added, still float64) {
	q := c.corner
	if c.position == Edge {
		q, _ = b.Plate.borderPoint(l)
	}
	h, _ := b.At(q)
	added, still = h.ByLoads, h.Deflection-h.ByLoads
	for _, j := range b.Joints {
		if j.At.To(q) < 0.5*b.Stiff && j.Loaded > 0 {
			added = j.Loaded
		}
	}
	return added, still
}

// lineLoadLines set a line load beside a long slab under a line.
func (b *Bent) lineLoadLines(i int) []working.Line {
	p, l := b.Plate, b.Plate.Loads[i]
	per := l.Force / plan.Polyline(l.Line).Length()
	lambda := LineFactor(p.Support, p.Modulus/(1-p.Poisson*p.Poisson), p.Thickness)
	stress, _, _, _ := p.bendingStress(b.Under[i].Added)
	mark := fmt.Sprintf("_%d", i+1)
	why := "The form is of a line without end far from edges." + p.notCounted()
	return []working.Line{
		b.stressLine("σ"+mark, "What the loads add below the middle of line load "+l.ID+": tension underneath", stress).
			Beside("long slab under a line, P/4λ", per/(4*lambda)*6/(p.Thickness*p.Thickness)/1e6, source.Cite("hetenyi", "infinite beam"), why),
		working.New("w"+mark, "What the loads add to the deflection there", "w − w_0", b.Under[i].ByLoads*1e3, "mm", b.own(),
			working.In("w", b.Under[i].Deflection*1e3, "mm", "all together"), working.In("w_0", (b.Under[i].Deflection-b.Under[i].ByLoads)*1e3, "mm", "by weight and warp")).
			Beside("long slab under a line, Pλ/2k", per*lambda/(2*p.Support)*1e3, source.Cite("hetenyi", "infinite beam"), why),
	}
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

// jointLines say what a joint passes on.
func (b *Bent) jointLines(j JointBent) []working.Line {
	p := b.Plate
	t := p.transferOf(j.Joint)
	var lines []working.Line
	if j.Loaded > b.tellFrom(func(j JointBent) float64 { return j.Loaded }) {
		radius := 0.2 * b.Stiff
		if len(p.Loads) > 0 && p.Loads[0].radius() > 0 {
			radius = p.Loads[0].radius()
		}
		line := working.New("η_"+j.Joint, fmt.Sprintf("Load transfer by deflection of joint %s, %s%s", j.Joint, j.Kind, at(j.At)), "w_u / w_l", j.LTE, "–", b.own(),
			working.In("w_u", j.Unloaded*1e3, "mm", "the other side"), working.In("w_l", j.Loaded*1e3, "mm", "the side that goes down further"))
		if t.Kind != FreeJoint {
			line = line.Beside("regression on two half-slabs and a shear spring", t.Efficiency(p, radius), source.Cite("ioannides1985", "Ioannides and Hammons 1996"),
				"The form is of one wheel at the joint of two slabs without end; bars are spread along it. A load away from the joint presses both sides down alike, warp leaves a gap that closes first.")
		}
		lines = append(lines, line)
	}
	hardest := func(j JointBent) float64 { bar, _ := j.HardestBar(); return bar.Force }
	if bar, ok := j.HardestBar(); ok && bar.Force > b.tellFrom(hardest) {
		lines = append(lines, b.barLines(j, t, bar)...)
	}
	return lines
}

// tellFrom is the value below which a joint is not worth a line: a tenth of that of the
// joint with most.
func (b *Bent) tellFrom(value func(JointBent) float64) (from float64) {
	for _, j := range b.Joints {
		from = math.Max(from, value(j)/10)
	}
	return from
}

func (p Plate) transferOf(joint string) Transfer {
	for _, t := range p.transfers() {
		if t.Joint == joint {
			return t
		}
	}
	return Transfer{}
}

// barLines set the hardest worked dowel beside Friberg's group.
func (b *Bent) barLines(j JointBent, t Transfer, bar BarBent) []working.Line {
	friberg := source.Cite("friberg1940", "")
	spring := t.perBar()
	force := working.New("F_"+j.Joint, "Greatest force through one dowel of joint "+j.Joint+at(bar.At), "D · δ / 1000", bar.Force/1e3, "kN", b.own(),
		working.In("D", spring/1e6, "kN/mm", "spring of one dowel"), working.In("δ", bar.Force/spring*1e6, "µm", "step between the sides there"))
	if group := b.fribergForce(j, t, bar); group > 0 {
		force = force.Beside("group of dowels within l of each load, with the share the joint passes on", group/1e3, friberg,
			"The group has forces fall off on a straight line and counts loads at the joint only; warp and loads further off are not in it.")
	}
	beta := steel.RelativeStiffness(t.Bars.Support, t.Bars.Diameter, t.Bars.Modulus)
	return []working.Line{force,
		working.New("σ_"+j.Joint, "Bearing stress of that dowel on the concrete at the joint's face", "1000 · K · F · (2 + β · z) / (4 · β³ · E_s · π · d⁴ / 64)", bar.Bearing/1e6, "MPa", friberg,
			working.In("K", t.Bars.Support/1e9, "N/mm³", "support of a dowel"), working.In("F", bar.Force/1e3, "kN", "force"), working.In("β", beta/1e3, "1/mm", "relative stiffness"),
			working.In("z", t.Opening*1e3, "mm", "opening"), working.In("E_s", t.Bars.Modulus/1e6, "MPa", "modulus of the bar"), working.In("d", t.Bars.Diameter*1e3, "mm", "diameter"))}
}

// fribergForce is the force of a dowel by group action: each load within l of the joint
// sends the share that the closed form expects.
func (b *Bent) fribergForce(j JointBent, t Transfer, bar BarBent) float64 {
	p := b.Plate
	var path plan.Polyline
	for _, joint := range p.Slab.Joints {
		if joint.ID == j.Joint {
			path = joint.Path
		}
	}
	places := make([]float64, len(j.Bars))
	hardest := 0
	for i, x := range j.Bars {
		places[i] = x.Along
		if x == bar {
			hardest = i
		}
	}
	var loads []steel.WheelLoad
	for _, l := range p.Loads {
		along, _, away := path.Nearest(l.middle())
		if len(l.Line) == 0 && away < l.radius()+besideEdge*b.Stiff {
			loads = append(loads, steel.WheelLoad{Force: l.Force, Place: along})
		}
	}
	if len(loads) == 0 {
		return 0
	}
	e := t.Efficiency(p, p.Loads[0].radius())
	return steel.DowelForces(places, loads, steel.ReachFE*b.Stiff, e/(1+e))[hardest]
}
