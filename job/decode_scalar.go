package job

import (
	"reflect"
	"strconv"
	"strings"
)

func (d *decoder) scalar(n *node, v reflect.Value, path string) {
	want, mend := wantOf(v.Type()), ""
	ok := false
	switch v.Kind() {
	case reflect.String:
		if ok = n.kind == 's'; ok {
			v.SetString(n.text)
		} else if n.kind == 'n' {
			mend = "Put it in double quotes."
		}
	case reflect.Bool:
		if ok = n.kind == 't' || n.kind == 'f'; ok {
			v.SetBool(n.kind == 't')
		}
	case reflect.Float64:
		f, err := strconv.ParseFloat(n.text, 64)
		if ok = n.kind == 'n' && err == nil; ok {
			v.SetFloat(f)
		} else if n.kind == 's' {
			mend = "Take the quotes and the unit away; the unit is in the name of the field."
		}
	case reflect.Int:
		i, err := strconv.ParseInt(n.text, 10, 64)
		if ok = n.kind == 'n' && err == nil; ok {
			v.SetInt(i)
		}
	case reflect.Uint64:
		u, err := strconv.ParseUint(n.text, 10, 64)
		if ok = n.kind == 'n' && err == nil; ok {
			v.SetUint(u)
		}
	default:
		panic("job: no way to read a " + v.Type().String())
	}
	if !ok {
		d.wrong(n, path, want, mend)
	}
}

// wantOf says in words what a field of this type holds.
func wantOf(t reflect.Type) string {
	switch {
	case t.Kind() == reflect.Pointer:
		return wantOf(t.Elem())
	case t == timeType:
		return "an instant such as \"2026-06-18T07:40:00Z\""
	case t.Name() == "Point":
		return "a point [x, y] in metres"
	case t.Name() == "Fact":
		return "a fact { \"value\": number, \"known\": \"measured\", \"recorded\", \"assumed\" or \"default\" }"
	case t.Name() == "Choice":
		return "a fact { \"value\": \"word\", \"known\": \"measured\", \"recorded\", \"assumed\" or \"default\" }"
	}
	switch t.Kind() {
	case reflect.Struct, reflect.Map:
		return "an object {...}"
	case reflect.Slice:
		return "a list of " + strings.TrimPrefix(strings.TrimPrefix(wantOf(t.Elem()), "a "), "an ") + "s"
	case reflect.String:
		return "a text in double quotes"
	case reflect.Bool:
		return "true or false"
	case reflect.Float64:
		return "a number"
	}
	return "a whole number"
}
