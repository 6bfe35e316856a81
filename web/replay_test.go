package web

import (
	"context"
	"io/fs"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"

	"slabwright/job"
	"slabwright/report"
)

// replayed is the worked example, diagnosed with few samples.
func replayed(t *testing.T) *report.Content {
	t.Helper()
	data, err := fs.ReadFile(job.DemoFS(), job.FileName)
	if err != nil {
		t.Fatal(err)
	}
	j, err := job.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	j.Basis.Members = 4
	c, err := job.Diagnose(t.Context(), j, job.DemoFS(), nil)
	if err != nil {
		t.Fatal(err)
	}
	if c.Replay == nil || len(c.Replay.Events) == 0 || len(c.Replay.Field.Frames) < 10 {
		t.Fatal("the worked example has no replay with events and fields")
	}
	return c
}

// inked counts the pixels of a canvas that carry something.
const inked = `(n => { const d = n.getContext("2d").getImageData(0, 0, n.width, n.height).data; let k = 0; for (let i = 3; i < d.length; i += 4) if (d[i]) k++; return k })`

// The replay on the plan: its field, its slider by keyboard, its bent shape, at desk and
// phone width and in each theme.
func TestReplay(t *testing.T) {
	c := replayed(t)
	s := newScreen(t, Handler(func(context.Context) (*report.Content, error) { return c, nil }, Options{}))
	s.start()
	for _, size := range []struct {
		name          string
		width, height int64
	}{{"desk", 1440, 900}, {"phone", 390, 844}, {"narrow", 320, 700}} {
		s.size(size.width, size.height)
		s.open("replay")
		s.fits(size.name + " replay")
		s.axe(size.name + " replay")
		if n := eval[int](s, inked+`(document.querySelector("canvas.field"))`); n < 5000 {
			t.Errorf("%s: the field has %d pixels", size.name, n)
		}
		if n := eval[int](s, inked+`(document.querySelector(".bent canvas"))`); n < 5000 {
			t.Errorf("%s: the bent shape has %d pixels", size.name, n)
		}
		s.shot("replay " + size.name)
		eval[bool](s, `document.querySelector(".bent").scrollIntoView(), true`)
		s.shot("replay bent " + size.name)
	}
	s.size(1440, 900)
	for i, name := range []string{"share", "tension", "opening", "lines"} {
		eval[bool](s, `[...document.querySelectorAll(".replay-fields button")][`+string(rune('0'+i))+`].click(), true`)
		s.shot("replay " + name)
	}
	for _, theme := range []string{"sun", "night"} {
		s.size(1440, 900)
		eval[bool](s, `localStorage.setItem("slabwright-theme", "`+theme+`"), true`)
		s.open("keys")
		s.open("replay")
		s.contrast("replay " + theme)
		s.shot("replay " + theme)
	}
	s.quiet()
}

// The slider goes by keys from event to event; what is drawn, told and listed follows.
func TestReplayByKeys(t *testing.T) {
	c := replayed(t)
	s := newScreen(t, Handler(func(context.Context) (*report.Content, error) { return c, nil }, Options{}))
	s.start()
	s.size(1440, 900)
	s.open("replay")
	spoken := func() string {
		return eval[string](s, `document.querySelector("#replay-hour").getAttribute("aria-valuetext")`)
	}
	drawn := func() int {
		return eval[int](s, `document.querySelectorAll(".expected > g:not(.expected-name)").length`)
	}
	if drawn() != len(c.Replay.Events) {
		t.Errorf("%d events drawn at the end, %d expected", drawn(), len(c.Replay.Events))
	}
	eval[bool](s, `document.querySelector("#replay-hour").focus(), true`)
	s.press(kb.Home)
	s.settle()
	if at := spoken(); !strings.Contains(at, "nothing has opened") || !strings.Contains(at, "Fri 19 September 2025, 07:10") || drawn() != 0 {
		t.Errorf("at the start: %q, %d drawn", at, drawn())
	}
	s.press(kb.PageUp) // the next event
	s.settle()
	first := c.Replay.Events[0]
	if at := spoken(); !strings.Contains(at, "1 joint open") || drawn() < 1 {
		t.Errorf("at the first event: %q, %d drawn", at, drawn())
	}
	if said := eval[string](s, `document.querySelector(".replay-ruler [role=status]").innerText`); !strings.Contains(said, first.What) {
		t.Errorf("told %q at the first event %q", said, first.What)
	}
	before := spoken()
	s.press(kb.ArrowRight)
	s.settle()
	if spoken() == before {
		t.Error("an arrow key does not move the hour")
	}
	eval[bool](s, `[...document.querySelectorAll(".replay-fields button")][1].click(), true`)
	s.settle()
	if said := eval[string](s, `document.querySelector(".legend").innerText`); !strings.Contains(said, "MPa") || !strings.Contains(said, "By hand") {
		t.Errorf("the legend of the tension says %q", said)
	}
	eval[bool](s, `document.querySelector(".bent-box").focus(), true`)
	was := eval[string](s, `document.querySelector(".bent canvas").toDataURL()`)
	s.press(kb.ArrowRight)
	s.settle()
	if eval[string](s, `document.querySelector(".bent canvas").toDataURL()`) == was {
		t.Error("an arrow key does not turn the bent shape")
	}
	s.quiet()
}

// A job that cannot be replayed says so and keeps its plan.
func TestNoReplay(t *testing.T) {
	s := newScreen(t, filled(t))
	s.start()
	s.size(390, 844)
	s.open("replay")
	if said := eval[string](s, `document.querySelector("main").innerText`); !strings.Contains(said, "not replayed") {
		t.Errorf("the screen says %q", said)
	}
	s.axe("no replay")
	s.quiet()
}

// fieldApart is how far the box of the inked field lies from the box of the outline drawn
// over it, px: the largest of the four sides.
const fieldApart = `(() => {
	const canvas = document.querySelector("canvas.field"), at = canvas.getBoundingClientRect(), dense = canvas.width / at.width;
	const data = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height).data;
	let x0 = 1e9, x1 = -1, y0 = 1e9, y1 = -1;
	for (let y = 0; y < canvas.height; y++) for (let x = 0; x < canvas.width; x++) if (data[4 * (y * canvas.width + x) + 3] > 127) {
		x0 = Math.min(x0, x); x1 = Math.max(x1, x + 1); y0 = Math.min(y0, y); y1 = Math.max(y1, y + 1);
	}
	const frame = document.querySelector(".plan-frame").getBoundingClientRect(), line = document.querySelector(".plan-frame .outline").getBBox();
	const svg = document.querySelector(".plan-frame svg.drawing").getBoundingClientRect();
	const clip = (v, most) => Math.min(Math.max(v, 0), most);
	const want = [clip(svg.x + line.x - frame.x, frame.width), clip(svg.x + line.x + line.width - frame.x, frame.width),
		clip(svg.y + line.y - frame.y, frame.height), clip(svg.y + line.y + line.height - frame.y, frame.height)];
	const have = [at.x + x0 / dense - frame.x, at.x + x1 / dense - frame.x, at.y + y0 / dense - frame.y, at.y + y1 / dense - frame.y];
	return Math.max(...want.map((v, i) => Math.abs(v - have[i])), Math.abs(at.width - frame.width), Math.abs(at.height - frame.height));
})()`

// TestFieldUnderItsPlan holds that the field lies where the lines over it do: at once when
// the page is painted, after the window is resized, and after every step of zoom.
func TestFieldUnderItsPlan(t *testing.T) {
	c := replayed(t)
	s := newScreen(t, Handler(func(context.Context) (*report.Content, error) { return c, nil }, Options{}))
	s.start()
	apart := func(when string) {
		t.Helper()
		if d := eval[float64](s, fieldApart); d > 2.5 {
			t.Errorf("%s the field lies %.1f px from the outline", when, d)
		}
	}
	for _, size := range [][2]int64{{1440, 1000}, {390, 1600}} {
		s.size(size[0], size[1])
		s.open("replay")
		apart("at first")
		s.size(size[0]-40, size[1]-150)
		s.settle()
		apart("after a resize")
		for _, key := range []string{"Closer", "Closer", "Farther", "Whole"} {
			eval[bool](s, `[...document.querySelectorAll(".plan-keys button")].find(b => b.innerText === "`+key+`").click(), true`)
			// looked at in the very frame that the lines move in
			if d := eval[float64](s, `new Promise(done => { const was = document.querySelector(".plan-frame .outline").getAttribute("d");
				const look = n => n > 0 && document.querySelector(".plan-frame .outline").getAttribute("d") === was ? Promise.resolve().then(() => look(n - 1)) : done(`+fieldApart+`); look(50) })`); d > 2.5 {
				t.Errorf("after %s the field lies %.1f px from the outline", key, d)
			}
		}
	}
	s.forgiveText("willReadFrequently")
	s.quiet()
}
