package report

import (
	"fmt"

	"slabwright/internal/page"
)

// refs turns the id of a working into the short number it goes by in the report,
// W1, W2 ... in the order they were worked.
type refs struct {
	c      *Content
	number map[string]int
	pageOf func(anchor string) int // nil on a screen
}

func newRefs(c *Content, pageOf func(string) int) *refs {
	r := &refs{c: c, number: map[string]int{}, pageOf: pageOf}
	for i, s := range c.Workings {
		r.number[s.ID] = i + 1
	}
	return r
}

// screen reports whether the report is made for a screen, which has room for all
// of it folded away.
func (r *refs) screen() bool { return r.pageOf == nil }

// to is the reference to one working: "W12, p. 34". An id without a sheet is named
// as it stands, so that its absence shows; [Content.Check] finds it.
func (r *refs) to(id string) page.Text {
	n, ok := r.number[id]
	if !ok {
		return page.Plain(id + " (no sheet)")
	}
	words := fmt.Sprintf("W%d", n)
	if r.pageOf != nil {
		words += fmt.Sprintf(", p.%s%d", thin, r.pageOf("w-"+id))
	}
	return page.Text{{Words: words, Link: "w-" + id}}
}

// list is references to several workings after a word, or nothing.
func (r *refs) list(before string, ids ...string) page.Text {
	var t page.Text
	seen := map[string]bool{}
	for _, id := range ids {
		if id == "" || seen[id] {
			continue
		}
		seen[id] = true
		if len(t) == 0 {
			t = append(t, page.Run{Words: before, Quiet: true})
		} else {
			t = append(t, page.Run{Words: "; "})
		}
		t = append(t, r.to(id)...)
	}
	return t
}

// few is list with no more than three named; the rest are on the sheets these lead
// to.
func (r *refs) few(before string, ids ...string) page.Text {
	const most = 3
	if len(ids) <= most {
		return r.list(before, ids...)
	}
	return append(r.list(before, ids[:most]...), page.Run{Words: fmt.Sprintf(" and %d more", len(ids)-most), Quiet: true})
}

// Check returns what is wrong with the references of the content: a working named
// anywhere that has no sheet.
func (c *Content) Check() []error {
	have := map[string]bool{}
	for _, s := range c.Workings {
		have[s.ID] = true
	}
	var bad []error
	need := func(place, id string) {
		if id != "" && !have[id] {
			bad = append(bad, fmt.Errorf("report: %s names the working %q, which has no sheet", place, id))
		}
	}
	c.eachWorking(need)
	return bad
}

// eachWorking calls visit for every working named in the content.
func (c *Content) eachWorking(visit func(place, id string)) {
	answer := func(place string, a Answer) {
		for _, id := range a.Workings {
			visit(place, id)
		}
	}
	causes := func(place string, rows []CauseRow) {
		for _, row := range rows {
			visit(place+" "+row.ID, row.Working)
			for _, a := range append(append([]ArgumentRow{}, row.For...), row.Against...) {
				visit(place+" "+row.ID, a.Working)
			}
		}
	}
	for _, a := range c.PageOne.Answers {
		answer("page one "+a.Key, a)
	}
	for _, p := range c.Pours {
		for _, id := range p.Workings {
			visit("pour "+p.ID, id)
		}
		visit("window of pour "+p.ID, p.Window.Working)
		if p.Early != nil {
			visit("early-entry window of pour "+p.ID, p.Early.Working)
		}
		for _, w := range p.Panels {
			visit("window of panel "+w.Panel, w.Wet.Working)
			visit("early-entry window of panel "+w.Panel, w.Early.Working)
		}
		if p.Measured != nil {
			visit("measurements of pour "+p.ID, p.Measured.Working)
		}
	}
	for _, f := range c.Findings {
		place := "finding " + f.Finding.ID
		for _, id := range f.Workings {
			visit(place, id)
		}
		for _, r := range f.Relations {
			visit(place, r.Working)
		}
		causes(place, f.Mechanism)
		causes(place, f.Triggers)
		causes(place, f.RuledOut)
		answer(place, f.Structural)
		answer(place, f.Worse)
		answer(place, f.Matters)
	}
	causes("the slab", c.Slab.Causes)
	visit("movement", c.Movement.Working)
}
