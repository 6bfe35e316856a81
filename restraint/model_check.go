package restraint

import (
	"fmt"
	"math"

	"slabwright/plan"
)

// Check returns all that is wrong with a model and the hours it is to be followed
// over; nil when it can be replayed.
func (m Model) Check(hours []float64) []error {
	var found []error
	say := func(field, value, want, mend string) {
		found = append(found, plan.Problem{Field: field, Found: value, Want: want, Mend: mend})
	}
	within := func(field string, v, least, most float64, unit, mend string) {
		if !(v >= least && v <= most) {
			say(field, fmt.Sprintf("%g", v), fmt.Sprintf("%g to %g %s", least, most, unit), mend)
		}
	}
	if len(m.Slab.Outline) < 3 {
		say("slab outline", fmt.Sprintf("%d points", len(m.Slab.Outline)), "3 points or more", "draw the outline of the slab")
	}
	if len(m.Pours) == 0 {
		say("pours", "none", "one or more", "give the thickness and the history of the concrete")
	}
	for i, p := range m.Pours {
		within(fmt.Sprintf("pours[%d] thickness", i), p.Thickness, 0.02, 3, "m", "give the thickness in metres")
		if p.At == nil {
			say(fmt.Sprintf("pours[%d] history", i), "none", "a history", "give the history of the concrete")
		}
	}
	within("base stiffness", m.Base.Stiffness, 1e3, 1e13, "N/m³", "give N per m³; 1e7 to 1e9 is usual")
	within("base friction", m.Base.Friction, 0, 30, "", "a coefficient; 0.5 to 3 is usual")
	within("unit weight", m.Base.UnitWeight, 0, 40e3, "N/m³", "about 24 000 N/m³")
	within("base adhesion", m.Base.Adhesion, 0, 5e6, "Pa", "0 where the slab lies loose")
	for i, l := range m.Lines {
		field := fmt.Sprintf("lines[%d] %s", i, l.ID)
		if len(l.Path) < 2 {
			say(field, fmt.Sprintf("%d points", len(l.Path)), "2 points or more", "draw the line to its end")
		}
		if l.Kind == SawnLine {
			within(field+" share of strength", l.Share, 0.01, 1, "", "1 less depth of groove over thickness")
			within(field+" share of bending strength", l.FaceShare, 0.0001, 1, "", "the square of that")
		}
		within(field+" strip", l.Give, 0, 1, "m", "0 where the sides touch")
		if b := l.Bars; b != nil {
			within(field+" bars across", b.Across, 0, 1e13, "N/m²", "0 where one half slides")
			within(field+" bars along", b.Along, 0, 1e13, "N/m²", "0 where bars are free sideways")
			within(field+" bars room", b.Room, 0, 1, "m", "0 for a round bar cast in")
			within(field+" bars clear", b.Clear, 0, 100, "m", "0 where bars run to the crossing")
		}
		if math.IsNaN(l.From) {
			say(field+" hour", "not a number", "an hour", "give the clock time")
		}
	}
	for i, h := range m.Holds {
		field := fmt.Sprintf("holds[%d] %s", i, h.ID)
		if len(h.Path) < 2 {
			say(field, fmt.Sprintf("%d points", len(h.Path)), "2 points or more", "draw the edge it holds")
		}
		within(field+" bond", h.Bond, 0, 1e15, "N/m³", "0 where the slab can part from it")
		within(field+" push", h.Push, 0, 1e15, "N/m³", "0 for something rigid")
		within(field+" strip", h.Give, 0, 1, "m", "0 where concrete is cast against it")
	}
	if len(hours) < 2 {
		say("hours", fmt.Sprintf("%d", len(hours)), "2 or more", "give the times to follow")
	}
	for i := 1; i < len(hours); i++ {
		if !(hours[i] > hours[i-1]) {
			say(fmt.Sprintf("hours[%d]", i), fmt.Sprintf("%g after %g", hours[i], hours[i-1]), "rising hours", "sort the hours and leave out doubles")
		}
	}
	return found
}

// check asks a pour for its state and refuses what cannot be.
func (p Pour) check(hour float64) (Concrete, error) {
	c := p.At(hour)
	for _, v := range []struct {
		name        string
		value       float64
		least, most float64
	}{
		{"strain", c.Strain, -0.02, 0.02}, {"modulus", c.Modulus, 0, 200e9}, {"strength", c.Strength, 0, 50e6},
		{"creep", c.Creep, 0, 50}, {"face tension", c.Face, -50e6, 50e6}, {"fracture energy", c.Fracture, 0, 1e5},
	} {
		if !(v.value >= v.least && v.value <= v.most) {
			return c, fmt.Errorf("pour %s at hour %g: %s is %g, expected %g to %g", p.ID, hour, v.name, v.value, v.least, v.most)
		}
	}
	return c, nil
}

// fracture returns the energy that opens a crack in a pour now, N/m.
func (s *slabState) fracture(pour int) float64 {
	if v := s.now[pour].Fracture; v > 0 {
		return v
	}
	return s.set.Fracture
}
