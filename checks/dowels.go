package checks

import (
	"fmt"
	"math"

	"slabwright/source"
	"slabwright/steel"
	"slabwright/working"
)

// dowelRule is the table of sizes that stands beside a family of codes.
func dowelRule(code string) (rule string, cite source.Citation) {
	if code == "ACI" {
		return "aci", source.Cite("aci360", "round dowels")
	}
	return "journal", source.Cite("concrete-construction", "dowels of floors")
}

// dowelSize checks diameter, length and spacing against the tables.
func (w *worker) dowelSize() {
	rule, cite := dowelRule(w.in.Code.Key)
	size, err := steel.DowelSizeFor(rule, w.h)
	if err != nil {
		w.leaveOut("dowel size", err.Error())
		return
	}
	s := working.Sheet{ID: "dowel-diameter", Title: "Diameter of the dowels", Basis: []string{"Common sizes by thickness; bearing is checked apart."}}
	d := size.Diameter
	row := Row{ID: s.ID, Group: Joints, Check: s.Title, Demand: d, Capacity: w.val("dowel_diameter"), Unit: "mm", Clause: cite}
	w.row(row, s, working.New("d_R", "Diameter for this thickness", "d_R", d, "mm", cite).
		Beside("an eighth of the thickness", steel.DowelDiameterByThumb(w.h), source.Cite("practice", "rule of thumb"), ""))
	if size.Length != nil {
		w.row(Row{ID: "dowel-length", Group: Joints, Check: "Length of the dowels", Demand: *size.Length, Capacity: w.val("dowel_length"), Unit: "mm", Clause: cite},
			working.Sheet{ID: "dowel-length", Title: "Length of the dowels"}, working.New("L_R", "Length for this thickness", "L_R", *size.Length, "mm", cite))
	}
	w.row(Row{ID: "dowel-spacing", Group: Joints, Check: "Spacing of the dowels", Demand: w.val("dowel_spacing"), Capacity: size.Spacing, Unit: "mm", Clause: cite},
		working.Sheet{ID: "dowel-spacing", Title: "Spacing of the dowels"}, working.New("s_R", "Widest spacing for this thickness", "s_R", size.Spacing, "mm", cite))
	w.transferCriterion()
}

// transferCriterion checks how much of the deflection the dowels carry over.
func (w *worker) transferCriterion() {
	if w.effLTE == 0 {
		return
	}
	need, _ := steel.TransferCriterion("AASHTO")
	s := working.Sheet{ID: "dowel-transfer", Title: "Deflection carried over by the dowels", Basis: []string{"η is worked out on the sheet of what the joint passes on."}}
	cite := source.Cite("aashto1993", "0.75 as cited by FHWA-HRT-06-106").As(source.Seen)
	w.row(Row{ID: s.ID, Group: Joints, Check: s.Title, Demand: need, Capacity: w.effLTE, Unit: "–", Clause: cite}, s,
		working.New("η_R", "Least deflection carried over", "η_R", need, "–", cite))
}

// dowelBearing checks the dowel under the heaviest spot load at the joint.
func (w *worker) dowelBearing() {
	l, c := w.heaviest()
	if l == nil {
		w.leaveOut("dowel bearing", "no wheel, axle or post is given")
		return
	}
	s := working.Sheet{ID: "dowel-bearing", Title: "Bearing of the dowel under " + l.title(), Basis: []string{
		"The load stands on a dowel, far from the ends of the joint. The force falls in a straight line to nothing at 1.0 l.",
		"The modulus of dowel support is a fitted number, 81 to 407 N/mm³; no looseness of the bar."}}
	spacing, reach := w.val("dowel_spacing"), steel.ReachFE*w.l
	count := 1 + 2*int(math.Ceil(reach/spacing))
	places := steel.DowelRow(count, spacing)
	middle := places[count/2]
	effective := steel.EffectiveDowels(places, middle, reach)
	half, crossing := 0.5, working.New("q", "Share of the load that crosses: a half, the most a joint can pass on", "0.5", 0.5, "–", source.Cite("mechanics", "two slabs going down together"))
	if w.effLTE > 0 {
		half = math.Min(0.5, w.effLTE/(1+w.effLTE))
		crossing = working.New("q", "Share of the load that crosses, at most a half", "min(0.5, η / (1 + η))", half, "–", source.Cite("mechanics", "two slabs going down together"), derived("η", w.effLTE, "–", "deflection carried over"))
	}
	loads := []steel.WheelLoad{{Force: 1000 * c.force, Place: middle}}
	force := steel.DowelForces(places, loads, reach, half)[count/2]
	groups := "1"
	for i := 1; float64(i)*spacing < reach; i++ {
		groups += fmt.Sprintf(" + 2 · (1 − %d · s_d / l)", i)
	}
	group := source.Cite("friberg1940", "group action, reach 1.0 l after Tabatabaie and Barenberg")
	s.Add(working.New("n", "Dowels that would carry the full force", groups, effective, "–", group, w.put("dowel_spacing"), w.lIn()),
		crossing,
		working.New("P_d", "Force through the dowel under the load", "1000 · q · P / n", force, "N", group, derived("q", half, "–", "share that crosses"), derived("P", c.force, "kN", "load on the spot"), derived("n", effective, "–", "effective dowels")).
			Beside("with a reach of 1.8 l (Friberg)", steel.DowelForces(wide(spacing, 1.8*w.l), []steel.WheelLoad{{Force: 1000 * c.force, Place: mid(wide(spacing, 1.8*w.l))}}, 1.8*w.l, half)[len(wide(spacing, 1.8*w.l))/2], source.Cite("friberg1940", "reach 1.8 l"), "The older reach spreads the load over more dowels and is unsafe for the one under it."))
	d := steel.DowelCase{Force: force, Support: w.val("dowel_support"), Opening: w.opening, Diameter: w.val("dowel_diameter"), Modulus: steelModulus, Cylinder: w.fc}
	bearing, allowed := steel.BearingStress(d.Force, d.Support, d.Opening, d.Diameter, d.Modulus), steel.AllowableBearing(d.Diameter, d.Cylinder)
	for _, line := range steel.DowelWorking(d).Lines {
		line.Verdict = ""
		w.markKnown(line.Inputs)
		s.Add(line)
	}
	clause := source.Cite("aci325", "bearing under dowels")
	w.row(Row{ID: s.ID, Group: Joints, Check: s.Title, Load: l.title(), Place: AtJoint, Demand: bearing, Capacity: allowed, Unit: "MPa", Clause: clause}, s)
	if w.in.Code.Key == "EN" {
		w.dowelStrength(l, force)
	}
}

func wide(spacing, reach float64) []float64 {
	return steel.DowelRow(1+2*int(math.Ceil(reach/spacing)), spacing)
}

func mid(places []float64) float64 { return places[len(places)/2] }

// markKnown says of the inputs of a borrowed line how each is known.
func (w *worker) markKnown(inputs []working.Input) {
	keys := map[string]string{"d": "dowel_diameter", "K": "dowel_support", "f_c": "strength"}
	for i := range inputs {
		if key, ok := keys[inputs[i].Symbol]; ok {
			inputs[i].Known = string(w.must(key).fact.Known)
		} else {
			inputs[i].Known = "worked out"
		}
	}
}

// heaviest is the load with the greatest force on one spot.
func (w *worker) heaviest() (*Load, contact) {
	var best *Load
	var at contact
	for i := range w.in.Loads {
		l := &w.in.Loads[i]
		if l.Kind == Line || l.Kind == Spread {
			continue
		}
		if c, _ := w.contactOf(l); c.force > at.force {
			best, at = l, c
		}
	}
	return best, at
}

// DowelStrength returns the force at which a round dowel yields in bending while the
// concrete under it crushes, N.
//
//	diameter   of the bar                                   [mm]
//	opening    of the joint                                 [mm]
//	concrete   design strength in compression f_cd          [MPa]
//	yield      design yield of the bar f_yd                 [MPa]
//
// Source: Concrete Society TR34, 4th edition, dowels in bending and bearing, from
// memory and unsure of its constants: d² √(f_cd f_yd) (√(1 + α²) − α) with
// α = 3 e/d √(f_cd/f_yd) and e half the opening.
func DowelStrength(diameter, opening, concrete, yield float64) float64 {
	alpha := 3 * (opening / 2) / diameter * math.Sqrt(concrete/yield)
	return sq(diameter) * math.Sqrt(concrete*yield) * (math.Sqrt(1+alpha*alpha) - alpha)
}

// dowelStrength checks the same dowel with factors by TR34.
func (w *worker) dowelStrength(l *Load, force float64) {
	s := working.Sheet{ID: "dowel-strength", Title: "Strength of the dowel under " + l.title(), Basis: []string{"Bar and concrete with their factors; the constants are from memory: look them up before the figure is relied on."}}
	gamma, gammaC := w.in.Code.factor("load", l.Kind), w.in.Code.factor("concrete", l.Kind).value
	const gammaS = 1.15
	fcd, fyd := w.fc/gammaC, w.val("dowel_yield")/gammaS
	d := w.val("dowel_diameter")
	alpha := 3 * (w.opening / 2) / d * math.Sqrt(fcd/fyd)
	capacity, demand := DowelStrength(d, w.opening, fcd, fyd)/1000, gamma.value*force/1000
	tr34 := source.Cite("tr34", "dowels")
	cd, yd := derived("f_cd", fcd, "MPa", "design strength of the concrete"), derived("f_yd", fyd, "MPa", "design yield of the bar")
	yield := w.put("dowel_yield")
	yield.Symbol = "f_yk"
	s.Add(working.New("f_cd", "Design strength of the concrete", "f_c / γ_c", fcd, "MPa", source.Cite("en1992", "3.1.6"), w.put("strength"), working.In("γ_c", gammaC, "–", "partial factor on the concrete")),
		working.New("f_yd", "Design yield of the bar", "f_yk / 1.15", fyd, "MPa", source.Cite("en1992", "3.2.7"), yield),
		working.New("α", "Bending across half the opening", "3 · z / 2 / d · sqrt(f_cd / f_yd)", alpha, "–", tr34, derived("z", w.opening, "mm", "opening of the joint"), w.put("dowel_diameter"), cd, yd),
		working.New("P_R", "Force the dowel bears", "d² · sqrt(f_cd · f_yd) · (sqrt(1 + α²) − α) / 1000", capacity, "kN", tr34, w.put("dowel_diameter"), cd, yd, derived("α", alpha, "–", "line above")).
			Beside("bound: shear of the bar alone, 0.6 f_yd on 0.9 of its area", 0.6*fyd*0.9*steel.CircleArea(d)/1000, source.Cite("tr34", "dowels in shear"), "In most joints the bar bends before it shears."),
		working.New("P_d", "Force with the factor on the load", "γ · P_1 / 1000", demand, "kN", gamma.cite, working.In("γ", gamma.value, "–", "factor on this kind of load"), derived("P_1", force, "N", "force through the dowel, sheet dowel-bearing")))
	w.row(Row{ID: s.ID, Group: Joints, Check: s.Title, Load: l.title(), Place: AtJoint, Demand: demand, Capacity: capacity, Unit: "kN", Clause: tr34}, s)
}
