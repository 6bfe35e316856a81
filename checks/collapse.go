package checks

import (
	"math"

	"slabwright/flexure"
	"slabwright/source"
	"slabwright/working"
)

// PairCollapse returns the load of two contacts together in the interior at which the
// slab folds along yield lines.
//
//	radius     contact radius of each over l                       [–]
//	apart      distance of their middles over l                    [–]
//	residual   moment Mp the cracked underside still bears         [N·m/m]
//	cracking   moment Mn at which the top cracks                   [N·m/m]
//
// Result in N. Source: Concrete Society TR34, 4th edition, section 7, two point
// loads, from memory.
func PairCollapse(radius, apart, residual, cracking float64) float64 {
	const spreadFrom = 0.2
	point := (2*math.Pi + 1.8*apart) * (residual + cracking)
	spread := func(r float64) float64 {
		return (4*math.Pi/(1-r/3) + 1.8*apart/(1-r/2)) * (residual + cracking)
	}
	if radius >= spreadFrom {
		return spread(radius)
	}
	return point + radius/spreadFrom*(spread(spreadFrom)-point)
}

// collapse checks a load against folding along yield lines, with factors.
func (w *worker) collapse(l *Load, p Place, c contact) {
	s := working.Sheet{ID: "yield-" + l.ID + "-" + string(p), Title: name(l, p) + ": folding along yield lines", Basis: []string{
		"Load with its factor against the load at which the slab folds.", "The underside bears what fibre or mesh leaves after cracking; plain concrete nothing."}}
	code, _ := CodeOf("EN") // the method is TR34's, whatever the family
	gamma, gammaC := code.factor("load", l.Kind), code.factor("concrete", l.Kind)
	residual, residualIn := 0.0, working.In("M_p", 0, "kN·m/m", "moment per width the cracked slab still bears: none")
	if w.has("residual") {
		residual, residualIn = w.val("residual"), w.put("residual")
	}
	flexural, flexuralIn := w.flexural, w.flexuralIn()
	cracking := flexure.CrackingMoment(flexural/gammaC.value, w.h) / 1000
	demand := gamma.value * c.force
	left, share := w.left(p)
	position := positionOf(p)
	capacity := flexure.CollapseLoad(position, c.radius/w.l, residual, cracking) / left
	formula := collapseFormula(position, c.radius/w.l)
	cite := source.Cite("meyerhof1962", "as in Concrete Society TR34, section 7")
	s.Add(
		working.New("M_n", "Moment at which the top cracks, per width", "f_fl / γ_c · h² / 6000", cracking, "kN·m/m", source.Cite("mechanics", "section modulus"), flexuralIn, working.In("γ_c", gammaC.value, "–", "partial factor on the concrete"), w.put("thickness")),
		working.New("ρ", "Contact radius over l", "a / l", c.radius/w.l, "–", cite, derived("a", c.radius, "mm", "contact radius"), w.lIn()),
		working.New("P_u", "Load at which the slab folds", "("+formula+") / (1 − T)", capacity, "kN", cite, residualIn, derived("M_n", cracking, "kN·m/m", "moment per width"), derived("ρ", c.radius/w.l, "–", "radius over l"), share).
			Beside("load at which the slab first cracks, by the elastic form", w.firstCrack(c, p, flexural/gammaC.value), source.Cite("westergaard1948", "as the check of bending"), "A slab cracks before it folds: this is the lower bound."),
		working.New("P_d", "Load with its factor", "γ · P", demand, "kN", gamma.cite, working.In("γ", gamma.value, "–", "factor on this kind of load"), derived("P", c.force, "kN", "load on the spot")))
	w.row(Row{ID: s.ID, Group: Thickness, Check: s.Title, Load: l.title(), Place: p, Demand: demand, Capacity: capacity, Unit: "kN", Clause: cite}, s)
	if p == Interior {
		w.pairCollapse(l, c, residual, cracking, residualIn, gamma)
	}
}

// firstCrack is the load on the spot that brings the elastic stress to a strength.
func (w *worker) firstCrack(c contact, p Place, strength float64) float64 {
	alone := c
	alone.neighbours = nil
	stress, _ := w.stressAt(alone, p)
	return c.force * strength / stress
}

// pairCollapse checks two posts or wheels that fold the slab together.
func (w *worker) pairCollapse(l *Load, c contact, residual, cracking float64, residualIn working.Input, gamma law) {
	var mate *neighbour
	for i := range c.neighbours {
		if mate == nil || c.neighbours[i].distance < mate.distance {
			mate = &c.neighbours[i]
		}
	}
	if mate == nil || mate.distance > 2*w.l {
		return // they fold the slab each for itself
	}
	s := working.Sheet{ID: "yield-" + l.ID + "-pair", Title: name(l, Interior) + " with " + mate.what + ": folding along yield lines", Basis: []string{"Two loads that fold the slab together, less than 2 l apart."}}
	ratio, apart := c.radius/w.l, mate.distance/w.l
	capacity, demand := PairCollapse(ratio, apart, residual, cracking), gamma.value*(c.force+mate.force)
	single := flexure.CollapseLoad(flexure.Interior, ratio, residual, cracking)
	cite := source.Cite("tr34", "section 7, two point loads")
	point, spread := "(2 · π + 1.8 · ξ) · (M_p + M_n)", "(4 · π / (1 − 0.2 / 3) + 1.8 · ξ / (1 − 0.2 / 2)) · (M_p + M_n)"
	formula := point + " · (1 − ρ / 0.2) + " + spread + " · ρ / 0.2"
	if ratio >= 0.2 {
		formula = "(4 · π / (1 − ρ / 3) + 1.8 · ξ / (1 − ρ / 2)) · (M_p + M_n)"
	}
	s.Add(
		working.New("ξ", "Distance of the two over l", "x / l", apart, "–", cite, derived("x", mate.distance, "mm", "distance of the two"), w.lIn()),
		working.New("P_u", "Both loads together at which the slab folds", formula, capacity, "kN", cite, residualIn, derived("M_n", cracking, "kN·m/m", "moment per width"), derived("ρ", ratio, "–", "radius over l"), derived("ξ", apart, "–", "distance over l")).
			Beside("twice the load of one alone: the upper bound", 2*single, source.Cite("meyerhof1962", "interior"), "Two loads close together fold the slab sooner than two far apart."),
		working.New("P_d", "Both loads with their factor", "γ · (P + P_1)", demand, "kN", gamma.cite, working.In("γ", gamma.value, "–", "factor on this kind of load"), derived("P", c.force, "kN", "load on the spot"), derived("P_1", mate.force, "kN", mate.what)))
	w.row(Row{ID: s.ID, Group: Thickness, Check: s.Title, Load: l.title(), Place: Interior, Demand: demand, Capacity: capacity, Unit: "kN", Clause: cite}, s)
}

func positionOf(p Place) flexure.Position {
	switch p {
	case Interior:
		return flexure.Interior
	case Corner:
		return flexure.Corner
	}
	return flexure.Edge
}

// collapseFormula is flexure.CollapseLoad as it is printed: from a point load to the
// spread form at 0.2 l in a straight line.
func collapseFormula(position flexure.Position, ratio float64) string {
	point, spread := "2 · π · (M_p + M_n)", "4 · π · (M_p + M_n) / (1 − ρ / 3)"
	switch position {
	case flexure.Edge:
		point, spread = "π · (M_p + M_n) / 2 + 2 · M_n", "(π · (M_p + M_n) + 4 · M_n) / (1 − 2 · ρ / 3)"
	case flexure.Corner:
		point, spread = "2 · M_n", "4 · M_n / (1 − ρ)"
	}
	if ratio >= 0.2 {
		return spread
	}
	at := map[flexure.Position]string{flexure.Interior: "4 · π · (M_p + M_n) / (1 − 0.2 / 3)", flexure.Edge: "(π · (M_p + M_n) + 4 · M_n) / (1 − 2 · 0.2 / 3)", flexure.Corner: "4 · M_n / (1 − 0.2)"}[position]
	return "(" + point + ") · (1 − ρ / 0.2) + (" + at + ") · ρ / 0.2"
}
