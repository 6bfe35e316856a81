package job

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"
)

func whatIfs(t *testing.T, j *Job, changes ...Change) map[string]float64 {
	t.Helper()
	rows, err := WhatIfs(context.Background(), j, DemoFS(), "B", changes, nil)
	if err != nil {
		t.Fatal(err)
	}
	opens := map[string]float64{}
	for _, r := range rows {
		if r.Window.Opens == nil {
			t.Fatalf("%s: no window: %s", r.Name, r.Text)
		}
		opens[r.Name] = r.Window.Opens.Sub(*j.Pours[1].Start).Hours()
	}
	return opens
}

// What every foreman knows: cooler concrete and a retarder open the window later, a
// sheet and an accelerator sooner, another saw sooner.
func TestWhatIfDirections(t *testing.T) {
	cool, late, soon := 15.0, 2.0, -1.0
	got := whatIfs(t, demo(t), Change{Name: "cool", Concrete: &cool}, Change{Name: "sheet", Cure: "plastic"},
		Change{Name: "retarded", SetShiftHours: &late}, Change{Name: "accelerated", SetShiftHours: &soon}, Change{Name: "early", EarlyEntry: true})
	base := got["as it was"]
	for name, later := range map[string]bool{"cool": true, "retarded": true, "sheet": false, "accelerated": false, "early": false} {
		if (got[name] > base) != later {
			t.Errorf("%s opens at %.2f h against %.2f h; later: want %v", name, got[name], base, later)
		}
	}
}

// A change leaves the job it was asked of as it is.
func TestWhatIfLeavesTheJobAlone(t *testing.T) {
	j := demo(t)
	before, err := j.Encode()
	if err != nil {
		t.Fatal(err)
	}
	cool := 15.0
	whatIfs(t, j, Change{Name: "all", Shift: -time.Hour, Concrete: &cool, Cure: "plastic", WaterLess: 10})
	after, err := j.Encode()
	if err != nil || string(after) != string(before) {
		t.Errorf("the job changed (%v)", err)
	}
}

func TestWhatIfRefuses(t *testing.T) {
	j := demo(t)
	if _, err := WhatIfs(context.Background(), j, DemoFS(), "Z", nil, nil); err == nil || !strings.Contains(err.Error(), "A, B, C") {
		t.Errorf("unknown pour: %v", err)
	}
	j.Pours[1].Start = nil
	var unknown NotKnown
	if _, err := WhatIfs(context.Background(), j, DemoFS(), "B", nil, nil); !errors.As(err, &unknown) {
		t.Errorf("no start: %v", err)
	}
}
