package causes

// place is one rule for the nearest feature: where it applies it gives the
// sentence that says so.
type place struct {
	state string
	says  func(f PlanFacts) *Observation
}

// places, the most specific first: the first that fits is the location.
var places = []place{
	{"over-bar", func(f PlanFacts) *Observation {
		if !within(f.NearestBarLine, barWithin) {
			return nil
		}
		return f.observed("location", "over-bar", "the line follows a bar within %s", length(*f.NearestBarLine))
	}},
	{"inside-corner", func(f PlanFacts) *Observation {
		if !within(f.StartsAtInsideCorner, cornerWithin) {
			return nil
		}
		return f.observed("location", "inside-corner", "the crack starts %s from the inside corner%s", length(*f.StartsAtInsideCorner), of(f.InsideCorner))
	}},
	{"in-line-across-edge", func(f PlanFacts) *Observation {
		if !within(f.InLineWithJointAcross, inLineWithin) {
			return nil
		}
		return f.observed("location", "in-line-across-edge", "it starts at the shared edge %s from the line of the neighbour's joint", length(*f.InLineWithJointAcross))
	}},
	{"dowel-end", dowelEnd},
	{"corner", func(f PlanFacts) *Observation {
		if f.JoinsSidesThatMeet == nil || !*f.JoinsSidesThatMeet {
			return nil
		}
		return f.observed("location", "corner", "the line cuts a corner off: its ends lie on two sides that meet")
	}},
	{"near-joint", nearJoint},
	{"near-fixture", func(f PlanFacts) *Observation {
		if !within(f.DistanceToFixture, fixtureWithin) {
			return nil
		}
		return f.observed("location", "near-fixture", "it passes %s from the %s", length(*f.DistanceToFixture), named("fixture", f.Fixture))
	}},
	{"mid-panel", midPanel},
	{"edge-band", edgeBand},
	{"wheelpath", func(f PlanFacts) *Observation {
		if !within(f.DistanceToWheelPath, wheelPathWithin) {
			return nil
		}
		return f.observed("location", "wheelpath", "it lies %s from the line of the wheels, away from joints and corners", length(*f.DistanceToWheelPath))
	}},
	{"interior", func(f PlanFacts) *Observation {
		if f.EndsReaching == nil || *f.EndsReaching > 0 || f.DistanceToEdge == nil || *f.DistanceToEdge <= clearOfEdge {
			return nil
		}
		return f.observed("location", "interior", "it stays %s clear of every edge and joint", length(*f.DistanceToEdge))
	}},
	{"whole", func(f PlanFacts) *Observation {
		if f.WholePanel == nil || !*f.WholePanel {
			return nil
		}
		return f.observed("location", "whole", "it covers the whole panel")
	}},
}

// location takes the most specific place that fits.
func location(f PlanFacts) *Observation {
	if f.WholePanel != nil && *f.WholePanel {
		return f.observed("location", "whole", "it covers the whole panel")
	}
	for _, p := range places {
		if o := p.says(f); o != nil {
			return o
		}
	}
	return nil
}

// nearJoint: close to a joint and running with it.
func nearJoint(f PlanFacts) *Observation {
	if !within(f.DistanceToJoint, jointWithin) || f.AngleToNearestJoint == nil || *f.AngleToNearestJoint > acrossWithin {
		return nil
	}
	return f.observed("location", "near-joint", "it runs %s beside %s and nearly parallel to it", length(*f.DistanceToJoint), lineName(f.Joint))
}

// dowelEnd: 150-450 mm from a joint with bars, on the line of their ends.
func dowelEnd(f PlanFacts) *Observation {
	d := f.DistanceToDowelledOne
	if !within(f.DistanceToDowelEnd, dowelEndWithin) || d == nil || *d < dowelNearest || *d > dowelFarthest {
		return nil
	}
	return f.observed("location", "dowel-end", "it runs %s from a joint with bars, on the line of the bars' ends (%s off)", length(*d), length(*f.DistanceToDowelEnd))
}

// midPanel: the middle third, not along the long side.
func midPanel(f PlanFacts) *Observation {
	if f.PositionAlong == nil || *f.PositionAlong < middleFrom || *f.PositionAlong > middleTo {
		return nil
	}
	if f.AngleToLongSide != nil && *f.AngleToLongSide < 90-2*acrossWithin {
		return nil
	}
	return f.observed("location", "mid-panel", "it crosses the panel at %.2f of its length", *f.PositionAlong)
}

// edgeBand: parallel to a joint or edge where a lifted strip would break off.
func edgeBand(f PlanFacts) *Observation {
	if f.DistanceToJoint == nil || f.PanelLength == nil || *f.PanelLength <= 0 || f.AngleToNearestJoint == nil || *f.AngleToNearestJoint > acrossWithin {
		return nil
	}
	share := *f.DistanceToJoint / *f.PanelLength
	if share < bandFrom || share > bandTo {
		return nil
	}
	return f.observed("location", "edge-band", "it runs parallel to %s at %s, %.2f of the panel length", lineName(f.Joint), length(*f.DistanceToJoint), share)
}

func within(distance *float64, limit float64) bool {
	return distance != nil && *distance <= limit+slack
}

// of puts a name behind a word when there is one.
func of(name string) string {
	if name == "" {
		return ""
	}
	return " " + name
}

// lineName is what a crack runs along: the joint or edge by its name where it has one.
func lineName(name string) string {
	if name == "" {
		return "the joint"
	}
	return name
}
