package plan

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// Turn against rational arithmetic on points a few last digits off one line.
func TestTurnIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		nudge := func(v float64, steps int) float64 {
			for range steps {
				v = math.Nextafter(v, 100)
			}
			return v
		}
		step := rapid.IntRange(0, 3)
		a := Point{nudge(0.5, step.Draw(t, "a")), nudge(0.5, step.Draw(t, "b"))}
		b, c := Point{12, 12}, Point{24, nudge(24, step.Draw(t, "c"))}
		r := func(v float64) *big.Rat { return new(big.Rat).SetFloat64(v) }
		sub := func(p, q float64) *big.Rat { return new(big.Rat).Sub(r(p), r(q)) }
		det := new(big.Rat).Sub(new(big.Rat).Mul(sub(b.X, a.X), sub(c.Y, a.Y)), new(big.Rat).Mul(sub(b.Y, a.Y), sub(c.X, a.X)))
		if got := Turn(a, b, c); got != det.Sign() {
			t.Fatalf("Turn(%v, %v, %v) = %d, exactly %d", a, b, c, got, det.Sign())
		}
		if Turn(a, b, c) != Turn(b, c, a) || Turn(a, b, c) != -Turn(b, a, c) {
			t.Fatal("turning must not depend on the first point and must change sign when two swap")
		}
	})
}

// By hand: an L of 6 x 6 less 3 x 3 has 27 m²; its centre is
// (36·3 - 9·4.5)/27 = 2.5 from either side.
func TestRingOfAnL(t *testing.T) {
	r := Ring{{0, 0}, {6, 0}, {6, 3}, {3, 3}, {3, 6}, {0, 6}}
	if r.SignedArea() != 27 || r.Centroid() != (Point{2.5, 2.5}) || r.Perimeter() != 24 || r.AngleAt(3) != 270 || r.AngleAt(0) != 90 {
		t.Errorf("area %g, centroid %v, perimeter %g, angle %g", r.SignedArea(), r.Centroid(), r.Perimeter(), r.AngleAt(3))
	}
	if !r.Contains(Point{1, 5}) || r.Contains(Point{5, 5}) || !r.Contains(Point{3, 3}) || !r.Contains(Point{6, 1}) {
		t.Error("inside: lower and upper arm, the corner and the edge; not the notch")
	}
	back := Ring{{0, 6}, {3, 6}, {3, 3}, {6, 3}, {6, 0}, {0, 0}}
	if back.SignedArea() != -27 || back.Anticlockwise().SignedArea() != 27 || back.Centroid() != (Point{2.5, 2.5}) {
		t.Error("clockwise ring")
	}
}

func TestOverlapArea(t *testing.T) {
	if a := OverlapArea(box(0, 0, 4, 4), box(2, 3, 9, 9)); !near(a, 2, 1e-12) {
		t.Errorf("boxes: %g, want 2", a)
	}
	// a unit diamond (half diagonal 1) in the quadrant: a quarter of its 2 m²
	if a := OverlapArea(Ring{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}, box(0, 0, 4, 4)); !near(a, 0.5, 1e-12) {
		t.Errorf("diamond: %g, want 0.5", a)
	}
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-5, 5)
		a := Ring{{v.Draw(t, "x"), v.Draw(t, "y")}, {v.Draw(t, "x"), v.Draw(t, "y")}, {v.Draw(t, "x"), v.Draw(t, "y")}}
		b := Ring{{v.Draw(t, "x"), v.Draw(t, "y")}, {v.Draw(t, "x"), v.Draw(t, "y")}, {v.Draw(t, "x"), v.Draw(t, "y")}}
		o := OverlapArea(a, b)
		if !near(o, OverlapArea(b, a), 1e-9) || o < -1e-12 || o > math.Min(a.Area(), b.Area())+1e-9 {
			t.Fatalf("%v and %v: %g (areas %g, %g)", a, b, o, a.Area(), b.Area())
		}
		if self := OverlapArea(a, a); !near(self, a.Area(), 1e-9) {
			t.Fatalf("with itself %g, area %g", self, a.Area())
		}
	})
}

func TestSegments(t *testing.T) {
	s := Segment{Point{0, 0}, Point{4, 0}}
	if tt, d := s.Nearest(Point{3, 2}); tt != 0.75 || d != 2 {
		t.Errorf("nearest %g at %g", d, tt)
	}
	if d := s.Distance(Segment{Point{5, 1}, Point{5, 9}}); !near(d, math.Sqrt2, 1e-12) {
		t.Errorf("distance %g, want √2", d)
	}
	if l := s.Overlap(Segment{Point{6, 0.01}, Point{3, 0.01}}, 0.02); !near(l, 1, 1e-12) {
		t.Errorf("overlap %g, want 1", l)
	}
	l := Polyline{{0, 0}, {3, 0}, {3, 4}}
	if along, at, d := l.Nearest(Point{5, 2}); l.Length() != 7 || along != 5 || at != (Point{3, 2}) || d != 2 {
		t.Errorf("polyline: %g %v %g", along, at, d)
	}
	if p, dir := l.At(5); p != (Point{3, 2}) || dir != (Point{0, 1}) {
		t.Errorf("at 5: %v %v", p, dir)
	}
}

// The yard's inside corners: the pit's four; J2 runs to the pit's corner (8, 5).
func TestInsideCorners(t *testing.T) {
	corners := yard().InsideCorners()
	if len(corners) != 4 {
		t.Fatalf("%d corners, want the pit's 4", len(corners))
	}
	met := 0
	for _, c := range corners {
		if c.Fixture != "F1" || !near(c.Angle, 270, 1e-9) {
			t.Errorf("corner %+v", c)
		}
		if c.Joint == "J2" && c.Ends {
			met++
		}
	}
	if met != 1 {
		t.Errorf("J2 starts at %d corners, want 1", met)
	}
	ell := Slab{Outline: []Point{{0, 0}, {0, 6}, {3, 6}, {3, 3}, {6, 3}, {6, 0}}} // clockwise
	if c := ell.InsideCorners(); len(c) != 1 || c[0].At != (Point{3, 3}) || !c[0].Edge {
		t.Errorf("L: %+v", c)
	}
}

// Bars of apron's mesh: along x at 0.1, 0.3 ... 3.9 (20 lines, those at 1.1 to 1.9
// parted by the pit), along y at 0.1 ... 9.9 (50, those at 7.1 to 7.9 parted).
func TestBarLines(t *testing.T) {
	s := apron()
	bars := s.BarLines(s.Steel[0])
	count := map[string]int{}
	var length float64
	for _, b := range bars {
		count[b.Along]++
		length += b.Segment().Length()
	}
	if count["x"] != 25 || count["y"] != 55 || !near(length, 20*10+50*4-10, 1e-9) {
		t.Errorf("bars %v, %.3f m; want 25 and 55, 390 m", count, length)
	}
	z := s.Steel[0]
	z.First = nil
	if s.BarLines(z) != nil {
		t.Error("bars nobody located have no place")
	}
}

// J1 is 4 m long with dowels at 0.3: 13 fit with half a spacing at the ends
// (0.2 each side of 12 gaps). Kept 0.3 clear of the tee at 2.5: 7 below, 4 above.
func TestDowelBars(t *testing.T) {
	s := apron()
	j := s.Joints[0]
	if n := len(s.DowelBars(j)); n != 13 {
		t.Errorf("%d dowels, want 13", n)
	}
	j.Dowels.Clear = fact(0.3)
	bars := s.DowelBars(j)
	if len(bars) != 7+4 {
		t.Errorf("%d dowels clear of the tee, want 11", len(bars))
	}
	for _, b := range bars {
		mid := b.Segment().At(0.5)
		if !near(b.Segment().Length(), 0.4, 1e-12) || math.Abs(mid.Y-2.5) < 0.3-1e-9 || !near(mid.X, 5, 1e-12) {
			t.Errorf("dowel %+v", b)
		}
	}
}

// A turned rectangle keeps its length, width and direction.
func TestLeastRectangle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, l, a := rapid.Float64Range(1, 3).Draw(t, "w"), rapid.Float64Range(3.1, 9).Draw(t, "l"), rapid.Float64Range(0, 179.9).Draw(t, "angle")
		m := move{angle: a, mirror: 1, by: Point{30, -20}}
		length, width, dir, _ := leastRectangle(m.line(box(0, 0, l, w)))
		if !near(length, l, 1e-9) || !near(width, w, 1e-9) || axesApart(dir, a) > 1e-6 {
			t.Fatalf("got %g x %g at %g, want %g x %g at %g", length, width, dir, l, w, a)
		}
	})
}
