package poursheet

import (
	"errors"
	"fmt"
	"sort"
	"strings"
	"time"

	"slabwright/internal/page"
)

// Decision is what is done with a pour.
type Decision string

// Decisions, in the order of how much they ask.
const (
	Go       Decision = "go"
	Measures Decision = "go with measures"
	Hold     Decision = "hold"
)

// GoSheet is the page of the evening before: go, go with measures or hold, why, at
// what that changes, and who carries the decision. The forecast stands on it as it
// was seen.
type GoSheet struct {
	Title    Title
	Paper    page.Paper // zero: A4
	Pour     string
	Start    *time.Time // first concrete
	Limits   []Limit
	Triggers []Trigger
	Ready    []Ready
	Decides  string // who; empty: UNASSIGNED
	Bears    string // who carries the risk of the weather, as agreed; empty: NOT AGREED
	Weather  string // sentence: whose record or forecast, how far away
	Hours    []ForecastHour
}

// Limit is one threshold and what is expected against it.
type Limit struct {
	What     string   // "Drying of the fresh surface"
	Unit     string   // "kg/m²·h"
	Expected *float64 // nil: not known
	Least    *float64 // passed when expected lies below
	Most     *float64 // passed when expected lies above
	Decimals int
	When     string   // "Fri 12:00, while finishing"
	Then     Decision // what passing it asks for: Measures or Hold
	Measure  string   // what is done then
	Source   string   // of the threshold
}

// Passed reports whether the threshold is passed; what is not known is not passed,
// and is said.
func (l Limit) Passed() bool {
	return l.Expected != nil && (l.Most != nil && *l.Expected > *l.Most || l.Least != nil && *l.Expected < *l.Least)
}

// Trigger is a change on the day at which somebody is rung.
type Trigger struct{ When, Ring string }

// Ready is one thing or person that has to be there. Here is nil while nobody said.
type Ready struct {
	What, Who string
	Here      *bool
}

// ForecastHour is one hour of the forecast as seen.
type ForecastHour struct {
	At                                 time.Time
	Air, Humidity, Wind, Concrete, Dry float64 // °C, 0-1, m/s, °C, kg/m²·h
	Doing                              string  // placing, finishing ...
}

// box is a square to tick; wide is room between words that is no place to break.
const (
	box  = "[\u00a0\u00a0]"
	wide = "\u00a0\u00a0\u00a0 "
)

// Decide returns what the thresholds ask for together: the most that any of those
// passed does.
func (g GoSheet) Decide() Decision {
	d := Go
	for _, l := range g.Limits {
		switch {
		case !l.Passed():
		case l.Then == Hold:
			return Hold
		default:
			d = Measures
		}
	}
	for _, r := range g.Ready {
		if d == Go && r.Here != nil && !*r.Here {
			d = Measures
		}
	}
	return d
}

// mostReasons is how many reasons stand under the decision.
const mostReasons = 3

// Reasons returns why, the weightiest first: thresholds passed, what is not there, what
// is not known, then the thresholds kept that lie nearest.
func (g GoSheet) Reasons() []string {
	var passed, unknown, kept []string
	for _, l := range g.near() {
		switch {
		case l.Passed():
			passed = append(passed, l.words()+", passed")
		case l.Expected == nil:
			unknown = append(unknown, l.What+" is not known")
		default:
			kept = append(kept, l.words()+", kept")
		}
	}
	for _, r := range g.Ready {
		if r.Here != nil && !*r.Here {
			passed = append(passed, r.What+" is not there")
		}
	}
	all := append(append(passed, unknown...), kept...)
	return all[:min(len(all), max(mostReasons, len(passed)))]
}

// near returns the thresholds by how near what is expected lies to them.
func (g GoSheet) near() []Limit {
	all := append([]Limit(nil), g.Limits...)
	sort.SliceStable(all, func(i, k int) bool { return all[i].used() > all[k].used() })
	return all
}

// used is the share of a threshold that is used up, above 1 where it is passed.
func (l Limit) used() float64 {
	switch {
	case l.Expected == nil:
		return 0
	case l.Most != nil && *l.Most > 0:
		return *l.Expected / *l.Most
	case l.Least != nil && *l.Expected > 0:
		return *l.Least / *l.Expected
	}
	return 1
}

// words says what is expected against the threshold.
func (l Limit) words() string {
	limit := ""
	switch {
	case l.Least != nil:
		limit = "not below " + fixed(*l.Least, l.Decimals)
	case l.Most != nil:
		limit = "not above " + fixed(*l.Most, l.Decimals)
	}
	return fmt.Sprintf("%s: %s against %s", l.What, fixed(*l.Expected, l.Decimals), with(limit, l.Unit))
}

// PDF returns the sheet on one page where the facts allow.
func (g GoSheet) PDF() ([]byte, error) {
	if g.Start == nil {
		return nil, errors.New("a go or hold sheet needs the start of the pour")
	}
	return page.Build(sheetPaper(g.Paper), g.Title.head("go or hold"), func(doc *page.Document) {
		k := g.Title.clock()
		crewHeading(doc, "GO OR HOLD · "+g.Pour, "First concrete "+k.full(*g.Start))
		g.decision(doc)
		g.limits(doc)
		g.triggers(doc)
		g.ready(doc)
		g.forecast(doc)
	})
}

// decision sets what the thresholds ask for and the lines to be signed.
func (g GoSheet) decision(doc *page.Document) {
	d := g.Decide()
	words := map[Decision]string{Go: "GO", Measures: "GO WITH MEASURES", Hold: "HOLD"}[d]
	boxed(doc, page.Join(page.Plain("The thresholds below ask for: "), page.Bold(words)), crewLarge)
	line(doc, page.Join(page.Bold("Decides: "), page.Plain(name(g.Decides)), page.Bold(wide+"Carries the risk of the weather: "), page.Plain(or(g.Bears, "NOT AGREED"))), 11, 1)
	line(doc, page.Plain("Decided:"+wide+box+" go"+wide+box+" go with measures"+wide+box+" hold"+wide+"at ________"+wide+"signed ____________________"), 11, 2)
	line(doc, page.Join(page.Bold("Because "), page.Plain(strings.Join(g.Reasons(), "; ")+".")), 11, 0.6)
	for _, l := range g.Limits {
		if l.Passed() && l.Measure != "" {
			line(doc, page.Join(page.Bold("Measure: "), page.Plain(l.Measure)), 11, 0.6)
		}
	}
	doc.Skip(1.5)
}

func (g GoSheet) limits(doc *page.Document) {
	var rows [][]page.Text
	for _, l := range g.Limits {
		limit, expected, state := "", "not known", "not known"
		switch {
		case l.Least != nil:
			limit = "not below " + fixed(*l.Least, l.Decimals)
		case l.Most != nil:
			limit = "not above " + fixed(*l.Most, l.Decimals)
		}
		if l.Expected != nil {
			expected, state = fixed(*l.Expected, l.Decimals), "kept"
		}
		if l.Passed() {
			state = "PASSED"
			if l.Then == Hold {
				state = "PASSED: hold"
			}
		}
		rows = append(rows, []page.Text{page.Plain(l.What), page.Plain(with(limit, l.Unit)), page.Bold(expected), page.Plain(l.When), page.Bold(state), page.Plain(l.Source)})
	}
	doc.Table(page.Table{Whole: true, Size: 9, Rows: rows, Columns: []page.Column{{Head: "Threshold", Share: 33}, {Head: "Limit", Share: 27}, {Head: "Expected", Share: 13, Align: page.AlignRight},
		{Head: "When", Share: 24}, {Head: "State", Share: 19}, {Head: "From", Share: 24}}})
}

func (g GoSheet) triggers(doc *page.Document) {
	for _, t := range g.Triggers {
		line(doc, page.Join(page.Bold("Ring "+name(t.Ring)+" if "), page.Plain(t.When)), 11, 0.4)
	}
	doc.Skip(1.5)
}

func (g GoSheet) ready(doc *page.Document) {
	if len(g.Ready) == 0 {
		return
	}
	words := page.Bold("Ready: ")
	for i, r := range g.Ready {
		state := box
		if r.Here != nil {
			state = map[bool]string{true: "yes", false: "NO"}[*r.Here]
		}
		between := wide
		if i == 0 {
			between = ""
		}
		who := ""
		if r.Who != "" {
			who = " (" + r.Who + ")"
		}
		words = page.Join(words, page.Plain(between), page.Bold(state), page.Plain("\u00a0"+strings.ReplaceAll(r.What+who, " ", "\u00a0")))
	}
	line(doc, words, 10, 2.5)
}

// Room on paper of the head of the hours and of one hour, mm.
const (
	hoursHead = 12.0
	hourRow   = 4.25
)

// thinned leaves out every second of the later half of the hours until no more than
// so many are left, so that the sheet stays one page; the first hours stay whole.
func thinned(hours []ForecastHour, most int) []ForecastHour {
	for len(hours) > max(most, 4) {
		half := len(hours) / 2
		kept := append([]ForecastHour(nil), hours[:half]...)
		for i := half; i < len(hours); i += 2 {
			kept = append(kept, hours[i])
		}
		hours = kept
	}
	return hours
}

// forecast sets the hours as they were seen, so that the decision can be judged by
// what was known then.
func (g GoSheet) forecast(doc *page.Document) {
	words := "Forecast as seen. "
	if g.Title.DataHash != "" {
		words = "Forecast as seen, data " + g.Title.DataHash[:min(12, len(g.Title.DataHash))] + ". "
	}
	line(doc, page.Join(page.Bold(words), page.Plain(g.Weather)), 9, 0.8)
	k := g.Title.clock()
	var rows [][]page.Text
	for _, h := range thinned(g.Hours, int((doc.Room()-hoursHead)/hourRow)) {
		rows = append(rows, cells(k.weekday(h.At), fixed(h.Air, 0), fixed(100*h.Humidity, 0), fixed(h.Wind, 1), fixed(h.Concrete, 0), fixed(h.Dry, 2), h.Doing))
	}
	if len(rows) == 0 {
		line(doc, page.Plain("No hours are known: give them before the decision."), 9, 1)
		return
	}
	right := page.AlignRight
	doc.Table(page.Table{Whole: true, Tight: true, Size: 8.5, Rows: rows, Columns: []page.Column{{Head: "Hour", Share: 18}, {Head: "Air, °C", Share: 12, Align: right}, {Head: "Humidity, %", Share: 14, Align: right},
		{Head: "Wind, m/s", Share: 13, Align: right}, {Head: "Concrete, °C", Share: 15, Align: right}, {Head: "Drying, kg/m²·h", Share: 18, Align: right}, {Head: "What goes on then", Share: 40}}})
}
