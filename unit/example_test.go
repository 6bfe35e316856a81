package unit_test

import (
	"fmt"
	"time"

	"slabwright/unit"
)

func ExampleParseLength() {
	for _, text := range []string{"6 mm", `3'-6 1/2"`, "5,65 m", "6"} {
		l, err := unit.ParseLength(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(float64(l), "m")
	}
	// Output:
	// 0.006 m
	// 1.0795 m
	// 5.65 m
	// length "6": the unit is missing; write one of these behind the number (m, mm, cm, km, µm, in, ft, yd, mil)
}

func ExampleClock() {
	start := time.Date(2026, 6, 18, 7, 40, 0, 0, time.UTC)
	zone := time.FixedZone("CEST", 2*3600)
	fmt.Println(unit.ClockTime(start.Add(9*time.Hour), zone))
	// Output: Thu 18:40
}
