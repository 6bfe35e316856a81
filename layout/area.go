package layout

import "slabwright/plan"

// slabArea returns the area of the outline less the openings, m².
func slabArea(s plan.Slab) float64 {
	area := plan.Ring(s.Outline).Area()
	for _, f := range s.Fixtures {
		if isHole(f) {
			area -= plan.OverlapArea(f.Shape, s.Outline)
		}
	}
	return area
}
