package job

import (
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"time"

	"slabwright/unit"
)

// Decode reads a job from the bytes of its job.json. The error is a *[LoadError]
// with every problem found, each with its field and line; fields the program does
// not know are kept for [Job.Save] and named by [Job.Warnings].
func Decode(data []byte) (*Job, error) {
	fail := func(problems ...Problem) (*Job, error) {
		return nil, &LoadError{File: "job.json", Problems: problems}
	}
	tree, twice, bad := parseTree(data)
	if bad != nil {
		return fail(append(twice, *bad)...)
	}
	if tree.kind != 'o' {
		return fail(Problem{Level: Error, Code: "json-type", Line: tree.line(), Found: "the file holds " + tree.kindName(),
			Want: "an object {...} with version, id, title, place and slabs", Mend: "This is probably another file."})
	}
	if bad := checkVersion(tree); bad != nil {
		return fail(*bad)
	}
	j := &Job{tree: tree}
	d := decoder{problems: twice}
	d.value(tree, reflect.ValueOf(j).Elem(), "")
	if len(Errors(d.problems)) > 0 {
		return fail(Errors(d.problems)...)
	}
	j.warnings = d.problems
	return j, nil
}

// Warnings returns what was noticed when the job was read: fields nobody knows,
// with the name that was probably meant. [Job.Validate] repeats them.
func (j *Job) Warnings() []Problem { return j.warnings }

func checkVersion(tree *node) *Problem {
	v := tree.member("version")
	p := &Problem{Level: Error, Code: "version", Field: "version", Line: tree.line(), Want: fmt.Sprintf("version %d", Version)}
	if v == nil {
		p.Found, p.Mend = "the file does not say its version", fmt.Sprintf("Add \"version\": %d if this is a job file written by hand.", Version)
		return p
	}
	p.Line = v.line()
	n, err := strconv.Atoi(v.text)
	switch {
	case v.kind != 'n' || err != nil:
		p.Found, p.Mend = "version is "+v.shown(), fmt.Sprintf("Write %d.", Version)
	case n > Version:
		p.Found = fmt.Sprintf("the file is of version %d, written by a newer slabwright", n)
		p.Want = fmt.Sprintf("this slabwright reads up to version %d", Version)
		p.Mend = "Use the newer program; this one would not know all that is in it."
	case n < 1:
		p.Found, p.Mend = fmt.Sprintf("there never was a version %d", n), fmt.Sprintf("Write %d.", Version)
	default:
		return nil
	}
	return p
}

// decoder fills a value from a tree and gathers what does not fit.
type decoder struct{ problems []Problem }

func (d *decoder) wrong(n *node, path, want, mend string) {
	d.problems = append(d.problems, Problem{Level: Error, Code: "json-type", Field: path, Line: n.line(),
		Found: n.kindName() + ": " + n.shown(), Want: want, Mend: mend})
}

var (
	timeType   = reflect.TypeFor[time.Time]()
	jsonReader = reflect.TypeFor[json.Unmarshaler]()
	textReader = reflect.TypeFor[encoding.TextUnmarshaler]()
)

func (d *decoder) value(n *node, v reflect.Value, path string) {
	if n.kind == 'z' { // null is the same as absent
		if k := v.Kind(); k != reflect.Pointer && k != reflect.Slice && k != reflect.Map {
			d.wrong(n, path, wantOf(v.Type()), "Leave the field out where nobody knows it.")
		}
		return
	}
	switch {
	case v.Kind() == reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		d.value(n, v.Elem(), path)
	case v.Type() == timeType:
		d.time(n, v, path)
	case v.Addr().Type().Implements(jsonReader) && !v.Addr().Type().Implements(textReader):
		if err := v.Addr().Interface().(json.Unmarshaler).UnmarshalJSON(n.src[n.start:n.end]); err != nil {
			d.wrong(n, path, wantOf(v.Type()), "A point is two numbers: [12.5, 3.2].")
		}
	case v.Kind() == reflect.Struct:
		d.object(n, v, path)
	case v.Kind() == reflect.Slice:
		d.list(n, v, path)
	case v.Kind() == reflect.Map:
		d.table(n, v, path)
	default:
		d.scalar(n, v, path)
	}
}

func (d *decoder) time(n *node, v reflect.Value, path string) {
	t, err := time.Parse(time.RFC3339, n.text)
	if n.kind != 's' || err != nil {
		mend := "Times are UTC and end in Z, or carry their offset (+02:00)."
		if n.kind == 's' && len(n.text) == len("2026-06-18") {
			mend = "Write a whole instant: " + n.text + "T12:00:00Z."
		}
		d.wrong(n, path, wantOf(timeType), mend)
		return
	}
	v.Set(reflect.ValueOf(t))
}

func (d *decoder) object(n *node, v reflect.Value, path string) {
	if n.kind != 'o' {
		mend := ""
		if _, ok := fieldsOf(v.Type())["known"]; ok && (n.kind == 'n' || n.kind == 's') {
			mend = fmt.Sprintf("Write { \"value\": %s, \"known\": \"recorded\" }.", n.shown())
		}
		d.wrong(n, path, wantOf(v.Type()), mend)
		return
	}
	fields := fieldsOf(v.Type())
	for i, key := range n.keys {
		f, ok := fields[key]
		if !ok {
			d.unknown(n, key, path, n.values[i], v.Type())
			continue
		}
		d.value(n.values[i], v.FieldByIndex(f.Index), join(path, key))
	}
	d.missing(n, v.Type(), path)
}

// missing reports a number that is not there and would be read as nought: the
// value of a fact, the depth of a probe. An angle may be left out.
func (d *decoder) missing(n *node, t reflect.Type, path string) {
	for i := range t.NumField() {
		f := t.Field(i)
		name := jsonName(f)
		number := f.Type.Kind() == reflect.Float64 || name == "value"
		if !number || !required(t, f) || n.member(name) != nil {
			continue
		}
		d.problems = append(d.problems, Problem{Level: Error, Code: "required", Field: join(path, name), Line: n.line(),
			Found: fmt.Sprintf("%q is missing", name), Want: wantOf(f.Type), Mend: "Write it, or leave the whole entry out where nobody knows it."})
	}
}

// unknown warns of a field nobody knows when its name is near a known one; it is
// kept either way.
func (d *decoder) unknown(n *node, key, path string, value *node, t reflect.Type) {
	names := fieldNames(t)
	near, ok := unit.Nearest(key, names)
	if !ok {
		near, ok = sameButUnit(key, names)
	}
	if !ok || n.member(near) != nil {
		return
	}
	d.problems = append(d.problems, Problem{Level: Warning, Code: "unknown-field", Field: join(path, key), Line: value.line(),
		Found: fmt.Sprintf("no field is called %q here; it is kept but not used", key), Mend: fmt.Sprintf("Did you mean %q?", near)})
}

// sameButUnit finds thickness_m for "thickness" and "thickness_mm".
func sameButUnit(key string, names []string) (string, bool) {
	stem := func(s string) string {
		s, _, _ = strings.Cut(s, "_")
		return strings.ToLower(s)
	}
	found := ""
	for _, name := range names {
		if stem(name) == stem(key) && len(stem(key)) > 3 {
			if found != "" {
				return "", false
			}
			found = name
		}
	}
	return found, found != ""
}

func (d *decoder) list(n *node, v reflect.Value, path string) {
	if n.kind != 'a' {
		d.wrong(n, path, wantOf(v.Type()), "Put it in square brackets.")
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(n.values), len(n.values)))
	for i, item := range n.values {
		d.value(item, v.Index(i), fmt.Sprintf("%s[%d]", path, i))
	}
}

func (d *decoder) table(n *node, v reflect.Value, path string) {
	if n.kind != 'o' {
		d.wrong(n, path, wantOf(v.Type()), "")
		return
	}
	v.Set(reflect.MakeMapWithSize(v.Type(), len(n.keys)))
	for i, key := range n.keys {
		item := reflect.New(v.Type().Elem()).Elem()
		d.value(n.values[i], item, join(path, key))
		v.SetMapIndex(reflect.ValueOf(key), item)
	}
}
