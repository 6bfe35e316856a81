package remedies

import (
	"fmt"
	"strings"

	"slabwright/causes"
	"slabwright/working"
)

// Verdicts of a question.
const (
	Yes        = "yes"
	No         = "no"
	Perhaps    = "perhaps"
	CannotTell = "cannot tell yet"
)

// Answer is the answer to one of the owner's questions.
type Answer struct {
	Question string   `json:"question"`
	Meaning  string   `json:"meaning"` // what the word in the question means here
	Verdict  string   `json:"verdict"`
	Text     string   `json:"text"`
	Because  []string `json:"because,omitempty"`
	Missing  []string `json:"missing,omitempty"`
}

// StructuralMeans is what "structural" means in every answer.
const StructuralMeans = "Structural means here: the slab no longer brings its loads safely to the ground, or it is part of what holds the building up and has lost some of that."

// Structural answers whether the finding is structural in the sense of
// [StructuralMeans]. A slab on ground is carried by the ground below it, so a crack
// by itself takes little from it; moving, stepping, breaking up and overload do.
func Structural(in Situation) Answer {
	a := Answer{Question: "Is it structural?", Meaning: StructuralMeans}
	add := func(is bool, why string, args ...any) {
		if is {
			a.Because = append(a.Because, say(why, args))
		}
	}
	add(in.Pattern == "shatter", "the panel is in four or more pieces")
	add(in.Rocking == "strong", "it rocks under wheels, so the ground does not carry it")
	add(more(in.LoadRatio, 1), "the load is more than the slab carries")
	add(more(in.Step, bigStep), "the sides stand more than 10 mm apart in level")
	add(in.Carries && in.Movement == "growing", "the slab is part of what holds the building up, and the finding grows")
	if c, ok := in.any(0.5, "overload", "corner-break", "ground-settlement", "ground-heave"); ok {
		add(true, "the likeliest cause is %s (%s)", c.Name, causes.About(c.P))
	}
	if len(a.Because) > 0 {
		a.Verdict, a.Text = Yes, "Yes: "+strings.Join(a.Because, "; ")+"."
		return a
	}
	if in.Rocking == "" && in.Hollow == "" && in.wheels() {
		a.Missing = append(a.Missing, "sound it and look at it under a wheel")
	}
	if in.LoadRatio == nil && in.wheels() {
		a.Missing = append(a.Missing, "the load against what the slab carries")
	}
	if in.Carries && in.Movement == "" {
		a.Missing = append(a.Missing, "readings of its movement, since the slab is part of what holds the building up")
	}
	if c, ok := in.any(likely, "overload", "corner-break", "ground-settlement", "ground-heave", "pumping", "bar-corrosion"); ok {
		a.Missing = append(a.Missing, "what would settle whether it is "+c.Name+": "+c.Confirm)
	}
	if len(a.Missing) > 0 {
		a.Verdict, a.Text = CannotTell, "Cannot tell yet: missing is "+strings.Join(a.Missing, "; ")+"."
		return a
	}
	a.Verdict = No
	a.Text = "No: nothing seen shows that the slab has stopped bringing its loads to the ground."
	return a
}

// WorseMeans is what "worse" means in every answer.
const WorseMeans = "Worse means here: wider by more than 0.1 mm beyond what the season does, longer, stepped, or breaking at the edges."

// Worse answers whether the finding will get worse, from readings, from the
// shortening still to come and from what the likely causes do.
func Worse(in Situation) Answer {
	a := Answer{Question: "Will it get worse?", Meaning: WorseMeans}
	grows, rests := worseSigns(in)
	to, missing := MovementToCome(in)
	if to != nil {
		if in.ShrinkageLeft != nil && *in.ShrinkageLeft > shrinkageOver {
			grows = append(grows, fmt.Sprintf("the slab has %s mm/m left to shrink; %s", working.Figure(1000**in.ShrinkageLeft, 2), lower(to.Text)))
		} else {
			rests = append(rests, "its shrinkage is nearly over; the season remains: "+lower(to.Text))
		}
	}
	switch {
	case len(grows) > 0:
		a.Verdict, a.Because = Yes, grows
		if in.Movement == "stable" {
			a.Verdict = Perhaps
			a.Because = append(a.Because, "but readings so far show no growth")
		}
	case len(rests) > 0:
		a.Verdict, a.Because = No, rests
	default:
		a.Verdict, a.Missing = CannotTell, append([]string{"readings over 12 months with the temperature"}, missing...)
		a.Text = "Cannot tell yet: missing is " + strings.Join(a.Missing, "; ") + "."
		return a
	}
	a.Text = upper(a.Verdict) + ": " + strings.Join(a.Because, "; ") + "."
	return a
}

// worseSigns lists what speaks for and against growth.
func worseSigns(in Situation) (grows, rests []string) {
	switch in.Movement {
	case "growing":
		grows = append(grows, "readings show that it grows")
	case "stable":
		rests = append(rests, "readings show that it rests")
	case "cyclic":
		rests = append(rests, "readings show that it follows the temperature and comes back")
	}
	if in.Rocking == "slight" || in.Rocking == "strong" {
		grows = append(grows, "each wheel moves it")
	}
	if c, ok := in.any(0.5, "ground-settlement", "ground-heave", "overload", "corner-break", "bar-corrosion", "alkali-silica", "sulfate",
		"frost-scaling", "frost-aggregate", "pumping", "joint-edge-wear", "day-joint-breakdown", "curling-under-load"); ok {
		grows = append(grows, c.Name+" goes on until its cause is mended")
	}
	if c, ok := in.any(0.5, "crazing", "plastic-shrinkage", "plastic-settlement", "discolouration", "popouts", "ravelled-cut"); ok {
		rests = append(rests, c.Name+" is over once it has happened")
	}
	return grows, rests
}

// MattersMeans is what "matter" means in every answer.
const MattersMeans = "It matters here when it endangers people, the use of the floor, or the life of the slab; otherwise it is a matter of looks."

// Matters answers whether the finding matters for how the slab is used.
func Matters(in Situation) Answer {
	a := Answer{Question: "Does it matter?", Meaning: MattersMeans}
	add := func(is bool, why string, args ...any) {
		if is {
			a.Because = append(a.Because, say(why, args))
		}
	}
	add(Structural(in).Verdict == Yes, "it is structural in the sense given above")
	add(atLeast(in.Step, tripStep) && in.Traffic != "none", "a step of 6 mm or more trips people and hits wheels")
	add(in.hardWheels() && (more(in.Width, wheelWidth) || in.Pattern == "edge-chips"), "hard wheels break its edges")
	add(in.Rocking == "slight" || in.Rocking == "strong", "it moves under wheels")
	add(atLeast(in.Width, dryWidth) && (in.Salt || yes(in.Steel) && in.Exposure == "external"), "water or salt gets in and can reach steel or freeze")
	add(in.Clean, "the floor must be kept clean or holds chemicals")
	if c, ok := in.any(0.5, "bar-corrosion", "alkali-silica", "sulfate", "frost-scaling", "frost-aggregate", "delamination", "weak-surface", "pumping"); ok {
		add(true, "%s shortens the life of the slab", c.Name)
	}
	if len(a.Because) > 0 {
		a.Verdict, a.Text = Yes, "Yes: "+strings.Join(a.Because, "; ")+"."
		return a
	}
	if in.kind() == "line" && in.Width == nil {
		a.Verdict, a.Missing = CannotTell, []string{"its width"}
		a.Text = "Cannot tell yet: its width has not been read."
		return a
	}
	if in.Exposure == "external" && in.kind() == "line" && atLeast(in.Width, dryWidth) {
		a.Verdict = Perhaps
		a.Text = "Not yet: outdoors, water and grit get into a crack of 0.3 mm and more and wear its edges over the years."
		return a
	}
	a.Verdict = No
	a.Text = "No: it is a matter of looks as the slab is used now."
	return a
}

func lower(s string) string {
	if s == "" {
		return s
	}
	return strings.TrimSuffix(strings.ToLower(s[:1])+s[1:], ".")
}

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
