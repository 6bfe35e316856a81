package web

import (
	"context"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
	"github.com/google/go-cmp/cmp"

	"slabwright/report"
)

// at sets the hour ruler so many steps of ten minutes from its beginning.
func (s *screen) at(step string) {
	s.t.Helper()
	eval[bool](s, `(h => { h.value = `+step+`; h.dispatchEvent(new Event("input", {bubbles: true})); return true })(document.querySelector("#hour"))`)
	s.settle()
}

// text returns what the page says beside the plan.
func (s *screen) text() string {
	s.t.Helper()
	return eval[string](s, `document.querySelector("main").innerText`)
}

func (s *screen) wants(where string, texts ...string) {
	s.t.Helper()
	said := s.text()
	for _, want := range texts {
		if !strings.Contains(said, want) {
			s.t.Errorf("%s does not say %q", where, want)
		}
	}
}

// TestPanelStates moves the hour: each panel's state is told by a word, by a pattern,
// on the plan, under it, in its name for a screen reader and in the table.
func TestPanelStates(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(1440, 900)
	s.open("pour/S2")
	if n := eval[int](s, `document.querySelectorAll(".panel-word, .panel-pattern").length`); n != 0 {
		t.Errorf("%d states are drawn before an hour is set", n)
	}
	s.at("80")
	if got := eval[string](s, `document.querySelector("#hour").getAttribute("aria-valuetext")`); got != "Fri 22:20, 12\u202fh after placing; late: P6; cut now: P7, P8, P9; set: P10; 4 of 10 joints cut" {
		t.Errorf("the ruler says %q", got)
	}
	for state, want := range map[string]int{"late": 1, "cut-now": 3, "set": 1, "not-yet-placed": 3, "sawn": 5} {
		if got := eval[int](s, `document.querySelectorAll(".panel.is-`+state+`").length`); got != want {
			t.Errorf("%d panels are drawn %s, want %d", got, state, want)
		}
	}
	if words := eval[string](s, `[...document.querySelectorAll(".panel-word")].map(e => e.textContent).join(" ")`); !strings.Contains(words, "late cut now cut now cut now set") {
		t.Errorf("the words on the plan are %q", words)
	}
	if name := eval[string](s, `document.querySelector(".panel.is-late").getAttribute("aria-label")`); name != "Panel P6, late, best cut from Fri 18:31 to Fri 21:55" {
		t.Errorf("the late panel is called %q", name)
	}
	s.wants("the day", "At Fri 22:20: late: P6; cut now: P7, P8, P9; set: P10.", "State then")
	s.at("20")
	fills := eval[int](s, `new Set([".is-placed", ".is-not-yet-placed", ".is-sawn"].map(c => getComputedStyle(document.querySelector(".panel" + c + " .panel-pattern")).fill)).size`)
	if fills != 3 {
		t.Errorf("placed, not yet placed and sawn have %d different patterns", fills)
	}
	s.at("80")
	fills = eval[int](s, `new Set([".is-late", ".is-cut-now", ".is-set", ".is-not-yet-placed"].map(c => getComputedStyle(document.querySelector(".panel" + c + " .panel-pattern")).fill)).size`)
	if fills != 4 {
		t.Errorf("late, cut now, set and not yet placed have %d different patterns", fills)
	}
	s.axe("states drawn")
	s.quiet()
}

// TestPanelChosen goes from the table to the plan, and from the plan to the window.
func TestPanelChosen(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(1440, 900)
	s.open("pour/S2")
	order := eval[string](s, `[...document.querySelectorAll("caption")].find(c => c.innerText.startsWith("Panels of")).closest("table").querySelector("tbody").innerText`)
	for _, want := range []string{"P8\t1\tFri 20:27", "19:39 to 21:33", "S2-10 Sat 09:55", "more than 99 in 100"} {
		if !strings.Contains(order, want) {
			t.Errorf("the table of panels does not show %q in\n%s", want, order)
		}
	}
	eval[bool](s, `document.querySelector('main a[href="#/panel/P8"]').focus(), true`)
	s.press(kb.Enter)
	s.until(`document.querySelector("h1").innerText === "Panel P8" && document.activeElement.tagName === "H1"`)
	s.until(`document.querySelector(".panel.chosen").getAttribute("aria-label").startsWith("Panel P8")`)
	s.wants("panel P8", "With a wet saw the window opened Fri 20:27", "number 1 of 5 in the order to cut", "Panel P6 next", "edge ready")
	chart := eval[string](s, `document.querySelector(".chart > svg").getAttribute("aria-label")`)
	for _, want := range []string{"best at Fri 21:21", "cut S2-10 at Sat 09:55"} {
		if !strings.Contains(chart, want) {
			t.Errorf("the chart does not tell %q: %s", want, chart)
		}
	}
	eval[bool](s, `document.querySelector('.panel[href="#/panel/P2"]').dispatchEvent(new MouseEvent("click", {bubbles: true, cancelable: true, view: window})), true`)
	s.until(`document.querySelector("h1").innerText === "Panel P2"`)
	if ruler := eval[string](s, `document.querySelector(".ruler-head").innerText`); !strings.Contains(ruler, "Strip 1") {
		t.Errorf("the ruler stays on another pour: %q", ruler)
	}
	s.press(kb.Escape)
	s.until(`document.querySelector("h1").innerText === "Pour days"`)
	s.quiet()
}

// TestFirstDays looks at what a pour day shows of plastic stage, depth, unknowns,
// measurements and what-ifs, at both widths.
func TestFirstDays(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(1440, 900)
	s.open("pour/S2")
	s.wants("the day", "0.75: limit as planned", "While it was plastic", "bleed water gone",
		"wind at slab height, 1.0 m/s to 5.5 m/s assumed", "−96\u202fmin", "+22\u202fmin", "41\u202f% of the spread",
		"After them, the runs count as much as 38 equal ones.", "The cylinders stood in the shade")
	if first := eval[string](s, `document.querySelector(".what-ifs tbody").innerText`); !strings.HasPrefix(first, "as it was\tFri 19:40") {
		t.Errorf("the first what-if is %q", first)
	}
	if last := eval[string](s, `[...document.querySelectorAll(".what-ifs tbody")].at(-1).innerText`); !strings.Contains(last, "not run") || !strings.Contains(last, "The weather record ends") {
		t.Errorf("a what-if that could not be run says %q", last)
	}
	depth := `document.querySelector(".through [role=status]").innerText`
	if got := eval[string](s, depth); !strings.HasPrefix(got, "At Sat 00:37, 12\u202fh after placing; set an hour") {
		t.Errorf("with no hour set the depth says %q", got)
	}
	s.at("60")
	s.until(depth + `.startsWith("At Fri 18:37, 6")`) // 19:00 is nearest the profile at 6 h
	for range 4 {
		eval[bool](s, `[...document.querySelectorAll(".through button")].find(b => b.innerText === "Later hour").click(), true`)
		s.settle()
	}
	s.until(depth + `.startsWith("At Sun 12:37, 48") && [...document.querySelectorAll(".through button")].at(-1).disabled`)
	s.until(`document.querySelector("#hour").getAttribute("aria-valuetext").startsWith("Sun 12:3") && document.querySelector(".ruler [aria-pressed=true]")`)
	s.unfold()
	if rows := eval[int](s, `[...document.querySelectorAll("caption")].find(c => c.textContent.startsWith("Through the depth")).closest("table").querySelectorAll("tbody tr").length`); rows != 9 {
		t.Errorf("the table of the depth has %d rows, want its 9 depths", rows)
	}
	s.axe("first days, all open")
	s.size(390, 844)
	s.open("pour/S2")
	if cards := eval[int](s, `document.querySelectorAll("table.what-ifs").length * 100 + document.querySelectorAll(".what-if").length`); cards != 5 {
		t.Errorf("on a phone there are %d what-ifs below each other, want 5 and no table", cards)
	}
	s.open("pour/S1")
	if strings.Contains(s.text(), "What the measurements did") {
		t.Error("a day without measurements tells what they did")
	}
	s.quiet()
}

// TestSymbols shows symbols with lowered and raised letters and keeps the text as it was written.
func TestSymbols(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(1440, 900)
	s.open("working/corner-8")
	if got := eval[string](s, `document.querySelector(".formula").innerText`); !strings.Contains(got, "(x − x_0)^2") {
		t.Errorf("the formula reads %q", got)
	}
	if got := eval[string](s, `[...document.querySelector(".formula").querySelectorAll("sub, sup")].map(e => e.tagName + e.lastChild.textContent).join(" ")`); !strings.HasPrefix(got, "SUB0 SUP2") {
		t.Errorf("lowered and raised are %q", got)
	}
	if size := eval[string](s, `getComputedStyle(document.querySelector(".formula .no-size")).fontSize`); size != "0px" {
		t.Errorf("the mark before a lowered letter is shown at %s", size)
	}
	s.quiet()
}

// TestChanceWords holds that the page says a chance in the very words of the report.
func TestChanceWords(t *testing.T) {
	c := fixture(t)
	c.PageOne.Answers = nil
	var want []string
	for _, p := range []report.Chance{
		{P: 0.66, Low: 0.51, High: 0.82, About: "about 7 in 10"}, {P: 0.7, Low: 0.7, High: 0.7, About: "about 7 in 10"},
		{P: 0.93, Low: 0.7, High: 0.99, About: "about 93 in 100"}, {P: 0.97, Low: 0.92, High: 0.999, About: "about 97 in 100"},
		{P: 0.02, Low: 0.001, High: 0.06, About: "about 2 in 100"}, {P: 0.08, Low: 0.01, High: 0.24, About: "about 8 in 100"},
		{P: 0.001, Low: 0, High: 0.004, About: "less than 1 in 100"}, {P: 0.45, Low: 0.04, High: 0.96},
		{P: 0.5, Low: 0.25, High: 0.75, About: "about 5 in 10 (3 to 8 in 10)"}, {P: 1, Low: 0.95, High: 1, About: "more than 99 in 100"},
	} {
		c.PageOne.Answers = append(c.PageOne.Answers, report.Answer{Key: "structural", Question: "Is it structural?", Plain: "No.", Chance: &p})
		want = append(want, p.Words())
	}
	s := newScreen(t, Handler(func(context.Context) (*report.Content, error) { return c, nil }, Options{}))
	s.start()
	s.size(1440, 900)
	s.open("page-one")
	got := strings.Split(eval[string](s, `[...document.querySelectorAll("main .chance")].map(e => e.innerText).join("\n")`), "\n")
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("the report says (-), the page says (+):\n%s", diff)
	}
}
