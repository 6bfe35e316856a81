package job

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"

	"slabwright/plan"
	"slabwright/unit"
)

// What brings somebody to start a job.
const (
	Cracked = "cracked" // a slab has cracked
	ToPour  = "pour"    // we are going to pour
)

// NewAnswers are the answers a job is started from. Thickness, strength and date
// may be left open: nobody knows them yet.
type NewAnswers struct {
	What      string // Cracked or ToPour
	Name      string
	Place     string
	Zone      string
	Outline   []plan.Point // metres
	Thickness *unit.Length
	Strength  *unit.Stress // characteristic cylinder strength
	Date      *time.Time   // start of the pour
	DateOnly  bool         // the day is known, the hour is not
}

// Question is one thing asked to start a job.
type Question struct {
	Flag     string // name of the command's flag
	Prompt   string
	Example  string
	Why      string // why it is asked
	Optional bool   // may be left open: nobody knows it yet
	parse    func(*NewAnswers, string) error
}

// Answer reads what was typed into the answers. Nothing typed, or "?", leaves an
// optional one open. The error says what was found and the form expected.
func (q Question) Answer(a *NewAnswers, text string) error {
	text = strings.TrimSpace(text)
	if text == "" || text == "?" {
		if q.Optional {
			return nil
		}
		return fmt.Errorf("--%s: nothing was written; %s, such as %s", q.Flag, q.Prompt, q.Example)
	}
	if err := q.parse(a, text); err != nil {
		return fmt.Errorf("--%s: %w", q.Flag, err)
	}
	return nil
}

// Questions returns what is asked to start a job, in order; each builds on those
// before it.
func Questions() []Question {
	return []Question{
		{Flag: "what", Prompt: "What brings you here: a slab has cracked, or we are going to pour?", Example: "cracked", Why: "it decides what comes first: the walk or the pour plan", parse: parseWhat},
		{Flag: "name", Prompt: "What do you call the slab?", Example: "Yard 3, north bay", Why: "it heads the report and names the folder",
			parse: func(a *NewAnswers, s string) error { a.Name = s; return nil }},
		{Flag: "place", Prompt: "Where is it?", Example: "Mill Lane 4, Ely", Why: "it stands on page one",
			parse: func(a *NewAnswers, s string) error { a.Place = s; return nil }},
		{Flag: "zone", Prompt: "Which time zone has the site?", Example: "Europe/London", Why: "clock times are shown in the site's time, also in the night the clocks change", parse: parseZone},
		{Flag: "outline", Prompt: "How large is it: length x width, or its corners?", Example: "18 x 12 m, or 0,0 18,0 18,9 12,9 12,12 0,12 m", Why: "panels, joints and findings are placed in it", parse: parseOutline},
		{Flag: "thickness", Prompt: "How thick is it?", Example: "150 mm", Why: "heat, curl, groove depth and wheel load hang on it", Optional: true, parse: parseThickness},
		{Flag: "strength", Prompt: "Which strength was or will be ordered (cylinder)?", Example: "C25/30, 30 MPa or 4000 psi", Why: "the cut window and the chance of cracking hang on it", Optional: true, parse: parseStrength},
		{Flag: "date", Prompt: "When did or does the pour start, in the site's time?", Example: "2026-06-18 07:00", Why: "weather and the age of each crack are counted from it", Optional: true, parse: parseDate},
	}
}

func parseWhat(a *NewAnswers, text string) error {
	switch s := strings.ToLower(text); {
	case s == Cracked || strings.Contains(s, "crack"):
		a.What = Cracked
	case s == ToPour || strings.Contains(s, "pour") || strings.Contains(s, "plan"):
		a.What = ToPour
	default:
		return fmt.Errorf("%q is neither %s nor %s", text, Cracked, ToPour)
	}
	return nil
}

func parseZone(a *NewAnswers, text string) error {
	if _, err := time.LoadLocation(text); err != nil || text == "Local" {
		if near, ok := nearWord(text, zoneNames()); ok {
			return fmt.Errorf("%q is not a time zone name; did you mean %s?", text, near)
		}
		return fmt.Errorf("%q is not a time zone name such as Europe/London or America/Denver", text)
	}
	a.Zone = text
	return nil
}

// parseOutline reads "18 x 12 m", "60 ft x 40 ft" or corners "0,0 18,0 18,12 m".
func parseOutline(a *NewAnswers, text string) error {
	for _, mark := range []string{"×", " x ", "*", " by ", "x"} {
		if first, second, ok := strings.Cut(text, mark); ok {
			return parseRectangle(a, text, strings.TrimSpace(first), strings.TrimSpace(second))
		}
	}
	fields := strings.Fields(strings.ReplaceAll(text, ";", " "))
	name := ""
	if n := len(fields); n > 0 && !strings.Contains(fields[n-1], ",") {
		name, fields = fields[n-1], fields[:n-1]
	}
	u, ok := unit.Find(unit.LengthOf, name)
	if !ok {
		return fmt.Errorf("%q: the unit is missing; end the corners with one of %s", text, strings.Join(unit.Names(unit.LengthOf), ", "))
	}
	var corners []plan.Point
	for _, f := range fields {
		x, y, _ := strings.Cut(f, ",")
		px, err1 := strconv.ParseFloat(strings.Replace(x, "−", "-", 1), 64)
		py, err2 := strconv.ParseFloat(strings.Replace(y, "−", "-", 1), 64)
		if err1 != nil || err2 != nil {
			return fmt.Errorf("%q is not a corner x,y such as 18,0 or 2.5,7.25", f)
		}
		corners = append(corners, plan.Point{X: px * u.Factor, Y: py * u.Factor})
	}
	return takeOutline(a, corners)
}

func parseRectangle(a *NewAnswers, text, first, second string) error {
	width, err := unit.ParseLength(second)
	if err != nil {
		return err
	}
	length, err := unit.ParseLength(first)
	if err != nil { // "18 x 12 m": the unit stands once
		name := strings.TrimLeft(second, "0123456789.,/ ½¼¾")
		if length, err = unit.ParseLength(first + " " + name); err != nil {
			return err
		}
	}
	if length <= 0 || width <= 0 {
		return fmt.Errorf("%q has no area", text)
	}
	l, w := float64(length), float64(width)
	return takeOutline(a, []plan.Point{{}, {X: l}, {X: l, Y: w}, {Y: w}})
}

func takeOutline(a *NewAnswers, corners []plan.Point) error {
	if bad := (plan.Slab{ID: "A", Outline: corners}).Check(); len(bad) > 0 {
		return bad[0]
	}
	a.Outline = corners
	return nil
}

func parseThickness(a *NewAnswers, text string) error {
	t, err := unit.ParseLength(text)
	if err != nil {
		return err
	}
	if p, bad := ranges["slabs[].thickness_m"].check("thickness", float64(t)); bad && p.Level == Error {
		return fmt.Errorf("%s; %s. %s", p.Found, p.Want, p.Mend)
	}
	a.Thickness = &t
	return nil
}

var strengthClass = regexp.MustCompile(`^[cC]\s?(\d{1,3})\s?/\s?\d{1,3}$`)

// parseStrength reads a stress, or a class C25/30 of EN 206: cylinder over cube.
func parseStrength(a *NewAnswers, text string) error {
	s, err := unit.ParseStress(text)
	if m := strengthClass.FindStringSubmatch(text); m != nil {
		s, err = unit.ParseStress(m[1] + " MPa")
	}
	if err != nil {
		return err
	}
	if p, bad := ranges["mixes[].strength_MPa"].check("strength", float64(s)); bad && p.Level == Error {
		return fmt.Errorf("%s; %s. %s", p.Found, p.Want, p.Mend)
	}
	a.Strength = &s
	return nil
}

// parseDate reads a day, or a day and a clock time, in the site's zone.
func parseDate(a *NewAnswers, text string) error {
	zone, err := time.LoadLocation(a.Zone)
	if err != nil {
		zone = time.UTC
	}
	for _, form := range []string{time.RFC3339, "2006-01-02 15:04", "2006-01-02T15:04", "2 Jan 2006 15:04", "2 January 2006 15:04"} {
		if t, err := time.ParseInLocation(form, text, zone); err == nil {
			t = t.UTC()
			a.Date, a.DateOnly = &t, false
			return nil
		}
	}
	for _, form := range []string{"2006-01-02", "2 Jan 2006", "2 January 2006"} {
		if t, err := time.ParseInLocation(form, text, zone); err == nil {
			t = t.UTC()
			a.Date, a.DateOnly = &t, true
			return nil
		}
	}
	return fmt.Errorf("%q is not a day and time such as 2026-06-18 07:00 or 18 Jun 2026 07:00 (03/04 may be March or April)", text)
}
