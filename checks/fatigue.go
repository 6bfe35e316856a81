package checks

import (
	"fmt"
	"math"
	"strings"

	"slabwright/flexure"
	"slabwright/source"
	"slabwright/working"
)

// fatigue adds up, at each place, what the passes of every load use of the life of
// the concrete.
func (w *worker) fatigue() {
	any := false
	for i := range w.in.Loads {
		any = any || w.in.Loads[i].Passes != nil
	}
	if !any {
		w.leaveOut("fatigue", "no load says how often it passes")
		return
	}
	for _, p := range []Place{Interior, AtJoint, FreeEdge, Corner} {
		w.fatigueAt(p)
	}
}

func (w *worker) fatigueAt(p Place) {
	s := working.Sheet{ID: "fatigue-" + string(p), Title: "Fatigue, " + map[Place]string{Interior: "interior", AtJoint: "at a joint", FreeEdge: "at a free edge", Corner: "at a corner"}[p], Basis: []string{
		"Working loads over the mean flexural strength; each pass uses a share of the life, and the shares add up (Miner).", "Curl is not counted in the stress."}}
	pca := source.Cite("pca1984", "fatigue")
	mean := w.in.Code.laws.rupture(w.flexural)
	s.Add(working.New("f_m", "Mean flexural strength", mean.formula, mean.value, "MPa", mean.cite, w.flexuralIn()))
	var traffic []flexure.Traffic
	var terms []string
	var inputs []working.Input
	for i := range w.in.Loads {
		l := &w.in.Loads[i]
		stress, ok := w.stresses[string(p)+" "+l.ID]
		if !ok || l.Passes == nil {
			continue
		}
		n, ratio := w.val(of(l, "passes")), stress/mean.value
		traffic = append(traffic, flexure.Traffic{Passes: n, Ratio: ratio})
		at := len(traffic)
		symbol := func(s string) string { return fmt.Sprintf("%s_%d", s, at) }
		s.Add(working.New(symbol("S"), l.title()+": stress over strength", "σ / f_m", ratio, "–", pca, derived("σ", stress, "MPa", "sheet bending-"+l.ID+"-"+string(p)), derived("f_m", mean.value, "MPa", "mean flexural strength")))
		life := flexure.FatiguePCA(ratio)
		if math.IsInf(life, 1) {
			s.Basis = append(s.Basis, l.title()+": up to 0.45 of the strength the passes are without limit and use nothing.")
			continue
		}
		formula := "(4.2577 / (" + symbol("S") + " − 0.4325))^3.268"
		if ratio >= 0.55 {
			formula = "10^(11.737 − 12.077 · " + symbol("S") + ")"
		}
		s.Add(working.New(symbol("N"), "Passes it can bear", formula, life, "–", pca, derived(symbol("S"), ratio, "–", "stress over strength")))
		terms = append(terms, symbol("n")+" / "+symbol("N"))
		pass := w.put(of(l, "passes"))
		pass.Symbol = symbol("n")
		inputs = append(inputs, pass, derived(symbol("N"), life, "–", "passes it can bear"))
	}
	if len(traffic) == 0 {
		return
	}
	used := flexure.Damage(flexure.FatiguePCA, traffic...)
	formula := strings.Join(terms, " + ")
	if formula == "" {
		formula = "0"
	}
	line := working.New("D", "Share of the life used", formula, used, "–", pca, inputs...)
	if used > 0 {
		line = line.Beside("without an endurance limit (Darter)", flexure.Damage(flexure.FatigueDarter, traffic...), source.Cite("darter1977", "fatigue"),
			"Fitted to half the slabs of a road cracked; the two laws part most at low stress.")
	}
	s.Add(line)
	w.row(Row{ID: s.ID, Group: Fatigue, Check: s.Title, Place: p, Demand: used, Capacity: 1, Unit: "–", Clause: pca}, s)
}
