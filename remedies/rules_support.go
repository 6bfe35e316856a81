package remedies

import (
	"slabwright/causes"
	"slabwright/working"
)

// likely is the chance from which a cause steers a remedy; our own judgement, the
// same figure from which two causes count as acting together.
const likely = 0.25

// Limits of the remedies, in metres and as shares, with their sources in
// tables/remedies.csv; "own" where it is our own judgement.
const (
	bigStep         = 0.010 // m; own
	leastStep       = 0.001 // m; below it there is no step
	noticedStep     = 0.003 // m; retrofit range of pavement practice starts here
	mostGrindStep   = 0.013 // m; own
	tripStep        = 0.006 // m; walkway guidance, from memory
	poorTransfer    = 0.60  // load transfer below 50-60 % is poor
	stitchThickness = 0.200 // m
	stitchWidth     = 0.001 // m; tight enough for interlock; own
)

func keepOff(in Situation) verdict {
	switch {
	case in.Pattern == "shatter":
		return needed("the panel is in pieces that can drop or tilt")
	case in.Rocking == "strong":
		return needed("it rocks under wheels or throws out water or fines")
	case more(in.Step, bigStep) && in.Traffic != "none":
		return needed("a step of %s mm is a hazard to feet and wheels", millimetres(*in.Step))
	case more(in.LoadRatio, 1):
		return needed("the load is %s times what the slab carries: limit it", working.Figure(*in.LoadRatio, 2))
	}
	return no("nothing seen here makes it unsafe to use")
}

func groundCause(in Situation) (causes.Weight, bool) {
	return in.any(likely, "ground-settlement", "ground-heave", "pumping")
}

func drain(in Situation) verdict {
	if c, ok := groundCause(in); ok {
		return needed("%s is among the likely causes (%s): nothing else lasts before that is mended", c.Name, causes.About(c.P))
	}
	return no("ground movement is not among the likely causes")
}

func support(in Situation) verdict {
	heave, swelling := in.any(likely, "ground-heave")
	hollow := in.Hollow == "void-at-edge"
	rocks := in.Rocking == "slight" || in.Rocking == "strong"
	switch {
	case swelling:
		return refuse("the ground is likely to be swelling (%s): filling would lift the slab further", causes.About(heave.P))
	case hollow || rocks:
		v := fits("it moves or sounds hollow at the edge, so something is missing below")
		v.needed = in.Traffic != "none" && in.Traffic != "foot"
		if c, ok := in.any(likely, "ground-settlement"); ok {
			v = v.at("after the water and the ground have been seen to: " + c.Name + " is likely")
		} else if c, ok := in.any(likely, "curling-under-load"); ok && less(in.AgeDays, 365) {
			v = v.at("once levels show that the edges have stopped lifting: " + c.Name + " is likely")
		}
		return v
	case in.Hollow == "" && in.Rocking == "":
		return no("it has not been sounded, nor looked at under a wheel: do that first")
	}
	return no("it sounds solid and does not move under wheels")
}

func release(in Situation) verdict {
	if c, ok := in.any(likely, "held-by-fixture"); ok {
		return needed("it is likely to be held by a fixture (%s): while it is, any filling will tear again", causes.About(c.P))
	}
	return no("nothing suggests that a fixture holds it")
}

func cutMissedJoints(in Situation) verdict {
	c, open := in.any(likely, "late-cut", "shallow-cut", "long-panel")
	switch {
	case more(in.UncutLength, 0):
		v := needed("joints are missing or idle in panels that have not cracked: each is a crack waiting to happen; leave the line beside the crack uncut%s", belowUnseen(in))
		return v.at("now, and before the next cold night; the longer the slab has dried, the less it helps")
	case open && in.UncutLength == nil:
		return no("%s is likely, but no missing or idle joint in an uncracked panel is on record: look for them", c.Name)
	}
	return no("no joint is missing in a panel without a crack; never cut beside an open crack")
}

// belowUnseen says how likely a panel without a visible crack has cracked already.
func belowUnseen(in Situation) string {
	if in.UncutCracked == nil {
		return ""
	}
	return "; the chance that such a panel has already cracked unseen is " + causes.About(*in.UncutCracked)
}

func reliefJoint(in Situation) verdict {
	if c, ok := in.any(likely, "locked-dowels"); ok {
		return needed("%s is likely (%s): the joint must be made to open before the crack is treated", c.Name, causes.About(c.P))
	}
	if c, ok := in.any(likely, "long-panel", "seasonal-movement"); ok && in.moves() {
		return fits("%s is likely and the crack already works as the joint that was missing; a sawn joint is straighter and easier to keep", c.Name)
	}
	return no("the joints there are can take the movement, or the crack does")
}

func restoreDowels(in Situation) verdict {
	if in.Pattern == "shatter" {
		return refuse("the panel is in pieces: bars have nothing sound to hold")
	}
	if c, ok := in.any(likely, "frost-aggregate", "alkali-silica", "sulfate"); ok {
		return refuse("%s is likely: the concrete around the slots would not hold", c.Name)
	}
	step := atLeast(in.Step, noticedStep) && !more(in.Step, mostGrindStep)
	poor := less(in.LoadTransfer, poorTransfer)
	if !step && !poor {
		if in.LoadTransfer == nil && in.Step == nil {
			return no("neither the step nor the load transfer is known")
		}
		return no("there is no step of 3-13 mm and load transfer is not known to be poor")
	}
	v := fits("the step or the load transfer calls for bars")
	if poor {
		v = fits("load transfer of %.0f %% is poor", 100**in.LoadTransfer)
	}
	v.needed = poor && in.wheels()
	if in.Hollow == "void-at-edge" || in.Rocking == "strong" {
		v = v.at("after the void below has been filled")
	}
	return v
}

func stitch(in Situation) verdict {
	if in.moves() {
		return refuse("stitching would lock a live crack: it would break beside the stitches")
	}
	if c, ok := in.any(likely, "locked-dowels", "held-by-fixture", "ground-settlement", "ground-heave", "seasonal-movement"); ok {
		return refuse("%s is likely: stitched before that is mended it would break beside the stitches", c.Name)
	}
	switch {
	case in.Movement == "":
		return no("whether it moves is not known: watch it first")
	case more(in.ShrinkageLeft, shrinkageOver):
		return no("shrinkage of %s mm/m is still to come: stitch when it is over", working.Figure(1000**in.ShrinkageLeft, 2))
	case less(in.Thickness, stitchThickness):
		return no("the slab is thinner than 200 mm: too little room for inclined bars")
	case more(in.Width, stitchWidth):
		return no("at %s mm the faces no longer interlock", millimetres(*in.Width))
	case less(in.LoadTransfer, poorTransfer):
		return no("load transfer is already lost: bars in slots or a patch do more")
	}
	return fits("it is tight and at rest, and bars would keep it so")
}

// shrinkageOver is the shrinkage still to come below which the drying counts as
// over: 0.05 mm/m, our own judgement.
const shrinkageOver = 50e-6
