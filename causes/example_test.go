package causes_test

import (
	"fmt"

	"slabwright/causes"
	"slabwright/source"
)

// A crack beside a sawn joint, found the day after the pour.
func ExampleRank() {
	seen, _ := causes.FromSeen(nil, causes.SeenFacts{
		Width:     &source.Fact{Value: 0.0005, Known: source.Measured},
		FirstSeen: &source.Fact{Value: 26 * 3600, Known: source.Recorded},
	})
	pour, _ := causes.FromPour(causes.PourFacts{
		SawnAfterHours:    &source.Fact{Value: 23, Known: source.Recorded},
		WindowClosesHours: new(15.0),
		GrooveDepth:       &source.Fact{Value: 0.042, Known: source.Measured},
		Thickness:         &source.Fact{Value: 0.160, Known: source.Measured},
	})
	place := causes.FromPlan(causes.PlanFacts{
		DistanceToJoint: new(0.18), AngleToNearestJoint: new(3.0), Joint: "joint J3", EndsReaching: new(2), Lines: new(1),
	})
	e := causes.Evidence{Finding: "F1", Exposure: causes.External, Frost: true}
	e.Observations = append(append(append(seen, pour...), place...), *causes.FromKind("crack", nil))
	r := causes.Rank(e)
	fmt.Println(r.Answer)
	fmt.Println("For:", r.Top().For[0].Text)
	// Output:
	// The likeliest cause is joint sawn too late: about 97 in 100 (82 to 98 in 100). The joint was sawn after the slab had already begun to crack, so the crack runs beside the groove and the groove stays idle.
	// For: it runs 180 mm beside joint J3 and nearly parallel to it
}
