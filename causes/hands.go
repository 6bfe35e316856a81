package causes

import (
	"fmt"
	"strings"
	"time"
)

// Departure is something done other than planned, from the record of a pour.
type Departure struct {
	ID    string    `json:"id"`
	Party string    `json:"party"`           // who held it, as named in the job
	Roles []string  `json:"roles,omitempty"` // parts that party played; empty: Party is itself a part such as "saw crew"
	What  string    `json:"what"`
	At    time.Time `json:"at"`    // zero when not known
	Bears []string  `json:"bears"` // causes it bears on
}

// Hand is one row of who could have prevented what. The three answers stand apart
// on purpose: a departure need not have caused anything, and a cause need not
// come of a departure.
type Hand struct {
	Cause     string  `json:"cause"` // id; empty for a departure that bears on nothing found
	CauseName string  `json:"cause_name"`
	Chance    string  `json:"chance,omitempty"`
	P         float64 `json:"p"`
	Party     string  `json:"party"`     // name
	Role      string  `json:"role"`      // part in the chain
	Departure string  `json:"departure"` // departed from plan?
	Causal    string  `json:"causal"`    // did that cause this?
	Control   string  `json:"control"`   // had control?
	Action    string  `json:"action"`    // what would have prevented it
	Moment    string  `json:"moment"`
	Departed  bool    `json:"departed"`
	Bears     bool    `json:"bears"` // the departure bears on this cause
}

// handsAbove is the chance from which a cause is set beside the parties.
const handsAbove = possibleAbove

// Hands sets the parties beside the causes of a ranking that are at least
// possible: for every party of a cause's chain, in order of how often it could
// have prevented it, whether a departure is on record, whether that departure
// bears on the cause, and what was in its hands. Departures that bear on none of
// these causes follow, so that nothing on record is passed over.
func Hands(r Ranking, departures []Departure) []Hand {
	var all []Hand
	used := map[int]bool{}
	for _, w := range r.All {
		if w.P < handsAbove || w.State == RuledOut || w.Cause == Other {
			continue
		}
		all = append(all, handsOf(w, departures, used)...)
	}
	for i, d := range departures {
		if !used[i] {
			all = append(all, idle(r, d))
		}
	}
	return all
}

// handsOf returns the rows of one cause.
func handsOf(w Weight, departures []Departure, used map[int]bool) []Hand {
	c := catalogue[position[w.Cause]]
	var all []Hand
	for rank, role := range c.Who {
		h := Hand{Cause: c.ID, CauseName: c.Name, Chance: About(w.P), P: w.P, Party: PartyName(role), Role: role,
			Departure: "none on record", Causal: "no departure to weigh", Control: control(rank, c.Who)}
		h.Action, h.Moment = c.prevention(role)
		var own []int
		for i, d := range departures {
			if d.has(role) && d.bearsOn(c.ID) {
				own, used[i] = append(own, i), true
			}
		}
		if len(own) == 0 {
			all = append(all, h)
		}
		for _, i := range own {
			all = append(all, h.with(departures[i], w))
		}
	}
	return append(all, outsiders(w, c, departures, used)...)
}

// outsiders returns rows for departures that bear on a cause but lie with a party
// outside its usual chain.
func outsiders(w Weight, c Cause, departures []Departure, used map[int]bool) []Hand {
	var all []Hand
	for i, d := range departures {
		inChain := false
		for _, role := range c.Who {
			inChain = inChain || d.has(role)
		}
		if inChain || !d.bearsOn(c.ID) {
			continue
		}
		used[i] = true
		h := Hand{Cause: c.ID, CauseName: c.Name, Chance: About(w.P), P: w.P, Role: strings.Join(d.Roles, ", "),
			Control: "not usually in the chain for this cause; the record says it held this step"}
		all = append(all, h.with(d, w))
	}
	return all
}

func (h Hand) with(d Departure, w Weight) Hand {
	h.Party, h.Departed, h.Bears = PartyName(d.Party), true, true
	h.Departure = "yes: " + d.text()
	switch w.State {
	case Leading:
		h.Causal = fmt.Sprintf("it bears on the leading cause, %s (%s)", w.Name, About(w.P))
	default:
		h.Causal = fmt.Sprintf("it bears on %s, which is possible (%s) but not established", w.Name, About(w.P))
	}
	return h
}

// idle is the row of a departure that bears on none of the causes set out.
func idle(r Ranking, d Departure) Hand {
	h := Hand{Party: PartyName(d.Party), Role: strings.Join(d.Roles, ", "), Departed: true, Departure: "yes: " + d.text(),
		Causal: "no: it bears on none of the causes that fit what was seen", Control: "held this step"}
	var names []string
	for _, id := range d.Bears {
		if w := r.Weight(id); w != nil {
			names = append(names, fmt.Sprintf("%s (%s here)", w.Name, About(w.P)))
		}
	}
	if len(names) > 0 {
		h.Causal = "not here: it bears on " + strings.Join(names, ", ")
	}
	return h
}

func (d Departure) text() string {
	if d.At.IsZero() {
		return d.What
	}
	return d.What + ", " + d.At.Format("Mon 2 Jan 2006 15:04")
}

func (d Departure) has(role string) bool {
	if len(d.Roles) == 0 {
		return d.Party == role || d.Party == PartyName(role)
	}
	for _, r := range d.Roles {
		if r == role {
			return true
		}
	}
	return false
}

func (d Departure) bearsOn(cause string) bool {
	for _, id := range d.Bears {
		if c := Find(id); c != nil && c.ID == cause {
			return true
		}
	}
	return false
}

// control says how much was in a party's hands by its place in the chain, and with whom
// it was shared.
func control(rank int, who []string) string {
	var others []string
	for i, role := range who {
		if i != rank {
			others = append(others, PartyName(role))
		}
	}
	if len(others) == 0 {
		return "yes: it alone"
	}
	shared := "shared with " + list(others)
	switch rank {
	case 0:
		return "yes: the first who could have prevented it; " + shared
	case len(who) - 1:
		return "in part: the last in the chain; " + shared
	}
	return "in part: " + shared
}

// prevention returns what a party could have done against the cause.
func (c Cause) prevention(party string) (action, moment string) {
	for _, p := range c.Prevention {
		if p.Party == party {
			return p.Action, p.Moment
		}
	}
	return "watch for it", "throughout"
}
