package draw

import (
	"math"
	"testing"
)

func TestLabelsDoNotCoverEachOther(t *testing.T) {
	l := NewLabels(200, 200)
	for range 30 {
		if _, ok := l.Free(Point{100, 100}, 12, 3, Point{}, 60); !ok {
			t.Fatal("there is room for 30 labels within 60 mm")
		}
	}
	for i, a := range l.taken {
		for _, b := range l.taken[:i] {
			if a.over(b) {
				t.Fatalf("%v covers %v", a, b)
			}
		}
	}
}

// Words beside a line stand off it and read from left to right or upwards.
func TestWordsBesideALine(t *testing.T) {
	for _, path := range [][]Point{{{20, 50}, {80, 50}}, {{80, 50}, {20, 50}}, {{50, 80}, {50, 20}}, {{50, 20}, {50, 80}}, {{20, 20}, {80, 80}}} {
		got := NewLabels(100, 100).Beside(path, Text{Words: "J1", Height: 2.5}, 2)
		if got.Angle < -90 || got.Angle > 91 {
			t.Errorf("%v: words turned by %.0f°", path, got.Angle)
		}
		// the middle of the letters, a third of their height above the foot line
		sin, cos := math.Sincos(got.Angle * math.Pi / 180)
		mid := Point{got.At.X + got.Lift.X - 0.3*2.5*sin, got.At.Y + got.Lift.Y - 0.3*2.5*cos}
		d := math.Hypot(mid.X-got.At.X, mid.Y-got.At.Y)
		if math.Abs(d-2) > 0.01 {
			t.Errorf("%v: words stand %.2f mm off the line, want 2", path, d)
		}
	}
}

func TestStations(t *testing.T) {
	path := []Point{{0, 0}, {10, 0}, {10, 5}}
	if s := StationAt(path, 0.8); s.At != (Point{10, 2}) || s.UY != 1 {
		t.Errorf("at 0.8: %+v", s)
	}
	if all := Along(path, 4); len(all) != 4 || all[3].At != (Point{10, 4}) {
		t.Errorf("every 4 mm: %+v", all)
	}
	if got := Offset(path, 1); got[0] != (Point{0, -1}) || math.Hypot(got[1].X-11, got[1].Y+1) > 1e-9 {
		t.Errorf("offset by 1: %v", got)
	}
}
