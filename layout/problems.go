package layout

import (
	"fmt"
	"strings"

	"slabwright/plan"
	"slabwright/steel"
)

// Problems is everything wrong with a brief, all at once.
type Problems []plan.Problem

// Error returns one line a problem.
func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i, one := range p {
		lines[i] = one.Error()
	}
	return strings.Join(lines, "\n")
}

// Check returns everything in the brief that cannot be as written, each with its
// place and how it is likely mended; nil when it can be worked.
func (b Brief) Check() Problems {
	bare := b.Slab
	bare.Joints = nil
	bad := Problems(plan.Under("slab", bare.Check()))
	add := func(field, found, want, mend string) {
		bad = append(bad, plan.Problem{Field: field, Found: found, Want: want, Mend: mend})
	}
	if b.Slab.Thickness == nil {
		add("slab.thickness_m", "no thickness", "0.04 to 1 m", "Joints are spaced and dowels chosen by it.")
	}
	need := func(field string, v, low, high float64, mend string) {
		if v != 0 && !(v >= low && v <= high) {
			add(field, fmt.Sprintf("%g", v), fmt.Sprintf("%g to %g, or 0 to leave it open", low, high), mend)
		}
	}
	if !(b.Spacing.Panel >= leastLimit && b.Spacing.Panel <= 60) {
		add("spacing.panel", fmt.Sprintf("%g m", b.Spacing.Panel), fmt.Sprintf("%g to 60 m", leastLimit), "Take it from SpacingLimit, or give the length you want.")
	}
	bad = append(bad, b.Spacing.Facts.Check()...)
	need("strip.widest", b.Strip.Widest, 1.5, 60, "Metres: a screed of 4.5 m is 4.5.")
	need("strip.area", b.Strip.Area, 5, 20000, "Square metres placed in a day.")
	need("wheels.opening", b.Wheels.Opening, 1e-4, 0.01, "Metres: 0.9 mm is 0.0009.")
	need("wheels.movement", b.Wheels.Movement, 1e-6, 0.005, "A plain number: 500 microstrain is 0.0005.")
	need("steel.lap", b.Steel.Lap, 0.1, 1.5, "Metres: 400 mm is 0.4.")
	if _, ok := steel.FindMesh(b.Steel.Mesh); b.Steel.Mesh != "" && !ok {
		add("steel.mesh", fmt.Sprintf("%q", b.Steel.Mesh), "a mesh of the table, such as A193 or SL82", "Leave it out for no mesh.")
	}
	if _, ok := steel.FindBar(b.Steel.trimmer()); !ok {
		add("steel.trimmer", fmt.Sprintf("%q", b.Steel.Trimmer), "a bar of the table, such as 12 or No. 4", "Leave it out for 12 mm.")
	}
	if a := b.Steel.Across; a != "" && a != "cut" && a != "half" && a != "continuous" {
		add("steel.across", fmt.Sprintf("%q", a), "cut, half or continuous", "Leave it out for cut.")
	}
	for _, r := range []struct {
		field string
		value float64
	}{{"sawn", b.Rates.Sawn}, {"formed", b.Rates.Formed}, {"isolation", b.Rates.Isolation}, {"dowel", b.Rates.Dowel}, {"steel", b.Rates.Steel}, {"strip start", b.Rates.StripStart}} {
		if !(r.value >= 0 && r.value < 1e9) {
			add("rates."+r.field, fmt.Sprintf("%g", r.value), "0 or more", "Rates are in your own money; 0 leaves one out.")
		}
	}
	w := b.Weights
	for i, v := range []float64{w.Length, w.Aspect, w.Square, w.Shape, w.Even, w.Over, w.Strips, w.Kinks, w.Corner, w.Widths} {
		if !(v >= 0 && v <= 1000) {
			add("weights", fmt.Sprintf("weight %d is %g", i+1, v), "0 to 1000", "A weight of 1 is a middling one.")
		}
	}
	if len(bad) == 0 {
		return nil
	}
	return bad
}

func (s Steel) trimmer() string {
	if s.Trimmer == "" {
		return "12"
	}
	return s.Trimmer
}

func (s Steel) across() string {
	if s.Across == "" {
		return "cut"
	}
	return s.Across
}
