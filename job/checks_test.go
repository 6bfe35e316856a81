package job

import (
	"context"
	"errors"
	"strings"
	"testing"

	"slabwright/plan"
	"slabwright/site"
	"slabwright/source"
)

// yardWithLoads is a sound job with what the checks ask for.
func yardWithLoads() *Job {
	j := sound()
	j.Slabs[0].Thickness = fact(0.18)
	j.Mixes[0].Strength = fact(32)
	j.Ground.CBR = fact(6)
	j.Loads = []site.Load{
		{ID: "L1", Name: "Lorry", Kind: "axle", Force: fact(100), Wheels: 4, Track: fact(1.8), Pair: fact(0.33), Passes: fact(50000)},
		{ID: "L2", Name: "Rack", Kind: "post", Force: fact(40), PlateX: fact(0.15), PlateY: fact(0.15), Pitch: fact(2.7), At: []string{"interior", "joint"}},
		{ID: "L3", Name: "Wall", Kind: "line", PerMetre: fact(20)},
	}
	j.Use = &site.Use{Class: &source.Choice{Value: "pneumatic tyres over 3 t", Known: source.Recorded}, Exposure: &source.Choice{Value: "XC4", Known: source.Assumed}}
	return j
}

func TestChecksOfAJob(t *testing.T) {
	c, err := Checks(context.Background(), yardWithLoads(), nil)
	if err != nil {
		t.Fatal(err)
	}
	var ids []string
	for _, r := range c.Rows {
		ids = append(ids, r.ID)
	}
	all := strings.Join(ids, " ")
	for _, want := range []string{"bending-L1-interior", "yield-L2-", "punching-L2-interior", "line-L3-interior", "fatigue-", "support", "wear", "exposure"} {
		if !strings.Contains(all, want) {
			t.Errorf("no row %s among %s", want, all)
		}
	}
	if strings.Contains(all, "L2-corner") {
		t.Error("the rack is checked at a corner, where the job says it does not stand")
	}
	defaults := 0
	for _, a := range c.Assumptions {
		if a.Known == source.Default && a.Note == "" {
			t.Errorf("%s is a default without a reason", a.Key)
		}
		if a.Known == source.Default {
			defaults++
		}
	}
	if defaults < 5 {
		t.Errorf("only %d defaults are shown", defaults)
	}
}

func TestChecksSayWhatIsLacking(t *testing.T) {
	for name, c := range map[string]struct {
		spoil func(*Job)
		want  string
	}{
		"thickness": {func(j *Job) { j.Slabs[0].Thickness = nil }, "slabs[0].thickness_m"},
		"strength":  {func(j *Job) { j.Mixes[0].Strength = nil }, "mixes[0].strength_MPa"},
		"loads":     {func(j *Job) { j.Loads = nil }, "loads[]"},
		"slab":      {func(j *Job) { j.Slabs = []plan.Slab{} }, "slabs[0].outline_m"},
	} {
		j := yardWithLoads()
		c.spoil(j)
		_, err := Checks(context.Background(), j, nil)
		var lacks NotKnown
		if !errors.As(err, &lacks) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want one that names %s", name, err, c.want)
		}
	}
}

func TestLoadsAreValidated(t *testing.T) {
	if bad := Errors(yardWithLoads().Validate()); len(bad) > 0 {
		t.Fatalf("the sound job: %v", bad)
	}
	for name, c := range map[string]struct {
		spoil       func(*Job)
		field, said string
	}{
		"no track":       {func(j *Job) { j.Loads[0].Track = nil }, "loads[0].track_m", "across the axle"},
		"three wheels":   {func(j *Job) { j.Loads[0].Wheels = 3 }, "loads[0].wheels", "2 or 4"},
		"no pair":        {func(j *Job) { j.Loads[0].Pair = nil }, "loads[0].pair_m", "of a pair"},
		"no plate":       {func(j *Job) { j.Loads[1].PlateY = nil }, "loads[1].plate_y_m", "base plate"},
		"no line load":   {func(j *Job) { j.Loads[2].PerMetre = nil }, "loads[2].load_kN_m", "per metre"},
		"id twice":       {func(j *Job) { j.Loads[1].ID = "L1" }, "loads[1].id", "loads[0] has it"},
		"no id":          {func(j *Job) { j.Loads[1].ID = "" }, "loads[1].id", "Such as L2"},
		"kind":           {func(j *Job) { j.Loads[1].Kind = "posts" }, "loads[1].kind", `Did you mean "post"?`},
		"place":          {func(j *Job) { j.Loads[1].At = []string{"edges"} }, "loads[1].at[0]", `Did you mean "edge"?`},
		"plate in mm":    {func(j *Job) { j.Loads[1].PlateX = fact(150) }, "loads[1].plate_x_m", "Did you mean 0.15?"},
		"load in N":      {func(j *Job) { j.Loads[1].Force = fact(40000) }, "loads[1].load_kN", "Did you mean"},
		"other exposure": {func(j *Job) { j.Use.Exposure.Value = "B1" }, "use.exposure_class", "does not have"},
	} {
		j := yardWithLoads()
		c.spoil(j)
		found := false
		for _, p := range Errors(j.Validate()) {
			found = found || p.Field == c.field && strings.Contains(p.String(), c.said)
		}
		if !found {
			t.Errorf("%s: no problem at %s that says %q among %v", name, c.field, c.said, Errors(j.Validate()))
		}
	}
}
