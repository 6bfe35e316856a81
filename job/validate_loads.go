package job

import (
	"fmt"
	"strings"

	"slabwright/checks"
	"slabwright/site"
	"slabwright/source"
)

// checkLoads checks what of loads and use must go together: each load has what its
// kind needs, ids are its own, and the exposure class is one of the code in use.
func (j *Job) checkLoads() []Problem {
	var problems []Problem
	seen := map[string]int{}
	for i := range j.Loads {
		l := &j.Loads[i]
		field := fmt.Sprintf("loads[%d]", i)
		switch first, twice := seen[l.ID]; {
		case strings.TrimSpace(l.ID) == "":
			problems = append(problems, Problem{Level: Error, Code: "required", Field: field + ".id", Found: "the load has no id", Want: "a short name of its own", Mend: fmt.Sprintf("Such as L%d.", i+1)})
		case twice:
			problems = append(problems, Problem{Level: Error, Code: "id-twice", Field: field + ".id", Found: fmt.Sprintf("id %q", l.ID),
				Want: fmt.Sprintf("an id of its own; loads[%d] has it already", first), Mend: fmt.Sprintf("Such as L%d.", i+1)})
		default:
			seen[l.ID] = i
		}
		problems = append(problems, loadNeeds(field, l)...)
	}
	return append(problems, j.checkExposure()...)
}

// loadNeeds says what a load of its kind lacks. A contact pressure may be left out: a
// usual one is taken and shown.
func loadNeeds(field string, l *site.Load) []Problem {
	var problems []Problem
	need := func(name string, f *source.Fact, what string) {
		if f == nil {
			problems = append(problems, Problem{Level: Error, Code: "load-needs", Field: field + "." + name, Found: fmt.Sprintf("a load of kind %q without it", l.Kind), Want: what,
				Mend: "Give it, or take the load out of the list."})
		}
	}
	switch checks.Kind(l.Kind) {
	case checks.Wheel:
		need("load_kN", l.Force, "the load on the wheel")
	case checks.Axle:
		need("load_kN", l.Force, "the load on the whole axle")
		need("track_m", l.Track, "the distance of the wheels across the axle")
		if l.Wheels != 2 && l.Wheels != 4 {
			problems = append(problems, Problem{Level: Error, Code: "load-needs", Field: field + ".wheels", Found: fmt.Sprintf("%d wheels on an axle", l.Wheels), Want: "2 or 4", Mend: "Count the tyres on one axle."})
		}
		if l.Wheels == 4 {
			need("pair_m", l.Pair, "the distance of the two wheels of a pair")
		}
	case checks.Post:
		need("load_kN", l.Force, "the load on the post")
		need("plate_x_m", l.PlateX, "the side of the base plate along the edge")
		need("plate_y_m", l.PlateY, "the other side of the base plate")
	case checks.Line:
		need("load_kN_m", l.PerMetre, "the load per metre")
	case checks.Spread:
		need("load_kN_m2", l.PerArea, "the load per square metre")
	}
	return problems
}

// checkExposure compares the exposure class with those of the code.
func (j *Job) checkExposure() []Problem {
	code, ok := checks.CodeOf(j.Basis.Code)
	if j.Use == nil || j.Use.Exposure == nil || !ok {
		return nil
	}
	classes := checks.ExposureClasses(code.Key)
	for _, c := range classes {
		if c == j.Use.Exposure.Value {
			return nil
		}
	}
	return []Problem{{Level: Error, Code: "exposure", Field: "use.exposure_class", Found: fmt.Sprintf("%q, which %s does not have", j.Use.Exposure.Value, code.Title),
		Want: "one of: " + strings.Join(classes, ", "), Mend: "Name the class by the code of basis.code, or change that."}}
}
