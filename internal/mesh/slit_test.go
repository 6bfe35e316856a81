package mesh

import "testing"

// Counting pieces by hand: one joint across a square makes two parts; two that
// cross make four, and the point of crossing stands four times; a crack that ends
// inside leaves its tip whole.
func TestSlitOpensLines(t *testing.T) {
	box := [][]Point{square(0, 0, 4)}
	for _, c := range []struct {
		name  string
		lines [][]Point
		parts int
		at    Point // a place
		times int   // how often a point stands there
	}{
		{"joint", [][]Point{{{2, 0}, {2, 4}}}, 2, Point{2, 0}, 2},
		{"crossing", [][]Point{{{2, 0}, {2, 4}}, {{0, 2}, {4, 2}}}, 4, Point{2, 2}, 4},
		{"tee", [][]Point{{{2, 0}, {2, 4}}, {{2, 1}, {4, 1}}}, 3, Point{2, 1}, 3},
		{"crack", [][]Point{{{2, 0}, {2, 1.5}}}, 1, Point{2, 1.5}, 1},
		{"crack, mouth", [][]Point{{{2, 0}, {2, 1.5}}}, 1, Point{2, 0}, 2},
		{"inner crack", [][]Point{{{1, 1}, {2, 3}}}, 1, Point{1, 1}, 1},
		{"drawn twice", [][]Point{{{2, 0}, {2, 4}}, {{2, 3}, {2, 1}}}, 2, Point{2, 3}, 2},
	} {
		d := Domain{Outline: box, Lines: c.lines, Size: Uniform(0.7), Unstructured: true}
		m, err := Build(d)
		if err != nil {
			t.Fatal(err)
		}
		s := m.Slit(func(int32) bool { return true })
		if got := s.parts(); got != c.parts {
			t.Errorf("%s: %d parts, want %d", c.name, got, c.parts)
		}
		times := 0
		for _, p := range s.Points {
			if distance(p, c.at) < 1e-9 {
				times++
			}
		}
		if times != c.times {
			t.Errorf("%s: a point stands %d times at %v, want %d", c.name, times, c.at, c.times)
		}
		length := checkSlit(t, c.name, m, s)
		for _, e := range s.Edges {
			if e.A == e.C && e.B == e.D {
				t.Errorf("%s: edge %+v is not open", c.name, e)
			}
		}
		want := 0.0
		for i, line := range c.lines {
			if c.name != "drawn twice" || i == 0 {
				want += distance(line[0], line[1])
			}
		}
		if length < want*(1-1e-9) || length > want*(1+1e-9) {
			t.Errorf("%s: %v cut open, want %v", c.name, length, want)
		}
	}
}

// checkSlit wants edges to join the right points, and returns their length.
func checkSlit(t tester, name string, m *Mesh, s *Slit) float64 {
	t.Helper()
	length := 0.0
	for _, e := range s.Edges {
		a, b := s.Points[e.A], s.Points[e.B]
		if a != s.Points[e.C] || b != s.Points[e.D] {
			t.Errorf("%s: edge %+v joins points apart", name, e)
		}
		if Orient(a, b, m.middle(m.Triangles[e.Left])) <= 0 || Orient(a, b, m.middle(m.Triangles[e.Right])) >= 0 {
			t.Errorf("%s: edge %+v has its triangles on the wrong sides", name, e)
		}
		length += distance(a, b)
	}
	for i, p := range s.Points {
		if p != m.Points[s.From[i]] {
			t.Fatalf("%s: point %d moved", name, i)
		}
	}
	return length
}

// parts counts the pieces that hang together by their points.
func (s *Slit) parts() int {
	group := make([]int32, len(s.Points))
	for i := range group {
		group[i] = int32(i)
	}
	for _, v := range s.Triangles {
		unite(group, v[0], v[1])
		unite(group, v[1], v[2])
	}
	n := 0
	for i := range group {
		if root(group, int32(i)) == int32(i) {
			n++
		}
	}
	return n
}

func TestSlitOnlyWhatOpens(t *testing.T) {
	d := slab()
	d.Size = Uniform(0.5)
	m, err := Build(d)
	if err != nil {
		t.Fatal(err)
	}
	if s := m.Slit(func(int32) bool { return false }); len(s.Points) != len(m.Points) || len(s.Edges) != 0 {
		t.Error("points doubled without an open line")
	}
	s := m.Slit(func(line int32) bool { return line == 4 })
	if got := s.parts(); got != 2 {
		t.Errorf("%d parts, want 2", got)
	}
	checkSlit(t, "slab", m, s)
	for i, e := range s.Edges[1:] {
		if e.A != s.Edges[i].B {
			t.Fatal("edges do not follow each other")
		}
	}
}
