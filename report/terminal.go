package report

import (
	"fmt"
	"strings"
	"time"
	"unicode/utf8"
)

// PageOneText returns page one in plain words for a terminal, wrapped to so many
// columns: the five answers in order with how sure each is, the most important
// doubt, what was not done, who may rely on it. No colour, no control codes.
func PageOneText(c *Content, width int) string {
	w := newWriter(width)
	w.line(titleOf(c))
	for _, l := range titleLines(c) {
		w.line(l)
	}
	for i, a := range fiveAnswers(c) {
		w.blank()
		head := fmt.Sprintf("%d. %s", i+1, a.Question)
		if a.Chance != nil {
			head += "  [" + a.Chance.Words() + "]"
		}
		w.line(head)
		w.indented(3, sentence(a.Plain))
		if s := exactOf(a); s != "" {
			w.indented(3, s)
		}
		if len(a.Workings) > 0 {
			named, more := a.Workings, ""
			if len(named) > 3 {
				named, more = named[:3], fmt.Sprintf(" and %d more", len(a.Workings)-3)
			}
			w.indented(3, "Working: "+strings.Join(named, ", ")+more)
		}
	}
	w.blank()
	for _, t := range endLines(c) {
		w.line(t.String())
	}
	return w.String()
}

// FindingsText lists the findings, one after another, with the answer of each.
func FindingsText(c *Content, width int) string {
	w := newWriter(width)
	if len(c.Findings) == 0 {
		w.line("Nothing was found on this walk.")
	}
	for _, f := range c.Findings {
		head := f.Finding.ID + "  " + f.Title
		if f.Finding.Width != nil {
			head += ", " + with(millimetres(f.Finding.Width.Value), "mm") + " wide"
		}
		w.line(head)
		w.indented(4, sentence(f.Place))
		answer := sentence(f.Answer)
		if lead := f.lead(); lead != nil && f.Decided && !strings.Contains(answer, " in 10") {
			answer += " " + sentence(lead.Chance.Words())
		}
		w.indented(4, answer)
	}
	for _, u := range c.Plan.Unseen {
		w.line(u.ID + "  could not be seen: " + u.Why)
	}
	return w.String()
}

// CausesText is the causes of one finding with what speaks for and against each;
// an id that is not among the findings is told with those that are.
func CausesText(c *Content, finding string, width int) string {
	w := newWriter(width)
	var ids []string
	for i := range c.Findings {
		f := &c.Findings[i]
		if !strings.EqualFold(f.Finding.ID, finding) {
			ids = append(ids, f.Finding.ID)
			continue
		}
		w.line(f.Finding.ID + "  " + f.Title)
		w.indented(4, sentence(f.Answer))
		for _, t := range overrideTexts(f.Overrides) {
			w.hanging("    ", sentence(t))
		}
		causesText(w, "What pulled it apart", f.Mechanism)
		causesText(w, "Why here and then", f.Triggers)
		if len(f.RuledOut) > 0 {
			w.blank()
			w.line("Considered and ruled out")
			for _, row := range f.RuledOut {
				w.hanging("  - ", sentenceCase(row.Name)+", because "+strings.TrimSuffix(strings.TrimSpace(row.RuledOut), ".")+".")
			}
		}
		for _, u := range f.Unexplained {
			w.hanging("  not explained: ", sentence(u))
		}
		preventedText(w, f.Prevented)
		if len(f.NextTests) > 0 {
			w.blank()
			w.line("What to look at next")
			for _, t := range f.NextTests {
				w.hanging("  - ", sentenceCase(t.Name)+" ("+or(t.Time, "time not given")+"). "+strings.Join(t.Outcomes, "; "))
			}
		}
		return w.String()
	}
	w.line(fmt.Sprintf("There is no finding %q. There are: %s.", finding, or(strings.Join(ids, ", "), "none")))
	return w.String()
}

func causesText(w *writer, head string, rows []CauseRow) {
	if len(rows) == 0 {
		return
	}
	w.blank()
	w.line(head)
	for _, row := range rows {
		w.hanging("  ", sentenceCase(row.Name)+": "+or(row.State, "possible")+", "+row.Chance.Words()+". "+sentence(row.Plain))
		for _, a := range row.For {
			w.hanging("    for      ", sentence(a.Text)+" ("+odds(a.Shift)+")")
		}
		for _, a := range row.Against {
			w.hanging("    against  ", sentence(a.Text)+" ("+odds(a.Shift)+")")
		}
		for _, m := range row.Missing {
			w.hanging("    missing  ", sentence(m))
		}
	}
}

// WindowText is the cut window of each pour with the joints as sawn.
func WindowText(c *Content, width int) string {
	clk := clockOf(c.Head)
	w := newWriter(width)
	if len(c.Pours) == 0 {
		w.line("No pour is in this job, so there is no cut window.")
	}
	for i := range c.Pours {
		p := &c.Pours[i]
		if i > 0 {
			w.blank()
		}
		w.line(or(p.Name, p.ID) + ", placed " + clk.hour(p.Start) + " (" + clk.name + ")")
		for _, win := range []*Window{&p.Window, p.Early} {
			if win == nil || (win.Opens == nil && win.Why == "") {
				continue
			}
			w.hanging("  ", or(win.Saw, "saw")+" saw: from "+clk.span(win.Opens, win.OpensLow, win.OpensHigh, "a time not found")+
				" to "+clk.span(win.Closes, win.ClosesLow, win.ClosesHigh, "the end of the time looked at")+". "+sentence(win.Why))
		}
		for _, one := range panelsInOrder(p) {
			w.hanging("  ", panelLine(clk, one))
		}
		for _, cut := range p.Cuts {
			s := fmt.Sprintf("%s cut %s, %s h after placing: %s", cut.Joint, clk.hour(cut.At), fixed(cut.Hours, 1), cut.State)
			if cut.Chance != nil {
				s += "; chance it had cracked before: " + cut.Chance.Words()
			}
			w.hanging("  ", sentence(s))
		}
		if p.DryingLimit != nil {
			w.hanging("  ", "drying limit as planned: "+fixed(*p.DryingLimit, 2)+" kg/m²h.")
		}
		for _, s := range p.Sentences {
			w.hanging("  - ", sentence(s))
		}
		if n := len(p.Moves); n > 0 {
			m := p.Moves[0]
			w.hanging("  ", fmt.Sprintf("moved most by %s (%s to %s): opening %s min, closing %s min over that range.", m.What, m.Low, m.High, fixed(m.Opens, 0), fixed(m.Closes, 0)))
		}
		if p.Measured != nil {
			w.hanging("  measured: ", sentence(p.Measured.Text))
		}
		for _, s := range p.NotGiven {
			w.hanging("  not answered: ", sentence(s))
		}
	}
	return w.String()
}

// panelLine is the window of one panel on its own clock.
func panelLine(clk clock, p PanelWindow) string {
	s := fmt.Sprintf("%d. panel %s, placed %s: wet saw %s to %s", p.Order, p.Panel, clk.short(p.Placed), clk.shortOr(p.Wet.Opens, "a time not found")+hoursSince(p.Placed, p.Wet.Opens), clk.shortOr(p.Wet.Closes, "the end of the time looked at")+hoursSince(p.Placed, p.Wet.Closes))
	if p.Wet.Best != nil {
		s += ", best " + clk.short(*p.Wet.Best)
	}
	if p.Early.Opens != nil {
		s += "; early-entry from " + clk.short(*p.Early.Opens)
	}
	return s + "."
}

// writer wraps lines to a width.
type writer struct {
	strings.Builder
	width int
}

func newWriter(width int) *writer { return &writer{width: max(width, 30)} }

func (w *writer) blank()                   { w.WriteByte('\n') }
func (w *writer) line(s string)            { w.hanging("", s) }
func (w *writer) indented(n int, s string) { w.hanging(strings.Repeat(" ", n), s) }

// hanging writes a text whose first line starts with lead and whose others stand
// as far in.
func (w *writer) hanging(lead, s string) {
	in := strings.Repeat(" ", utf8.RuneCountInString(lead))
	line, empty := lead, true
	for _, word := range strings.FieldsFunc(tidy(s), func(r rune) bool { return r == ' ' || r == '\n' }) {
		switch {
		case empty:
			line += word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > w.width:
			w.row(line)
			line = in + word
		default:
			line += " " + word
		}
		empty = false
	}
	w.row(line)
}

// row writes one finished line; a terminal gets ordinary spaces.
func (w *writer) row(line string) {
	w.WriteString(strings.TrimRight(strings.ReplaceAll(line, thin, " "), " ") + "\n")
}

// hoursSince says a clock time in hours after placing, in brackets; "" for none.
func hoursSince(placed time.Time, t *time.Time) string {
	if t == nil {
		return ""
	}
	return fmt.Sprintf(" (%.1f h after placing)", t.Sub(placed).Hours())
}
