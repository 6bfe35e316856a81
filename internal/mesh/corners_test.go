package mesh

import (
	"slices"
	"testing"
)

func TestInsideCornersAndTips(t *testing.T) {
	d := slab()
	want := append([]Point{{10, 10}}, d.Holes[0]...)
	if got := d.InsideCorners(225); !slices.Equal(got, want) {
		t.Errorf("inside corners %v, want %v", got, want)
	}
	for _, paths := range [][][]Point{d.Outline, d.Holes} {
		for _, ring := range paths {
			slices.Reverse(ring)
		}
	}
	if got := d.InsideCorners(225); len(got) != len(want) {
		t.Errorf("turned the other way: inside corners %v, want %v", got, want)
	}
	var round []Point
	for _, line := range spokes(Point{5, 5}, 1, 12) {
		round = append(round, between(line[0], line[1], 0.4/distance(line[0], line[1])))
	}
	if got := (Domain{Outline: d.Outline, Holes: [][]Point{round}}).InsideCorners(225); len(got) != 1 {
		t.Errorf("beside a round hole there are inside corners %v", got)
	}
	m, err := Build(d)
	if err != nil {
		t.Fatal(err)
	}
	var tips []Point
	for _, v := range m.Tips() {
		tips = append(tips, m.Points[v])
	}
	if !slices.Equal(tips, []Point{{12.3, 7.9}, {8, 12.6}}) {
		t.Errorf("tips %v", tips)
	}
}
