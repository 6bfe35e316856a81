package job

import (
	"fmt"
	"io/fs"
	"os"
	"reflect"
	"sort"
	"strings"

	"slabwright/causes"
	"slabwright/plan"
	"slabwright/source"
)

// Validate returns everything in the job that cannot be as written, that is worth
// a look, or that nobody knows and some answer needs; all at once, in the order of
// the file. A job without [Error] problems can be worked on. It changes nothing.
//
// Weather and photos are looked for in the files given, or else in the folder the
// job was loaded from; for a job that has neither they are not looked for.
func (j *Job) Validate(files ...fs.FS) []Problem {
	if len(files) == 0 && j.dir != "" {
		files = []fs.FS{os.DirFS(j.dir)}
	}
	problems := append([]Problem(nil), j.warnings...)
	problems = append(problems, j.checkValues()...)
	problems = append(problems, j.checkShapes(problems)...)
	problems = append(problems, j.checkHead()...)
	problems = append(problems, j.checkIDs()...)
	problems = append(problems, j.checkOverrides()...)
	problems = append(problems, j.checkPlaces()...)
	problems = append(problems, j.checkTimes()...)
	problems = append(problems, j.checkLoads()...)
	problems = append(problems, j.checkFiles(files)...)
	problems = append(problems, j.unknowns()...)
	for i := range problems {
		if problems[i].Line == 0 {
			problems[i].Line = j.lineOf(problems[i].Field)
		}
	}
	rank := map[Level]int{Error: 0, Warning: 1, Unknown: 2}
	sort.SliceStable(problems, func(a, b int) bool { return rank[problems[a].Level] < rank[problems[b].Level] })
	return problems
}

// checkValues checks every number, word and way of knowing against the tables.
func (j *Job) checkValues() []Problem {
	var problems []Problem
	visit(reflect.ValueOf(j).Elem(), "", "", func(field, pattern string, v reflect.Value) bool {
		if v.Kind() == reflect.Pointer {
			if v.IsNil() {
				return false
			}
			v = v.Elem()
		}
		switch x := v.Interface().(type) {
		case source.Fact:
			problems = append(problems, checkFact(field, pattern, x)...)
			return false
		case source.Choice:
			problems = append(problems, checkChoice(field, pattern, x.Value)...)
			problems = append(problems, checkKnown(field, x.Known)...)
			return false
		case source.Known:
			problems = append(problems, checkKnown(strings.TrimSuffix(field, ".known"), x)...)
		case plan.Point:
			return false // shapes are checked by their own package
		case float64:
			if r, ok := ranges[pattern]; ok {
				if p, bad := r.check(field, x); bad {
					problems = append(problems, p)
				}
			}
		case int:
			if r, ok := ranges[pattern]; ok {
				if p, bad := r.check(field, float64(x)); bad {
					problems = append(problems, p)
				}
			}
		default:
			if v.Kind() == reflect.String {
				problems = append(problems, checkChoice(field, pattern, v.String())...)
			}
		}
		return true
	})
	return problems
}

const seenPattern = "walks[].findings[].seen."

// checkChoice checks a word against choices.csv, or against the states of what can
// be seen at a finding.
func checkChoice(field, pattern, word string) []Problem {
	p := Problem{Level: Error, Code: "choice-word", Field: field, Found: fmt.Sprintf("%q", word)}
	if name, ok := strings.CutPrefix(pattern, seenPattern); ok {
		return checkSeen(p, name, word)
	}
	c, ok := choices[pattern]
	if !ok || word == "" && (pattern == "basis.code" || pattern == "basis.units") {
		return nil
	}
	bad := checkWord(p, word, c.Words)
	if c.Open && len(bad) > 0 {
		if bad[0].Mend == "" {
			return nil
		}
		bad[0].Level = Warning
	}
	return bad
}

func checkSeen(p Problem, variable, state string) []Problem {
	v := causes.FindVariable(variable)
	if v != nil {
		return checkWord(p, state, v.States)
	}
	var names []string
	for _, v := range causes.Variables() {
		names = append(names, v.Name)
	}
	p.Found = fmt.Sprintf("%q is not a thing to look for", variable)
	return checkWord(p, variable, names)
}

// checkShapes asks the plan for its problems and leaves out what the tables of
// ranges have said already.
func (j *Job) checkShapes(said []Problem) []Problem {
	told := map[string]bool{}
	for _, p := range said {
		told[p.Field] = true
	}
	var problems []Problem
	if len(j.Slabs) == 0 {
		problems = append(problems, Problem{Level: Error, Code: "required", Field: "slabs", Found: "the job has no slab", Want: "one or more", Mend: "Draw the outline: a list of corners in metres."})
	}
	for i, s := range j.Slabs {
		for _, p := range plan.Under(fmt.Sprintf("slabs[%d]", i), s.Check()) {
			if told[p.Field] {
				continue
			}
			problems = append(problems, Problem{Level: Error, Code: "shape", Field: p.Field, At: p.Place, Place: placeName(p.Place),
				Found: p.Found, Want: p.Want, Mend: p.Mend})
		}
	}
	return problems
}

func placeName(p *plan.Point) string {
	if p == nil {
		return ""
	}
	return fmt.Sprintf("at (%.2f, %.2f) m", p.X, p.Y)
}

// lineOf finds the line of job.json a field stands on; 0 when the job was not read
// from a text, the nearest parent when the field is absent.
func (j *Job) lineOf(field string) int {
	n := j.tree
	if n == nil {
		return 0
	}
	for _, step := range strings.Split(strings.ReplaceAll(field, "[", ".["), ".") {
		next := n.member(step)
		var i int
		if c, _ := fmt.Sscanf(step, "[%d]", &i); c == 1 && n.kind == 'a' && i >= 0 && i < len(n.values) {
			next = n.values[i]
		}
		if next == nil {
			break
		}
		n = next
	}
	return n.line()
}
