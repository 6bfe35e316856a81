package job

import (
	_ "embed"
	"fmt"
	"reflect"
	"strings"

	"slabwright/causes"
	"slabwright/internal/table"
)

//go:embed references.csv
var referencesCSV string

// reference is a field that holds an id or names one.
type reference struct {
	isID bool
	what string
}

var references = readReferences()

func readReferences() map[string]reference {
	byField := map[string]reference{}
	for _, row := range table.Read("references.csv", referencesCSV).Rows {
		byField[row[0]] = reference{isID: row[1] == "id", what: row[2]}
	}
	return byField
}

// index is the ids of one kind of thing in one scope.
type index struct {
	first map[string]string // id to the field that had it first
	names []string
}

// checkIDs reports ids that are missing or used twice, and names that no id
// answers to.
func (j *Job) checkIDs() []Problem {
	indexes, problems := j.indexes()
	causeIDs := &index{first: map[string]string{}}
	for _, c := range causes.Catalogue() {
		causeIDs.first[c.ID], causeIDs.names = "", append(causeIDs.names, c.ID)
	}
	indexes["cause"] = causeIDs
	indexes[lastWalkFinding] = j.lastFindings()
	j.eachReference(false, func(field, what, id string) {
		problems = append(problems, indexes[what].want(field, what, id)...)
	})
	return problems
}

// lastWalkFinding is how references.csv calls a finding of the last walk.
const lastWalkFinding = "finding of the last walk"

// lastFindings are the ids of the findings of the last walk.
func (j *Job) lastFindings() *index {
	x := &index{first: map[string]string{}}
	last := (&diagnosis{job: j}).lastWalk()
	if last == nil {
		return x
	}
	for _, f := range last.Findings {
		x.first[f.ID], x.names = "", append(x.names, f.ID)
	}
	return x
}

func (j *Job) eachReference(isID bool, f func(field, what, id string)) {
	visit(reflect.ValueOf(j).Elem(), "", "", func(field, pattern string, v reflect.Value) bool {
		if r, ok := references[pattern]; ok && r.isID == isID && v.Kind() == reflect.String {
			f(field, r.what, v.String())
		}
		return true
	})
}

// indexes gathers every id of the job by kind; those of findings and unseen places
// by kind and walk.
func (j *Job) indexes() (map[string]*index, []Problem) {
	all, problems := map[string]*index{}, []Problem(nil)
	for _, r := range references {
		all[r.what] = &index{first: map[string]string{}}
	}
	j.eachReference(true, func(field, what, id string) {
		scope := what
		if what == "finding" || what == "place not seen" {
			scope += " of " + field[:strings.IndexByte(field, ']')+1]
			if all[scope] == nil {
				all[scope] = &index{first: map[string]string{}}
			}
		}
		if what == "joint" && len(j.Slabs) == 1 {
			all[scope].first[id], all[scope].names = field, append(all[scope].names, id) // the plan checks these
			return
		}
		problems = append(problems, all[scope].see(field, what, id)...)
	})
	return all, problems
}

func (x *index) see(field, what, id string) []Problem {
	was, twice := x.first[id]
	switch {
	case id == "":
		return []Problem{{Level: Error, Code: "id-missing", Field: field, Found: what + " without an id", Want: "a short name of its own", Mend: "Give it one; others refer to it."}}
	case twice:
		return []Problem{{Level: Error, Code: "id-twice", Field: field, Found: fmt.Sprintf("%s id %q, also of %s", what, id, was), Want: "an id used once", Mend: "Rename one of the two, and what refers to it."}}
	}
	x.first[id], x.names = field, append(x.names, id)
	return nil
}

// want reports an id that nothing has. An empty one names nothing.
func (x *index) want(field, what, id string) []Problem {
	if _, ok := x.first[id]; ok || id == "" {
		return nil
	}
	p := Problem{Level: Error, Code: "id-unknown", Field: field, Found: fmt.Sprintf("no %s has the id %q", what, id)}
	if len(x.names) > 0 {
		p.Want = "one of: " + strings.Join(x.names, ", ")
	} else {
		p.Mend = fmt.Sprintf("The job lists no %s yet; add it.", what)
	}
	if near, ok := nearWord(id, x.names); ok {
		p.Mend = fmt.Sprintf("Did you mean %q?", near)
	}
	return []Problem{p}
}
