package job

import (
	"math"
	"reflect"

	"slabwright/plan"
	"slabwright/site"
	"slabwright/source"
)

type siteProbe = site.Probe

var nan = math.NaN()

// patterns calls f for every field of a type with its pattern; facts, choices,
// points and times are leaves.
func patterns(t reflect.Type, pattern string, f func(string, reflect.Type)) {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	if pattern != "" {
		f(pattern, t)
	}
	switch {
	case t == timeType || t == reflect.TypeFor[source.Fact]() || t == reflect.TypeFor[source.Choice]() || t == reflect.TypeFor[plan.Point]():
	case t.Kind() == reflect.Struct:
		for i := range t.NumField() {
			if name := jsonName(t.Field(i)); name != "" {
				patterns(t.Field(i).Type, join(pattern, name), f)
			}
		}
	case t.Kind() == reflect.Slice:
		patterns(t.Elem(), pattern+"[]", f)
	case t.Kind() == reflect.Map:
		patterns(t.Elem(), pattern+".*", f)
	}
}
