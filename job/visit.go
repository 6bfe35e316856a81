package job

import (
	"fmt"
	"math"
	"reflect"
	"sort"
)

// visit calls f for every value below v, parents first, with its field
// ("slabs[0].thickness_m") and the pattern it falls under ("slabs[].thickness_m").
// Absent facts are visited as nil pointers. f returns false to go no deeper.
func visit(v reflect.Value, field, pattern string, f func(field, pattern string, v reflect.Value) bool) {
	if field != "" && !f(field, pattern, v) {
		return
	}
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			return
		}
		v = v.Elem()
	}
	switch {
	case v.Type() == timeType:
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			if name := jsonName(v.Type().Field(i)); name != "" {
				visit(v.Field(i), join(field, name), join(pattern, name), f)
			}
		}
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			visit(v.Index(i), fmt.Sprintf("%s[%d]", field, i), pattern+"[]", f)
		}
	case v.Kind() == reflect.Map:
		keys := v.MapKeys()
		sort.Slice(keys, func(a, b int) bool { return keys[a].String() < keys[b].String() })
		for _, k := range keys {
			visit(v.MapIndex(k), join(field, k.String()), join(pattern, k.String()), f)
		}
	}
}

// firstNotFinite finds a number that JSON cannot hold.
func firstNotFinite(j *Job) (where string, found bool) {
	visit(reflect.ValueOf(j).Elem(), "", "", func(field, _ string, v reflect.Value) bool {
		if v.Kind() == reflect.Float64 && (math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0)) && !found {
			where, found = field, true
		}
		return !found
	})
	return where, found
}
