package remedies

import (
	"fmt"

	"slabwright/working"
)

// Widths and ages of filling. ACI 302.1R (90 days), ASCC statement 4 (expect it to
// split below 60 days), ACI 224.1R and RAP-1, RAP-2 (widths), the floor repair
// checklist (1 mm under hard wheels; 0.3 mm dry).
const (
	fillAfterDays   = 90.0
	splitBelowDays  = 60.0
	wheelWidth      = 0.001   // m
	dryWidth        = 0.0003  // m
	gravityNarrow   = 0.0001  // m
	gravityWide     = 0.0015  // m
	injectNarrow    = 0.00005 // m
	injectWide      = 0.006   // m
	leastSealDegree = 10.0    // °C
	edgeShare       = 1.0 / 3 // of the thickness, deepest edge repair
)

func fillSemiRigid(in Situation) verdict {
	switch {
	case in.Rocking == "slight" || in.Rocking == "strong":
		return refuse("it moves under wheels and would break any filler: give it support and load transfer first")
	case in.chance("held-by-fixture") >= likely:
		return no("first cut it free from the fixture, then fill")
	case in.Exposure == "external" && in.Movement == "cyclic":
		return refuse("outdoors it opens and closes with the season: a stiff filler tears or crushes the edges")
	case !in.hardWheels():
		return no("no hard wheels run here: a stiff filler is not called for")
	}
	v := fits("hard wheels break edges that nothing supports")
	v.needed = atLeast(in.Width, wheelWidth) || in.Pattern == "edge-chips"
	return v.at(fillWhen(in, "semi-rigid filler"))
}

// fillWhen says when a filler should go in: late enough for the shrinkage to be
// nearly over, and in the season when the gap is wide.
func fillWhen(in Situation, kind string) string {
	text := "as late as can be, at least 90 days after placing"
	if in.AgeDays != nil {
		switch age := *in.AgeDays; {
		case age < splitBelowDays:
			text = fmt.Sprintf("not yet: the slab is %.0f days old; below 60 days expect it to split; wait %.0f days more", age, fillAfterDays-age)
		case age < fillAfterDays:
			text = fmt.Sprintf("wait %.0f days more, until 90 days after placing", fillAfterDays-age)
		default:
			text = "now or later: 90 days have passed"
		}
	}
	m, _ := MovementToCome(in)
	if m == nil || m.Strain == nil {
		return text
	}
	share := fillers[kind].Share
	if *m.Strain <= share {
		return text + fmt.Sprintf("; placed now it would be stretched by %.0f %%, within %.0f %%", 100**m.Strain, 100*share)
	}
	text += fmt.Sprintf("; placed now it would be stretched by %.0f %%, more than the %.0f %% it takes", 100**m.Strain, 100*share)
	thermal := m.Opening - *in.FeedLength**in.ShrinkageLeft
	if days, ok := Earliest(in.Left, *in.FeedLength, thermal, *in.Width, share); ok {
		return text + fmt.Sprintf("; that falls below it in about %.0f days", days)
	}
	return text + "; plan a refill, or fill when it is cold and the gap is wide"
}

func seal(in Situation) verdict {
	switch {
	case in.hardWheels():
		return refuse("soft sealant gives the edges no support under hard wheels")
	case in.Rocking == "strong":
		return no("it rocks: support and load transfer come first")
	case in.chance("held-by-fixture") >= likely && in.Exposure != "external":
		return no("first cut it free from the fixture")
	}
	wide := atLeast(in.Width, dryWidth)
	water := in.Exposure == "external" || in.Clean || yes(in.Wet)
	switch {
	case !water:
		return no("no water or dirt reaches it here")
	case in.kind() == "line" && in.Width == nil:
		return fits("it is exposed to water; its width has not been read")
	case !wide && !in.Clean:
		return fits("it is exposed to water but narrower than 0.3 mm: sealing is a choice, not a need")
	}
	if v := gravityResin(in); v.needed {
		return fits("it would keep water out, but the crack is at rest: thin resin fills it for good")
	}
	v := fits("it lets water and grit in, and soft sealant follows its movement")
	v.needed = yes(in.Steel) || in.Salt || in.Clean || in.moves() || wide
	return v.at(fillWhenSoft(in))
}

func fillWhenSoft(in Situation) string {
	text := "on a dry day at +10 °C or more, in the cooler half of the year when it is wide"
	if less(in.Now, leastSealDegree) {
		text = fmt.Sprintf("not now: the concrete is at %s °C; wait for +10 °C", working.Figure(*in.Now, 2))
	}
	if m, _ := MovementToCome(in); m != nil && m.Opening > 0 {
		width := m.Opening / fillers["flexible sealant"].Share
		text += fmt.Sprintf("; to take %s mm of opening at 25 %% rout it at least %s mm wide", millimetres(m.Opening), millimetres(max(width, leastRout)))
	}
	return text
}

// leastRout is the least routed width of UFGS 03931.
const leastRout = 0.006 // m

func gravityResin(in Situation) verdict {
	if v, stop := rigidRefused(in); stop {
		return v
	}
	switch {
	case less(in.Width, gravityNarrow):
		return no("at %s mm it is too narrow for resin to run in", millimetres(*in.Width))
	case more(in.Width, gravityWide):
		return no("at %s mm it is too wide for thin resin", millimetres(*in.Width))
	}
	c, plastic := in.any(likely, "plastic-shrinkage", "plastic-settlement")
	if !plastic && in.Movement == "" {
		return no("whether it moves is not known: watch it first")
	}
	v := fits("it is at rest and of a width that thin resin fills")
	if plastic {
		v = fits("%s leaves a crack that does not move by itself", c.Name)
		v.needed = in.wheels() || yes(in.Steel) && (in.Salt || in.Exposure == "external")
		v = v.at("in dry weather, once the drying has opened it as far as it will")
	}
	return v
}

// rigidRefused refuses what would bond a crack that still moves.
func rigidRefused(in Situation) (verdict, bool) {
	switch {
	case in.live():
		return refuse("it would lock a live crack: bonded, it opens a new one beside it"), true
	case in.Movement == "cyclic":
		return refuse("it opens and closes with the season: rigid resin would lock a live crack and tear beside it"), true
	case yes(in.Wet):
		return refuse("it is wet or dirty: resin would not bond"), true
	case more(in.ShrinkageLeft, shrinkageOver):
		return refuse("shrinkage of %s mm/m is still to come: bonded now it would open beside", working.Figure(1000**in.ShrinkageLeft, 2)), true
	}
	if c, ok := in.any(likely, "held-by-fixture", "locked-dowels", "ground-settlement", "ground-heave", "seasonal-movement", "alkali-silica", "sulfate"); ok {
		return refuse("%s is likely and not mended: bonded now it would open again or beside", c.Name), true
	}
	return verdict{}, false
}

func inject(in Situation) verdict {
	if v, stop := rigidRefused(in); stop {
		return v
	}
	switch {
	case less(in.Width, injectNarrow):
		return no("it is narrower than 0.05 mm")
	case more(in.Width, injectWide):
		return no("it is wider than 6 mm")
	case in.Movement == "":
		return no("whether it moves is not known: watch it first")
	}
	if Structural(in).Verdict != Yes {
		return no("nothing here needs strength across the crack")
	}
	return fits("strength across the crack is needed and it is at rest")
}
