package draw

import (
	"strings"
	"testing"
)

func small(title string, marks int) Chart {
	c := Chart{Height: 30, Title: title, NoNames: true, Ink: RGB(0, 0, 0), Quiet: RGB(90, 90, 90), Paper: RGB(255, 255, 255),
		X: Axis{Min: 0, Max: 10}, Y: Axis{Title: title, Min: 0, Max: 1}, Curves: []Curve{{Name: "a", X: []float64{0, 10}, Y: []float64{0, 1}, Pen: Pen{Color: RGB(0, 0, 0), Width: 0.3}}}}
	for i := range marks {
		c.Marks = append(c.Marks, Mark{At: 4 + 0.1*float64(i), Words: "a long mark", Pen: Pen{Color: RGB(0, 0, 0), Width: 0.2}})
	}
	return c
}

// extent is the box of every line of a drawing on paper.
func extent(s *Scene) (low, high Point) {
	low, high = Point{1e9, 1e9}, Point{-1e9, -1e9}
	var walk func(g *Group, t Transform)
	walk = func(g *Group, t Transform) {
		if g.Map != nil {
			t = *g.Map
		}
		for _, shape := range g.Shapes {
			switch v := shape.(type) {
			case *Group:
				walk(v, t)
			case Line:
				for _, p := range v.Points {
					q := t.At(p)
					low, high = Point{min(low.X, q.X), min(low.Y, q.Y)}, Point{max(high.X, q.X), max(high.Y, q.Y)}
				}
			}
		}
	}
	walk(&s.Root, Paper)
	return low, high
}

func TestPutMovesEveryGroup(t *testing.T) {
	part := small("one", 2)
	part.Width = 60
	alone := part.Scene()
	low, high := extent(alone)
	sheet := New(200, 100, "", "")
	sheet.Put(100, 50, alone)
	movedLow, movedHigh := extent(sheet)
	for _, d := range []float64{movedLow.X - low.X - 100, movedHigh.X - high.X - 100, movedLow.Y - low.Y - 50, movedHigh.Y - high.Y - 50} {
		if d > 1e-9 || d < -1e-9 {
			t.Errorf("moved by %g more than asked", d)
		}
	}
	if again, _ := extent(alone); again != low {
		t.Error("the drawing that was put was changed")
	}
}

// Frames stand level whatever marks stand over them, and nothing leaves the drawing.
func TestMultiplesStandLevel(t *testing.T) {
	m := Multiples{Width: 172, Columns: 3, Title: "t", Key: []KeyEntry{{Words: "a", Pen: Pen{Color: RGB(0, 0, 0), Width: 0.3}}}, Ink: RGB(0, 0, 0),
		Cells: []Chart{small("one", 0), small("two", 3), small("three", 1), small("four", 0)}}
	s := m.Scene()
	if low, high := extent(s); low.X < 0 || low.Y < 0 || high.X > s.Width || high.Y > s.Height {
		t.Errorf("lines from %v to %v on a sheet of %g by %g", low, high, s.Width, s.Height)
	}
	svg := string(s.SVG())
	for _, title := range []string{"one", "two", "three", "four"} {
		if !strings.Contains(svg, "<title>"+title+"</title>") {
			t.Errorf("cell %s is not named", title)
		}
	}
	if two := 4.5 + 2*(30+1); s.Height != two {
		t.Errorf("two rows are %g mm high, want %g", s.Height, two)
	}
}

func TestBarsStartAtZero(t *testing.T) {
	b := Bars{Width: 100, WordSpace: 40, BehindSpace: 20, Axis: Axis{Min: -10, Max: 30}, Fills: []Color{RGB(1, 2, 3), RGB(4, 5, 6)}, Rows: []Bar{{Words: "w", Values: []float64{20, -10}, Behind: "b"}}, Ink: RGB(0, 0, 0), Quiet: RGB(9, 9, 9)}
	for _, shape := range b.Scene().Root.Shapes {
		g := shape.(*Group)
		if g.Class != "bars" {
			continue
		}
		for i, want := range [][2]float64{{50, 70}, {40, 50}} {
			ring := g.Shapes[i].(Area).Ring
			if ring[0].X != want[0] || ring[1].X != want[1] {
				t.Errorf("bar %d from %g to %g, want %v", i, ring[0].X, ring[1].X, want)
			}
		}
		return
	}
	t.Error("no bars were drawn")
}
