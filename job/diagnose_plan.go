package job

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"sort"
	"strings"

	"slabwright/plan"
	"slabwright/report"
	"slabwright/site"
	"slabwright/source"
)

// head fills the title block.
func (d *diagnosis) head() {
	j := d.job
	h := report.Head{Job: j.ID, Number: j.Number, Title: j.Title, Client: j.Client, Place: j.Place.Name,
		SlabID: d.slab.ID, SlabName: d.slab.Name, Author: j.Author, Revision: j.Revision, Zone: j.Place.Zone,
		Version: ProgramVersion, DataHash: d.hash(), Seed: j.Basis.Seed}
	if h.Revision == "" {
		h.Revision = "DRAFT"
	}
	if w := d.lastWalk(); w != nil {
		h.Looked, h.LookedBy = w.Date, w.By
	}
	d.content.Head = h
}

// hash returns the SHA-256 of everything the answers stand on: job.json and the
// weather files, in the order of their names.
func (d *diagnosis) hash() string {
	sum := sha256.New()
	names := []string{"job.json"}
	entries, _ := fs.ReadDir(d.files, "weather")
	for _, e := range entries {
		names = append(names, "weather/"+e.Name())
	}
	sort.Strings(names)
	for _, name := range names {
		if data, err := fs.ReadFile(d.files, name); err == nil {
			sum.Write([]byte(name + "\n"))
			sum.Write(data)
		}
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// drawing fills the plan: panels, bars, dowels, pours, what could not be seen.
func (d *diagnosis) drawing() {
	v := report.PlanView{Slab: d.slab, Panels: d.panels}
	for _, p := range d.panels {
		v.Area += p.Area
	}
	for _, p := range d.job.Pours {
		v.Pours = append(v.Pours, report.PourArea{ID: p.ID, Name: p.Name, Area: p.Area, Start: p.Start})
	}
	if w := d.lastWalk(); w != nil {
		v.Unseen = w.Unseen
	}
	for _, z := range d.slab.Steel {
		for _, b := range d.slab.BarLines(z) {
			v.BarLines = append(v.BarLines, [2]plan.Point{b.From, b.To})
		}
	}
	for _, j := range d.slab.Joints {
		for _, b := range d.slab.DowelBars(j) {
			v.DowelBars = append(v.DowelBars, report.DowelBar{Joint: j.ID, From: b.From, To: b.To})
		}
	}
	d.content.Plan = v
}

func (d *diagnosis) joint(id string) *plan.Joint {
	for i := range d.slab.Joints {
		if d.slab.Joints[i].ID == id {
			return &d.slab.Joints[i]
		}
	}
	return nil
}

func (d *diagnosis) fixtureName(id string) string {
	for _, f := range d.slab.Fixtures {
		if f.ID == id {
			if f.Name != "" {
				return f.Name
			}
			return string(f.Kind) + " " + f.ID
		}
	}
	return id
}

func (d *diagnosis) fixtureKind(id string) plan.FixtureKind {
	for _, f := range d.slab.Fixtures {
		if f.ID == id {
			return f.Kind
		}
	}
	return ""
}

// cornerName names an inside corner for a sentence.
func (d *diagnosis) cornerName(fixture string) string {
	if fixture == "" {
		return "of the outline"
	}
	return "of the " + d.fixtureName(fixture)
}

func (d *diagnosis) jointMiddle(id string) plan.Point {
	j := d.joint(id)
	if j == nil || len(j.Path) == 0 {
		return plan.Point{}
	}
	a, b := j.Path[0], j.Path[len(j.Path)-1]
	return plan.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
}

// cutOf returns the sawing record of a joint, or nil.
func (d *diagnosis) cutOf(joint string) *site.Cut {
	if joint == "" {
		return nil
	}
	for i := range d.job.Pours {
		for k := range d.job.Pours[i].Saw {
			if c := &d.job.Pours[i].Saw[k]; c.Joint == joint {
				return c
			}
		}
	}
	return nil
}

// latestCut returns the last cut among the sawn sides of a panel, or nil.
func (d *diagnosis) latestCut(panel string) *site.Cut {
	var last *site.Cut
	for _, p := range d.panels {
		if p.ID != panel {
			continue
		}
		for _, s := range p.Sides {
			if c := d.cutOf(s.Joint); c != nil && c.Start != nil && (last == nil || c.Start.After(*last.Start)) {
				last = c
			}
		}
	}
	return last
}

// cover returns the cover to the top steel, or nil when nobody measured it.
func (d *diagnosis) cover() *source.Fact {
	for _, z := range d.slab.Steel {
		if z.Cover != nil {
			return z.Cover
		}
	}
	return nil
}

func (d *diagnosis) exposure() string {
	if d.job.Place.Exposure.Is("indoor") {
		return "indoor"
	}
	return "external"
}

func (d *diagnosis) frost() bool {
	f := d.job.Place.Frost
	return f != nil && f.Value != "none"
}

// exposureState is the exposure as the ranking names it.
func (d *diagnosis) exposureState() *source.Choice {
	p := d.job.Place
	if p.Exposure.Is("indoor") {
		return &source.Choice{Value: "indoor", Known: p.Exposure.Known}
	}
	if p.Frost == nil {
		return nil
	}
	words := map[string]string{"none": "outdoor-no-frost", "frost": "outdoor-frost", "frost and salt": "frost-and-salt"}
	if w, ok := words[p.Frost.Value]; ok {
		return &source.Choice{Value: w, Known: p.Frost.Known}
	}
	return nil
}

// groundState is the ground's condition as the ranking names it.
func (d *diagnosis) groundState() *source.Choice {
	c := d.job.Ground.Condition
	if c == nil {
		return nil
	}
	for word, state := range groundStates {
		if strings.EqualFold(c.Value, word) {
			return &source.Choice{Value: state, Known: c.Known}
		}
	}
	return nil
}

// groundStates are the words of a job for what the ranking knows of the ground.
var groundStates = map[string]string{"uniform": "uniform", "fill or trench": "fill-trench-soft",
	"expansive": "expansive-or-leak", "frost susceptible": "frost-susceptible"}
