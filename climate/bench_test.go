package climate

import (
	"testing"
	"time"
)

// One instant of an exposure, cloud judged from the sun, over a day.
func BenchmarkExposureAt(b *testing.B) {
	s, err := MakeDay(time.Date(2026, 1, 15, 0, 0, 0, 0, time.UTC), melbourneSlab, DaySketch{Min: 18, Max: 38, WindBlown: 8})
	if err != nil {
		b.Fatal(err)
	}
	e := Exposure{Series: s, Place: melbourneSlab}
	from, _ := s.Span()
	for i := 0; b.Loop(); i++ {
		if _, err := e.At(from.Add(time.Duration(i%1440) * time.Minute)); err != nil {
			b.Fatal(err)
		}
	}
}
