package job

import (
	"fmt"
	"io/fs"
	"sort"
	"strings"
	"time"

	"slabwright/internal/page"
	"slabwright/plan"
	"slabwright/poursheet"
	"slabwright/report"
	"slabwright/site"
)

// SheetFile is one finished sheet.
type SheetFile struct {
	Name string // "cut-sheet-A.pdf"
	Data []byte
}

// SheetOptions say how the sheets are made.
type SheetOptions struct {
	Made  time.Time // date in the title block; zero: left to be written in
	Paper page.Paper
	Units poursheet.Units
	Early bool // times for an early-entry saw instead of a wet one
}

// sheetTitle is the title block of the job's sheets. The date is given, never the
// clock's, so that the same job gives the same bytes.
func (j *Job) sheetTitle(files fs.FS, made time.Time) poursheet.Title {
	t := poursheet.Title{Number: j.Number, Job: j.Title, Client: j.Client, Place: j.Place.Name, Drawn: j.Author, Revision: j.Revision,
		Zone: j.Place.Zone, Version: ProgramVersion, DataHash: (&diagnosis{files: files}).hash(), Made: made}
	if len(j.Slabs) > 0 {
		t.Slab = j.Slabs[0].Name
		if t.Slab == "" {
			t.Slab = j.Slabs[0].ID
		}
	}
	return t
}

// JointDrawing returns the joint drawing of the job's first slab.
func (j *Job) JointDrawing(files fs.FS, made time.Time) (poursheet.Drawing, error) {
	if len(j.Slabs) == 0 {
		return poursheet.Drawing{}, NotKnown{"the job has no slab to draw yet: give its outline in slabs[0].outline_m, or take it from a drawing with \"slabwright draw --from FILE\""}
	}
	slab := j.Slabs[0]
	panels, err := slab.Panels()
	if err != nil {
		return poursheet.Drawing{}, fmt.Errorf("the slab cannot be divided into panels: %w", err)
	}
	d := poursheet.Drawing{Title: j.sheetTitle(files, made), Slab: slab, Panels: panels}
	if f := j.Planned.SawDepth; f != nil {
		d.SawDepth = &f.Value
	}
	return d, nil
}

// Sheets makes every sheet the job's facts allow: the joint drawing in four forms, the
// cut sheet and the go or hold sheet of each pour, the duty table, the inspection
// list, the notes for the specification and the cut windows as a calendar. The content
// is that of [PourDays]. The words say what was left out and why.
func (j *Job) Sheets(files fs.FS, c *report.Content, o SheetOptions) ([]SheetFile, []string, error) {
	m := sheetMaker{j: j, c: c, o: o, title: j.sheetTitle(files, o.Made)}
	if err := m.drawings(files); err != nil {
		return nil, nil, err
	}
	m.duties()
	m.everyPour()
	m.given()
	if m.err != nil {
		return nil, nil, m.err
	}
	return m.out, m.left, nil
}

type sheetMaker struct {
	j      *Job
	c      *report.Content
	o      SheetOptions
	title  poursheet.Title
	panels []plan.Panel
	holds  []poursheet.Duty
	out    []SheetFile
	left   []string
	err    error
}

// keep adds a finished sheet, or remembers the first thing that went wrong.
func (m *sheetMaker) keep(name string, data []byte, err error) {
	if err != nil {
		if m.err == nil {
			m.err = fmt.Errorf("%s: %w", name, err)
		}
		return
	}
	m.out = append(m.out, SheetFile{name, data})
}

func (m *sheetMaker) drawings(files fs.FS) error {
	d, err := m.j.JointDrawing(files, m.o.Made)
	if err != nil {
		return err
	}
	m.panels = d.Panels
	d.Units, d.Paper = m.o.Units, m.o.Paper
	for _, form := range []struct {
		name string
		make func() ([]byte, error)
	}{{"joints.pdf", d.PDF}, {"joints.svg", d.SVG}, {"joints.dxf", d.DXF}, {"joints.csv", d.CSV}} {
		data, err := form.make()
		m.keep(form.name, data, err)
	}
	return nil
}

// crewPaper is the sheet for the hand: half the drawing's where that is large.
func (m *sheetMaker) crewPaper() page.Paper {
	if m.o.Paper == page.Letter || m.o.Paper == page.Tabloid {
		return page.Letter
	}
	return page.A4
}

// duties lists who does what: the usual duties with the names the job gives, then
// the job's own.
func (m *sheetMaker) duties() {
	m.holds = poursheet.Duties()
	var given []site.Duty
	if m.j.Day != nil {
		given = m.j.Day.Duties
	}
	for _, g := range given {
		usual := false
		for i := range m.holds {
			if m.holds[i].Key == g.What {
				m.holds[i].Name, m.holds[i].Ring, usual = g.Name, g.Ring, true
			}
		}
		if !usual {
			m.holds = append(m.holds, poursheet.Duty{What: g.What, Name: g.Name, Ring: g.Ring})
		}
	}
	for i := range m.holds {
		m.holds[i].Hint = m.partyOf(site.Role(m.holds[i].Hint))
	}
	s := poursheet.DutySheet{Title: m.title, Paper: m.crewPaper(), Pour: m.title.Slab, Duties: m.holds}
	data, err := s.PDF()
	m.keep("duties.pdf", data, err)
}

// partyOf names the party that plays a part, or the part itself.
func (m *sheetMaker) partyOf(role site.Role) string {
	for _, p := range m.j.Parties {
		for _, r := range p.Does {
			if r == role {
				return p.Name
			}
		}
	}
	return string(role)
}

// rings is a person with the number to ring, empty where nobody holds the duty.
func (m *sheetMaker) rings(key string) string {
	for _, d := range m.holds {
		if d.Key == key && d.Name != "" {
			return strings.TrimSpace(d.Name + " " + d.Ring)
		}
	}
	return ""
}

func (m *sheetMaker) everyPour() {
	for i := range m.j.Pours {
		pour := &m.j.Pours[i]
		day := m.dayOf(pour.ID)
		if day == nil || pour.Start == nil {
			m.left = append(m.left, fmt.Sprintf("Pour %s has no start, so it has no cut sheet and no go or hold sheet.", named(pour.Name, pour.ID)))
			continue
		}
		if cut := m.cutSheet(pour, day); len(cut.Lines) > 0 {
			data, err := cut.PDF()
			m.keep("cut-sheet-"+slug(pour.ID)+".pdf", data, err)
		} else {
			m.left = append(m.left, fmt.Sprintf("Pour %s has no sawn joint within its area, so it has no cut sheet.", named(pour.Name, pour.ID)))
		}
		data, err := m.goSheet(pour, day).PDF()
		m.keep("go-or-hold-"+slug(pour.ID)+".pdf", data, err)
	}
}

func (m *sheetMaker) dayOf(id string) *report.PourDay {
	for i := range m.c.Pours {
		if m.c.Pours[i].ID == id {
			return &m.c.Pours[i]
		}
	}
	return nil
}

func named(name, id string) string {
	if name != "" {
		return name
	}
	return id
}

// cutSheet lists the sawn joints of a pour with their windows, in the order in which
// they are best cut.
func (m *sheetMaker) cutSheet(pour *site.Pour, day *report.PourDay) poursheet.CutSheet {
	s := poursheet.CutSheet{Slab: m.j.Slabs[0], Area: pour.Area, Title: m.title, Paper: m.crewPaper(), Pour: named(pour.Name, pour.ID), Start: pour.Start, End: pour.End, Saw: "a wet saw",
		Decide: m.rings("saw"), Spare: m.rings("spare"), Ring: m.rings("decide")}
	if m.o.Early {
		s.Saw = "an early-entry saw"
	}
	order := map[string]int{}
	for _, joint := range m.sawnIn(pour) {
		line, place := m.cutLine(joint, pour, day)
		order[joint.ID] = place
		s.Lines = append(s.Lines, line)
	}
	sort.SliceStable(s.Lines, func(a, b int) bool { return order[s.Lines[a].Joints[0]] < order[s.Lines[b].Joints[0]] })
	if f := m.j.Planned.SawDepth; f == nil {
		s.Notes = append(s.Notes, "Depth not given: ask before cutting. A quarter of the thickness is common practice for a wet saw.")
	}
	return s
}

// sawnIn returns the sawn joints whose middle lies in the pour.
func (m *sheetMaker) sawnIn(pour *site.Pour) []plan.Joint {
	var sawn []plan.Joint
	for _, joint := range m.j.Slabs[0].Joints {
		path := plan.Polyline(joint.Path)
		if at, _ := path.At(path.Length() / 2); joint.Kind == plan.Sawn && len(path) > 1 && plan.Ring(pour.Area).Contains(at) {
			sawn = append(sawn, joint)
		}
	}
	return sawn
}

// cutLine puts together the windows of the panels on both sides of a joint: it opens
// with the later one and closes with the earlier. The place is its turn in the order
// of cutting.
func (m *sheetMaker) cutLine(joint plan.Joint, pour *site.Pour, day *report.PourDay) (poursheet.CutLine, int) {
	line := poursheet.CutLine{Joints: []string{joint.ID}, Length: plan.Polyline(joint.Path).Length(), Placed: *pour.Start}
	if f := m.j.Planned.SawDepth; f != nil {
		line.Depth = &f.Value
	}
	place, found := 1<<30, false
	for _, w := range day.Panels {
		panel := plan.PanelByID(m.panels, w.Panel)
		if panel == nil || !has(panel.Joints(), joint.ID) {
			continue
		}
		window := w.Wet
		if m.o.Early {
			window = w.Early
		}
		if !found || w.Placed.After(line.Placed) {
			line.Placed = w.Placed
		}
		found, place = true, min(place, w.Order)
		narrow(&line, window)
	}
	if !found {
		narrow(&line, m.ofPour(day))
	}
	line.Never = line.Opens != nil && line.Closes != nil && !line.Closes.After(*line.Opens)
	return line, place
}

func (m *sheetMaker) ofPour(day *report.PourDay) report.Window {
	if m.o.Early && day.Early != nil {
		return *day.Early
	}
	return day.Window
}

// narrow makes a line's window no wider than another.
func narrow(line *poursheet.CutLine, w report.Window) {
	if w.Opens != nil && (line.Opens == nil || w.Opens.After(*line.Opens)) {
		line.Opens = w.Opens
	}
	if w.Closes != nil && (line.Closes == nil || w.Closes.Before(*line.Closes)) {
		line.Closes = w.Closes
	}
}

func has(words []string, word string) bool {
	for _, w := range words {
		if w == word {
			return true
		}
	}
	return false
}
