package poursheet

import (
	"fmt"
	"strings"

	"slabwright/internal/page"
	"slabwright/plan"
)

// SVG returns the sheet with the plan as one svg element.
func (d Drawing) SVG() ([]byte, error) {
	s, err := d.Scene()
	if err != nil {
		return nil, err
	}
	return s.SVG(), nil
}

// PDF returns the sheet with the plan and, behind it, the schedules: joints by their
// points from the setting-out point, dowels, steel, quantities. The same facts give
// the same bytes.
func (d Drawing) PDF() ([]byte, error) {
	scene, err := d.Scene()
	if err != nil {
		return nil, err
	}
	return page.Build(d.paper(), d.Title.head("joint drawing"), func(doc *page.Document) {
		doc.Bookmark("Plan", 0)
		doc.PlaceScene(doc.Left(), doc.Y(), scene)
		doc.Break()
		d.schedules(doc)
	})
}

// listSize is the size of letters in the schedules, points.
const listSize = 9.5

func (d Drawing) schedules(doc *page.Document) {
	s := d.Schedule()
	u := d.Units.String()
	var rows [][]page.Text
	for _, j := range s.Joints {
		rows = append(rows, cells(j.ID, string(j.Kind), d.places(j.Points), d.Units.length(j.Length), d.depth(j), d.transfer(j), j.Name))
	}
	section(doc, "Joints, from the setting-out point", page.Table{Whole: true, Size: listSize, Rows: rows, Columns: []page.Column{{Head: "Joint", Share: 8}, {Head: "Kind", Share: 11},
		{Head: "Points (x, y), " + u, Share: 38}, {Head: "Length, " + u, Share: 10, Align: page.AlignRight}, {Head: "Saw depth, mm", Share: 10, Align: page.AlignRight},
		{Head: "Across it", Share: 22}, {Head: "Name", Share: 20}}})
	if skew := d.SkewJoints(); len(skew) > 0 {
		line(doc, page.Plain("Not square to the axes, so not among the running dimensions; set out by their points: "+strings.Join(skew, ", ")+"."), listSize, 2)
	}
	d.dowelTable(doc, s)
	d.steelTable(doc, s)
	d.barsTable(doc, s)
	d.panelTable(doc)
	rows = nil
	for _, t := range s.Totals {
		rows = append(rows, cells(t.What, figure(t.Amount, t.Unit), t.Unit))
	}
	section(doc, "Quantities", page.Table{Whole: true, Size: listSize, Bare: true, Rows: rows, Columns: []page.Column{{Share: 40}, {Share: 12, Align: page.AlignRight}, {Share: 48}}})
	for _, n := range d.Notes {
		doc.Bullet(page.Plain(n))
	}
}

// section sets a heading with its table, never parted from the table's start.
func section(doc *page.Document, heading string, t page.Table) {
	const headingRoom = 18
	doc.Keep(headingRoom + doc.TableStart(t))
	doc.WideHeading(1, heading, "")
	doc.Table(t)
}

func figure(v float64, unit string) string {
	if unit == "bars" || unit == "kg" {
		return fixed(v, 0)
	}
	return fixed(v, 1)
}

func cells(words ...string) []page.Text {
	row := make([]page.Text, len(words))
	for i, w := range words {
		row[i] = page.Plain(w)
	}
	return row
}

func (d Drawing) places(points []plan.Point) string {
	var words []string
	for _, p := range points {
		words = append(words, "("+d.Units.length(p.X)+", "+d.Units.length(p.Y)+")")
	}
	return strings.Join(words, " to ")
}

func (d Drawing) depth(j JointRow) string {
	if j.Kind != plan.Sawn {
		return "–"
	}
	if d.SawDepth == nil {
		return "not given"
	}
	return fixed(*d.SawDepth*1000, 0)
}

func (d Drawing) transfer(j JointRow) string {
	switch {
	case j.Dowels > 0:
		return count(j.Dowels, "dowel")
	case j.Transfer == "":
		return "not given"
	}
	return j.Transfer
}

// mm writes a length a bar or a saw is made to, or says that nobody gave it.
func mm(v *float64) string {
	if v == nil {
		return "not given"
	}
	return fixed(*v*1000, 0)
}

// panelTable lists the panels by the least rectangle round each.
func (d Drawing) panelTable(doc *page.Document) {
	var rows [][]page.Text
	for _, p := range d.Panels {
		rows = append(rows, cells(p.ID, d.Units.length(p.Length), d.Units.length(p.Width), fixed(p.Aspect, 2), fixed(p.Area, 1), fmt.Sprint(len(p.InsideCorners)), strings.Join(p.Joints(), ", ")))
	}
	u, right := d.Units.String(), page.AlignRight
	section(doc, "Panels", page.Table{Whole: true, Size: listSize, Rows: rows, Columns: []page.Column{{Head: "Panel", Share: 10}, {Head: "Long, " + u, Share: 12, Align: right}, {Head: "Wide, " + u, Share: 12, Align: right},
		{Head: "Long to wide", Share: 13, Align: right}, {Head: "Area, m²", Share: 11, Align: right}, {Head: "Inside corners", Share: 14, Align: right}, {Head: "Joints round it", Share: 45}}})
}

func (d Drawing) dowelTable(doc *page.Document, s Schedule) {
	if len(s.Dowels) == 0 {
		return
	}
	var rows [][]page.Text
	for _, r := range s.Dowels {
		n, m := fmt.Sprint(r.Count), "–"
		if r.Count == 0 {
			n = "not counted"
		}
		if r.Mass != nil {
			m = fixed(*r.Mass, 0)
		}
		rows = append(rows, cells(strings.Join(r.Joints, ", "), mm(r.Diameter), mm(r.Length), mm(r.Spacing), mm(r.Clear), or(r.FreeAlong, "not given"), or(r.FreeSide, "not given"), n, m))
	}
	right := page.AlignRight
	section(doc, "Dowels", page.Table{Whole: true, Size: listSize, Rows: rows, Columns: []page.Column{{Head: "Joints", Share: 25}, {Head: "Diameter, mm", Share: 14, Align: right},
		{Head: "Length, mm", Share: 11, Align: right}, {Head: "Spacing, mm", Share: 11, Align: right}, {Head: "Clear of crossing, mm", Share: 13, Align: right},
		{Head: "One half free along it", Share: 13}, {Head: "Free sideways", Share: 11}, {Head: "Count", Share: 11, Align: right}, {Head: "Mass, kg", Share: 10, Align: right}}})
}

// barsTable lists the bars across inside corners, corner by corner.
func (d Drawing) barsTable(doc *page.Document, s Schedule) {
	if len(s.Bars) == 0 {
		return
	}
	var rows [][]page.Text
	for _, r := range s.Bars {
		m := "–"
		if r.Mass != nil {
			m = fixed(*r.Mass, 1)
		}
		rows = append(rows, cells(r.ID, d.places([]plan.Point{r.At}), fixed(r.Angle, 0), fmt.Sprint(r.Count), mm(r.Diameter), mm(r.Length), mm(r.Spacing), m, r.Note))
	}
	right := page.AlignRight
	section(doc, "Bars across inside corners", page.Table{Whole: true, Size: listSize, Rows: rows, Columns: []page.Column{{Head: "Bars", Share: 8}, {Head: "Corner (x, y), " + d.Units.String(), Share: 20},
		{Head: "Direction, degrees", Share: 12, Align: right}, {Head: "Count", Share: 8, Align: right}, {Head: "Diameter, mm", Share: 11, Align: right}, {Head: "Length, mm", Share: 11, Align: right},
		{Head: "Apart, mm", Share: 9, Align: right}, {Head: "Mass, kg", Share: 9, Align: right}, {Head: "Why", Share: 40}}})
	line(doc, page.Plain("At half the depth, the first 50 mm from the corner. They keep a crack narrow; they do not stop it."), listSize, 2)
}

func (d Drawing) steelTable(doc *page.Document, s Schedule) {
	if len(s.Steel) == 0 {
		return
	}
	var rows [][]page.Text
	guessed := false
	for _, r := range s.Steel {
		m := "–"
		if r.Mass != nil {
			m = fixed(*r.Mass, 0)
		}
		length := fixed(r.Length, 0)
		if !r.Counted {
			length, guessed = length+" *", true
		}
		rows = append(rows, cells(or(r.Name, r.ID), mm(r.Diameter), mm(r.PitchX)+" × "+mm(r.PitchY), mm(r.Cover), or(r.AtJoints, "not given"), fixed(r.Area, 1), length, m))
	}
	right := page.AlignRight
	section(doc, "Mesh and bars", page.Table{Whole: true, Size: listSize, Rows: rows, Columns: []page.Column{{Head: "Steel", Share: 21}, {Head: "Diameter, mm", Share: 14, Align: right},
		{Head: "Pitch, mm", Share: 15, Align: right}, {Head: "Cover to top bar, mm", Share: 13, Align: right}, {Head: "At joints", Share: 13}, {Head: "Area, m²", Share: 10, Align: right},
		{Head: "Bars in all, m", Share: 12, Align: right}, {Head: "Mass, kg", Share: 10, Align: right}}})
	words := "Laps are not counted."
	if guessed {
		words += " * By area over pitch: where the bars lie is not known."
	}
	line(doc, page.Plain(words), listSize, 2)
}
