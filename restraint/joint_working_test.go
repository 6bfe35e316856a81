package restraint

import (
	"math"
	"strings"
	"testing"
)

func jointInput() JointInput {
	return JointInput{ID: "joint-J2", Title: "Joint J2", Base: 0.8, Spacing: 5, Working: 15, Expansion: 1e-5, Cooling: 20, Shrinkage: 400e-6,
		Here: 300e-6, FromFixed: 3, SideRoom: 0, OpeningLimit: 0.0009}
}

// By hand: 0.8·5·(1e-5·20 + 400e-6) = 2.4 mm; three times that when two of three
// joints are shut; 300e-6·3 m = 0.9 mm sideways with no room.
func TestJointWorkingByHand(t *testing.T) {
	want := map[string]float64{"ΔL": 2.4, "ΔL_w": 7.2, "u": 8, "s": 0.9, "s_r": 0.9}
	verdicts := map[string]string{"u": "fail", "s_r": "fail"}
	for _, l := range JointWorking(jointInput()).Lines {
		if w, ok := want[l.Symbol]; !ok || math.Abs(l.Value-w) > 1e-9 || l.Verdict != verdicts[l.Symbol] {
			t.Errorf("%s = %s: got %.6g %s %s, want %g %s", l.Symbol, l.Numbers, l.Value, l.Unit, l.Verdict, w, verdicts[l.Symbol])
		}
		delete(want, l.Symbol)
	}
	if len(want) > 0 {
		t.Errorf("no lines for %v", want)
	}
}

func TestJointInputIsChecked(t *testing.T) {
	in := jointInput()
	in.Working, in.Base = 2, 80
	if bad := in.Check(); len(bad) != 2 || !strings.Contains(bad[1].Error(), "open joints") {
		t.Errorf("got %v", bad)
	}
}
