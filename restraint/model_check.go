package restraint

import (
	"fmt"
	"math"
	"strings"

	"slabwright/plan"
)

// Check returns all that is wrong with a model and the hours it is to be followed
// over; nil when it can be replayed.
func (m Model) Check(hours []float64) []error {
	c := &checker{}
	c.slab(m)
	c.pours(m)
	within := c.within
	within("base stiffness", m.Base.Stiffness, 1e3, 1e13, "N/m³", "give N per m³; 1e7 to 1e9 is usual")
	within("base friction", m.Base.Friction, 0, 30, "", "a coefficient; 0.5 to 3 is usual")
	within("unit weight", m.Base.UnitWeight, 0, 40e3, "N/m³", "about 24 000 N/m³")
	within("base adhesion", m.Base.Adhesion, 0, 5e6, "Pa", "0 where the slab lies loose")
	for i, l := range m.Lines {
		c.line(m, fmt.Sprintf("lines[%d] %s", i, l.ID), l)
	}
	for i, h := range m.Holds {
		c.hold(m, fmt.Sprintf("holds[%d] %s", i, h.ID), h)
	}
	c.hours(hours)
	return c.found
}

// checker gathers what is wrong with a model.
type checker struct{ found []error }

func (c *checker) say(field, value, want, mend string) {
	c.found = append(c.found, plan.Problem{Field: field, Found: value, Want: want, Mend: strings.ToUpper(mend[:1]) + mend[1:] + "."})
}

func (c *checker) within(field string, v, least, most float64, unit, mend string) {
	if !(v >= least && v <= most) {
		c.say(field, fmt.Sprintf("%g", v), fmt.Sprintf("%g to %g %s", least, most, unit), mend)
	}
}

func (c *checker) slab(m Model) {
	ring := plan.Ring(m.Slab.Outline)
	switch {
	case len(ring) < 3:
		c.say("slab outline", fmt.Sprintf("%d points", len(ring)), "3 points or more", "draw the outline of the slab")
	case !c.finite("slab outline", ring):
	case ring.Area() < 1e-3:
		c.say("slab outline", fmt.Sprintf("%g m²", ring.Area()), "an area", "look for a missing or doubled corner")
	}
	for _, f := range m.Slab.Fixtures {
		c.finite("fixture "+f.ID, f.Shape)
	}
}

func (c *checker) pours(m Model) {
	if len(m.Pours) == 0 {
		c.say("pours", "none", "one or more", "give the thickness and the history of the concrete")
	}
	for i, p := range m.Pours {
		c.within(fmt.Sprintf("pours[%d] thickness", i), p.Thickness, 0.02, 3, "m", "give the thickness in metres")
		c.finite(fmt.Sprintf("pours[%d] area", i), p.Area)
		if p.At == nil {
			c.say(fmt.Sprintf("pours[%d] history", i), "none", "a history", "give the history of the concrete")
		}
	}
}

// path checks a line on the plan and says whether it can be used further.
func (c *checker) path(field string, path []plan.Point, mend string) bool {
	if len(path) < 2 {
		c.say(field, fmt.Sprintf("%d points", len(path)), "2 points or more", mend)
		return false
	}
	if !c.finite(field, path) {
		return false
	}
	if length := plan.Polyline(path).Length(); length < plan.SnapTolerance {
		c.say(field, fmt.Sprintf("%g m long at x %.2f, y %.2f", length, path[0].X, path[0].Y), "a line with a length", mend)
		return false
	}
	return true
}

func (c *checker) finite(field string, path []plan.Point) bool {
	const farthest = 1e5 // m
	for _, p := range path {
		if !(math.Abs(p.X) <= farthest && math.Abs(p.Y) <= farthest) {
			c.say(field, fmt.Sprintf("(%g, %g)", p.X, p.Y), "metres within 100 km of the origin", "measure from a corner of the slab")
			return false
		}
	}
	return true
}

func (c *checker) line(m Model, field string, l Line) {
	if c.path(field, l.Path, "draw the line to its end") && m.rings() != nil && !m.touches(l.Path) {
		c.say(field, fmt.Sprintf("from x %.2f, y %.2f it lies wholly off the slab", l.Path[0].X, l.Path[0].Y), "a line across the slab", "move it onto the slab or leave it out")
	}
	if l.Kind == SawnLine {
		c.within(field+" share of strength", l.Share, 0.01, 1, "", "1 less depth of groove over thickness")
		c.within(field+" share of bending strength", l.FaceShare, 0.0001, 1, "", "the square of that")
	}
	c.within(field+" strip", l.Give, 0, 1, "m", "0 where the sides touch")
	if math.IsNaN(l.From) {
		c.say(field+" hour", "not a number", "an hour", "give the clock time")
	}
	b := l.Bars
	if b == nil {
		return
	}
	c.within(field+" bars across", b.Across, 0, 1e13, "N/m²", "0 where one half slides")
	c.within(field+" bars along", b.Along, 0, 1e13, "N/m²", "0 where bars are free sideways")
	c.within(field+" bars room", b.Room, 0, 1, "m", "0 for a round bar cast in")
	c.within(field+" bars clear", b.Clear, 0, 100, "m", "0 where bars run to the crossing")
	c.within(field+" bar diameter", b.Diameter, 0, m.thinnest()/2, "m, half the slab", "an eighth of the slab is usual; give metres")
}

func (c *checker) hold(m Model, field string, h Hold) {
	if c.path(field, h.Path, "draw the edge it holds") && m.rings() != nil && !m.edged(h.Path) {
		c.say(field, fmt.Sprintf("from x %.2f, y %.2f no edge of the slab lies along it", h.Path[0].X, h.Path[0].Y),
			fmt.Sprintf("a line along the outline or an opening, within %g m", plan.JointReach), "draw it on the edge it holds, or make the fixture an opening")
	}
	c.within(field+" bond", h.Bond, 0, 1e15, "N/m³", "0 where the slab can part from it")
	c.within(field+" push", h.Push, 0, 1e15, "N/m³", "0 for something rigid")
	c.within(field+" strip", h.Give, 0, 1, "m", "0 where concrete is cast against it")
}

func (c *checker) hours(hours []float64) {
	if len(hours) < 2 {
		c.say("hours", fmt.Sprintf("%d", len(hours)), "2 or more", "give the times to follow")
	}
	for i := 1; i < len(hours); i++ {
		if !(hours[i] > hours[i-1]) {
			c.say(fmt.Sprintf("hours[%d]", i), fmt.Sprintf("%g after %g", hours[i], hours[i-1]), "rising hours", "sort the hours and leave out doubles")
		}
	}
}

// thinnest returns the least thickness of the pours, m.
func (m Model) thinnest() float64 {
	least := math.Inf(1)
	for _, p := range m.Pours {
		least = math.Min(least, p.Thickness)
	}
	return least
}

// rings lists the outline and the openings, nil where there is no outline.
func (m Model) rings() (rings []plan.Ring) {
	if len(m.Slab.Outline) < 3 {
		return nil
	}
	rings = append(rings, m.Slab.Outline)
	for _, f := range m.Slab.Fixtures {
		if f.Opening && len(f.Shape) > 2 {
			rings = append(rings, f.Shape)
		}
	}
	return rings
}

// touches says whether a path comes onto the slab anywhere.
func (m Model) touches(path plan.Polyline) bool {
	rings := m.rings()
	const parts = 64
	for i := range parts {
		p, _ := path.At((float64(i) + 0.5) / parts * path.Length())
		on := rings[0].Contains(p)
		for _, hole := range rings[1:] {
			on = on && !hole.Contains(p)
		}
		if on {
			return true
		}
	}
	return false
}

// edged says whether some edge of the slab lies along a path.
func (m Model) edged(path plan.Polyline) bool {
	length := path.Length()
	parts := min(max(64, int(length/0.1)), 2000)
	for _, r := range m.rings() {
		for i := range parts {
			p, way := path.At((float64(i) + 0.5) / float64(parts) * length)
			for _, s := range r.Sides() {
				d, _ := s.B.Minus(s.A).Unit()
				if _, near := s.Nearest(p); near <= plan.JointReach && math.Abs(way.Cross(d)) < 0.3 {
					return true
				}
			}
		}
	}
	return false
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
