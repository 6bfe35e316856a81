package report

import (
	"fmt"
	"strings"

	"slabwright/internal/page"
)

// questions are the five, always in this order.
var questions = []struct{ key, ask string }{
	{"structural", "Is it structural?"},
	{"worse", "Will it get worse?"},
	{"why", "Why did it crack?"},
	{"now", "What now?"},
	{"who", "Who could have stopped it?"},
}

// fiveAnswers returns the answers in the fixed order; one that was left out for
// this reader is not there.
func fiveAnswers(c *Content) []Answer {
	var all []Answer
	for _, q := range questions {
		for _, a := range c.PageOne.Answers {
			if a.Key == q.key {
				a.Question = or(a.Question, q.ask)
				all = append(all, a)
			}
		}
	}
	return all
}

// exactOf is the exact wording of an answer; the first that speaks of structure
// defines the word unless the answer does.
func exactOf(a Answer) string {
	s := sentence(a.Exact)
	if a.Key == "structural" && !definesStructural(a.Plain+" "+a.Exact) {
		s = strings.TrimSpace(s + " " + structuralMeans)
	}
	return s
}

// definesStructural reports whether a text says itself what structural means.
func definesStructural(s string) bool {
	s = strings.ToLower(s)
	return strings.Contains(s, "structural here means") || strings.Contains(s, "structural means here")
}

// titleLines are the lines under the title on page one.
func titleLines(c *Content) []string {
	h := c.Head
	var lines []string
	add := func(parts ...string) {
		var kept []string
		for _, p := range parts {
			if p != "" {
				kept = append(kept, p)
			}
		}
		if len(kept) > 0 {
			lines = append(lines, strings.Join(kept, " · "))
		}
	}
	number := or(h.Number, h.Job)
	if number != "" {
		number = "Job " + number
	}
	add(number, h.Client)
	add(h.Place)
	area := ""
	if c.Plan.Area > 0 {
		area = with(fixed(c.Plan.Area, 0), "m²")
	}
	add(or(h.SlabName, h.SlabID), area, fmt.Sprintf("%d findings", len(c.Findings)))
	add("Looked at "+clockOf(h).day(h.Looked), by(h.LookedBy))
	rev := "Revision " + h.Revision
	if isDraft(c) {
		rev = "DRAFT, not issued"
	}
	author := ""
	if h.Author != "" {
		author = "by " + h.Author
	}
	add(rev, author)
	for i := range lines {
		lines[i] = strings.ReplaceAll(lines[i], " · , ", ", ")
	}
	return lines
}

// columns of the answers on page one, mm.
const (
	askWidth  = 33.0
	sureWidth = 30.0
	gutter    = 4.0
)

// pageOne sets the answers page. Letters shrink until all five answers and the
// doubts fit one page; when even small letters do not do, the exact wordings go
// overleaf and it returns true.
func pageOne(d *page.Document, c *Content, r *refs) (exactOverleaf bool) {
	d.Anchor("page-one")
	d.Bookmark("Page one: the answers", 0)
	top := d.Y()
	planWidth, planHeight := 92.0, 92.0
	for planHeight > 58 && top+planHeight+4+pageOneHeight(d, c, r, 10, true) > d.Foot() {
		planWidth, planHeight = planWidth-4, planHeight-6
	}
	small := PlanSmall(c, planWidth, planHeight, "")
	d.PlaceScene(d.Right()-planWidth, top, small)
	width := d.Right() - d.Left() - planWidth - 6
	y := top
	y += d.Place(d.Left(), y, width, page.Bold(titleOf(c)), 16, page.AlignLeft) + 2
	for _, line := range titleLines(c) {
		y += d.Place(d.Left(), y, width, page.Plain(line), 9, page.AlignLeft) + 0.6
	}
	start := max(y, top+small.Height) + 4
	size, exact := 11.0, true
	for ; ; size -= 0.25 {
		if size < 8 {
			if !exact {
				break // nothing more to give: the page is as tight as can be read
			}
			size, exact = 10, false
		}
		if start+pageOneHeight(d, c, r, size, exact) <= d.Foot() {
			break
		}
	}
	placeAnswers(d, c, r, start, size, exact)
	return !exact
}

// answerText is one answer as set on page one.
func answerText(a Answer, r *refs, exact bool) (plain, said page.Text) {
	plain = page.Plain(tidy(sentence(a.Plain)))
	if exact {
		said = page.Quiet(tidy(exactOf(a)))
	}
	return plain, append(said, r.few(" ", a.Workings...)...)
}

// endLines are the doubt, what was not done and who may rely on the page.
func endLines(c *Content) []page.Text {
	var t []page.Text
	for _, e := range []struct{ head, words string }{
		{"Most important doubt. ", c.PageOne.Doubt}, {"Not done. ", c.PageOne.NotDone}, {"Who may rely on this. ", c.PageOne.Reliance}} {
		if e.words != "" {
			t = append(t, page.Text{{Words: e.head, Bold: true}, {Words: tidy(sentence(e.words))}})
		}
	}
	return t
}

func pageOneHeight(d *page.Document, c *Content, r *refs, size float64, exact bool) float64 {
	h := 0.0
	for _, a := range fiveAnswers(c) {
		h += answerHeight(d, a, r, size, exact) + 3.4
	}
	for _, t := range endLines(c) {
		h += d.Measure(t, d.Right()-d.Left(), size-1) + 1.2
	}
	return h + 2
}

func answerWidth(d *page.Document) float64 {
	return d.Right() - d.Left() - askWidth - sureWidth - 2*gutter
}

func answerHeight(d *page.Document, a Answer, r *refs, size float64, exact bool) float64 {
	plain, said := answerText(a, r, exact)
	h := d.Measure(plain, answerWidth(d), size)
	if len(said) > 0 {
		h += d.Measure(said, answerWidth(d), size-1.75) + 0.5
	}
	sure := 0.0
	if a.Chance != nil {
		sure = d.Measure(page.Plain(a.Chance.Lines()), sureWidth, size-1) + 5
	}
	return max(h, sure, d.Measure(page.Bold(a.Question), askWidth, size))
}

func placeAnswers(d *page.Document, c *Content, r *refs, y, size float64, exact bool) {
	middle, sure := d.Left()+askWidth+gutter, d.Right()-sureWidth
	for i, a := range fiveAnswers(c) {
		d.Rule(d.Left(), y, d.Right(), 0.12)
		y += 1.4
		d.Place(d.Left(), y, askWidth, page.Bold(fmt.Sprintf("%d  %s", i+1, a.Question)), size, page.AlignLeft)
		plain, said := answerText(a, r, exact)
		h := d.Place(middle, y, answerWidth(d), plain, size, page.AlignLeft)
		if len(said) > 0 {
			d.Place(middle, y+h+0.5, answerWidth(d), said, size-1.75, page.AlignLeft)
		}
		if a.Chance != nil {
			k := d.Place(sure, y, sureWidth, page.Plain(a.Chance.Lines()), size-1, page.AlignLeft)
			d.PlaceScene(sure, y+k+0.4, chanceBar(*a.Chance, sureWidth))
		}
		y += answerHeight(d, a, r, size, exact) + 2
	}
	d.Rule(d.Left(), y, d.Right(), 0.25)
	y += 1.8
	for _, t := range endLines(c) {
		y += d.Place(d.Left(), y, d.Right()-d.Left(), t, size-1, page.AlignLeft) + 1.2
	}
	d.MoveTo(y)
}

// exactBlocks are the exact wordings when page one has no room for them.
func exactBlocks(c *Content, r *refs) []block {
	b := []block{newPage{}, heading{1, "The answers said exactly", "exact"}}
	for _, a := range fiveAnswers(c) {
		if s := exactOf(a); s != "" {
			b = append(b, heading{3, a.Question, ""}, para{text: page.Plain(s), note: r.list("Workings ", a.Workings...)})
		}
	}
	return b
}
