package web

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"slabwright/report"
)

// weighing stands in for the program that weighs causes and keeps chances set by hand.
type weighing struct {
	content  *report.Content
	set      map[string]map[string]any // by cause
	stamp    int
	supposed []map[string]string
}

type weighQuestion struct {
	Finding string
	Facts   []map[string]string
	Cause   string
	Set     map[string]any
}

func newWeighing(t *testing.T) (*weighing, *screen) {
	w := &weighing{content: fixture(t), set: map[string]map[string]any{}}
	w.content.Findings[0].Prevented = []report.Prevented{{Cause: "late-cut", Name: "joint sawn too late", What: "every joint cut by Thu 19:30", From: "replays of the slab in plan", By: "the saw crew",
		Before: report.Chance{P: 0.72, Low: 0.5, High: 0.9, About: "about 7 in 10"}, After: report.Chance{P: 0.13, Low: 0.05, High: 0.3, About: "about 1 in 10"}}}
	read := func(data json.RawMessage, do func(q weighQuestion) (any, error)) (any, error) {
		var q weighQuestion
		if err := json.Unmarshal(data, &q); err != nil {
			return nil, err
		}
		return do(q)
	}
	desk := func(do func(q weighQuestion) (any, error)) Ask {
		return func(_ context.Context, data json.RawMessage) (any, error) { return read(data, do) }
	}
	fill := func(context.Context) (*report.Content, error) { return w.filled(), nil }
	s := newScreen(t, Handler(fill, Options{Fresh: func() string { return fmt.Sprint(w.stamp) },
		Asks: map[string]Ask{"facts": desk(w.facts), "shift": desk(w.shift), "override": desk(w.override)}}))
	s.start()
	return w, s
}

// filled is the made-up slab with the chances set by hand.
func (w *weighing) filled() *report.Content {
	c := *w.content
	c.Findings = append([]report.FindingSheet(nil), c.Findings...)
	for _, r := range c.Findings[0].Triggers {
		if o := w.set[r.ID]; o != nil {
			p := o["chance"].(float64)
			c.Findings[0].Overrides = append(c.Findings[0].Overrides, report.OverrideRow{Cause: r.ID, Name: r.Name, Was: r.Chance,
				Set: report.Chance{P: p, Low: p, High: p, About: fmt.Sprintf("about %.0f in 10", 10*p)}, Reason: o["reason"].(string), By: o["by"].(string)})
		}
	}
	return &c
}

func (w *weighing) facts(weighQuestion) (any, error) {
	return []map[string]any{
		{"variable": "width", "question": "the width at the surface", "unit": "mm", "now": "fine", "text": "the surface width is 0.2 mm", "from": "seen", "known": "measured",
			"states": []map[string]string{{"state": "fine", "says": "it is 0.1 to 0.3 mm wide"}, {"state": "wide", "says": "it is over 1 mm wide"}}},
		{"variable": "aggregate", "question": "the path of the crack around or through the stones", "now": "unknown",
			"states": []map[string]string{{"state": "around", "says": "the crack runs around the stones"}, {"state": "through", "says": "the crack runs through the stones"}}},
	}, nil
}

func (w *weighing) shift(q weighQuestion) (any, error) {
	w.supposed = q.Facts
	for _, f := range q.Facts {
		if f["value"] == "wet" {
			return nil, errors.New(`width cannot be "wet"; it can be a number in mm`)
		}
	}
	chance := func(p float64) report.Chance { return report.Chance{P: p, Low: p / 2, High: (1 + p) / 2} }
	return report.Shift{Finding: q.Finding, Changed: []string{"changed"}, Before: "the first leads", After: "the second leads",
		Rows: []report.ShiftRow{{Cause: "a", Name: "joint sawn too late", Before: chance(0.7), After: chance(0.2)}, {Cause: "b", Name: "inside corner", Before: chance(0.2), After: chance(0.6)}}}, nil
}

func (w *weighing) override(q weighQuestion) (any, error) {
	if q.Set != nil && strings.Contains(fmt.Sprint(q.Set["reason"]), "too much") {
		return nil, errors.New("overrides[0].chance: the chances set at F1 add up to 1.40")
	}
	before := w.set[q.Cause]
	w.set[q.Cause] = q.Set
	w.stamp++
	return map[string]any{"before": before}, nil
}

const unfoldFacts = `[...document.querySelectorAll("summary")].find(s => s.innerText.startsWith("Change a fact"))`

// TestShiftByKeys changes a fact by keyboard alone and reads all causes before and after.
func TestShiftByKeys(t *testing.T) {
	w, s := newWeighing(t)
	for _, size := range [][2]int64{{1440, 900}, {390, 844}} {
		where := fmt.Sprintf("facts supposed at %d px", size[0])
		s.size(size[0], size[1])
		s.open("finding/F1")
		eval[bool](s, unfoldFacts+`.focus(), true`)
		s.press(kb.Enter)
		s.until(`document.querySelectorAll(".weigh option").length === 3`)
		s.press(kb.Tab)
		s.press("the path") // typing in a list chooses what begins so
		s.until(`document.querySelectorAll(".weigh [type=radio]").length === 3`)
		s.press(kb.Tab)
		s.press(kb.ArrowUp)
		s.until(`document.querySelectorAll(".before-after.shift-table tbody tr").length === 2`)
		if len(w.supposed) != 1 || w.supposed[0]["variable"] != "aggregate" || w.supposed[0]["value"] != "through" {
			t.Errorf("%s: asked with %v", where, w.supposed)
		}
		s.wants(where, "about 7 in 10", "about 2 in 10", "The second leads.", "Supposed: the crack runs through the stones")
		s.unfold()
		s.axe(where)
		s.fits(where)
		eval[bool](s, `document.querySelector(".weigh").scrollIntoView(), true`)
		s.shot(strings.ReplaceAll(where, " ", "-"))
		eval[bool](s, `[...document.querySelectorAll(".shifted button")].find(b => b.innerText.startsWith("Put back")).click(), true`)
		s.until(`!document.querySelector(".shift-table")`)
	}
	s.quiet()
}

// TestShiftByNumber takes a measured value in place of a state, and says what is wrong with
// one that cannot be.
func TestShiftByNumber(t *testing.T) {
	w, s := newWeighing(t)
	s.size(390, 844)
	s.open("finding/F1")
	eval[bool](s, unfoldFacts+`.click(), true`)
	s.until(`document.querySelectorAll(".weigh option").length === 3`)
	eval[bool](s, `(e => { e.value = "width"; e.dispatchEvent(new Event("change", {bubbles: true})); return true })(document.querySelector(".weigh select"))`)
	s.until(`document.querySelector(".weigh form input")`)
	number := func(value string) {
		eval[bool](s, `(i => { i.value = "`+value+`"; i.dispatchEvent(new Event("input", {bubbles: true})); return true })(document.querySelector(".weigh form input"))`)
		s.settle()
		eval[bool](s, `document.querySelector(".weigh form button").click(), true`)
	}
	number("wet")
	s.until(`document.querySelector(".weigh [role=alert]")`)
	s.wants("a word for a width", "it can be a number in mm")
	s.forgive("422")
	number("1,5")
	s.until(`document.querySelector(".shift-table") && !document.querySelector(".weigh [role=alert]")`)
	if len(w.supposed) != 1 || w.supposed[0]["value"] != "1.5" {
		t.Errorf("asked with %v", w.supposed)
	}
	s.quiet()
}

// TestChanceByHand sets a chance with a reason, is refused without one, undoes it and takes it back.
func TestChanceByHand(t *testing.T) {
	w, s := newWeighing(t)
	cause := w.content.Findings[0].Triggers[0]
	for _, size := range [][2]int64{{1440, 900}, {390, 844}} {
		where := fmt.Sprintf("a chance by hand at %d px", size[0])
		s.size(size[0], size[1])
		s.open("finding/F1")
		form := func(tenths, reason string) {
			eval[bool](s, `[...document.querySelectorAll("summary")].filter(e => e.innerText.startsWith("Set this chance") && !e.parentElement.open).forEach(e => e.click()), true`)
			s.until(`document.querySelector("form.override")`)
			eval[bool](s, fmt.Sprintf(`(f => { const put = (n, v) => { n.value = v; n.dispatchEvent(new Event("input", {bubbles: true})) };
				put(f.querySelectorAll("input")[0], %q); put(f.querySelector("textarea"), %q); put(f.querySelectorAll("input")[1], "A. Engineer"); return true })(document.querySelector("form.override"))`, tenths, reason))
			s.settle()
			eval[bool](s, `document.querySelector("form.override button").click(), true`)
			s.settle()
		}
		form("twelve", "")
		s.wants(where, "“twelve” is not a chance out of ten", "The reason is missing")
		if len(w.set) != 0 && w.set[cause.ID] != nil {
			t.Fatal("a chance without a reason was kept")
		}
		form("4", "too much")
		s.until(`document.querySelector("form.override [role=alert]")?.innerText.includes("add up to 1.40")`)
		s.forgive("422")
		form("4", "the saw log was found")
		s.until(`document.querySelector("main").innerText.includes("Chances set by hand")`)
		s.wants(where, "set by A. Engineer", "because the saw log was found", "Saved: chance of")
		if w.set[cause.ID]["chance"] != 0.4 {
			t.Errorf("%s: kept %v", where, w.set[cause.ID])
		}
		s.unfold()
		s.axe(where)
		s.fits(where)
		eval[bool](s, `document.querySelector(".set-done").scrollIntoView(), true`)
		s.shot(strings.ReplaceAll(where, " ", "-"))
		press := func(words string) {
			eval[bool](s, fmt.Sprintf(`[...document.querySelectorAll("main button")].find(b => b.innerText.startsWith(%q)).click(), true`, words))
		}
		press("Undo")
		s.until(`!document.querySelector("main").innerText.includes("Chances set by hand")`)
		press("Undo") // and the undoing
		s.until(`document.querySelector("main").innerText.includes("Chances set by hand")`)
		press("Take back")
		s.until(`!document.querySelector("main").innerText.includes("Chances set by hand")`)
		if w.set[cause.ID] != nil {
			t.Errorf("%s: still kept %v", where, w.set[cause.ID])
		}
	}
	s.quiet()
}

// TestPrevented shows what would have prevented a finding, before and after.
func TestPrevented(t *testing.T) {
	_, s := newWeighing(t)
	s.size(390, 844)
	s.open("finding/F1")
	s.wants("what would have prevented it", "What would have prevented it", "Every joint cut by Thu 19:30", "about 7 in 10", "about 1 in 10", "the saw crew")
	s.quiet()
}
