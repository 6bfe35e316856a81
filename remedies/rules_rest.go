package remedies

import (
	"slabwright/causes"
	"slabwright/working"
)

// Depth and strength limits of surface work; NRMCA, EN 1504 and common practice.
const (
	shallowSkin = 0.003 // m, what a hardener reaches; own
	leastBond   = 1.0   // MPa, pull-off of 1.0-1.5
	wideCrack   = 0.002 // m, panel with wheels; 1-2 mm in the guide
)

func repairSteel(in Situation) verdict {
	if c, ok := in.any(likely, "bar-corrosion"); ok {
		return needed("%s is likely (%s): a coat or filler over rust does not stop it", c.Name, causes.About(c.P))
	}
	return no("nothing suggests rusting bars")
}

func patchEdge(in Situation) verdict {
	switch {
	case in.Pattern != "edge-chips":
		return no("the edges are not broken")
	case in.Rocking == "slight" || in.Rocking == "strong":
		return no("the joint moves under wheels: steady it first, then rebuild the edge")
	case in.Depth != nil && in.Thickness != nil && *in.Depth > *in.Thickness*edgeShare:
		return no("it is deeper than a third of the thickness: a full-depth patch is called for")
	}
	return needed("the edge is broken and the joint does not move")
}

func patchFull(in Situation) verdict {
	c, corner := in.any(likely, "corner-break")
	if !corner && in.Pattern != "cornerarc" {
		return no("no part is broken off that would be cut out")
	}
	v := fits("a corner is broken off")
	if corner {
		v = fits("%s is likely (%s)", c.Name, causes.About(c.P))
	}
	v.needed = in.live() || in.Rocking == "slight" || more(in.Step, noticedStep)
	return v.at("after the base below has been mended")
}

func replace(in Situation) verdict {
	if in.Pattern == "shatter" {
		return needed("the panel is in four or more pieces")
	}
	if c, ok := in.any(likely, "frost-aggregate", "overload"); ok && in.live() {
		return fits("%s is likely and it is getting worse", c.Name)
	}
	if more(in.Width, wideCrack) && in.wheels() {
		return fits("at %s mm wheels have no interlock to rely on", millimetres(*in.Width))
	}
	return no("out of proportion: the panel is in large pieces that can serve on")
}

func replaceAll(in Situation) verdict {
	if c, ok := in.any(0.5, "sulfate", "alkali-silica"); ok {
		return fits("%s works through the whole slab; weigh it against years of upkeep", c.Name)
	}
	return no("out of proportion to this finding")
}

func densify(in Situation) verdict {
	if c, ok := in.any(likely, "delamination"); ok {
		return refuse("%s is likely: a coat over a hollow sheet comes off with it", c.Name)
	}
	if _, ok := in.any(likely, "crazing"); ok {
		return fits("crazing harms only the looks; polishing or a hardener makes it less visible")
	}
	if c, ok := in.any(likely, "weak-surface"); ok {
		if more(in.Depth, shallowSkin) {
			return no("the weak skin is %s mm thick: a hardener does not reach through it", millimetres(*in.Depth))
		}
		v := needed("%s is likely and shallow", c.Name)
		v.needed = in.Depth != nil
		return v
	}
	return no("the skin is not known to be weak")
}

func grind(in Situation) verdict {
	if in.kind() == "surface" {
		return no("taking the skin off belongs with a topping here")
	}
	switch {
	case in.Step == nil:
		return no("no step has been measured")
	case less(in.Step, leastStep):
		return no("there is no step to take off")
	case in.Movement == "growing" || in.Rocking == "slight" || in.Rocking == "strong":
		return refuse("it still moves: ground now, the step comes back")
	}
	if c, ok := in.any(likely, "ground-settlement", "ground-heave", "pumping", "curling-under-load"); ok && in.Movement != "stable" {
		return refuse("%s is likely and not known to be over: ground now, the step comes back", c.Name)
	}
	if more(in.Step, mostGrindStep) {
		return no("a step of %s mm takes too much of the slab's thickness", millimetres(*in.Step))
	}
	v := fits("a step of %s mm can be taken off at 2-3 mm a pass", millimetres(*in.Step))
	v.needed = atLeast(in.Step, tripStep) && in.Traffic != "none" || atLeast(in.Step, noticedStep) && in.hardWheels()
	return v
}

func resurface(in Situation) verdict {
	if c, ok := in.any(likely, "alkali-silica", "sulfate", "frost-aggregate"); ok {
		return refuse("%s is likely: a topping would be laid on concrete that goes on breaking up", c.Name)
	}
	c, ok := in.any(likely, "frost-scaling", "delamination", "weak-surface")
	switch {
	case !ok:
		return no("the skin is not known to be lost or loose")
	case less(in.PullOff, leastBond):
		return no("a pull-off of %s MPa is below 1.0: take more off first", working.Figure(*in.PullOff, 2))
	}
	v := fits("%s is likely (%s)", c.Name, causes.About(c.P))
	v.needed = more(in.Depth, shallowSkin) || c.Cause == "delamination"
	if in.PullOff == nil {
		v = v.at("after a pull-off test of 1.0-1.5 MPa or more on the prepared base")
	}
	return v
}

func watch(in Situation) verdict {
	switch {
	case in.Rocking == "strong" || in.Pattern == "shatter":
		return no("it needs doing something now")
	case in.kind() == "surface" && in.Movement == "":
		return fits("a photograph a year is enough for a surface")
	case in.Movement == "":
		v := fits("whether it moves is not known; readings over 12 months with the temperature tell season from growth")
		v.needed = in.Width == nil || atLeast(in.Width, dryWidth)
		return v
	case in.Movement == "growing":
		return needed("it grows: read it on until it rests")
	}
	return fits("its movement is known; a reading a year is enough")
}

func leave(in Situation) verdict {
	switch {
	case in.Rocking == "strong" || in.Rocking == "slight":
		return refuse("it moves under wheels and breaks up further with each")
	case in.Movement == "growing":
		return refuse("it grows")
	case in.Pattern == "shatter":
		return refuse("the panel is in pieces")
	case in.Pattern == "edge-chips":
		return no("broken edges go on breaking under wheels")
	case atLeast(in.Step, tripStep) && in.Traffic != "none":
		return no("a step of %s mm trips people", millimetres(*in.Step))
	case in.Clean:
		return no("it must be closed on a floor kept clean or exposed to chemicals")
	case more(in.Width, dryWidth) && yes(in.Steel) && (in.Salt || in.Exposure == "external"):
		return no("water and salt reach the steel through %s mm", millimetres(*in.Width))
	case more(in.Width, wheelWidth) && in.hardWheels():
		return no("hard wheels break the edges of a crack wider than 1 mm")
	case more(in.Width, wheelWidth):
		return no("at %s mm it takes in water and grit", millimetres(*in.Width))
	}
	if c, ok := in.any(likely, "bar-corrosion", "alkali-silica", "sulfate", "ground-settlement", "ground-heave", "overload", "corner-break", "pumping"); ok {
		return no("%s is likely and does not stop by itself", c.Name)
	}
	if in.Exposure == "external" && atLeast(in.Width, dryWidth) {
		return fits("at %s mm it harms nothing yet; outdoors water and grit wear its edges over the years", millimetres(*in.Width))
	}
	if in.Width != nil && in.kind() == "line" {
		return fits("at %s mm it harms nothing here", millimetres(*in.Width))
	}
	if in.kind() == "line" {
		return no("its width has not been read")
	}
	return fits("it harms only the looks, or too little to act on")
}
