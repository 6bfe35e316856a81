package plan

import (
	"slabwright/source"
	"slabwright/working"
)

// Working returns the relations as calculation lines, one a relation that applies,
// so that each can be checked against the plan with a ruler.
func (r Relation) Working(id string) working.Sheet {
	s := working.Sheet{ID: id, Title: "Where it lies and which way it runs",
		Basis: []string{"Distances and angles are taken from the shapes on the plan, in metres, along the slab's surface."}}
	own := source.Cite("own", "")
	measured := func(symbol, what string, v *float64, unit string) {
		if v != nil {
			s.Add(working.New(symbol, what, "", *v, unit, own))
		}
	}
	measured("l", "Length of all lines", r.Length, "m")
	measured("l_1", "Longest line", r.Longest, "m")
	measured("A", "Area of the patch", r.Area, "m²")
	measured("A_p", "Share of panel "+r.Panel+" covered", r.AreaShare, "–")
	if r.Straight != nil {
		s.Add(working.New("c/l", "Straightness of the longest line: end to end over length", "c / l_1", *r.Straight, "–", source.Cite("mechanics", ""),
			working.In("c", *r.Straight**r.Longest, "m", "end to end"), working.In("l_1", *r.Longest, "m", "along it")))
	}
	r.panelLines(&s, own)
	r.jointLines(&s, own)
	r.endLines(&s, own)
	r.thingLines(&s, own)
	return s
}

func (r Relation) panelLines(s *working.Sheet, own source.Citation) {
	if r.PanelLength == nil {
		return
	}
	mechanics := source.Cite("mechanics", "")
	s.Add(working.New("L/B", "Proportions of panel "+r.Panel, "L / B", *r.PanelAspect, "–", mechanics,
		working.In("L", *r.PanelLength, "m", "long side"), working.In("B", *r.PanelWidth, "m", "short side")))
	if r.Along != nil {
		s.Add(working.New("x/L", "Place along the panel's length", "x / L", *r.Along, "–", mechanics,
			working.In("x", *r.Along**r.PanelLength, "m", "from its end"), working.In("L", *r.PanelLength, "m", "long side")))
	}
	if r.FromCentre != nil {
		s.Add(working.New("r", "Distance to the panel's centre", "", *r.FromCentre, "m", own))
	}
	if r.Angle != nil {
		s.Add(working.New("θ", "Angle to the panel's long side", "", *r.Angle, "°", own))
	}
}

func (r Relation) jointLines(s *working.Sheet, own source.Citation) {
	add := func(symbol, what string, n *NearLine) {
		if n == nil {
			return
		}
		if n.ID != FreeEdge {
			what += " " + n.ID
		}
		s.Add(working.New(symbol, what+", least distance", "", n.Distance, "m", own))
		s.Add(working.New(symbol+"_m", what+", mean distance", "", n.Mean, "m", own))
		if n.Angle != nil {
			s.Add(working.New(symbol+"_θ", what+", angle between", "", *n.Angle, "°", own))
		}
		if n.Overlap > 0 {
			s.Add(working.New(symbol+"_l", what+", length alongside", "", n.Overlap, "m", own))
		}
	}
	add("d_j", "Nearest joint", r.Joint)
	add("d_b", "Joint it runs along:", r.Beside)
	add("d_e", "Nearest free or formed edge", r.Edge)
	add("d_f", "Free or formed edge it runs along", r.BesideEdge)
	if r.Crossing != nil {
		s.Add(working.New("d_x", "Crossing of joints "+r.Crossing.Joints[0]+" and "+r.Crossing.Joints[1], "", r.Crossing.Distance, "m", own))
	}
	if r.DowelEnd != nil {
		s.Add(working.New("d_d", "Line of dowel ends of joint "+r.DowelEnd.Joint+", mean distance", "", r.DowelEnd.Mean, "m", own))
	}
}

func (r Relation) endLines(s *working.Sheet, own source.Citation) {
	for i, e := range r.Ends {
		symbol := []string{"e_1", "e_2"}[i]
		if e.Distance != nil {
			s.Add(working.New(symbol, "End "+string(rune('1'+i))+" reaches "+reached(e), "", *e.Distance, "m", own))
		}
	}
	if r.Reaching != nil {
		s.Add(working.New("n_e", "Ends that reach an edge or joint within 0.30 m", "", float64(*r.Reaching), "–", own))
	}
	if c := r.Corner; c != nil {
		s.Add(working.New("d_c", named("Nearest end to an inside corner", c.Fixture), "", c.Distance, "m", own))
		if c.Angles != nil {
			s.Add(working.New("θ_1", "Angle to one side of that corner", "", c.Angles[0], "°", own),
				working.New("θ_2", "Angle to the other side", "", c.Angles[1], "°", own))
		}
	}
	if r.InLine != nil {
		s.Add(working.New("d_i", "Offset from "+r.InLine.ID+" ending across "+r.InLine.Shared, "", r.InLine.Distance, "m", own))
	}
	if c := r.Cut; c != nil {
		s.Add(working.New("c_1", "Leg of the corner cut, on "+c.Sides[0], "", c.Legs[0], "m", own),
			working.New("c_2", "Leg of the corner cut, on "+c.Sides[1], "", c.Legs[1], "m", own))
	}
}

func (r Relation) thingLines(s *working.Sheet, own source.Citation) {
	if b := r.Bars; b != nil {
		s.Add(working.New("p_b", "Share over bars of "+b.Zone+" that run its way", "", b.Share, "–", own))
	}
	if g := r.Spacing; g != nil {
		s.Add(working.New("s", "Mean spacing of lines side by side", "", g.Mean, "m", own))
		if g.CoV != nil {
			s.Add(working.New("CoV", "Scatter of that spacing", "", *g.CoV, "–", own))
		}
		if g.Ratio != nil {
			s.Add(working.New("s/p", "Spacing over pitch of bars "+g.Zone, "s / p", *g.Ratio, "–", source.Cite("mechanics", ""),
				working.In("s", g.Mean, "m", "spacing"), working.In("p", *g.BarPitch, "m", "pitch")))
		}
	}
	if r.Ducts != nil {
		s.Add(working.New("p_d", "Share over embedded line "+r.Ducts.ID, "", r.Ducts.Share, "–", own))
	}
	if r.Wheels != nil {
		s.Add(working.New("p_w", "Share in wheel path "+r.Wheels.ID, "", r.Wheels.Share, "–", own))
	}
	if r.Fixture != nil {
		s.Add(working.New("d_h", string(r.Fixture.Kind)+" "+r.Fixture.ID+", least distance", "", r.Fixture.Distance, "m", own))
	}
}

func named(what, fixture string) string {
	if fixture == "" {
		return what + " of the outline"
	}
	return what + " of " + fixture
}

func reached(e End) string {
	if e.ID == FreeEdge {
		return "the edge"
	}
	return e.Reaches + " " + e.ID
}
