package checks

import (
	"fmt"
	"math"

	"slabwright/flexure"
	"slabwright/source"
	"slabwright/working"
)

// loads makes the checks of every load at its places.
func (w *worker) loads() {
	for i := range w.in.Loads {
		l := &w.in.Loads[i]
		for _, p := range l.places(w.in.Joint) {
			switch l.Kind {
			case Line:
				w.lineLoad(l, p)
			case Spread:
				w.spreadLoad(l)
			default:
				w.pointLoad(l, p)
			}
		}
	}
	if len(w.in.Loads) == 0 {
		w.leaveOut("thickness", "no load is given")
	}
}

// places are where a load is checked: what the input says, or everywhere it may
// stand. A joint that passes on nothing is an edge.
func (l *Load) places(j Joint) []Place {
	places := l.Places
	if len(places) == 0 {
		places = []Place{Interior, AtJoint, Corner}
	}
	if l.Kind == Spread {
		return []Place{Interior}
	}
	var list []Place
	seen := map[Place]bool{}
	for _, p := range places {
		if p == AtJoint && j.Transfer == NoTransfer && j.Share == nil {
			p = FreeEdge
		}
		if l.Kind == Line && p == Corner || seen[p] {
			continue
		}
		seen[p] = true
		list = append(list, p)
	}
	return list
}

// left is what stays on the slab of a load at a place, as a share, and its input.
func (w *worker) left(p Place) (float64, working.Input) {
	if p == Interior || p == FreeEdge || w.share == 0 {
		return 1, working.In("T", 0, "–", "passed on: none here")
	}
	if w.has("transfer") {
		return 1 - w.share, w.put("transfer")
	}
	return 1 - w.share, derived("T", w.share, "–", "share passed on by the joint")
}

// widestContact is the contact radius over l up to which the forms for single loads
// are used; Westergaard's interior form is good to about 0.3, his corner form fails
// beyond 0.7. Our own limit, that of flexure.
const widestContact = 0.5

// pointLoad makes the checks of a wheel, axle or post at one place.
func (w *worker) pointLoad(l *Load, p Place) {
	c, lines := w.contactOf(l)
	if c.radius > widestContact*w.l {
		w.leaveOut(name(l, p), fmt.Sprintf("the contact radius, %s mm, is over half the radius of relative stiffness, %s mm: no form for a single load holds; give it as a spread load", working.Figure(c.radius, 3), working.Figure(w.l, 3)))
		return
	}
	s := working.Sheet{ID: "bending-" + l.ID + "-" + string(p), Title: name(l, p) + ": bending under the load", Basis: []string{
		"Working load, no factors; the slab rests on the ground everywhere.", "Closed forms for one contact; neighbours by the exact plate on springs."}}
	s.Add(lines...)
	stress, stressLines := w.stressAt(c, p)
	s.Add(stressLines...)
	w.stresses[string(p)+" "+l.ID] = stress
	allowed := w.allowed(l)
	s.Add(allowed)
	w.row(Row{ID: s.ID, Group: Thickness, Check: s.Title, Load: l.title(), Place: p, Demand: stress, Capacity: allowed.Value, Unit: "MPa", Clause: allowed.Source}, s)
	w.withCurl(l, p, c, stress)
	if w.in.Code.Key == "EN" || w.has("residual") {
		w.collapse(l, p, c)
	}
	if l.Kind == Post || l.Kind == Wheel {
		w.punching(l, p, c)
	}
}

// allowed is the stress the code lets a load make.
func (w *worker) allowed(l *Load) working.Line {
	passes := 1.0
	if l.Passes != nil {
		passes = w.val(of(l, "passes"))
	}
	a := w.in.Code.laws.allowed(w.flexural, l.Kind, passes)
	return working.New("σ_R", "Stress that may be used", a.formula, a.value, "MPa", a.cite, append(a.inputs, w.flexuralIn())...)
}

// stressAt is the greatest tension a contact makes at a place, with its lines.
func (w *worker) stressAt(c contact, p Place) (float64, []working.Line) {
	added, lines := w.addedStress(c)
	interior, b := w.interiorStress(c)
	load, a, h, nu := derived("P", c.force, "kN", "load on the spot"), derived("a", c.radius, "mm", "contact radius"), w.put("thickness"), w.put("poisson")
	switch p {
	case Interior:
		exact := flexure.ExactInteriorStress(1000*c.force, c.radius, w.h, w.l, w.nu)
		lines = append(lines, b, working.New("σ_i", "Tension underneath", "3 · (1 + ν) · 1000 · P / (2 · π · h²) · (ln(l / b) + 0.6159)", interior, "MPa", source.Cite("ioannides1985", "interior"),
			load, h, nu, w.lIn(), derived("b", b.Value, "mm", "equivalent radius")).
			Beside("exact thin plate, by Kelvin functions", exact, source.Cite("timoshenko", "elastic foundation"), "Thin-plate theory has no allowance for the thickness under a small contact."))
		return w.withAdded(lines, "σ_i", interior, added)
	case Corner:
		return w.cornerStress(c, lines, load, a)
	}
	left, share := w.left(p)
	edge := left * flexure.EdgeStress(flexure.Circle, 1000*c.force, c.radius, w.e, w.h, w.nu, w.k)
	semi := left * flexure.EdgeStress(flexure.Semicircle, 1000*c.force, c.radius, w.e, w.h, w.nu, w.k)
	lines = append(lines, working.New("σ_e", "Tension underneath along the edge", "(1 − T) · 3 · (1 + ν) · 1000 · P / (π · (3 + ν) · h²) · (ln(E · h³ / (100 · k · a⁴)) + 1.84 − 4 · ν / 3 + (1 − ν) / 2 + 1.18 · (1 + 2 · ν) · a / l)", edge, "MPa",
		source.Cite("westergaard1948", "edge, whole circle touching it"), share, load, h, nu, w.modulusIn, w.put("support"), a, w.lIn()).
		Beside("half circle with its diameter on the edge", semi, source.Cite("westergaard1948", "edge, half circle"), "A half circle of the same radius puts the whole load nearer to the edge."))
	if added == 0 {
		return edge, lines
	}
	lines = append(lines, b)
	total := edge * (1 + added/interior)
	return total, append(lines, working.New("σ", "With the neighbours, which add the same share as in the interior", "σ_e · (1 + Δσ / (3 · (1 + ν) · 1000 · P / (2 · π · h²) · (ln(l / b) + 0.6159)))", total, "MPa", source.Cite("own", "same share as in the interior"),
		derived("σ_e", edge, "MPa", "at the edge, alone"), derived("Δσ", added, "MPa", "added by the neighbours in the interior"), load, h, nu, w.lIn(), derived("b", b.Value, "mm", "equivalent radius")))
}

func (w *worker) withAdded(lines []working.Line, symbol string, alone, added float64) (float64, []working.Line) {
	if added == 0 {
		return alone, lines
	}
	return alone + added, append(lines, working.New("σ", "With the neighbours", symbol+" + Δσ", alone+added, "MPa", source.Cite("mechanics", "superposition"),
		derived(symbol, alone, "MPa", "alone"), derived("Δσ", added, "MPa", "added by the neighbours")))
}

// interiorStress is the stress of the contact alone far from edges, and the line of
// its equivalent radius.
func (w *worker) interiorStress(c contact) (float64, working.Line) {
	b := flexure.EquivalentRadius(c.radius, w.h)
	formula := "sqrt(1.6 · a² + h²) − 0.675 · h"
	if c.radius >= 1.724*w.h {
		formula = "a"
	}
	line := working.New("b", "Equivalent radius, for the interior stress", formula, b, "mm", source.Cite("westergaard1926", "equivalent radius").As(source.Seen),
		derived("a", c.radius, "mm", "contact radius"), w.put("thickness"))
	return flexure.InteriorStress(1000*c.force, b, w.h, w.l, w.nu), line
}

// cornerStress is the tension on top of a corner. Neighbours stand beyond the line
// where it is greatest and are left out.
func (w *worker) cornerStress(c contact, _ []working.Line, load, a working.Input) (float64, []working.Line) {
	left, share := w.left(Corner)
	v := left * flexure.CornerStress(1000*c.force, c.radius, w.h, w.l)
	other := left * flexure.CornerStressIoannides(1000*c.force, c.radius, w.h, w.l)
	return v, []working.Line{
		working.New("σ_c", "Tension on top, across the corner", "(1 − T) · 3 · 1000 · P / h² · (1 − (a · sqrt(2) / l)^0.6)", v, "MPa", source.Cite("westergaard1926", "corner, circle touching both edges"),
			share, load, w.put("thickness"), a, w.lIn()).
			Beside("regression on plate solutions", other, source.Cite("ioannides1985", "corner"), ""),
		working.New("x_1", "It is greatest so far from the corner", "2 · sqrt(a · sqrt(2) · l)", flexure.CornerStressDistance(c.radius, w.l), "mm", source.Cite("westergaard1926", "corner"), a, w.lIn())}
}

// lineLoad checks a wall or a row of feet; p is in the interior, at a joint or along
// an edge.
func (w *worker) lineLoad(l *Load, p Place) {
	s := working.Sheet{ID: "line-" + l.ID + "-" + string(p), Title: name(l, p) + ": line load", Basis: []string{
		"A strip square to the line, one metre wide, as a beam on springs."}}
	allowed := w.allowed(l)
	factor := flexure.LineFactor(w.k, w.e, w.h)
	moment := flexure.CrackingMoment(allowed.Value, w.h)
	s.Add(allowed, working.New("λ", "One over the length over which the strip dies out", "(3 · k / (E · h³))^0.25", factor, "1/mm", source.Cite("hetenyi", "beam on springs"), w.put("support"), w.modulusIn, w.put("thickness")),
		working.New("M_R", "Moment that uses this stress, per mm", "σ_R · h² / 6", moment, "N·mm/mm", source.Cite("mechanics", "section modulus"), derived("σ_R", allowed.Value, "MPa", "stress that may be used"), w.put("thickness")))
	lambda, m := derived("λ", factor, "1/mm", "factor of the strip"), derived("M_R", moment, "N·mm/mm", "moment")
	stiff := 4 * math.Pow(w.k/(4*flexure.PlateStiffness(w.e, w.h, w.nu)), 0.25) * moment
	capacity := flexure.LineLoad(factor, moment)
	left, share := w.left(p)
	line := working.New("p_R", "Line load that makes it, in the interior", "4 · λ · M_R", capacity, "kN/m", source.Cite("hetenyi", "beam on springs"), lambda, m).
		Beside("the same strip held from narrowing, as a plate is", stiff, source.Cite("mechanics", "plate strip"), "")
	if p != Interior {
		capacity = EdgeLineLoad(factor, moment) / left
		line = working.New("p_R", "Line load that makes it along an edge, less what the joint passes on", "λ · M_R / (exp(−π / 4) · sin(π / 4)) / (1 − T)", capacity, "kN/m", source.Cite("hetenyi", "half-endless beam on springs"), lambda, m, share).
			Beside("the same strip held from narrowing, as a plate is", EdgeLineLoad(math.Pow(w.k/(4*flexure.PlateStiffness(w.e, w.h, w.nu)), 0.25), moment)/left, source.Cite("mechanics", "plate strip"), "")
	}
	s.Add(line)
	w.row(Row{ID: s.ID, Group: Thickness, Check: s.Title, Load: l.title(), Place: p, Demand: w.val(of(l, "per_metre")), Capacity: capacity, Unit: "kN/m", Clause: line.Source}, s)
}

// EdgeLineLoad returns the line load along a free edge that cracks the top behind it,
// N/m: a half-endless beam on springs loaded at its end has its greatest moment,
// 0.3224 p/λ, at π/(4λ) from the edge.
//
//	factor     λ of flexure.LineFactor   [1/m]
//	cracking   moment that cracks        [N·m/m]
//
// Any consistent units. Source: Hetényi, from memory.
func EdgeLineLoad(factor, cracking float64) float64 {
	return factor * cracking / (math.Exp(-math.Pi/4) * math.Sin(math.Pi/4))
}

// spreadLoad checks stacked goods either side of the worst aisle: the top cracks in
// the aisle.
func (w *worker) spreadLoad(l *Load) {
	s := working.Sheet{ID: "aisle-" + l.ID, Title: l.title() + ": the worst aisle", Basis: []string{
		"Goods either side of an aisle of the width that bends the slab most, half of π over λ; the top cracks in the aisle."}}
	allowed := w.allowed(l)
	factor := flexure.LineFactor(w.k, w.e, w.h)
	moment := flexure.CrackingMoment(allowed.Value, w.h)
	capacity := flexure.AisleLoad(factor, moment) * 1000
	lambda, m := derived("λ", factor, "1/mm", "factor of the strip"), derived("M_R", moment, "N·mm/mm", "moment")
	cite := source.Cite("tr34", "aisles")
	s.Add(allowed, working.New("λ", "One over the length over which the strip dies out", "(3 · k / (E · h³))^0.25", factor, "1/mm", source.Cite("hetenyi", "beam on springs"), w.put("support"), w.modulusIn, w.put("thickness")),
		working.New("M_R", "Moment that uses this stress, per mm", "σ_R · h² / 6", moment, "N·mm/mm", source.Cite("mechanics", "section modulus"), derived("σ_R", allowed.Value, "MPa", "stress that may be used"), w.put("thickness")),
		working.New("w_a", "The worst width of aisle", "π / (2 · λ)", math.Pi/(2*factor), "mm", source.Cite("hetenyi", "beam on springs"), lambda),
		working.New("q_R", "Spread load that makes it", "1000 · 5.95 · λ² · M_R", capacity, "kN/m²", cite, lambda, m).
			Beside("exact strip: moment 0.1612 q/λ²", 1000*moment/flexure.StripMoment(1, factor), source.Cite("hetenyi", "patch on a beam"), ""))
	w.row(Row{ID: s.ID, Group: Thickness, Check: s.Title, Load: l.title(), Place: Interior, Demand: w.val(of(l, "per_area")), Capacity: capacity, Unit: "kN/m²", Clause: cite}, s)
}
