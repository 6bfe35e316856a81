package plan

import (
	"fmt"
	"strings"

	"slabwright/source"
)

func (s Slab) checkFixture(i int, outlineUsable bool) []Problem {
	f := s.Fixtures[i]
	field := fmt.Sprintf("fixtures[%d]", i)
	var problems []Problem
	switch f.Kind {
	case Pit, Drain, Column, Wall, Building, OldSlab, Duct:
	default:
		problems = append(problems, Problem{Field: field + ".kind", Found: fmt.Sprintf("%q", f.Kind),
			Want: "pit, drain, column, wall, building, old slab or duct", Mend: "Choose the nearest kind; the name says the rest."})
	}
	problems = append(problems, checkWord(field+".isolated", f.Isolated, "yes", "no", "part")...)
	problems = append(problems, checkWord(field+".trimmers", f.Trimmers, "yes", "no")...)
	if !f.Opening {
		for k, p := range f.Shape {
			if bad := checkFinite(fmt.Sprintf("%s.shape_m[%d]", field, k), p); bad != nil {
				return append(problems, *bad)
			}
		}
		if len(f.Shape) < 2 {
			problems = append(problems, Problem{Field: field + ".shape_m", Found: fmt.Sprintf("%d points", len(f.Shape)),
				Want: "two or more", Mend: "Draw where it touches the slab."})
		}
		return problems
	}
	ring := checkRing(field+".shape_m", "opening "+f.ID, f.Shape)
	problems = append(problems, ring...)
	if len(ring) > 0 || !outlineUsable {
		return problems
	}
	problems = append(problems, s.openingOutside(field, f)...)
	for k := range i {
		o := s.Fixtures[k]
		if !o.Opening || len(checkRing("", "", o.Shape)) > 0 {
			continue
		}
		if a := OverlapArea(f.Shape, o.Shape); a > 1e-4 {
			place := f.Shape[0]
			problems = append(problems, Problem{Field: field + ".shape_m", Place: &place,
				Found: fmt.Sprintf("opening %s covers %.2f m² of opening %s", f.ID, a, o.ID),
				Want:  "openings apart", Mend: "Draw the two as one opening, or move one."})
		}
	}
	return problems
}

func (s Slab) openingOutside(field string, f Fixture) []Problem {
	ring := Ring(f.Shape)
	outside := ring.Area() - OverlapArea(ring, s.Outline)
	if outside <= 1e-3*ring.Area()+1e-4 {
		return nil
	}
	place, at := f.Shape[0], 0
	for k, p := range f.Shape {
		if !Ring(s.Outline).Contains(p) {
			place, at = p, k
			break
		}
	}
	if outside < outsideTolerance*ring.Perimeter()/2 && Ring(s.Outline).Distance(place) <= outsideTolerance {
		return nil
	}
	return []Problem{{Field: fmt.Sprintf("%s.shape_m[%d]", field, at), Place: &place,
		Found: fmt.Sprintf("opening %s lies %.2f m² outside the outline", f.ID, outside), Want: "an opening inside the outline",
		Mend: "Move it in, or draw the outline round it as a notch."}}
}

func (s Slab) checkJoint(i int, outlineUsable bool) []Problem {
	j := s.Joints[i]
	field := fmt.Sprintf("joints[%d]", i)
	var problems []Problem
	switch j.Kind {
	case Sawn, Formed, Isolation:
	default:
		problems = append(problems, Problem{Field: field + ".kind", Found: fmt.Sprintf("%q", j.Kind),
			Want: "sawn, formed or isolation", Mend: "A joint cast against a form is formed, one cut later is sawn."})
	}
	for k, p := range j.Path {
		if bad := checkFinite(fmt.Sprintf("%s.path_m[%d]", field, k), p); bad != nil {
			return append(problems, *bad)
		}
	}
	if Polyline(j.Path).Length() <= SnapTolerance {
		p := Problem{Field: field + ".path_m", Found: fmt.Sprintf("joint %s has no length", j.ID),
			Want: "two or more points apart", Mend: "Draw it from edge to edge, or leave it out."}
		if len(j.Path) > 0 {
			p.Place = &j.Path[0]
		}
		return append(problems, p)
	}
	problems = append(problems, j.checkFacts(field)...)
	if outlineUsable {
		problems = append(problems, s.jointOutside(field, j)...)
	}
	for k := range i {
		problems = append(problems, j.doubled(field, s.Joints[k])...)
	}
	return problems
}

// checkWord returns a problem when a known choice is none of the words.
func checkWord(field string, c *source.Choice, words ...string) []Problem {
	if c == nil || contains(words, c.Value) {
		return nil
	}
	return []Problem{{Field: field, Found: fmt.Sprintf("%q", c.Value), Want: strings.Join(words, ", "),
		Mend: "Choose one, or leave it out if nobody knows."}}
}

func (j Joint) checkFacts(field string) []Problem {
	problems := checkWord(field+".transfer", j.Transfer, "none", "interlock", "dowelled", "tied", "keyed")
	problems = append(problems, checkWord(field+".opened", j.Opened, "yes", "no", "part")...)
	problems = append(problems, checkRange(field+".groove_m", j.Groove, 0, 1, "m")...)
	problems = append(problems, checkRange(field+".opening_m", j.Opening, 0, 0.2, "m")...)
	if d := j.Dowels; d != nil {
		problems = append(problems, checkRange(field+".dowels.diameter_m", d.Diameter, 0.004, 0.1, "m")...)
		problems = append(problems, checkRange(field+".dowels.length_m", d.Length, 0.05, 2, "m")...)
		problems = append(problems, checkRange(field+".dowels.spacing_m", d.Spacing, 0.05, 3, "m")...)
		problems = append(problems, checkRange(field+".dowels.clear_of_crossing_m", d.Clear, 0, 5, "m")...)
		problems = append(problems, checkRange(field+".dowels.skew", d.Skew, 0, 1, "m/m")...)
		problems = append(problems, checkWord(field+".dowels.free_along", d.FreeAlong, "yes", "no")...)
		problems = append(problems, checkWord(field+".dowels.free_sideways", d.FreeSide, "yes", "no")...)
	}
	return problems
}

// jointOutside names the first place where the joint leaves the slab by more than
// the tolerance: a point, or the middle of a piece that cuts across a notch.
func (s Slab) jointOutside(field string, j Joint) []Problem {
	for k, p := range j.Path {
		if s.Inside(p, outsideTolerance) {
			continue
		}
		place := p
		return []Problem{{Field: fmt.Sprintf("%s.path_m[%d]", field, k), Place: &place,
			Found: fmt.Sprintf("point %d of joint %s lies %.2f m outside the slab", k, j.ID, s.distance(p)),
			Want:  "a joint inside the slab", Mend: s.outsideMend(p)}}
	}
	for k, piece := range Polyline(j.Path).Pieces() {
		for _, at := range (Polyline{piece.A, piece.B}).samples(outsideTolerance) {
			if s.Inside(at.at, outsideTolerance) || s.inOpening(at.at) {
				continue
			}
			place := at.at
			return []Problem{{Field: fmt.Sprintf("%s.path_m[%d]", field, k), Place: &place,
				Found: fmt.Sprintf("joint %s leaves the slab between points %d and %d", j.ID, k, k+1),
				Want:  "a joint inside the slab", Mend: "Stop it at the edge and start another joint beyond."}}
		}
	}
	return nil
}

func (s Slab) outsideMend(p Point) string {
	if s.inOpening(p) {
		return "It ends in an opening: stop it at the opening's edge."
	}
	return "Stop it at the edge, or look for a slipped digit."
}

func (s Slab) inOpening(p Point) bool {
	for _, f := range s.openings() {
		if Ring(f.Shape).Contains(p) {
			return true
		}
	}
	return false
}

// distance returns how far p is from the slab's edge.
func (s Slab) distance(p Point) float64 {
	best := Ring(s.Outline).Distance(p)
	for _, f := range s.openings() {
		best = min(best, Ring(f.Shape).Distance(p))
	}
	return best
}

// doubled names a joint drawn on top of an earlier one.
func (j Joint) doubled(field string, o Joint) []Problem {
	var along float64
	var place Point
	for _, a := range Polyline(j.Path).Pieces() {
		for _, b := range Polyline(o.Path).Pieces() {
			if l := a.Overlap(b, sliverWidth); l > along {
				along, place = l, a.At(0.5)
			}
		}
	}
	if along < 0.3 {
		return nil
	}
	return []Problem{{Field: field + ".path_m", Place: &place,
		Found: fmt.Sprintf("joint %s runs %.2f m along joint %s, within %.0f mm", j.ID, along, o.ID, sliverWidth*1000),
		Want:  "one joint at one place", Mend: "Leave one of the two out, or move it to where it was cut."}}
}

func (z BarZone) check(field string) []Problem {
	var problems []Problem
	if len(z.Area) > 0 {
		problems = checkRing(field+".area_m", strings.TrimSpace("the area of steel "+z.ID), z.Area)
	}
	problems = append(problems, checkRange(field+".pitch_x_m", z.PitchX, 0.02, 3, "m")...)
	problems = append(problems, checkRange(field+".pitch_y_m", z.PitchY, 0.02, 3, "m")...)
	problems = append(problems, checkRange(field+".diameter_m", z.Diameter, 0.002, 0.06, "m")...)
	problems = append(problems, checkWord(field+".at_joints", z.AtJoints, "cut", "half", "continuous")...)
	return append(problems, checkRange(field+".cover_m", z.Cover, 0, 1, "m")...)
}
