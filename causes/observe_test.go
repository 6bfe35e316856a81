package causes

import (
	"strings"
	"testing"

	"slabwright/source"
)

func fact(v float64) *source.Fact { return &source.Fact{Value: v, Known: source.Measured} }

func ranged(v, low, high float64) *source.Fact {
	return &source.Fact{Value: v, Low: &low, High: &high, Known: source.Measured}
}

func choice(v string) *source.Choice { return &source.Choice{Value: v, Known: source.Recorded} }

func of1(t *testing.T, all []Observation, variable string) Observation {
	t.Helper()
	for _, o := range all {
		if o.Variable == variable {
			return o
		}
	}
	t.Fatalf("no observation of %s in %+v", variable, all)
	return Observation{}
}

func TestStateOfOnTheLimits(t *testing.T) {
	for _, c := range []struct {
		variable string
		si       float64
		want     string
	}{
		{"width", 0.00005, "below-0.1"}, {"width", 0.0001, "0.1-0.3"}, {"width", 0.0003, "0.3-1"}, {"width", 0.001, "1-3"}, {"width", 0.004, "above-3"},
		{"age", 4 * 3600, "below-8h"}, {"age", 23 * 3600, "8-72h"}, {"age", 72 * 3600, "3-28d"}, {"age", 60 * 86400, "1-12mo"}, {"age", 2 * 365 * 86400, "1-5y"}, {"age", 6 * 365 * 86400, "above-5y"},
		{"aspect", 1.25, "up-to-1.25"}, {"aspect", 1.5, "1.25-1.5"}, {"aspect", 1.51, "1.5-2"}, {"aspect", 2.1, "above-2"},
		{"slenderness", 24, "up-to-24"}, {"slenderness", 36, "24-36"}, {"slenderness", 37, "36-45"},
		{"groove", 0.25, "from-0.25"}, {"groove", 0.2499, "0.20-0.25"}, {"groove", 0.19, "below-0.20"},
		{"activation", 0.7, "most"}, {"activation", 0.4, "some"}, {"activation", 0.1, "none-near"},
		{"rebound", 0.97, "sound"}, {"rebound", 0.9, "slightly-softer"}, {"rebound", 0.71, "much-softer"},
		{"evaporation", 1.0 / 3600, "0.5-1"}, {"evaporation", 1.2 / 3600, "above-1"}, {"temperature_drop", 21, "above-20"},
		{"rocking", 0.00005, "none"}, {"rocking", 0.0002, "slight"}, {"rocking", 0.0006, "strong"}, {"cover", 0.03, "25-50"}, {"cell", 0.03, "below-50"},
	} {
		if got, err := StateOf(c.variable, c.si); err != nil || got != c.want {
			t.Errorf("%s %g: %s %v, want %s", c.variable, c.si, got, err, c.want)
		}
	}
	if _, err := StateOf("pattern", 1); err == nil {
		t.Error("pattern has no number")
	}
	if _, err := StateOf("width", -1); err == nil {
		t.Error("a negative width passed")
	}
}

func TestRangesBecomeShares(t *testing.T) {
	all, faults := FromSeen(nil, SeenFacts{Width: ranged(0.0003, 0.0002, 0.0005)})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	o := of1(t, all, "width")
	// 0.2-0.5 mm: a third below 0.3 mm, two thirds above.
	near(t, "below", o.Weights["0.1-0.3"], 1.0/3, 1e-9)
	near(t, "above", o.Weights["0.3-1"], 2.0/3, 1e-9)
	all, _ = FromSeen(nil, SeenFacts{Width: ranged(0.0005, 0.0004, 0.0006)})
	if o := of1(t, all, "width"); o.Weights != nil || o.State != "0.3-1" {
		t.Errorf("a range inside one state: %+v", o)
	}
	if _, faults := FromSeen(nil, SeenFacts{Width: ranged(0.0005, 0.0006, 0.0007)}); len(faults) != 1 {
		t.Errorf("a range without its value: %v", faults)
	}
}

func TestPlanPlaces(t *testing.T) {
	for _, c := range []struct {
		name  string
		facts PlanFacts
		state string
		says  string
	}{
		{"inside corner", PlanFacts{StartsAtInsideCorner: new(0.04), InsideCorner: "of the pit", DistanceToFixture: new(0.04)}, "inside-corner", "starts 40 mm from the inside corner of the pit"},
		{"beside a joint", PlanFacts{DistanceToJoint: new(0.18), AngleToNearestJoint: new(4.0), Joint: "joint J3", PanelLength: new(4.5)}, "near-joint", "180 mm beside joint J3"},
		{"square to a close joint", PlanFacts{DistanceToJoint: new(0.18), AngleToNearestJoint: new(88.0), PositionAlong: new(0.5)}, "mid-panel", "0.50 of its length"},
		{"strip", PlanFacts{DistanceToJoint: new(0.9), AngleToNearestJoint: new(2.0), PanelLength: new(6.0)}, "edge-band", "900 mm, 0.15"},
		{"middle", PlanFacts{PositionAlong: new(0.5), AngleToLongSide: new(88.0), DistanceToJoint: new(2.4)}, "mid-panel", "crosses the panel"},
		{"neighbour", PlanFacts{InLineWithJointAcross: new(0.1), DistanceToJoint: new(0.2), AngleToNearestJoint: new(5.0)}, "in-line-across-edge", "100 mm from the line"},
		{"bars", PlanFacts{NearestBarLine: new(0.02), PositionAlong: new(0.5)}, "over-bar", "20 mm"},
		{"dowel ends", PlanFacts{DistanceToDowelEnd: new(0.05), DistanceToDowelledOne: new(0.25), DistanceToJoint: new(0.25), AngleToNearestJoint: new(0.0)}, "dowel-end", "250 mm from a joint with bars"},
		{"column", PlanFacts{DistanceToFixture: new(0.6), Fixture: "column C2"}, "near-fixture", "600 mm from the column C2"},
		{"clear", PlanFacts{EndsReaching: new(0), DistanceToEdge: new(0.5)}, "interior", "500 mm clear"},
		{"corner", PlanFacts{JoinsSidesThatMeet: new(true), DistanceToWheelPath: new(0.1)}, "corner", "cuts a corner off"},
		{"wheels", PlanFacts{DistanceToWheelPath: new(0.2)}, "wheelpath", "200 mm from the line of the wheels"},
		{"whole", PlanFacts{WholePanel: new(true), DistanceToFixture: new(0.1)}, "whole", "whole panel"},
	} {
		o := of1(t, FromPlan(c.facts), "location")
		if o.State != c.state || !strings.Contains(o.Text, c.says) || o.From != "plan" {
			t.Errorf("%s: %s %q, want %s with %q", c.name, o.State, o.Text, c.state, c.says)
		}
	}
	if all := FromPlan(PlanFacts{}); len(all) != 0 {
		t.Errorf("nothing known, yet %+v", all)
	}
}

func TestPlanRelations(t *testing.T) {
	all := FromPlan(PlanFacts{AngleToLongSide: new(85.0), EndsReaching: new(2), PanelLength: new(4.8), PanelWidth: new(3.6), Thickness: new(0.15),
		Lines: new(4), LineSpacing: new(0.19), SpacingVariation: new(0.1), BarPitch: new(0.2), JointsCrackedShare: new(0.9),
		ShareOnEmbeddedLine: new(0.8), DistanceToFixture: new(0.5), FixtureIsolated: new("absent"), DistanceToWheelPath: new(1.5)})
	for variable, want := range map[string]string{"orientation": "across", "ends": "both", "aspect": "1.25-1.5", "slenderness": "24-36",
		"spacing": "bar-pitch", "activation": "most", "embedded": "coincident", "isolation": "absent", "wheelpath": "elsewhere"} {
		if o := of1(t, all, variable); o.State != want || o.Text == "" {
			t.Errorf("%s: %s %q, want %s", variable, o.State, o.Text, want)
		}
	}
	for _, c := range []struct {
		angle float64
		want  string
	}{{0, "along"}, {20, "along"}, {25, "other"}, {30, "diagonal"}, {60, "diagonal"}, {65, "other"}, {70, "across"}, {90, "across"}} {
		if o := of1(t, FromPlan(PlanFacts{AngleToLongSide: &c.angle}), "orientation"); o.State != c.want {
			t.Errorf("%g°: %s, want %s", c.angle, o.State, c.want)
		}
	}
	far := FromPlan(PlanFacts{DistanceToFixture: new(3.0), FixtureIsolated: new("absent")})
	if len(far) != 0 {
		t.Errorf("a fixture 3 m away: %+v", far)
	}
}

func TestPourFacts(t *testing.T) {
	all, faults := FromPour(PourFacts{PeakEvaporation: fact(1.2 / 3600), TemperatureDrop72h: fact(17), SawnAfterHours: fact(23),
		WindowOpensHours: new(7.0), WindowClosesHours: new(15.0), GrooveDepth: fact(0.042), Thickness: fact(0.16), LoadOverCapacity: fact(0.5),
		DowelSkew: fact(0.03), Ground: choice("uniform"), Exposure: choice("outdoor-frost"), WindowWorking: "window-1"})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for variable, want := range map[string]string{"evaporation": "above-1", "temperature_drop": "10-20", "sawing": "late", "groove": "from-0.25",
		"load": "within", "dowels": "misaligned-or-two-way", "ground": "uniform", "exposure": "outdoor-frost"} {
		if o := of1(t, all, variable); o.State != want {
			t.Errorf("%s: %s, want %s", variable, o.State, want)
		}
	}
	if o := of1(t, all, "sawing"); !strings.Contains(o.Text, "23 h after placing, 8 h after the cut window closed") && !strings.Contains(o.Text, "8.0 h after the cut window closed") || o.Working != "window-1" {
		t.Errorf("sawing: %q %q", o.Text, o.Working)
	}
	if o := of1(t, all, "evaporation"); o.From != "weather" || !strings.Contains(o.Text, "1.2 kg/m²·h") {
		t.Errorf("evaporation: %+v", o)
	}
	for _, c := range []struct {
		name  string
		facts PourFacts
		want  string
	}{
		{"not sawn", PourFacts{NotSawn: choice("yes"), SawnAfterHours: fact(3)}, "not-sawn"},
		{"crack first", PourFacts{CrackBeforeSawing: choice("yes"), SawnAfterHours: fact(6)}, "late"},
		{"torn", PourFacts{EdgesRavelled: choice("yes"), SawnAfterHours: fact(3)}, "early-ravelled"},
		{"before the window", PourFacts{SawnAfterHours: fact(3), WindowOpensHours: new(5.0), WindowClosesHours: new(15.0)}, "early-ravelled"},
		{"in the window", PourFacts{SawnAfterHours: fact(9), WindowOpensHours: new(5.0), WindowClosesHours: new(15.0)}, "in-window"},
		{"20 h in warm weather", PourFacts{SawnAfterHours: fact(20), MeanAirTemperature: new(22.0)}, "late"},
		{"20 h in cool weather", PourFacts{SawnAfterHours: fact(20), MeanAirTemperature: new(8.0)}, "in-window"},
		{"30 h in unknown weather", PourFacts{SawnAfterHours: fact(30)}, "late"},
	} {
		all, _ := FromPour(c.facts)
		if o := of1(t, all, "sawing"); o.State != c.want {
			t.Errorf("%s: %s, want %s", c.name, o.State, c.want)
		}
	}
	if all, _ := FromPour(PourFacts{SawnAfterHours: fact(20)}); len(all) != 0 {
		t.Errorf("20 h in unknown weather says nothing, yet %+v", all)
	}
}

func TestSeenFacts(t *testing.T) {
	all, faults := FromSeen(map[string]source.Choice{"aggregate": *choice("through"), "width": *choice("1-3")},
		SeenFacts{Width: fact(0.0004), FirstSeen: fact(150 * 86400), Depth: fact(0.15), Thickness: fact(0.15), Lift: fact(0.006), Step: fact(0)})
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	for variable, want := range map[string]string{"aggregate": "through", "width": "0.3-1", "age": "1-12mo", "depth": "full", "levels": "edges-up", "step": "below-1"} {
		if o := of1(t, all, variable); o.State != want {
			t.Errorf("%s: %s, want %s", variable, o.State, want)
		}
	}
	if o := of1(t, all, "age"); o.Text != "it was first seen 5.0 months after placing" && o.Text != "it was first seen 5 months after placing" {
		t.Errorf("age: %q", o.Text)
	}
	for _, c := range []struct {
		depth, thickness, bar *source.Fact
		want                  string
	}{{fact(0.002), nil, nil, "skin"}, {fact(0.045), fact(0.15), nil, "part-top"}, {fact(0.05), fact(0.15), fact(0.045), "to-bar"}, {fact(0.149), fact(0.15), nil, "full"}} {
		if o := (SeenFacts{Depth: c.depth, Thickness: c.thickness, BarDepth: c.bar}).depth(); o.State != c.want {
			t.Errorf("depth %v: %s, want %s", c.depth, o.State, c.want)
		}
	}
	if o := (SeenFacts{Depth: fact(0.1), Thickness: fact(0.15)}).depth(); len(o.Weights) != 2 {
		t.Errorf("two thirds deep is neither part way nor full for sure: %+v", o)
	}
}

func TestFaultsNameTheWord(t *testing.T) {
	all, faults := FromSeen(map[string]source.Choice{"aggregate": *choice("throgh"), "agregate": *choice("through"), "width": *choice("1-3")}, SeenFacts{Step: fact(-0.002)})
	if len(faults) != 3 || len(all) != 1 {
		t.Fatalf("%d faults, %d observations: %v", len(faults), len(all), faults)
	}
	text := ""
	for _, f := range faults {
		text += f.Error() + "\n"
	}
	for _, want := range []string{`did you mean "through"`, `did you mean "aggregate"`, "step is -0.002"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
}

func TestKinds(t *testing.T) {
	for kind, want := range map[string]string{"crack": "line", "corner break": "cornerarc", "dusting": "surface-loss"} {
		if o := FromKind(kind, nil); o == nil || o.State != want {
			t.Errorf("%s: %+v, want %s", kind, o, want)
		}
	}
	if o := FromKind("map cracking", fact(0.03)); o.State != "finemap" {
		t.Errorf("30 mm cells: %+v", o)
	}
	if o := FromKind("map cracking", nil); len(o.Weights) != 2 {
		t.Errorf("cells not measured: %+v", o)
	}
	if o := FromKind("joint not opened", nil); o != nil {
		t.Errorf("a joint that has not opened is no pattern: %+v", o)
	}
	for kind, pattern := range kinds {
		if pattern != "" && Says("pattern", pattern) == pattern {
			t.Errorf("%s: unknown pattern %s", kind, pattern)
		}
	}
}
