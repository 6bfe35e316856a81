package causes

import (
	"fmt"
	"sort"
	"strings"

	"slabwright/source"
	"slabwright/working"
)

// SeenFacts are the numbers read at a finding, in SI units; nil is not known.
type SeenFacts struct {
	Width     *source.Fact `json:"width_m,omitempty"` // at the surface, unspalled, median of several
	Step      *source.Fact `json:"step_m,omitempty"`  // level difference across it
	Rocking   *source.Fact `json:"rocking_m,omitempty"`
	Depth     *source.Fact `json:"depth_m,omitempty"`     // of the crack or the missing surface
	Thickness *source.Fact `json:"thickness_m,omitempty"` // of the slab here
	BarDepth  *source.Fact `json:"bar_depth_m,omitempty"` // to the top of the bar or embedded item
	Cell      *source.Fact `json:"cell_m,omitempty"`
	Lift      *source.Fact `json:"lift_m,omitempty"` // edges above the middle over 2 m (+) or below (-)
	Rebound   *source.Fact `json:"rebound_ratio,omitempty"`
	Cover     *source.Fact `json:"cover_m,omitempty"`
	FirstSeen *source.Fact `json:"first_seen_s,omitempty"` // seconds after placing
}

// Depths and levels that sort what was read; NRMCA for the skin, NRC Update 44 for
// the lift, the rest our own judgement.
const (
	skinDepth    = 0.006 // m
	toBarWithin  = 0.010 // m
	fullShare    = 0.95  // of the thickness
	liftNoticed  = 0.003 // m over 2 m
	partTopShare = 0.5   // of the thickness
)

// FromSeen turns what was seen (variable to state, as in the walk's record) and
// the numbers read into observations. A state that was both seen and read is
// given once, by the number. All faults are returned together.
func FromSeen(seen map[string]source.Choice, f SeenFacts) ([]Observation, []error) {
	c := &collector{from: "measured"}
	c.measure("width", f.Width, "")
	c.measure("step", f.Step, "")
	c.measure("rocking", f.Rocking, "")
	c.measure("cell", f.Cell, "")
	c.measure("rebound", f.Rebound, "")
	c.measure("cover", f.Cover, "")
	c.measure("age", f.FirstSeen, "")
	c.take(f.depth())
	c.take(f.levels())
	c.from = "seen"
	names := make([]string, 0, len(seen))
	for name := range seen {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		choice := seen[name]
		if !c.has(name) {
			c.choose(name, &choice)
		}
	}
	return c.all, c.faults
}

func (f SeenFacts) depth() *Observation {
	if f.Depth == nil {
		return nil
	}
	d, state := f.Depth.Value, ""
	switch {
	case f.Thickness != nil && d >= fullShare*f.Thickness.Value:
		state = "full"
	case d <= skinDepth+slack:
		state = "skin"
	case f.BarDepth != nil && d >= f.BarDepth.Value-toBarWithin && d <= f.BarDepth.Value+toBarWithin:
		state = "to-bar"
	case f.Thickness != nil && d <= partTopShare*f.Thickness.Value:
		state = "part-top"
	case f.Thickness == nil:
		return nil
	}
	o := &Observation{Variable: "depth", State: state, Text: fmt.Sprintf("it goes %s deep", length(d)), From: "measured", Known: f.Depth.Known}
	if f.Thickness != nil {
		o.Text += fmt.Sprintf(" in a slab of %s", length(f.Thickness.Value))
	}
	if state == "" { // deeper than half but not through: part way or full, nobody can say
		o.State, o.Weights = "part-top", map[string]float64{"part-top": 0.5, "full": 0.5}
	}
	return o
}

func (f SeenFacts) levels() *Observation {
	if f.Lift == nil {
		return nil
	}
	o := &Observation{Variable: "levels", From: "measured", Known: f.Lift.Known}
	switch lift := f.Lift.Value; {
	case lift >= liftNoticed-slack:
		o.State, o.Text = "edges-up", "the edges stand "+length(lift)+" above the middle over 2 m"
	case lift <= -liftNoticed+slack:
		o.State, o.Text = "dome", "the edges lie "+length(-lift)+" below the middle over 2 m"
	default:
		o.State, o.Text = "flat", "edges and middle are level within "+working.Figure(1000*liftNoticed, 1)+" mm over 2 m"
	}
	return o
}

// collector gathers observations and faults.
type collector struct {
	from   string
	all    []Observation
	faults []error
}

func (c *collector) has(variable string) bool {
	for _, o := range c.all {
		if o.Variable == variable {
			return true
		}
	}
	return false
}

func (c *collector) take(o *Observation) {
	if o == nil {
		return
	}
	if why := o.fault(*FindVariable(o.Variable)); why != "" {
		c.faults = append(c.faults, fmt.Errorf("%s", why))
		return
	}
	c.all = append(c.all, *o)
}

func (c *collector) measure(variable string, f *source.Fact, workingID string) {
	if f == nil {
		return
	}
	o, err := measured(variable, f, c.from, workingID)
	if err != nil {
		c.faults = append(c.faults, err)
		return
	}
	c.take(&o)
}

// choose takes a state that somebody chose from the list.
func (c *collector) choose(variable string, choice *source.Choice) {
	if choice == nil {
		return
	}
	v := FindVariable(variable)
	if v == nil {
		c.faults = append(c.faults, fmt.Errorf("%q is not a thing to look for%s", variable, meant(variable, variableNames())))
		return
	}
	o := Observation{Variable: variable, State: choice.Value, From: c.from, Known: choice.Known, Text: choice.Note}
	if why := o.fault(*v); why != "" {
		c.faults = append(c.faults, fmt.Errorf("%s%s", why, meant(choice.Value, v.States)))
		return
	}
	if o.Text == "" {
		o.Text = Says(variable, choice.Value)
	}
	c.all = append(c.all, o)
}

func variableNames() []string {
	var names []string
	for _, v := range variables {
		names = append(names, v.Name)
	}
	return names
}

// meant guesses the word that was meant: "; did you mean X?".
func meant(word string, known []string) string {
	best, least := "", len(word)/2+1
	for _, k := range known {
		if d := distance(strings.ToLower(word), k); d < least {
			best, least = k, d
		}
	}
	if best == "" {
		return ""
	}
	return fmt.Sprintf("; did you mean %q?", best)
}

// distance counts the letters to add, drop or change to turn a into b.
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		diagonal := row[0]
		row[0] = i
		for j := 1; j <= len(b); j++ {
			change := diagonal
			if a[i-1] != b[j-1] {
				change++
			}
			diagonal = row[j]
			row[j] = min(change, row[j]+1, row[j-1]+1)
		}
	}
	return row[len(b)]
}
