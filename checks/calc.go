package checks

import (
	"context"
	"fmt"
	"time"

	"slabwright/working"
)

// Head is the title block of a calculation.
type Head struct {
	Job       string    `json:"job"`     // number or name of the job
	Calc      string    `json:"calc_no"` // number of the calculation
	Title     string    `json:"title"`   // of the job
	Subject   string    `json:"subject"` // what is worked out
	Revision  string    `json:"revision"`
	By        string    `json:"by"`
	Date      time.Time `json:"date"`       // of the calculation; zero: left to be filled in
	CheckedBy string    `json:"checked_by"` // left to be filled in by hand when empty
	CheckedOn time.Time `json:"checked_on"`
	Version   string    `json:"version"` // of the program
	DataHash  string    `json:"data_hash"`
	Draft     bool      `json:"draft"`
}

// Calc is a calculation as it is handed over: title block, what it stands on, the
// checks with their workings, and what moves when a number is wrong.
type Calc struct {
	Head        Head         `json:"head"`
	Purpose     string       `json:"purpose"`
	Basis       []string     `json:"basis"` // editions and methods, a sentence each
	Code        string       `json:"code"`
	Sketch      Sketch       `json:"sketch"`
	Assumptions []Assumption `json:"assumptions"`
	Rows        []Row        `json:"rows"`
	Sheets      []Sheet      `json:"sheets"`
	LeftOut     []LeftOut    `json:"left_out,omitempty"`
	Least       *Least       `json:"least_thickness,omitempty"`
	Cautions    []string     `json:"cautions"`
}

// Sketch is what a drawing of the slab and its loads needs.
type Sketch struct {
	Thickness float64  `json:"thickness_m"`
	Length    float64  `json:"length_m"`
	Width     float64  `json:"width_m"`
	Transfer  Transfer `json:"transfer"`
	Base      string   `json:"base"`
	Loads     []Mark   `json:"loads"`
}

// Mark is one load at one place of the panel.
type Mark struct {
	ID    string `json:"id"`
	Kind  Kind   `json:"kind"`
	Place Place  `json:"place"`
}

// Sheet is one working with its number on paper.
type Sheet struct {
	Number string `json:"number"` // "4.2"
	working.Sheet
}

// Least is the least thickness that meets every check of the loads.
type Least struct {
	Thickness float64 `json:"thickness_m"` // 0: even the thickest does not
	Governs   string  `json:"governs"`     // the check that asks for it
	Used      float64 `json:"used"`
}

// NewCalc makes every check of an input and tries every number it stands on.
func NewCalc(ctx context.Context, head Head, in Input) (*Calc, error) {
	result, err := Run(ctx, in)
	if err != nil {
		return nil, err
	}
	c := &Calc{Head: head, Code: result.Code, Rows: result.Rows, Sheets: numbered(result), LeftOut: result.LeftOut,
		Purpose: fmt.Sprintf("To check a slab on ground of %s mm for the loads and the use given, and its joints, steel, ground and surface.", working.Figure(1000*in.Slab.Thickness.Value, 3)),
		Basis:   basisOf(in), Cautions: cautions}
	c.Sketch = Sketch{in.Slab.Thickness.Value, in.Slab.Length.Value, in.Slab.Width.Value, in.Joint.Transfer, in.Ground.Base, nil}
	for i := range in.Loads {
		for _, p := range in.Loads[i].places(in.Joint) {
			c.Sketch.Loads = append(c.Sketch.Loads, Mark{in.Loads[i].ID, in.Loads[i].Kind, p})
		}
	}
	if c.Assumptions, err = Assumptions(ctx, in); err != nil {
		return nil, err
	}
	if len(in.Loads) > 0 {
		thickness, row, ok, err := LeastThickness(ctx, in)
		if err != nil {
			return nil, err
		}
		c.Least = &Least{thickness, row.Check, row.Utilisation}
		if !ok {
			c.Least.Thickness = 0
		}
	}
	return c, nil
}

// numbered puts the sheets in the order of the rows, what several use first, and
// numbers them within the groups.
func numbered(r Result) []Sheet {
	group := map[string]string{}
	for _, row := range r.Rows {
		group[row.Sheet] = row.Group
	}
	var sheets []Sheet
	chapter := 0
	for _, g := range append([]string{""}, Groups...) {
		n := 0
		for _, s := range r.Sheets {
			if group[s.ID] != g {
				continue
			}
			if n == 0 {
				chapter++
			}
			n++
			sheets = append(sheets, Sheet{fmt.Sprintf("%d.%d", chapter, n), s})
		}
	}
	return sheets
}

// Failed counts the checks that are not met.
func (c *Calc) Failed() int {
	n := 0
	for _, r := range c.Rows {
		if !r.Pass {
			n++
		}
	}
	return n
}

// Number is the number of a sheet on paper.
func (c *Calc) Number(sheet string) string {
	for _, s := range c.Sheets {
		if s.ID == sheet {
			return s.Number
		}
	}
	return ""
}

func basisOf(in Input) []string {
	basis := []string{in.Code.Title + ".",
		"Stresses of single loads by Westergaard; neighbours, curl and line loads by the plate and beam on springs.",
		"Numbers are kept in full and printed to three or four figures; nothing is rounded between lines.",
		"Sources say how each is known: read, seen in an excerpt, or from memory. What is from memory is to be looked up before it is relied on."}
	if in.Code.Key == "EN" {
		basis = append(basis, "Bending in use against the strength that 1 in 20 falls below; folding along yield lines with the factors of TR34.")
	}
	return basis
}

// cautions stand on every calculation.
var cautions = []string{
	"Local codes and a licensed engineer decide. The models hold for slabs of even thickness on ground that acts as springs.",
	"Services, heating pipes and tendons in the slab come before any coring or sawing.",
}
