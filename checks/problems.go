package checks

import (
	"fmt"
	"strconv"
	"strings"

	"slabwright/source"
	"slabwright/working"
)

// Problem is one thing in an input that cannot be worked with.
type Problem struct {
	Field string // "thickness", or "rack.force" for a load
	Found string // with its unit
	Want  string
	Mend  string
}

func (p Problem) String() string {
	s := fmt.Sprintf("%s: %s; expected %s.", p.Field, p.Found, p.Want)
	if p.Mend != "" {
		s += " " + p.Mend
	}
	return s
}

// Problems is everything wrong with an input, all at once.
type Problems []Problem

func (p Problems) Error() string {
	lines := make([]string, len(p))
	for i := range p {
		lines[i] = p[i].String()
	}
	return strings.Join(lines, "\n")
}

// Check returns everything in the input that cannot be worked with, or nil.
func (in *Input) Check() Problems {
	var bad Problems
	if in.Code.Key == "" {
		bad = append(bad, Problem{"code", "no family of codes", "EN, ACI or AS", "Take one from CodeOf."})
	}
	for _, g := range in.givens() {
		if p, ok := g.check(); !ok {
			bad = append(bad, p)
		}
	}
	bad = append(bad, in.checkShapes()...)
	seen := map[string]bool{}
	for i := range in.Loads {
		l := &in.Loads[i]
		if seen[l.ID] || l.ID == "" {
			bad = append(bad, Problem{"loads", fmt.Sprintf("load id %q", l.ID), "an id of its own for each load", "Name them L1, L2, ..."})
		}
		seen[l.ID] = true
		bad = append(bad, l.check()...)
	}
	bad = append(bad, in.checkWords()...)
	return bad
}

// check compares a number with its range.
func (g given) check() (Problem, bool) {
	v, low, high := g.fact.Value, g.number("min"), g.number("max")
	if v >= low && v <= high {
		return Problem{}, true
	}
	unit := g.text("unit")
	p := Problem{Field: g.Key, Found: strings.TrimSpace(g.label() + " " + working.Figure(v, 4) + " " + unit),
		Want: strings.TrimSpace(plain(low) + " to " + plain(high) + " " + unit), Mend: "Look it up again, or leave it out where nobody knows it."}
	for _, typed := range strings.Split(g.text("typed"), "|") {
		factor, name, ok := strings.Cut(typed, " ")
		f, err := strconv.ParseFloat(factor, 64)
		if ok && err == nil && v*f >= low && v*f <= high {
			p.Mend = fmt.Sprintf("Did you mean %s? That is %s %s.", strings.TrimSpace(plain(v*f)+" "+unit), plain(v), name)
			break
		}
	}
	return p, false
}

func plain(v float64) string { return strconv.FormatFloat(v, 'g', 4, 64) }

// checkShapes looks at numbers that must agree with each other.
func (in *Input) checkShapes() Problems {
	var bad Problems
	if in.Slab.Width.Value > in.Slab.Length.Value {
		bad = append(bad, Problem{"width", fmt.Sprintf("width %s m above the length %s m", plain(in.Slab.Width.Value), plain(in.Slab.Length.Value)), "the short side as the width", "They are probably swapped."})
	}
	if s := in.Steel; s != nil && s.Cover.Value+s.Diameter.Value > in.Slab.Thickness.Value {
		bad = append(bad, Problem{"cover", fmt.Sprintf("cover %s mm and a bar of %s mm in a slab of %s mm", plain(1000*s.Cover.Value), plain(1000*s.Diameter.Value), plain(1000*in.Slab.Thickness.Value)), "bars within the slab", "Is it the cover from the other face?"})
	}
	if d := in.Joint.Dowels; d != nil && d.Diameter.Value > in.Slab.Thickness.Value/3 {
		bad = append(bad, Problem{"dowel_diameter", fmt.Sprintf("dowel of %s mm in a slab of %s mm", plain(1000*d.Diameter.Value), plain(1000*in.Slab.Thickness.Value)), "at most a third of the thickness", "About an eighth is usual."})
	}
	if in.Joint.Transfer == Dowelled && in.Joint.Dowels == nil {
		bad = append(bad, Problem{"dowels", "a dowelled joint without its dowels", "diameter, length and spacing", "Give them, or name another transfer."})
	}
	return bad
}

// checkWords looks at the words of the input.
func (in *Input) checkWords() Problems {
	var bad Problems
	word := func(field, found string, words ...string) {
		for _, w := range words {
			if w == found {
				return
			}
		}
		bad = append(bad, Problem{field, fmt.Sprintf("%q", found), "one of: " + strings.Join(words, ", "), ""})
	}
	word("transfer", string(in.Joint.Transfer), string(NoTransfer), string(Interlock), string(Dowelled), string(Tied), string(Keyed))
	word("base", in.Ground.Base, "granular", "stabilised")
	if in.Use.Class != "" {
		word("use", in.Use.Class, UseClasses()...)
	}
	if in.Use.Exposure != "" && in.Code.Key != "" {
		word("exposure", in.Use.Exposure, ExposureClasses(in.Code.Key)...)
	}
	if in.Use.Control != "" {
		word("control", in.Use.Control, "minor", "moderate", "strong")
	}
	return bad
}

// overlap looks for posts closer together than their base plates are wide.
func (l *Load) overlap() Problems {
	var bad Problems
	if l.PlateX == nil || l.PlateY == nil {
		return nil
	}
	least := min(l.PlateX.Value, l.PlateY.Value)
	for _, d := range []struct {
		key  string
		fact *source.Fact
	}{{"pitch", l.Pitch}, {"back", l.Back}} {
		if d.fact != nil && d.fact.Value < least {
			bad = append(bad, Problem{l.ID + "." + d.key, fmt.Sprintf("posts %s m apart on plates of %s m", plain(d.fact.Value), plain(least)), "further apart than the plates are wide", "Middle to middle of the posts."})
		}
	}
	return bad
}

// check looks at one load.
func (l *Load) check() Problems {
	var bad Problems
	need := func(name string, have bool, why string) {
		if !have {
			bad = append(bad, Problem{l.ID + "." + name, l.title() + " has none", why, "Give it, or leave the load out."})
		}
	}
	switch l.Kind {
	case Wheel:
		need("force", l.Force != nil, "the load on the wheel in kN")
		need("pressure", l.Pressure != nil, "the contact pressure of the wheel in MPa")
	case Axle:
		need("force", l.Force != nil, "the load on the whole axle in kN")
		need("pressure", l.Pressure != nil, "the contact pressure of the wheels in MPa")
		need("track", l.Track != nil, "the distance of the wheels across the axle in m")
		if l.Wheels != 2 && l.Wheels != 4 {
			bad = append(bad, Problem{l.ID + ".wheels", fmt.Sprintf("%d wheels on %s", l.Wheels, l.title()), "2 or 4", "Count the tyres on one axle."})
		}
		need("pair", l.Wheels != 4 || l.Pair != nil, "the distance of the two wheels of a pair in m")
		if l.Wheels == 4 && l.Pair != nil && l.Track != nil && l.Pair.Value > l.Track.Value/2 {
			bad = append(bad, Problem{l.ID + ".pair", fmt.Sprintf("pairs %s m wide on a track of %s m", plain(l.Pair.Value), plain(l.Track.Value)), "a pair at most half the track", "Middle to middle of the two wheels on one side: about 0.33 m."})
		}
	case Post:
		need("force", l.Force != nil, "the load on the post in kN")
		need("plate", l.PlateX != nil && l.PlateY != nil, "both sides of the base plate in m")
		bad = append(bad, l.overlap()...)
	case Line:
		need("per_metre", l.PerMetre != nil, "the load in kN/m")
	case Spread:
		need("per_area", l.PerArea != nil, "the load in kN/m²")
	default:
		bad = append(bad, Problem{l.ID + ".kind", fmt.Sprintf("%q", l.Kind), "one of: wheel, axle, post, line, spread", ""})
	}
	for _, p := range l.Places {
		if p != Interior && p != AtJoint && p != FreeEdge && p != Corner {
			bad = append(bad, Problem{l.ID + ".places", fmt.Sprintf("%q", p), "one of: interior, joint, edge, corner", ""})
		}
	}
	return bad
}
