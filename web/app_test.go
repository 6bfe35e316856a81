package web

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"slabwright/plan"
	"slabwright/report"
)

// TestEveryScreen opens each screen at desk and phone width and in each theme:
// no rule of accessibility broken, nothing wider than the window.
func TestEveryScreen(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	for _, size := range []struct {
		name          string
		width, height int64
	}{{"desk", 1440, 900}, {"phone", 390, 844}} {
		s.size(size.width, size.height)
		for _, theme := range []string{"day", "sun", "night"} {
			s.open("keys")
			eval[bool](s, `localStorage.setItem("slabwright-theme", "`+theme+`"), true`)
			s.open("keys") // a theme is read as the page is loaded
			places := screens
			if theme != "day" { // a theme changes inks alone: four screens show every ink
				places = []string{"finding/F1", "pour/S2", "panel/P8", "page-one"}
			}
			for _, place := range places {
				where := size.name + " " + theme + " " + place
				s.turn(place)
				if got := eval[string](s, "document.documentElement.dataset.theme"); got != theme {
					t.Fatalf("%s: theme is %q", where, got)
				}
				s.fits(where)
				if theme == "day" {
					s.axe(where)
				} else {
					s.contrast(where)
				}
				s.shot(strings.ReplaceAll(where, "/", "-"))
			}
		}
	}
	s.quiet()
}

// TestNarrow holds that a 320 px window and text at twice its size scroll one way only.
func TestNarrow(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(320, 640)
	s.open("keys")
	for _, place := range screens {
		s.turn(place)
		s.fits("320 px " + place)
		s.shot("narrow " + strings.ReplaceAll(place, "/", "-"))
		s.unfold()
		s.fits("320 px, all open, " + place)
	}
	s.size(390, 844)
	for _, place := range []string{"page-one", "finding/F1", "joint/S2-10", "pour/S2", "panel/P8", "working/window-strip-2", "basis"} {
		s.turn(place)
		eval[bool](s, `document.documentElement.style.fontSize = "200%", true`)
		s.settle()
		s.unfold()
		s.fits("200 % text " + place)
		s.shot("double " + strings.ReplaceAll(place, "/", "-"))
	}
	s.quiet()
}

// TestKeyboardToWorking goes by keys alone from the plan to a finding, its reasons and a working.
func TestKeyboardToWorking(t *testing.T) {
	for _, size := range []struct{ width, height int64 }{{1440, 900}, {390, 844}} {
		t.Run(fmt.Sprint(size.width), func(t *testing.T) {
			s := newScreen(t, filled(t))
			s.start()
			s.size(size.width, size.height)
			s.open("findings")
			for range 80 {
				s.press(kb.Tab)
				if strings.HasSuffix(eval[string](s, `(document.activeElement.getAttribute("href") || "") + (document.activeElement.closest("svg") ? " plan" : "")`), "finding/F3 plan") {
					break
				}
			}
			if got := eval[string](s, `document.activeElement.getAttribute("aria-label") || ""`); !strings.HasPrefix(got, "Finding F3: Short cracks") {
				t.Fatalf("80 tabs did not reach finding F3 on the plan; the focus is on %q", got)
			}
			s.press(kb.Enter)
			s.until(`location.hash === "#/finding/F3" && document.activeElement.tagName === "H1"`)
			s.unfold()
			text := eval[string](s, `document.querySelector("main").innerText`)
			for _, want := range []string{"The face dried faster than it bled", "\nFor\n", "\nAgainst\n", "\nMissing\n", "about 7 in 10", "(5 to 9 in 10)", "odds ×\u202f3", "odds ÷\u202f2", "Ruled out because: it takes years"} {
				if !strings.Contains(text, want) {
					t.Errorf("finding F3 does not show %q", want)
				}
			}
			eval[bool](s, `document.querySelectorAll("main .working").forEach(d => d.open = false), true`)
			for range 60 {
				s.press(kb.Tab)
				if eval[bool](s, `document.activeElement.matches(".evidence.for .argument > summary")`) {
					break
				}
			}
			s.press(kb.Enter)
			s.until(`document.activeElement.parentElement.open`)
			working := eval[string](s, `document.activeElement.parentElement.innerText`)
			for _, want := range []string{"sqrt((x − x_0)^2", "sqrt((14.98 − 15)^2", "0.0447\u202fm", "Source: plane geometry (our own)"} {
				if !strings.Contains(working, want) {
					t.Errorf("the working does not show %q in\n%s", want, working)
				}
			}
			s.press(kb.Escape)
			s.until(`!document.activeElement.parentElement.open`)
			s.press(kb.Escape)
			s.until(`location.hash !== "#/finding/F3" || !document.activeElement.closest("details[open]")`)
			s.do(chromedp.NavigateBack())
			s.quiet()
		})
	}
}

// TestInks holds the contrast of the drawing's own inks, which the rules do not look at.
func TestInks(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(1440, 900)
	s.open("findings")
	for theme, text := range map[string]float64{"day": 4.5, "sun": 7, "night": 4.5} {
		for ink, least := range map[string]float64{"--ink": text, "--grey": text, "--blue": text, "--vermilion-text": text, "--vermilion": 3, "--rule": 3} {
			for _, ground := range []string{"--paper", "--raised", "--slab", "--tint-0", "--tint-1", "--tint-2"} {
				got := eval[float64](s, fmt.Sprintf(`(() => { document.documentElement.dataset.theme = %q; const style = getComputedStyle(document.documentElement);
					const light = name => { const h = style.getPropertyValue(name).trim().replace(/^#(.)(.)(.)$/, "#$1$1$2$2$3$3");
						const [r, g, b] = [1, 3, 5].map(i => parseInt(h.slice(i, i + 2), 16) / 255).map(c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
						return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
					const [a, b] = [light(%q), light(%q)].sort((x, y) => y - x); return (a + 0.05) / (b + 0.05) })()`, theme, ink, ground))
				if got < least {
					t.Errorf("%s: %s on %s has a contrast of %.2f, want %.1f", theme, ink, ground, got, least)
				}
			}
		}
	}
}

// TestBack holds that the browser's own back goes through the screens.
func TestBack(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(1440, 900)
	s.open("findings")
	eval[bool](s, `location.hash = "#/finding/F1", true`)
	s.until(`document.querySelector("h1").innerText.startsWith("F1")`)
	eval[bool](s, `location.hash = "#/pour/S2", true`)
	s.until(`document.querySelector("h1").innerText === "Strip 2"`)
	eval[bool](s, `history.back(), true`)
	s.until(`document.querySelector("h1").innerText.startsWith("F1")`)
	s.press("?")
	s.until(`document.querySelector("h1").innerText === "Keys and light"`)
	s.press(kb.Escape)
	s.until(`document.querySelector("h1").innerText === "Page one"`)
	s.quiet()
}

// TestHour moves the hour by keys: the words follow, and the plan with them.
func TestHour(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(390, 844)
	s.open("pour/S2")
	if got := eval[string](s, `document.querySelector("#hour").getAttribute("aria-valuetext")`); got != "not set: the plan is drawn as looked at" {
		t.Errorf("before it is moved the hour says %q", got)
	}
	eval[bool](s, `document.querySelector("#hour").focus(), true`)
	s.press(kb.ArrowRight)
	said := `document.querySelector("#hour").getAttribute("aria-valuetext")`
	s.until(said + ` === "Fri 10:40, 0.2\u202fh after placing; not yet placed: P6, P7, P8, P9, P10; 4 of 10 joints cut"`)
	s.until(`document.querySelectorAll(".pour.waiting").length === 1`) // strip 3 is placed on Monday
	s.until(`document.querySelectorAll(".joint-sawn.waiting").length === 6 && document.querySelectorAll(".joint-sawn.made").length === 4`)
	s.press(kb.End)
	s.until(`document.querySelectorAll(".joint-sawn.waiting").length === 2`)
	s.press(kb.Home)
	s.until(said + `.includes("before placing")`)
	eval[bool](s, `[...document.querySelectorAll(".ruler-keys button")].find(b => b.innerText === "Later event").click(), true`)
	s.until(`document.querySelector(".ruler-said").innerText.includes("First truck")`)
	eval[bool](s, `[...document.querySelectorAll("button")].find(b => b.innerText === "Draw as looked at").click(), true`)
	s.until(`document.querySelectorAll(".joint-sawn.waiting").length === 0`)
	s.unfold()
	if rows := eval[int](s, `[...document.querySelectorAll("caption")].find(c => c.innerText.startsWith("Drying") || c.textContent.startsWith("Drying")).closest("table").querySelectorAll("tbody tr").length`); rows != 40 {
		t.Errorf("the drying table has %d rows, want the 40 hours of the chart", rows)
	}
	s.quiet()
}

// TestPlanByTaps moves about in the plan without dragging and turns a layer on.
func TestPlanByTaps(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(390, 844)
	s.open("findings")
	outline := `document.querySelector(".drawing > .outline").getAttribute("d")`
	press := func(name string) {
		eval[bool](s, `[...document.querySelectorAll(".plan button")].find(b => b.innerText.includes("`+name+`")).click(), true`)
		s.settle()
	}
	whole := eval[string](s, outline)
	press("Closer")
	near := eval[string](s, outline)
	if near == whole {
		t.Error("Closer does not change the plan")
	}
	press("Move")
	press("Left")
	if eval[string](s, outline) == near {
		t.Error("Left does not change the plan")
	}
	press("Whole")
	if eval[string](s, outline) != whole {
		t.Error("Whole does not show the plan as at first")
	}
	press("Layers")
	if eval[bool](s, `!!document.querySelector(".drawing > .bars")`) {
		t.Error("bars are drawn before they are asked for")
	}
	eval[bool](s, `[...document.querySelectorAll(".plan .tick")].find(l => l.innerText.includes("Bars")).click(), true`)
	s.until(`document.querySelector(".drawing > .bars")`)
	s.axe("layers open")
	press("Key")
	s.until(`document.querySelector(".plan-sheet").innerText.includes("Sawn joint")`)
	s.axe("key open")
	press("Key")
	s.do(chromedp.TapXY(eval[float64](s, `document.querySelector('.finding[href$="F12"] .badge').getBoundingClientRect().x + 10`), eval[float64](s, `document.querySelector('.finding[href$="F12"] .badge').getBoundingClientRect().y + 10`)))
	s.until(`document.querySelector("h1").innerText.startsWith("F12")`)
	s.quiet()
}

// TestPlanByHand drags the plan, turns the wheel, pinches, and does not take a drag for a choice.
func TestPlanByHand(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(1440, 900)
	s.open("findings")
	outline := `document.querySelector(".drawing > .outline").getAttribute("d")`
	whole := eval[string](s, outline)
	x := eval[float64](s, `document.querySelector('.finding[href$="F1"] .badge').getBoundingClientRect().x + 10`)
	y := eval[float64](s, `document.querySelector('.finding[href$="F1"] .badge').getBoundingClientRect().y + 10`)
	s.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, x, y, chromedp.ButtonLeft, chromedp.ClickCount(1)),
		chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, x+60, y+20, chromedp.ButtonLeft),
		chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, x+120, y+40, chromedp.ButtonLeft),
		chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, x+120, y+40, chromedp.ButtonLeft, chromedp.ClickCount(1)))
	s.settle()
	dragged := eval[string](s, outline)
	if dragged == whole {
		t.Error("a drag does not move the plan")
	}
	if hash := eval[string](s, `location.hash`); hash != "#/findings" {
		t.Errorf("a drag that began on a finding chose it: %s", hash)
	}
	eval[bool](s, `document.querySelector(".plan-frame").dispatchEvent(new WheelEvent("wheel", {deltaY: -300, clientX: 400, clientY: 400, bubbles: true, cancelable: true})), true`)
	s.settle()
	wheeled := eval[string](s, outline)
	if wheeled == dragged {
		t.Error("the wheel does not bring the plan closer")
	}
	eval[bool](s, `(() => { const f = document.querySelector(".plan-frame"), box = f.getBoundingClientRect();
		const p = (type, id, x) => f.dispatchEvent(new PointerEvent(type, {pointerId: id, clientX: box.x + x, clientY: box.y + 200, bubbles: true, isPrimary: id === 1}));
		f.setPointerCapture = () => {};
		p("pointerdown", 1, 300); p("pointerdown", 2, 400); p("pointermove", 2, 420); p("pointermove", 2, 500); p("pointerup", 1, 300); p("pointerup", 2, 500); return true })()`)
	s.settle()
	if eval[string](s, outline) == wheeled {
		t.Error("two fingers do not bring the plan closer")
	}
	eval[bool](s, `document.querySelector(".drawing").focus(), true`)
	s.press("0")
	s.settle()
	if eval[string](s, outline) != whole {
		t.Error("0 does not show the plan whole")
	}
	s.press(kb.ArrowLeft)
	s.settle()
	if eval[string](s, outline) == whole {
		t.Error("an arrow key does not move the plan")
	}
	s.quiet()
}

// TestTargets holds that whatever is pressed is 48 px high, or inside a line of text,
// and 72 px in the theme for the sun.
func TestTargets(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(390, 844)
	s.open("keys")
	small := func(place string, least float64) {
		s.turn(place)
		low := eval[string](s, fmt.Sprintf(`[...document.querySelectorAll("button, summary, nav a, .rows a, label.tick, .onward, .button, #hour")].filter(e => e.getClientRects().length && e.getBoundingClientRect().height < %v - 0.5)
			.map(e => e.tagName + " " + e.innerText + " " + e.getBoundingClientRect().height).join("; ")`, least))
		if low != "" {
			t.Errorf("%s: below %v px: %s", place, least, low)
		}
	}
	for _, place := range screens {
		small(place, 48)
	}
	eval[bool](s, `localStorage.setItem("slabwright-theme", "sun"), true`)
	s.open("keys")
	for _, place := range []string{"finding/F1", "pour/S2", "panel/P8", "keys"} {
		small(place, 72)
	}
}

// TestStates looks at the page while it waits, when something is wrong, and with nothing in it.
func TestStates(t *testing.T) {
	c := fixture(t)
	go1 := make(chan struct{})
	progress := &Progress{}
	s := newScreen(t, Handler(func(context.Context) (*report.Content, error) {
		progress.Say("Replaying strip 1", 0)
		progress.Say("Replaying strip 2", 0.4)
		<-go1
		return c, nil
	}, Options{Job: "2025-117 Apron", Progress: progress}))
	s.start()
	s.size(390, 844)
	s.do(chromedp.Navigate(s.address))
	s.until(`document.body.innerText.includes("Now: Replaying strip 2")`)
	s.axe("being worked out")
	s.shot("state working")
	close(go1)
	s.until(`document.querySelector(".plan")`)

	fail := true
	s2 := newScreen(t, Handler(func(context.Context) (*report.Content, error) {
		if fail {
			return nil, errors.Join(errors.New("slabs[0].thickness_m is 15, outside 0.05 to 1.5 m. Did you mean 0.15?"), errors.New("pours[1].start is missing."))
		}
		return c, nil
	}, Options{}))
	s2.start()
	s2.size(390, 844)
	s2.do(chromedp.Navigate(s2.address))
	s2.until(`document.querySelectorAll(".problems li").length === 2 && document.activeElement.innerText === "There is a problem"`)
	if !eval[bool](s2, `document.title.startsWith("Error: ")`) {
		t.Error("the title does not begin with Error:")
	}
	s2.axe("wrong")
	s2.shot("state wrong")
	fail = false
	eval[bool](s2, `document.querySelector("button").click(), true`)
	s2.until(`document.querySelector(".plan")`)

	s3 := newScreen(t, Handler(func(context.Context) (*report.Content, error) { return &report.Content{}, nil }, Options{}))
	s3.start()
	s3.size(1440, 900)
	s3.do(chromedp.Navigate(s3.address))
	s3.until(`document.querySelectorAll(".doors section").length === 3`)
	s3.axe("empty")
	s3.shot("state empty")
	s3.quiet()
}

// TestSparse shows a slab of which only the outline is known: every screen still stands.
func TestSparse(t *testing.T) {
	c := &report.Content{}
	c.Plan.Slab.Outline = []plan.Point{{X: 0, Y: 0}, {X: 6, Y: 0}, {X: 6, Y: 4}, {X: 0, Y: 4}}
	c.Plan.Panels = []plan.Panel{{ID: "P1", Ring: c.Plan.Slab.Outline}}
	c.Pours = []report.PourDay{{ID: "S2", Name: "Strip 2", Start: time.Date(2025, 7, 18, 8, 30, 0, 0, time.UTC)}}
	s := newScreen(t, Handler(func(context.Context) (*report.Content, error) { return c, nil }, Options{}))
	s.start()
	s.size(1440, 900)
	s.open("finding/%E0%A4%A")
	for _, place := range append(screens, "panel/P1", "nowhere", "finding/%E0%A4%A") {
		s.turn(place)
		s.fits("sparse " + place)
		if strings.Contains("pours page-one basis finding/F1", place) {
			s.axe("sparse " + place)
		}
	}
	s.quiet()
}

// TestHostileText puts markup in every text of the content: it is shown, never run.
func TestHostileText(t *testing.T) {
	data, err := json.Marshal(fixture(t))
	if err != nil {
		t.Fatal(err)
	}
	var tree any
	if err := json.Unmarshal(data, &tree); err != nil {
		t.Fatal(err)
	}
	const hostile = `<img src=x onerror="window.ran=1"><script>window.ran=1</script>`
	data, err = json.Marshal(spoil(tree, hostile))
	if err != nil {
		t.Fatal(err)
	}
	var c report.Content
	if err := json.Unmarshal(data, &c); err != nil {
		t.Fatal(err)
	}
	c.Head.Zone = hostile
	s := newScreen(t, Handler(func(context.Context) (*report.Content, error) { return &c, nil }, Options{Job: hostile}))
	s.start()
	s.size(390, 844)
	s.open("keys")
	for _, place := range screens {
		s.turn(place)
		if eval[bool](s, `!!window.ran || document.querySelectorAll("#app img, #app script").length > 0`) {
			t.Errorf("%s: markup in a text was taken as markup", place)
		}
		s.fits("hostile " + place)
	}
	s.open("findings")
	s.until(`document.querySelector("main").innerText.includes("<img src=x")`)
	s.quiet()
}

// spoil puts the hostile text after every text that is no key, time or state.
func spoil(v any, hostile string) any {
	switch v := v.(type) {
	case map[string]any:
		for k, item := range v {
			switch k {
			case "id", "kind", "state", "verdict", "joint", "working", "workings", "zone", "known":
			default:
				v[k] = spoil(item, hostile)
			}
		}
	case []any:
		for i := range v {
			v[i] = spoil(v[i], hostile)
		}
	case string:
		if _, err := time.Parse(time.RFC3339, v); err != nil {
			return v + hostile
		}
	}
	return v
}

// TestManyFindings counts ten thousand findings by panel until one comes closer.
func TestManyFindings(t *testing.T) {
	c := fixture(t)
	base := c.Findings
	c.Findings = nil
	for i := range 10000 {
		f := report.FindingSheet{Finding: base[i%len(base)].Finding, Title: base[i%len(base)].Title, Place: base[i%len(base)].Place}
		f.Finding.ID = fmt.Sprintf("F%d", i+1)
		f.At = plan.Point{X: 0.3 + float64(i%240)*0.1, Y: 0.3 + float64(i/240)*0.24}
		c.Findings = append(c.Findings, f)
	}
	s := newScreen(t, Handler(func(context.Context) (*report.Content, error) { return c, nil }, Options{}))
	s.start()
	s.size(1440, 900)
	s.open("page-one")
	if marks := eval[int](s, `document.querySelectorAll(".drawing .finding").length`); marks != 10 {
		t.Errorf("%d marks on the plan, want one for each of the 10 panels with findings", marks)
	}
	s.shot("many")
}
