package earlyage

import (
	"fmt"
	"math"
	"strings"
)

// reasons returns why the window is what it is, and what it stands on.
func (w *CutWindow) reasons(m *Members) (why string, basis []string) {
	p := m.Pour
	end := m.Hours[len(m.Hours)-1]
	switch {
	case math.IsNaN(w.opens):
		why = fmt.Sprintf("The edge does not reach %.1f MPa within %.0f h: too cold or too slow a mix. Keep it warm and run again with a longer time.", w.Saw.Edge, end)
	case w.Gap:
		why = fmt.Sprintf("No window for the %s: the chance of a crack elsewhere is %.0f %% before the edge is ready (%.1f h against %.1f h). Cut with an early-entry saw, shorten the uncut length, place at another time of day, or cover against the evening.",
			w.Saw.Name, 100*w.RiskAtOpen, w.closes, w.opens)
	case math.IsNaN(w.closes):
		why = fmt.Sprintf("Opens when the edge has %.1f MPa; stress stays low to the end of the run at %.0f h.", w.Saw.Edge, end)
	case w.ByStress:
		why = fmt.Sprintf("Opens when the edge has %.1f MPa; closes when the tension of the uncut slab comes to %.0f %% of its strength.", w.Saw.Edge, 100*StressShare)
	default:
		why = fmt.Sprintf("Opens when the edge has %.1f MPa; closes when the chance of a crack elsewhere passes %.0f %%.", w.Saw.Edge, 100*w.Risk)
	}
	basis = []string{
		fmt.Sprintf("Edge strength for %s in %s aggregate %.1f MPa (%.1f to %.1f): %s.", w.Saw.Name, w.Saw.Aggregate, w.Saw.Edge, w.Saw.EdgeLow, w.Saw.EdgeHigh, w.Saw.Source),
		fmt.Sprintf("Stress limit %.2f of tensile strength; accepted chance of a crack elsewhere %.0f %%.", StressShare, 100*w.Risk),
		fmt.Sprintf("Uncut length %.1f m, friction %.2f (%.2f to %.2f).", p.Restraint.UncutLength, p.Restraint.Friction, p.Restraint.FrictionLow, p.Restraint.FrictionHigh),
		fmt.Sprintf("%d members, seed %d: %s.", p.Count, p.Seed, doubts(m.unknowns)),
	}
	return why, basis
}

// doubts lists the ranges of the unknowns.
func doubts(unknowns []Unknown) string {
	var parts []string
	for _, u := range unknowns {
		if u.Low < u.High {
			parts = append(parts, strings.TrimSuffix(fmt.Sprintf("%s %.3g to %.3g %s", u.Name, u.Low, u.High, u.Unit), " -"))
		}
	}
	return strings.Join(parts, ", ")
}
