package job

import (
	"slabwright/causes"
	"slabwright/checks"
	"slabwright/climate"
	"slabwright/concrete"
	"slabwright/earlyage"
	"slabwright/flexure"
	"slabwright/ground"
	"slabwright/layout"
	"slabwright/remedies"
	"slabwright/restraint"
	"slabwright/source"
	"slabwright/steel"
	"slabwright/unit"
)

// Proof is every published row and textbook case beside what the program gives.
type Proof struct {
	Tables         []ProofTable        `json:"tables"`
	Cases          []causes.CaseResult `json:"cases"`
	Rows           int                 `json:"rows"`
	RowsFailed     int                 `json:"rows_failed"`
	CasesFirst     int                 `json:"cases_first"`     // accepted cause first and decided
	CasesUndecided int                 `json:"cases_undecided"` // cannot tell yet
	CasesOther     int                 `json:"cases_other"`     // another cause first
	Whole          []WholeResult       `json:"whole_cases"`     // cases as whole jobs, through the whole chain
	WholeSets      []WholeTally        `json:"whole_sets"`
	WholeFault     string              `json:"whole_fault,omitempty"` // why some could not be run
}

// ProofTable is one published source.
type ProofTable struct {
	Package string          `json:"package"`
	File    string          `json:"file"`
	Source  string          `json:"source"`
	Rows    []source.Result `json:"rows"`
}

// Failed returns how many rows are not met.
func (t ProofTable) Failed() int {
	n := 0
	for _, r := range t.Rows {
		if !r.OK {
			n++
		}
	}
	return n
}

// Failed returns how many rows and cases are not met.
func (p Proof) Failed() int { return p.RowsFailed + p.CasesOther }

// proofs are the packages that hold published rows.
var proofs = []struct {
	name string
	rows func() []source.Result
}{
	{"unit", unit.Checks}, {"climate", climate.Checks}, {"concrete", concrete.Checks}, {"steel", steel.Checks},
	{"ground", ground.Checks}, {"earlyage", earlyage.Checks}, {"restraint", restraint.Checks}, {"flexure", flexure.Checks},
	{"causes", causes.Checks}, {"layout", layout.Checks}, {"remedies", remedies.Checks}, {"checks", checks.Checks},
}

// Prove compares the program with every published row and textbook case, and runs the
// cases that are whole jobs.
func Prove() Proof {
	p := proveRows()
	whole, err := wholeAnswers()
	if err != nil {
		p.WholeFault = err.Error()
	}
	p.Whole, p.WholeSets = whole, tallyWhole(whole)
	return p
}

func proveRows() Proof {
	p := Proof{Cases: causes.CaseResults()}
	for _, from := range proofs {
		at := map[string]int{}
		for _, r := range from.rows() {
			i, ok := at[r.File]
			if !ok {
				i = len(p.Tables)
				at[r.File] = i
				p.Tables = append(p.Tables, ProofTable{Package: from.name, File: r.File, Source: r.Source})
			}
			p.Tables[i].Rows = append(p.Tables[i].Rows, r)
			p.Rows++
			if !r.OK {
				p.RowsFailed++
			}
		}
	}
	for _, c := range p.Cases {
		switch {
		case c.OK && c.Decided:
			p.CasesFirst++
		case !c.Decided:
			p.CasesUndecided++
		default:
			p.CasesOther++
		}
	}
	return p
}
