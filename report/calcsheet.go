package report

import (
	"fmt"
	"strings"
	"time"

	"slabwright/checks"
	"slabwright/internal/page"
	"slabwright/working"
)

// CalcPDF returns a calculation as it goes to a checker, on A4: title block on every
// page, purpose, basis, assumptions with what moves when one is wrong, sketch, the
// workings in three columns (reference, formula with numbers and answer, result), and
// the summary with what is used and whether it is met. The same calculation gives the
// same bytes.
func CalcPDF(c *checks.Calc) ([]byte, error) { return CalcPDFOn(c, page.A4) }

// CalcPDFOn returns the calculation on the given paper.
func CalcPDFOn(c *checks.Calc, on page.Paper) ([]byte, error) {
	return page.Build(on, calcHead(c), func(d *page.Document) {
		d.WideHeading(2, c.Head.Subject, "calc")
		d.Wide(page.Join(page.Bold("Purpose. "), page.Plain(c.Purpose)))
		d.Wide(page.Join(page.Bold("Outcome. "), calcOutcome(c)))
		calcBasis(d, c)
		calcAssumptions(d, c)
		calcSketch(d, c)
		calcWorkings(d, c)
		calcSummary(d, c)
		calcReferences(d, c)
	})
}

// calcHead is the document's head; the title block is drawn on each page.
func calcHead(c *checks.Calc) page.Head {
	made := c.Head.Date
	if made.IsZero() {
		made = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) // a date of its own, never the clock's
	}
	foot := "slabwright " + or(c.Head.Version, "–")
	if c.Head.DataHash != "" {
		foot += " · data " + c.Head.DataHash[:min(12, len(c.Head.DataHash))]
	}
	return page.Head{Title: c.Head.Subject, Author: c.Head.By, Subject: "Calculation " + c.Head.Calc + ", " + c.Head.Title, Language: "en",
		Foot: foot, Draft: c.Head.Draft, Created: made, Top: calcMasthead(c)}
}

// calcMasthead is the title block: job, calculation, subject, revision, by and date,
// checked by and date, page n of m.
func calcMasthead(c *checks.Calc) *page.Masthead {
	const height, row = 24.0, 9.0
	h := c.Head
	return &page.Masthead{Height: height, Draw: func(d *page.Document) {
		x0, x1, y := d.Left(), d.Right(), d.Y()
		width := x1 - x0
		at := func(share float64) float64 { return x0 + share*width }
		field := func(share float64, row0 float64, label, words string, limit float64) {
			x := at(share) + 1.2
			d.PlaceLine(x, y+row0+2.7, page.Run{Words: label, Quiet: true}, 6.2)
			d.PlaceLine(x, y+row0+7, page.Run{Words: fitted(d, words, (limit-share)*width-2.4), Bold: true}, 8.8)
		}
		field(0, 0, "Job", strings.TrimSpace(h.Job+"  "+h.Title), 0.60)
		field(0.60, 0, "Calculation", h.Calc, 0.72)
		field(0.72, 0, "Revision", or(h.Revision, "DRAFT"), 0.84)
		field(0.84, 0, "Page", fmt.Sprintf("%d of %d", d.Page(), d.Pages()), 1)
		field(0, row, "Subject", h.Subject, 0.44)
		field(0.44, row, "By", h.By, 0.60)
		field(0.60, row, "Date", dateOf(h.Date), 0.72)
		field(0.72, row, "Checked by", h.CheckedBy, 0.88)
		field(0.88, row, "Date", dateOf(h.CheckedOn), 1)
		for _, level := range []float64{0, row, 2 * row} {
			d.Rule(x0, y+level, x1, 0.25)
		}
		for _, share := range []float64{0, 1} {
			d.Upright(at(share), y, y+2*row, 0.25)
		}
		for _, share := range []float64{0.60, 0.72, 0.84} {
			d.Upright(at(share), y, y+row, 0.12)
		}
		for _, share := range []float64{0.44, 0.60, 0.72, 0.88} {
			d.Upright(at(share), y+row, y+2*row, 0.12)
		}
	}}
}

// fitted cuts words to a width in mm, with an ellipsis.
func fitted(d *page.Document, words string, width float64) string {
	const size = 8.8
	letters := []rune(words)
	for n := len(letters); n > 0; n-- {
		s := string(letters[:n])
		if n < len(letters) {
			s = strings.TrimRight(s, " ,") + "…"
		}
		if d.Width(page.Run{Words: s, Bold: true}, size) <= width {
			return s
		}
	}
	return ""
}

func dateOf(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format("2 Jan 2006")
}

// calcOutcome says in a line or two how the checks come out.
func calcOutcome(c *checks.Calc) page.Text {
	failed := c.Failed()
	t := page.Plain(fmt.Sprintf("%d checks: %d met, ", len(c.Rows), len(c.Rows)-failed))
	switch {
	case failed == 0:
		t = page.Plain(fmt.Sprintf("%d checks, all met.", len(c.Rows)))
	default:
		t = page.Join(t, page.Bold(fmt.Sprintf("%d not met ▲", failed)), page.Plain("."))
	}
	if w := worstRow(c.Rows); w != nil {
		t = page.Join(t, page.Plain(fmt.Sprintf(" The heaviest used is “%s”: %s times what there is.", w.Check, used(w.Utilisation))))
	}
	if c.Least != nil {
		if c.Least.Thickness > 0 {
			t = page.Join(t, page.Plain(fmt.Sprintf(" Bending, curl, folding, fatigue and punching ask for a thickness of %s"+thin+"mm, by “%s”.", working.Figure(1000*c.Least.Thickness, 3), c.Least.Governs)))
		} else {
			t = page.Join(t, page.Plain(fmt.Sprintf(" Not even 600"+thin+"mm meets “%s” with these joints and loads.", c.Least.Governs)))
		}
	}
	return t
}

func worstRow(rows []checks.Row) *checks.Row {
	var worst *checks.Row
	for i := range rows {
		if worst == nil || rows[i].Utilisation > worst.Utilisation {
			worst = &rows[i]
		}
	}
	return worst
}

// used writes a utilisation: to two decimals, or to three figures when it is far off.
func used(u float64) string {
	if u < 10 {
		return fmt.Sprintf("%.2f", u)
	}
	return working.Figure(u, 3)
}

// calcBasis sets editions, methods and units.
func calcBasis(d *page.Document, c *checks.Calc) {
	d.WideHeading(3, "Basis", "calc-basis")
	d.Wide(page.Plain(strings.Join(c.Basis, " ")))
	d.Wide(page.Join(page.Bold("Units. "), page.Plain("Loads kN, lengths mm and m, stresses and moduli MPa (N/mm²), support of the ground N/mm³ (1 N/mm³ = 1000 MN/m³), moments per width kN·m/m, steel mm²/m, temperatures K, shortening µε (millionths). A thousand in a formula turns kN into N or m into mm.")))
	d.Wide(page.Quiet(strings.Join(c.Cautions, " ")))
}
