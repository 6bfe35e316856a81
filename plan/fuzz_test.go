package plan

import (
	"fmt"
	"math"
	"testing"
)

// FuzzPanels draws a star-shaped outline, a pit and joints from the bytes. Panels
// must come back, add up to the slab and hold their own centres of rectangles.
func FuzzPanels(f *testing.F) {
	f.Add([]byte{10, 200, 30, 90, 120, 250, 3, 77, 1, 2, 3, 4, 5, 6, 7, 8})
	f.Add([]byte{255, 255, 255, 255, 0, 0, 0, 0, 128, 128, 128, 128})
	f.Add([]byte("joints that run every way over the slab"))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, ok := slabFrom(data)
		if !ok || len(s.checkOutline()) > 0 {
			return
		}
		panels, err := s.Panels()
		if err != nil {
			t.Fatal(err)
		}
		want := Ring(s.Outline).Area()
		var got float64
		for _, h := range s.openings() {
			want -= OverlapArea(h.Shape, s.Outline)
		}
		for _, p := range panels {
			got += p.Area
			if !(p.Area > 0) || math.IsNaN(p.Length) || p.Length < p.Width || len(p.Sides) != len(p.Ring) {
				t.Fatalf("panel %+v", p)
			}
		}
		// every node may move by the snapping tolerance
		if tol := SnapTolerance * 60 * float64(len(s.Joints)+4); math.Abs(got-want) > tol {
			t.Fatalf("panels add up to %.6f, slab %.6f (tolerance %.3f): %+v", got, want, tol, s)
		}
	})
}

func slabFrom(data []byte) (Slab, bool) {
	if len(data) < 12 || len(data) > 80 {
		return Slab{}, false
	}
	n := 3 + int(data[0])%6
	var s Slab
	for i := range n {
		r := 3 + float64(data[1+i%(len(data)-1)])/32
		d := Direction(360 * float64(i) / float64(n))
		s.Outline = append(s.Outline, d.Times(r))
	}
	if data[0]%2 == 0 {
		x, y := float64(data[1])/256-0.5, float64(data[2])/256-0.5
		s.Fixtures = []Fixture{{ID: "F1", Kind: Pit, Opening: true, Shape: box(x-0.7, y-0.4, x+0.7, y+0.4)}}
	}
	at := func(i int) float64 { return float64(int8(data[i])) / 14 }
	for i := n; i+3 < len(data) && len(s.Joints) < 10; i += 3 {
		s.Joints = append(s.Joints, joint(fmt.Sprint("J", i), Point{at(i), at(i + 1)}, Point{at(i + 2), at(i + 3)}))
	}
	return s, true
}
