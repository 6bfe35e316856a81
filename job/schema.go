package job

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"github.com/invopop/jsonschema"

	"slabwright/causes"
	"slabwright/plan"
	"slabwright/source"
)

// Schema returns the form of job.json as JSON Schema 2020-12, made from the types
// and the tables of ranges and words. Fields it does not name are allowed: they are
// kept. The same program gives the same bytes.
//
// It knows one value at a time; what [Job.Validate] says of values together (times
// in order, places within the outline, ids) no schema can.
func Schema() []byte {
	r := jsonschema.Reflector{AllowAdditionalProperties: true, Anonymous: true, Mapper: leaf}
	s := r.Reflect(&Job{})
	s.ID, s.Title = "", "Slabwright job"
	s.Description = "One commission: job.json in a job's folder. Lengths in metres, times in UTC or with their offset; a fact that nobody knows is left out, never zero."
	e := enricher{defs: s.Definitions}
	e.object(reflect.TypeFor[Job](), "")
	e.fact(reflect.TypeFor[source.Fact]())
	e.fact(reflect.TypeFor[source.Choice]())
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(s); err != nil {
		panic("job: schema: " + err.Error())
	}
	return out.Bytes()
}

// leaf is the schema of a type that stands in the file otherwise than in Go.
func leaf(t reflect.Type) *jsonschema.Schema {
	if t == reflect.TypeFor[plan.Point]() {
		two := uint64(2)
		return &jsonschema.Schema{Type: "array", Items: &jsonschema.Schema{Type: "number", Minimum: "-100000", Maximum: "100000"}, MinItems: &two, MaxItems: &two, Description: "[x, y] in metres"}
	}
	return nil
}

// requiredFields are the fields without which an object means nothing; the rest
// may be left out by hand even where the program always writes them.
var requiredFields = map[string]bool{"version": true, "id": true, "title": true, "place": true, "slabs": true, "zone": true,
	"outline_m": true, "shape_m": true, "path_m": true, "kind": true, "known": true, "value": true, "ticket": true, "joint": true, "date": true,
	"at": true, "depth_m": true, "width_m": true, "age_d": true, "cost": true, "strength_MPa": true, "temperature_C": true}

func required(t reflect.Type, f reflect.StructField) bool {
	name := jsonName(f)
	if strings.Contains(f.Tag.Get("json"), ",omitempty") {
		return false
	}
	return requiredFields[name] || name == "name" && t.Name() == "Place"
}

// enricher adds to the definitions what the tables know.
type enricher struct{ defs jsonschema.Definitions }

func (e enricher) fact(t reflect.Type) {
	d := e.defs[t.Name()]
	d.Required = nil
	for i := range t.NumField() {
		if required(t, t.Field(i)) {
			d.Required = append(d.Required, jsonName(t.Field(i)))
		}
	}
	known, _ := d.Properties.Get("known")
	known.Enum = words(knownWords)
	known.Description = "measured at the slab, recorded at the time, assumed by the engineer, or a default of the program"
}

func (e enricher) object(t reflect.Type, pattern string) {
	d := e.defs[t.Name()]
	d.Required = nil
	for i := range t.NumField() {
		f := t.Field(i)
		name := jsonName(f)
		if name == "" {
			continue
		}
		if required(t, f) {
			d.Required = append(d.Required, name)
		}
		p, ok := d.Properties.Get(name)
		if !ok {
			panic("job: schema: no property " + name)
		}
		e.field(p, f.Type, join(pattern, name))
	}
}

// field enriches one property and goes on into what it holds.
func (e enricher) field(p *jsonschema.Schema, t reflect.Type, pattern string) {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	describe(p, pattern)
	one, three := uint64(1), uint64(3)
	switch name := pattern[strings.LastIndexByte(pattern, '.')+1:]; {
	case pattern == "version":
		p.Const = Version
	case pattern == "slabs":
		p.MinItems = &one
	case name == "outline_m":
		p.MinItems = &three
	case t.Kind() == reflect.String && requiredFields[name]:
		p.MinLength = &one
	}
	switch {
	case t == reflect.TypeFor[source.Fact](), t == reflect.TypeFor[source.Choice]():
		value(p, pattern)
	case t == timeType, t == reflect.TypeFor[plan.Point]():
	case t.Kind() == reflect.Float64, t.Kind() == reflect.Int:
		if r, ok := ranges[pattern]; ok {
			p.Minimum, p.Maximum = number(r.Min), number(r.Max)
		}
	case t == reflect.TypeFor[source.Known]():
		p.Enum = words(knownWords)
	case t.Kind() == reflect.String:
		if c, ok := choices[pattern]; ok {
			if c.Open {
				p.Examples = words(c.Words)
			} else {
				p.Enum = words(c.Words)
			}
			if !requiredFields[pattern[strings.LastIndexByte(pattern, '.')+1:]] && p.Enum != nil && strings.HasPrefix(pattern, "basis.") {
				p.Enum = append(p.Enum, "") // absent
			}
		}
	case t.Kind() == reflect.Struct:
		e.object(t, pattern)
	case t.Kind() == reflect.Slice:
		e.field(p.Items, t.Elem(), pattern+"[]")
	case t.Kind() == reflect.Map:
		seen(p)
	}
}

// describe writes label, unit and reason of a field.
func describe(p *jsonschema.Schema, pattern string) {
	var parts []string
	if r, ok := ranges[pattern]; ok {
		parts = append(parts, r.Label)
		if r.Unit != "" {
			parts = append(parts, "in "+r.Unit)
		}
		parts = append(parts, "("+r.Why+")")
	} else if c, ok := choices[pattern]; ok {
		parts = append(parts, c.Label)
	}
	for _, n := range needs {
		if n.Field == pattern {
			parts = append(parts, fmt.Sprintf("Needed for: %s.", strings.Join(n.Blocks, ", ")))
		}
	}
	if len(parts) > 0 {
		p.Description = strings.Join(parts, " ")
	}
}

// value narrows the value of a fact or choice where it is used.
func value(p *jsonschema.Schema, pattern string) {
	inner := jsonschema.NewProperties()
	if r, ok := ranges[pattern]; ok {
		inner.Set("value", &jsonschema.Schema{Minimum: number(r.Min), Maximum: number(r.Max)})
		inner.Set("low", &jsonschema.Schema{Minimum: number(r.Min)})
		inner.Set("high", &jsonschema.Schema{Maximum: number(r.Max)})
	} else if c, ok := choices[pattern]; ok && c.Open {
		inner.Set("value", &jsonschema.Schema{Examples: words(c.Words)})
	} else if ok {
		inner.Set("value", &jsonschema.Schema{Enum: words(c.Words)})
	} else {
		return
	}
	p.Properties = inner
}

// seen names what can be seen at a finding and the states of each.
func seen(p *jsonschema.Schema) {
	p.Properties = jsonschema.NewProperties()
	var names []string
	for _, v := range causes.Variables() {
		inner := jsonschema.NewProperties()
		inner.Set("value", &jsonschema.Schema{Enum: words(v.States)})
		p.Properties.Set(v.Name, &jsonschema.Schema{Ref: "#/$defs/Choice", Properties: inner, Description: v.Question})
		names = append(names, v.Name)
	}
	p.PropertyNames = &jsonschema.Schema{Enum: words(names)}
}

func number(v float64) json.Number { return json.Number(strconv.FormatFloat(v, 'g', -1, 64)) }

func words(list []string) []any {
	all := make([]any, len(list))
	for i, w := range list {
		all[i] = w
	}
	return all
}
