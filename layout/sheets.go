package layout

import (
	"fmt"
	"math"

	"slabwright/flexure"
	"slabwright/restraint"
	"slabwright/source"
	"slabwright/working"
)

// Sheets returns the calculation of the limit: the limit itself with the rule of
// thumb beside it, then curl and base friction of a panel of that size. Their ids
// begin with the prefix, for a job of several slabs.
func (l Limit) Sheets(prefix string) []working.Sheet {
	side := l.Panel
	out := []working.Sheet{l.sheet(), flexure.CurlWorking(l.Facts.curl(side, side)), restraint.FrictionWorking(l.Facts.base(side))}
	for i := range out {
		out[i].ID = prefix + out[i].ID
	}
	return out
}

func (l Limit) put(symbol string, v float64, unit, what string) working.Input {
	in := working.In(symbol, v, unit, what)
	in.Known = l.Facts.Known[symbol]
	return in
}

// sheet is the calculation of the limit itself.
func (l Limit) sheet() working.Sheet {
	f := l.Facts
	own, statics := source.Cite("own", "limit of panel length"), source.Cite("mechanics", "reliability of two log-normal values")
	curl, friction := f.Use(l.Panel, l.Panel)
	times, _ := thumbOf(f.Stone)
	s := working.Sheet{ID: "spacing", Title: "How long a panel may be", Basis: []string{
		"The least of what the models allow, the rule of thumb and the usual cap.",
		"The models: curl held down by the slab's weight, and base friction, each over its own strength, added. Facts are of the worst time of the first year.",
		"They leave out early cold nights, locked joints, fixtures and late saw cuts: those crack panels of any length.",
		"The ground pushes and cannot pull: curl bends a panel no more than its own weight can, and no more than it takes to hold it flat. The lesser counts.",
		l.Words()}}
	deviation := math.Sqrt(math.Log(1 + f.Scatter*f.Scatter))
	s.Add(
		working.New("s", "Scatter of strength over stress, as a logarithm", "sqrt(ln(1 + V²))", deviation, "–", statics, l.put("V", f.Scatter, "–", "coefficient of variation")),
		working.New("u", "Share of strength that meets the wanted risk", "e^(−s · z)", l.Use, "–", statics,
			working.In("s", deviation, "–", "scatter"), working.In("z", normalQuantile(1-f.Risk), "–", fmt.Sprintf("standard normal at a risk of %g", f.Risk))),
		working.New("L_r", "Rule of thumb", "n · h", l.Thumb, "m", source.Cite("aci360", "24 to 36 times the thickness").As(source.Seen),
			working.In("n", times, "–", "multiple for the stone"), l.put("h", f.Thickness, "m", "thickness")),
		working.New("L_c", "Cap whatever the thickness", "L_c", l.Cap, "m", source.Cite("aci360", "360R-06, 18 ft").As(source.Seen), working.In("L_c", l.Cap, "m", "18 ft")),
	)
	s.Add(heldLines(l)...)
	least := math.Min(l.Thumb, l.Cap)
	formula, inputs := "min(L_r, L_c)", []working.Input{working.In("L_r", l.Thumb, "m", "rule of thumb"), working.In("L_c", l.Cap, "m", "cap")}
	if !math.IsInf(l.Model, 1) {
		c, b := f.Use(l.Model, l.Model)
		s.Add(
			working.New("L_m", "Longest square panel by the models, found by halving the interval", "L_m", l.Model, "m", own, working.In("L_m", l.Model, "m", "side at which curl and friction use the share u")).
				Beside("rule of thumb", l.Thumb, source.Cite("aci360", "24 to 36 times the thickness").As(source.Seen), "The rule covers late cuts, cold nights and locked joints, the models do not."),
			working.New("u_m", "What it uses", "U_c + U_f", c+b, "–", own, working.In("U_c", c, "–", "curl over bending strength"), working.In("U_f", b, "–", "base friction over tensile strength")).
				Beside("share that meets the risk", l.Use, own, ""))
		least = math.Min(least, l.Model)
		formula, inputs = "min(L_m, L_r, L_c)", append([]working.Input{working.In("L_m", l.Model, "m", "models")}, inputs...)
	}
	s.Add(working.New("L_0", "Least of these", formula, least, "m", own, inputs...))
	if l.Govern == "given" {
		s.Add(working.New("L", "Limit taken: "+governWords[l.Govern], "L", l.Panel, "m", own, working.In("L", l.Panel, "m", "given")).
			Beside("least of models, rule and cap", least, own, "The engineer's choice."))
	} else {
		s.Add(working.New("L", "Limit taken: "+governWords[l.Govern], "L_0 − r", l.Panel, "m", own, working.In("L_0", least, "m", "least"), working.In("r", least-l.Panel, "m", "rounded down to 50 mm")))
	}
	s.Add(
		working.New("U", "What a square panel of that side uses", "U_c + U_f", curl+friction, "–", own,
			working.In("U_c", curl, "–", "curl over bending strength"), working.In("U_f", friction, "–", "base friction over tensile strength")),
		working.New("p", "Chance that it cracks away from its joints", "(1 + erf(ln(U) / (s · sqrt(2)))) / 2", RiskOfUse(f.Scatter, curl+friction), "–", statics,
			working.In("U", curl+friction, "–", "use"), working.In("s", deviation, "–", "scatter")),
	)
	return s
}

// heldLines are what curl comes to in a panel held flat, however long.
func heldLines(l Limit) []working.Line {
	f := l.Facts
	share, from := f.Held()
	full := flexure.CurlFullRestraint(f.Modulus, f.Expansion, f.Difference, f.Poisson)
	stiffness := flexure.RelativeStiffness(f.Modulus, f.Thickness, f.Poisson, f.Support)
	mechanics := source.Cite("mechanics", "plate held flat")
	return []working.Line{
		working.New("L_f", "Length from which the middle of a panel lies flat", "c · l", from, "m", source.Cite("westergaard1927", "C = 1"),
			working.In("c", fullyHeld, "–", "where C first comes to 1"), working.In("l", stiffness, "m", "radius of relative stiffness")),
		working.New("U_∞", "Share of its bending strength that curl uses in a panel held flat, however long", "|σ_∞| / f", share, "–", mechanics,
			working.In("σ_∞", full/1e6, "MPa", "curl held flat"), working.In("f", f.Flexural/1e6, "MPa", "bending strength")),
	}
}

// governWords says what set a limit.
var governWords = map[string]string{"model": "the models govern", "thumb": "the rule of thumb governs", "cap": "the cap governs", "given": "given by the engineer"}

// quantitySheet is the calculation of what an alternative takes and costs.
func (b Brief) quantitySheet(a Alternative, number int) working.Sheet {
	own := source.Cite("own", "lengths taken from the plan")
	q := a.Quantities
	s := working.Sheet{ID: fmt.Sprintf("layout-%s-%d", a.Slab.ID, number), Title: "What the layout with " + a.Name + " takes", Basis: []string{
		"Lengths, bars and areas are taken from the plan.", "Rates are the user's own."}}
	joint := q.Sawn + q.Formed + q.Isolation
	s.Add(working.New("L_j", "Length of joint, with the strips round fixtures", "L_s + L_f + L_i", joint, "m", own,
		working.In("L_s", q.Sawn, "m", "sawn"), working.In("L_f", q.Formed, "m", "formed"), working.In("L_i", q.Isolation, "m", "isolation")))
	if area := slabArea(a.Slab); area > 0 {
		grid := 2 * area / b.Spacing.Panel
		s.Add(working.New("L_a", "Length of joint in panels an area needs", "L_s + L_f", q.Sawn+q.Formed, "m", own, working.In("L_s", q.Sawn, "m", "sawn"), working.In("L_f", q.Formed, "m", "formed")).
			Beside("two lines a panel of square ones at the limit, edges not counted", grid, own, "Edges carry half of a small slab's lines; odd outlines and fixtures need more."))
	}
	if b.Rates.Given() {
		r := b.Rates
		s.Add(working.New("K", "Cost by the rates given", "r_s · L_s + r_f · L_f + r_i · L_i + r_d · n_d + r_m · (m_m + m_t) + r_p · n_p", r.cost(q), r.Currency, own,
			working.In("r_s", r.Sawn, "per m", "rate of sawn joint"), working.In("L_s", q.Sawn, "m", "sawn"), working.In("r_f", r.Formed, "per m", "rate of formed joint"), working.In("L_f", q.Formed, "m", "formed"),
			working.In("r_i", r.Isolation, "per m", "rate of isolation joint"), working.In("L_i", q.Isolation, "m", "isolation"), working.In("r_d", r.Dowel, "each", "rate of a dowel"), working.In("n_d", float64(q.Dowels), "–", "dowels"),
			working.In("r_m", r.Steel, "per kg", "rate of steel"), working.In("m_m", q.Mesh, "kg", "mesh"), working.In("m_t", q.Trimmer, "kg", "bars across corners"),
			working.In("r_p", r.StripStart, "each", "rate of setting up a pour"), working.In("n_p", float64(q.Pours), "–", "pours")))
	}
	return s
}
