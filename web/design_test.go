package web

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"slabwright/plan"
	"slabwright/report"
)

// desk stands in for the program that judges joint plans: it moves and removes what it
// is asked to, refuses to leave the slab, and finds one rule broken while there is a
// joint called S2-10.
type desk struct {
	saved plan.Slab
	added []string // what was put in, and where
}

type deskQuestion struct {
	Slab plan.Slab `json:"slab"`
	Edit struct {
		Do   string     `json:"do"`
		ID   string     `json:"id"`
		By   plan.Point `json:"by_m"`
		From plan.Point `json:"from_m"`
		To   plan.Point `json:"to_m"`
		At   plan.Point `json:"at_m"`
	} `json:"edit"`
}

func (d *desk) handler(t *testing.T) http.Handler {
	c := fixture(t)
	read := func(data json.RawMessage) (q deskQuestion, err error) { return q, json.Unmarshal(data, &q) }
	return Handler(func(context.Context) (*report.Content, error) { return c, nil }, Options{Asks: map[string]Ask{
		"look": func(_ context.Context, data json.RawMessage) (any, error) {
			q, err := read(data)
			return d.look(q.Slab), err
		},
		"edit": func(_ context.Context, data json.RawMessage) (any, error) {
			q, err := read(data)
			if err != nil {
				return nil, err
			}
			return d.edit(q)
		},
		"chance": func(context.Context, json.RawMessage) (any, error) {
			return report.LayoutChance{Any: report.Chance{P: 0.21, Low: 0.1, High: 0.4, About: "about 2 in 10"}, Members: 12, Until: "90 days after placing"}, nil
		},
		"propose": func(_ context.Context, data json.RawMessage) (any, error) {
			q, err := read(data)
			l := d.look(q.Slab)
			l.Name, l.Why = "fewest joints", "Least length of joint to cut."
			l.Slab.Joints = l.Slab.Joints[:2]
			l.Cost = "EUR 4429"
			l.Strips = []report.Strip{{ID: "S1", Panels: []string{l.Panels[0].ID}, Width: 5, Length: 20, First: true}}
			return report.Design{Spacing: report.Spacing{Limit: 5.4, Rule: 5.4, Cap: 5.5, Why: "the rule of thumb is nearest."}, Drawn: d.look(q.Slab), Proposed: []report.Layout{l}}, err
		},
		"save": func(_ context.Context, data json.RawMessage) (any, error) {
			q, err := read(data)
			d.saved = q.Slab
			return map[string]string{"where": "yard/job.json"}, err
		},
	}})
}

func (d *desk) edit(q deskQuestion) (any, error) {
	joints := append([]plan.Joint(nil), q.Slab.Joints...)
	switch q.Edit.Do {
	case "add joint":
		d.added = append(d.added, fmt.Sprintf("joint %.2f,%.2f %.2f,%.2f", q.Edit.From.X, q.Edit.From.Y, q.Edit.To.X, q.Edit.To.Y))
		joints = append(joints, plan.Joint{ID: "N1", Kind: plan.Sawn, Path: []plan.Point{q.Edit.From, q.Edit.To}})
	case "add pit":
		d.added = append(d.added, "pit")
	}
	for i, j := range joints {
		if j.ID != q.Edit.ID {
			continue
		}
		switch q.Edit.Do {
		case "move joint":
			if q.Edit.By.X > 50 || q.Edit.By.Y > 50 {
				return nil, errors.New("joint " + j.ID + " would leave the slab at x 62.00; the slab ends at 30.00")
			}
			path := append([]plan.Point(nil), j.Path...)
			for k := range path {
				path[k] = path[k].Plus(q.Edit.By)
			}
			joints[i].Path = path
		case "remove joint":
			joints = append(joints[:i], joints[i+1:]...)
		}
		break
	}
	q.Slab.Joints = joints
	return d.look(q.Slab), nil
}

func (d *desk) look(s plan.Slab) report.Layout {
	l := report.Layout{Name: "as drawn", Slab: s, Quantities: []report.QuantityRow{{What: "sawn joint", Amount: 80, Unit: "m"}}}
	l.Panels, _ = s.Panels()
	for _, j := range s.Joints {
		if j.ID != "S2-10" {
			continue
		}
		mended := s
		mended.Joints = nil
		for _, k := range s.Joints {
			if k.ID != "S2-10" {
				mended.Joints = append(mended.Joints, k)
			}
		}
		l.Warnings = append(l.Warnings, report.Warning{Code: "spacing", Level: "should", Joint: j.ID, At: j.Path[0], Words: "P8 is 6.10 m long; the limit is 5.40 m.",
			Rule: "a panel longer than the limit is likelier to crack", Source: "ACI 360R", Mend: &report.Mend{Words: "Take S2-10 out", Slab: mended}})
	}
	return l
}

// began opens the screen with the plan drawn and the chance told.
func began(t *testing.T, width, height int64) (*screen, *desk) {
	d := &desk{}
	s := newScreen(t, d.handler(t))
	s.start()
	s.size(width, height)
	s.open("design")
	s.until(`document.querySelector(".design-plan .joint") && document.querySelector(".design-sum .chance")`)
	return s, d
}

func (s *screen) tap(words string) {
	s.t.Helper()
	eval[bool](s, fmt.Sprintf(`(b => { b.click(); return true })([...document.querySelectorAll("main button")].find(b => b.innerText.trim().startsWith(%q) && !b.disabled))`, words))
	s.settle()
}

func (s *screen) stepsBack() string {
	s.t.Helper()
	return eval[string](s, `document.querySelector(".design-keys p").innerText`)
}

const jointPath = `document.querySelector('.design-plan [data-id="S2-10"] .hit').getAttribute("d")`

// TestJointByKeys moves a joint by the arrows, undoes it, and finds the steps again
// after the page is loaded anew.
func TestJointByKeys(t *testing.T) {
	s, _ := began(t, 1440, 900)
	before := eval[string](s, jointPath)
	eval[bool](s, `document.querySelector('.design-plan [data-id="S2-10"]').focus(), true`)
	s.press(kb.ArrowRight)
	s.until(jointPath + ` !== ` + fmt.Sprintf("%q", before))
	if got := s.stepsBack(); got != "1 step can be undone, also after a reload." {
		t.Errorf("after one move the page says %q", got)
	}
	moved := eval[string](s, jointPath)
	s.open("design")
	s.until(`document.querySelector(".design-plan .joint")`)
	if got := eval[string](s, jointPath); got != moved {
		t.Errorf("after a reload the joint is at %s, was at %s", got, moved)
	}
	eval[bool](s, `document.body.dispatchEvent(new KeyboardEvent("keydown", {key: "z", ctrlKey: true, bubbles: true})), true`)
	s.until(jointPath + ` === ` + fmt.Sprintf("%q", before))
	s.tap("Do again")
	s.until(jointPath + ` === ` + fmt.Sprintf("%q", moved))
	s.quiet()
}

// TestHundredSteps holds that a hundred steps can be undone after a reload.
func TestHundredSteps(t *testing.T) {
	s, _ := began(t, 1440, 900)
	before := eval[string](s, jointPath)
	for n := range 120 {
		way := kb.ArrowRight
		if n%3 == 2 {
			way = kb.ArrowLeft
		}
		eval[bool](s, `document.querySelector('.design-plan [data-id="S2-10"]').focus(), true`)
		s.press(way)
		s.until(fmt.Sprintf(`document.querySelector(".design-keys p").innerText.startsWith("%d step")`, n+1))
	}
	s.open("design")
	s.until(`document.querySelector(".design-plan .joint")`)
	for range 120 {
		eval[bool](s, `[...document.querySelectorAll("main button")].find(b => b.innerText.startsWith("Undo")).click(), true`)
	}
	s.until(`document.querySelector(".design-keys p").innerText === "Nothing changed yet."`)
	s.until(jointPath + ` === ` + fmt.Sprintf("%q", before))
	s.quiet()
}

// TestJointByTaps does the same without drag or keys, at phone width: choose, type a
// distance, mend, propose, take, save.
func TestJointByTaps(t *testing.T) {
	s, d := began(t, 390, 844)
	s.tap("Choose S2-10")
	s.wants("the joint chosen", "Joint S2-10", "Distance from the setting-out point, m")
	typeInto := func(value string) {
		eval[bool](s, `(i => { i.value = "`+value+`"; i.dispatchEvent(new Event("input", {bubbles: true})); return true })(document.querySelector(".design-chosen input"))`)
		s.tap("Move it there")
	}
	typeInto("twelve")
	s.wants("a word for a number", "“twelve” is not a number of metres; write it as 4.5")
	typeInto("99,5")
	s.until(`document.querySelector("main [role=alert] h2")`)
	s.wants("a joint outside", "There is a problem", "would leave the slab at x 62.00")
	s.forgive("422")
	typeInto("12.3")
	s.until(`document.querySelector(".design-keys p").innerText.startsWith("1 step")`)
	s.tap("Take S2-10 out")
	s.until(`!document.querySelector('.design-plan [data-id="S2-10"]')`)
	s.tap("Propose joint plans")
	s.until(`document.querySelector("main table")`)
	s.wants("the proposals", "fewest joints", "Joints at most 5.4")
	eval[bool](s, `[...document.querySelectorAll("main td button")][1].click(), true`)
	s.until(`document.querySelectorAll('.design-plan [data-kind="joint"]').length === 2`)
	s.tap("Save to the job")
	s.until(`document.querySelector("main [role=status]").innerText.startsWith("Saved in yard/job.json")`)
	if n := len(d.saved.Joints); n != 2 {
		t.Errorf("%d joints were saved, want 2", n)
	}
	s.quiet()
}

// forgive forgets what the browser said of answers with a status that was meant.
func (s *screen) forgive(status string) { s.forgiveText("status of " + status) }

// forgiveText forgets what the browser said that holds a text.
func (s *screen) forgiveText(text string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.wrong = slices.DeleteFunc(s.wrong, func(said string) bool { return strings.Contains(said, text) })
}

// TestJointByDrag drags a joint with the mouse; it moves square to itself.
func TestJointByDrag(t *testing.T) {
	s, _ := began(t, 1440, 900)
	before := eval[string](s, jointPath)
	at := eval[[]float64](s, `(b => [b.x + b.width / 2, b.y + b.height / 2])(document.querySelector('.design-plan [data-id="S2-10"] .hit').getBoundingClientRect())`)
	x, y := at[0], at[1]
	s.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMousePressed, x, y, chromedp.ButtonLeft, chromedp.ClickCount(1)),
		chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, x+20, y+30, chromedp.ButtonLeft),
		chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, x+40, y+60, chromedp.ButtonLeft),
		chromedp.MouseEvent(input.DispatchMouseEventTypeMouseReleased, x+40, y+60, chromedp.ButtonLeft, chromedp.ClickCount(1)))
	s.until(`document.querySelector(".design-keys p").innerText.startsWith("1 step")`)
	if eval[string](s, jointPath) == before {
		t.Error("the joint stands where it stood")
	}
	s.quiet()
}

// TestDesignForEveryone runs the accessibility rules on the screen with everything open.
func TestDesignForEveryone(t *testing.T) {
	for _, size := range [][2]int64{{1440, 900}, {390, 844}, {320, 700}} {
		s, _ := began(t, size[0], size[1])
		s.tap("Propose joint plans")
		s.until(`document.querySelector("main table")`)
		s.tap("Choose S2-10")
		s.unfold()
		s.axe(fmt.Sprintf("the joints at %d px", size[0]))
		s.fits(fmt.Sprintf("the joints at %d px", size[0]))
		s.shot(fmt.Sprintf("design-%d", size[0]))
		s.quiet()
	}
}

// TestAddByTaps puts in a joint by two taps on the plan, level and on the outline, and a pit by one.
func TestAddByTaps(t *testing.T) {
	for _, size := range [][2]int64{{1440, 900}, {390, 844}} {
		s, d := began(t, size[0], size[1])
		s.unfold()
		at := func(x, y float64) {
			s.settle()
			eval[bool](s, fmt.Sprintf(`(() => { const b = document.querySelector(".design-plan .outline").getBoundingClientRect(), x = b.x + b.width * %v, y = b.y + b.height * %v;
				document.elementFromPoint(x, y).dispatchEvent(new MouseEvent("click", {clientX: x, clientY: y, bubbles: true, cancelable: true})); return true })()`, x, y))
			s.settle()
		}
		s.tap("Tap both ends on the plan")
		s.wantsPlan("Tap where the joint begins.")
		at(0.02, 0.31)
		s.wantsPlan("Now tap where the joint ends.")
		at(0.3, 0.312)
		s.until(`document.querySelector(".design-keys p").innerText.startsWith("1 step")`)
		s.tap("Tap the middle of a pit")
		at(0.4, 0.4)
		s.until(`document.querySelector(".design-keys p").innerText.startsWith("2 step")`)
		if len(d.added) != 2 || d.added[1] != "pit" {
			t.Fatalf("%d px: put in %v", size[0], d.added)
		}
		var x0, y0, x1, y1 float64
		if _, err := fmt.Sscanf(d.added[0], "joint %f,%f %f,%f", &x0, &y0, &x1, &y1); err != nil || y0 != y1 || x1 <= x0 {
			t.Errorf("%d px: the joint is not level: %v %v", size[0], d.added, err)
		}
		s.quiet()
	}
}

// wantsPlan waits for the plan to say something below itself.
func (s *screen) wantsPlan(text string) {
	s.t.Helper()
	s.until(fmt.Sprintf(`document.querySelector(".design-plan .plan-said").innerText.includes(%q)`, text))
}

// TestStripsOnDemand draws the pour strips of a proposal and takes them off.
func TestStripsOnDemand(t *testing.T) {
	s, _ := began(t, 390, 844)
	s.tap("Propose joint plans")
	s.until(`document.querySelector("main table")`)
	s.unfold()
	s.wants("the proposal", "Cost: EUR 4429.", "Strip S1, placed first", "P8 is 6.10 m long")
	s.tap("Draw its pour strips")
	s.until(`document.querySelectorAll(".design-plan .strip.first path").length === 1`)
	s.wantsPlan("Pour strips of “fewest joints”")
	s.axe("pour strips drawn")
	eval[bool](s, `[...document.querySelectorAll(".design-plan button")].find(b => b.innerText === "Take strips off").click(), true`)
	s.until(`!document.querySelector(".design-plan .strip")`)
	s.quiet()
}
