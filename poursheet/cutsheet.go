package poursheet

import (
	"errors"
	"fmt"
	"strings"
	"time"

	"slabwright/internal/page"
	"slabwright/plan"
)

// CutSheet is what the saw crew takes out at night: which joint, how deep, from when
// and until when, and who to ring.
type CutSheet struct {
	Title  Title
	Paper  page.Paper // zero: A4
	Pour   string
	Slab   plan.Slab    // drawn small with the joints by number; without an outline left out
	Area   []plan.Point // of the pour
	Start  *time.Time   // first concrete
	End    *time.Time
	Saw    string // "a wet saw", "an early-entry saw"
	Lines  []CutLine
	Decide string // who decides when sawing starts; empty: UNASSIGNED
	Spare  string // who holds the spare saw
	Ring   string // whom to ring when the window is missed or a crack runs ahead
	Notes  []string
}

// CutLine is joints cut one after another within one window.
type CutLine struct {
	Joints []string
	Length float64    // of all, m
	Depth  *float64   // m; nil: not given
	Placed time.Time  // of the concrete beside it that was placed last: hours count from it
	Opens  *time.Time // nil: not known
	Closes *time.Time // nil: does not close in the time looked at
	Never  bool       // the slab is likely to crack before a saw can go on: there is no window
}

// PDF returns the sheet; more joints than fit a page go on to the next.
func (c CutSheet) PDF() ([]byte, error) {
	if len(c.Lines) == 0 {
		return nil, errors.New("a cut sheet needs a sawn joint with its window")
	}
	return page.Build(sheetPaper(c.Paper), c.Title.head("cut sheet"), func(doc *page.Document) {
		crewHeading(doc, "CUT SHEET · "+c.Pour, c.placed())
		boxed(doc, page.Join(page.Bold("Trial cut first. "), page.Plain("300 mm, full depth, in joint 1. "),
			page.Bold("Clean edge: "), page.Plain("cut on. "), page.Bold("Ravels: "), page.Plain("stop, wait 30 min, try again. "),
			page.Bold("Crack runs ahead of the blade: "), page.Plain("stop that joint, ring, go to the next.")), crewSize)
		c.table(doc)
		line(doc, page.Join(page.Bold("Ring at any hour: "), written(c.Ring)), crewLarge, 0.3)
		line(doc, page.Plain("when a joint is not cut by its last time, the saw breaks, or a crack runs ahead. Do not guess."), crewSize, 1.5)
		line(doc, page.Join(page.Bold("Says when to start: "), written(c.Decide)), crewSize, 0.5)
		line(doc, page.Join(page.Bold("Spare saw: "), written(c.Spare)), crewSize, 1.5)
		line(doc, page.Join(page.Bold("Stone dust destroys lungs: "), page.Plain("wet blade or extraction on, mask on, slurry off before it dries. Look for pipes and cables in the slab first.")), crewSize, 0.5)
		for _, n := range c.Notes {
			line(doc, page.Plain(n), crewSize, 0.5)
		}
		if s := c.cutPlan(doc.Right()-doc.Left(), min(doc.Room()-3, 120)); s != nil {
			doc.PlaceScene(doc.Left(), doc.Y()+2, s)
		}
	})
}

// placed says when the concrete came and which saw the times are for.
func (c CutSheet) placed() string {
	k := c.Title.clock()
	var words []string
	if c.Start != nil {
		s := "Placed " + k.full(*c.Start)
		if c.End != nil {
			s += " to " + k.hour(*c.End)
		}
		words = append(words, s)
	}
	return strings.Join(append(words, "times for "+or(c.Saw, "the saw"), "h: hours after placing"), " · ")
}

// fewLines is up to how many lines the letters of the table are larger still.
const fewLines = 6

func (c CutSheet) table(doc *page.Document) {
	k := c.Title.clock()
	size := crewSize
	if len(c.Lines) <= fewLines {
		size = crewLarge
	}
	var rows [][]page.Text
	for i, l := range c.Lines {
		from, until := c.times(k, l, size)
		rows = append(rows, []page.Text{page.Bold(fmt.Sprint(i + 1)), page.Bold(strings.Join(l.Joints, ", ")), page.Plain(fixed(l.Length, 1)), page.Plain(depthWords(l.Depth)), from, until, nil})
	}
	right := page.AlignRight
	doc.Table(page.Table{Whole: true, Size: size, Rows: rows, Columns: []page.Column{{Head: "", Share: 5}, {Head: "Joint", Share: 15}, {Head: "Long\nm", Share: 11, Align: right},
		{Head: "Deep\nmm", Share: 11, Align: right}, {Head: "Start from", Share: 29}, {Head: "Cut by", Share: 29}, {Head: "Cut at", Share: 14}}})
}

func depthWords(depth *float64) string {
	if depth == nil {
		return "ask"
	}
	return fixed(*depth*1000, 0)
}

// times writes a window by weekday, clock and hours after placing; in large letters
// the hours stand on a line of their own.
func (c CutSheet) times(k clock, l CutLine, size float64) (from, until page.Text) {
	between := " · "
	if size > crewSize {
		between = "\n"
	}
	at := func(t time.Time) page.Text {
		return page.Join(page.Bold(k.weekday(t)), page.Plain(between+hours(t.Sub(l.Placed).Hours())))
	}
	switch {
	case l.Never:
		return page.Bold("ring first"), page.Bold("no safe time")
	case l.Opens == nil:
		return page.Bold("trial cut"), page.Bold("not known: ring")
	case l.Closes == nil:
		return at(*l.Opens), page.Plain("no limit found")
	}
	return at(*l.Opens), at(*l.Closes)
}
