package job

import (
	"context"
	"embed"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"sync"

	"slabwright/internal/table"
)

//go:embed testdata/cases
var caseFiles embed.FS

//go:embed testdata/cases/first_run.csv
var firstRunCSV string

// WholeCase is a case from published guidance as a whole job: plan, pour and what the
// walk found, with the cause that the guide names.
type WholeCase struct {
	ID       string   `json:"id"`
	Title    string   `json:"title"`
	Set      string   `json:"set"`      // textbook or authored
	Expected string   `json:"expected"` // cause, or "cannot tell"
	Also     []string `json:"also"`     // causes that the guide names beside it
	Rule     string   `json:"rule"`
	Guide    string   `json:"guide"`
	Known    string   `json:"known"`   // how the guide's rule is known
	Written  string   `json:"written"` // before or after the program was run on it
}

// WholeResult is what the whole chain says of a case.
type WholeResult struct {
	Case    WholeCase `json:"case"`
	Got     string    `json:"got"` // the cause in front
	Chance  float64   `json:"chance"`
	Answer  string    `json:"answer"`
	Decided bool      `json:"decided"`
	First   bool      `json:"first"` // the expected cause, or one named beside it, is in front; or it cannot be told, as expected
	Rank    int       `json:"rank"`  // of the expected cause, from 1
	Given   float64   `json:"given"` // chance given to the expected cause
}

// WholeTally counts the results of one set of cases.
type WholeTally struct {
	Set        string  `json:"set"`
	Cases      int     `json:"cases"`
	First      int     `json:"first"`     // the guide's cause, or one it names beside it, in front; "cannot tell" where that is expected
	Decided    int     `json:"decided"`   // and no "cannot tell yet"
	Right      int     `json:"right"`     // of those decided
	Undecided  int     `json:"undecided"` // cannot tell yet
	Stated     float64 `json:"stated"`    // mean chance given to the cause in front
	FirstAtRun int     `json:"first_run"` // of the set, when it was first run; the textbook cases have no first run
	Mended     int     `json:"mended"`    // faults of wiring that cases brought to light
	Known      string  `json:"known"`     // how the guides' rules are known
}

// tallyWhole counts the results set by set, in the order of the files' sets.
func tallyWhole(results []WholeResult) []WholeTally {
	var all []WholeTally
	at := map[string]int{}
	first := firstRuns()
	for _, r := range results {
		i, ok := at[r.Case.Set]
		if !ok {
			i = len(all)
			at[r.Case.Set] = i
			all = append(all, WholeTally{Set: r.Case.Set, Known: r.Case.Known})
		}
		all[i].count(r, first)
	}
	for i := range all {
		all[i].Stated /= float64(all[i].Cases)
	}
	return all
}

func (t *WholeTally) count(r WholeResult, first map[string]map[string]string) {
	t.Cases++
	t.Stated += r.Chance
	if r.First {
		t.First++
	}
	switch {
	case !r.Decided:
		t.Undecided++
	case r.First:
		t.Decided++
		t.Right++
	default:
		t.Decided++
	}
	run, ok := first[r.Case.ID]
	if !ok {
		return
	}
	if run["got"] == r.Case.Expected || slices.Contains(r.Case.Also, run["got"]) || r.Case.Expected == cannotTellCase && run["decided"] == "no" {
		t.FirstAtRun++
	}
	if run["mended"] != "" {
		t.Mended++
	}
}

// firstRuns are the results of the first run of each authored case.
func firstRuns() map[string]map[string]string {
	all := map[string]map[string]string{}
	for _, r := range table.Read("first_run.csv", firstRunCSV).Records() {
		all[r["id"]] = r
	}
	return all
}

// WholeCases reads every case.
func WholeCases() ([]WholeCase, error) {
	names, err := fs.Glob(caseFiles, "testdata/cases/*.json")
	if err != nil {
		return nil, err
	}
	var all []WholeCase
	for _, name := range names {
		data, err := caseFiles.ReadFile(name)
		if err != nil {
			return nil, err
		}
		var head struct {
			Case  WholeCase `json:"case"`
			Title string    `json:"title"`
		}
		if err := json.Unmarshal(data, &head); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		c := head.Case
		c.ID, c.Title = path.Base(name[:len(name)-len(".json")]), head.Title
		all = append(all, c)
	}
	return all, nil
}

// job reads the case's job.
func (c WholeCase) job() (*Job, error) {
	data, err := caseFiles.ReadFile("testdata/cases/" + c.ID + ".json")
	if err != nil {
		return nil, err
	}
	return Decode(data)
}

// run takes a case through the chain as any job, but for the alternatives and the
// report.
func (c WholeCase) run(ctx context.Context) (WholeResult, error) {
	out := WholeResult{Case: c}
	j, err := c.job()
	if err != nil {
		return out, err
	}
	d, err := begin(ctx, j, embed.FS{}, nil)
	if err != nil {
		return out, err
	}
	d.head()
	d.drawing()
	d.basis()
	if err := d.followPours(); err != nil {
		return out, err
	}
	d.holds()
	d.movement()
	if err := d.explainFindings(); err != nil {
		return out, err
	}
	ranking := d.sheets[0].ranking
	top := ranking.Top()
	out.Got, out.Chance, out.Answer, out.Decided = top.Cause, top.P, ranking.Answer, ranking.Decided
	for i, w := range ranking.All {
		if w.Cause == c.Expected {
			out.Rank, out.Given = i+1, w.P
		}
	}
	out.First = top.Cause == c.Expected || slices.Contains(c.Also, top.Cause)
	if c.Expected == cannotTellCase {
		out.First = !ranking.Decided
	}
	return out, nil
}

// cannotTellCase is the answer expected where too little is known.
const cannotTellCase = "cannot tell"

// wholeResults runs every case, a few at a time.
func wholeResults(ctx context.Context) ([]WholeResult, error) {
	cases, err := WholeCases()
	if err != nil {
		return nil, err
	}
	results, errs := make([]WholeResult, len(cases)), make([]error, len(cases))
	var group sync.WaitGroup
	turns := make(chan struct{}, caseWorkers)
	for i, c := range cases {
		group.Go(func() {
			turns <- struct{}{}
			results[i], errs[i] = c.run(ctx)
			<-turns
		})
	}
	group.Wait()
	for i, err := range errs {
		if err != nil {
			errs[i] = fmt.Errorf("case %s: %w", cases[i].ID, err)
		}
	}
	return results, errors.Join(errs...)
}

const caseWorkers = 2

// wholeAnswers are the results of every case, worked out once: they depend on nothing
// but the program.
var wholeAnswers = sync.OnceValues(func() ([]WholeResult, error) { return wholeResults(context.Background()) })
