package job

import (
	"fmt"
	"reflect"
	"strings"

	"slabwright/site"
)

// unknowns lists what nobody knows, one entry a row of needs.csv: where, and which
// answers are not given without it. A fact that is absent is no error.
func (j *Job) unknowns() []Problem {
	absent := j.absent()
	var problems []Problem
	for _, n := range needs {
		places := absent[n.Field]
		if len(places) == 0 {
			continue
		}
		found := "not known: " + n.Label
		if names := j.namesAt(places); names != "" {
			found += " (" + names + ")"
		}
		problems = append(problems, Problem{Level: Unknown, Code: "not-known", Field: places[0], Found: found, Blocks: n.Blocks, Mend: n.Ask})
	}
	return problems
}

// absent gathers the fields of needs.csv that are not there, by row.
func (j *Job) absent() map[string][]string {
	rows := map[string]Need{}
	for _, n := range needs {
		rows[n.Field] = n
	}
	absent := map[string][]string{}
	root := reflect.ValueOf(j).Elem()
	visit(root, "", "", func(field, pattern string, v reflect.Value) bool {
		n, wanted := rows[pattern]
		if !wanted || !unset(v) {
			return true
		}
		if pour, ok := valueAt(root, parentOf(field)).Interface().(site.Pour); ok && pattern == "pours[].weather" && otherWeather(pour) {
			return false
		}
		if key, word, ok := strings.Cut(n.When, "="); ok {
			parent := valueAt(root, parentOf(field))
			if f, has := fieldsOf(parent.Type())[key]; !has || parent.FieldByIndex(f.Index).String() != word {
				return false
			}
		}
		absent[pattern] = append(absent[pattern], field)
		return false
	})
	return absent
}

// otherWeather reports whether a pour has weather that does not stand in a file.
func otherWeather(p site.Pour) bool { return len(p.WeatherHours) > 0 || p.WeatherDay != nil }

func unset(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Pointer, reflect.Slice, reflect.Map:
		return v.IsNil()
	}
	return v.Kind() == reflect.String && v.Len() == 0
}

func parentOf(field string) string {
	if i := strings.LastIndexByte(field, '.'); i >= 0 {
		return field[:i]
	}
	return ""
}

// valueAt finds the value of a field such as "slabs[0].joints[2]".
func valueAt(v reflect.Value, field string) reflect.Value {
	if field == "" {
		return v
	}
	for _, step := range strings.Split(strings.ReplaceAll(field, "[", ".["), ".") {
		for v.Kind() == reflect.Pointer {
			v = v.Elem()
		}
		var i int
		if c, _ := fmt.Sscanf(step, "[%d]", &i); c == 1 {
			v = v.Index(i)
			continue
		}
		v = v.FieldByIndex(fieldsOf(v.Type())[step].Index)
	}
	return v
}

// namesAt names what the fields belong to by id: "joints J1, J2 and 6 more".
func (j *Job) namesAt(fields []string) string {
	const shown = 4
	root, names := reflect.ValueOf(j).Elem(), []string(nil)
	for _, field := range fields {
		parent := parentOf(field)
		if !strings.HasSuffix(parent, "]") {
			continue
		}
		if id := idOf(valueAt(root, parent)); id != "" {
			names = append(names, id)
		}
	}
	if extra := len(names) - shown; extra > 1 {
		names = append(names[:shown], fmt.Sprintf("and %d more", extra))
	}
	return strings.Join(names, ", ")
}

func idOf(v reflect.Value) string {
	fields := fieldsOf(v.Type())
	for _, key := range []string{"id", "ticket", "joint", "kind"} {
		if f, ok := fields[key]; ok {
			return v.FieldByIndex(f.Index).String()
		}
	}
	return ""
}
