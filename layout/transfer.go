package layout

import (
	"fmt"

	"slabwright/plan"
	"slabwright/restraint"
	"slabwright/steel"
)

// clearOfCrossing is how far the first dowel stays from a crossing, m.
//
// Source: ACI 302.1R-04, 12 in, from memory.
const clearOfCrossing = 0.3

// interlockGone is the opening above which the broken stones no longer hold the sides
// of a joint level, m.
//
// Source: Colley and Humphrey 1967 as quoted on a contractor's page, seen.
const interlockGone = 0.9e-3

// DowelFor returns the round dowels across a joint of a slab of this thickness, in
// metres, or nil with the reason where there is no guidance for it.
//
// Source: the tables of package steel: floors (trade journal), then airfields (UFC).
func DowelFor(thickness float64) (*plan.Dowels, string) {
	if thickness*1000 < steel.LeastDowelledThickness {
		return nil, fmt.Sprintf("a slab of %.0f mm is thinner than the %.0f mm from which round dowels have guidance: thicken the edge, or use plates", thickness*1000, steel.LeastDowelledThickness)
	}
	size, err := steel.DowelSizeFor("journal", thickness*1000)
	rule := "floor table (trade journal) at this thickness"
	if err != nil {
		size, err = steel.DowelSizeFor("ufc", thickness*1000)
		rule = "airfield table (UFC 3-260-02) at this thickness"
	}
	if err != nil || size.Length == nil {
		return nil, fmt.Sprintf("the tables give no dowel for a slab of %.0f mm", thickness*1000)
	}
	return &plan.Dowels{Diameter: fact(size.Diameter/1000, rule), Length: fact(*size.Length/1000, rule), Spacing: fact(size.Spacing/1000, rule),
		Clear:     fact(clearOfCrossing, "bars near a crossing pin the corner"),
		FreeAlong: assumed("yes", "one half unbonded")}, ""
}

// opening returns how far the joints of a layout open, m.
func (b Brief) opening() float64 {
	movement := b.Wheels.Movement
	if movement == 0 {
		movement = b.Spacing.Facts.Strain
	}
	return restraint.JointOpening(0.8, b.Spacing.Panel, 0, 0, movement)
}

// hold gives the joints of a slab what keeps their sides level: dowels where wheels
// cross and the stones do not interlock, and says so.
func (b Brief) hold(s *plan.Slab) {
	limit := b.Wheels.Opening
	if limit == 0 {
		limit = interlockGone
	}
	wide := b.opening() > limit
	for i := range s.Joints {
		j := &s.Joints[i]
		switch {
		case j.Kind == plan.Isolation:
			j.Transfer = assumed("none", "a soft strip through the whole depth")
		case j.Kind == plan.Sawn && !(b.Wheels.Cross && wide):
			j.Transfer = assumed("interlock", "the crack below the groove is rough")
		case !b.Wheels.Cross:
			j.Transfer = assumed("none", "no wheels cross it")
		default:
			d, why := DowelFor(s.Thickness.Value)
			if d == nil {
				j.Transfer = assumed("none", why)
				continue
			}
			j.Dowels, j.Transfer = d, assumed("dowelled", "wheels cross it")
		}
	}
	b.freeSideways(s)
}

// freeSideways asks for bars that may move sideways in joints that cross others with
// dowels: the panels shorten both ways.
func (b Brief) freeSideways(s *plan.Slab) {
	dowelled := map[string]bool{}
	for _, j := range s.Joints {
		dowelled[j.ID] = j.Dowels != nil
	}
	both := map[string]bool{}
	for _, x := range s.Crossings() {
		if dowelled[x.Joints[0]] && dowelled[x.Joints[1]] {
			both[x.Joints[0]], both[x.Joints[1]] = true, true
		}
	}
	for i := range s.Joints {
		j := &s.Joints[i]
		if j.Dowels == nil {
			continue
		}
		d := *j.Dowels
		d.FreeSide = assumed("no", "round bars: no dowelled joint crosses this one")
		if both[j.ID] {
			d.FreeSide = assumed("yes", "a dowelled joint crosses this one: bars with soft sides, or plates")
		}
		j.Dowels = &d
	}
}
