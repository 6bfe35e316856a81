package draw

import (
	"math"
	"sort"
)

// WidthOf estimates how wide words set in the drawing's letters come out, in mm:
// half the letter size a letter, a little more for capitals and digits. Layout
// that must not overlap uses it; it errs on the wide side.
func WidthOf(words string, height float64) float64 {
	var n float64
	for _, r := range words {
		switch {
		case r == ' ' || r == '.' || r == ',' || r == 'i' || r == 'l' || r == '\u202f':
			n += 0.27
		case r == 'm' || r == 'w' || r == 'M' || r == 'W':
			n += 0.8
		case r >= 'A' && r <= 'Z':
			n += 0.6
		default:
			n += 0.51
		}
	}
	return n * height
}

// markRows puts event marks in rows off the frame so that no words overlap and no
// line of a mark runs through the words of another: words stand to the right of
// their line, so each mark stands one row further out than every later mark that
// its words reach. It returns the number of rows and the row of each mark.
func (c Chart) markRows(left, right float64) (rows int, rowOf []int) {
	order := c.markOrder()
	at := func(m Mark) float64 { return left + (m.At-c.X.Min)/(c.X.Max-c.X.Min)*(right-left) }
	rowOf = make([]int, len(c.Marks))
	for k := len(order) - 1; k >= 0; k-- {
		i := order[k]
		if c.Marks[i].At < c.X.Min || c.Marks[i].At > c.X.Max {
			continue
		}
		end := at(c.Marks[i]) + WidthOf(c.Marks[i].Words, chartLetters) + 1.5
		for _, j := range order[k+1:] {
			if at(c.Marks[j]) < end {
				rowOf[i] = max(rowOf[i], rowOf[j]+1)
			}
		}
		rows = max(rows, rowOf[i]+1)
	}
	return rows, rowOf
}

func (c Chart) markOrder() []int {
	order := make([]int, len(c.Marks))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return c.Marks[order[a]].At < c.Marks[order[b]].At })
	return order
}

func (c Chart) drawMarks(s *Scene, f frame, rowOf []int) {
	g := s.Group("marks", "", Paper)
	for _, i := range c.markOrder() {
		m := c.Marks[i]
		if m.At < c.X.Min || m.At > c.X.Max {
			continue
		}
		p := f.at(m.At, c.Y.Min)
		y := f.top - 1 - markRow*float64(rowOf[i])
		g.Add(Line{Points: []Point{{p.X, p.Y}, {p.X, y - 1.8}}, Pen: m.Pen})
		g.Add(Text{At: Point{p.X + 0.6, y}, Words: m.Words, Height: chartLetters, Color: c.Ink, Halo: c.Paper})
	}
}

func (c Chart) drawLimits(s *Scene, f frame) {
	g := s.Group("limits", "", Paper)
	for _, l := range c.Limits {
		if l.At < c.Y.Min || l.At > c.Y.Max {
			continue
		}
		a, b := f.at(c.X.Min, l.At), f.at(c.X.Max, l.At)
		g.Add(Line{Points: []Point{a, b}, Pen: Pen{Color: c.Ink, Width: 0.3, Dash: []float64{3, 1}}})
	}
}

// drawNames writes each curve's and limit's name at the right, at the height of
// its last known value, moved apart where they would overlap.
func (c Chart) drawNames(s *Scene, f frame) {
	type name struct {
		want, y float64
		words   string
		pen     Pen
	}
	var names []name
	for _, curve := range c.Curves {
		for i := len(curve.X) - 1; i >= 0; i-- {
			if x, y := curve.X[i], curve.Y[i]; x <= c.X.Max && !math.IsNaN(y) {
				p := f.at(x, math.Max(c.Y.Min, math.Min(c.Y.Max, y)))
				names = append(names, name{p.Y, p.Y, curve.Name, curve.Pen})
				break
			}
		}
	}
	for _, l := range c.Limits {
		if l.At >= c.Y.Min && l.At <= c.Y.Max {
			y := f.at(c.X.Max, l.At).Y
			names = append(names, name{y, y, l.Name, Pen{Color: c.Ink, Width: 0.3, Dash: []float64{3, 1}}})
		}
	}
	sort.SliceStable(names, func(i, j int) bool { return names[i].want < names[j].want })
	const gap = chartLetters * 1.15
	for i := range names {
		if i > 0 && names[i].y < names[i-1].y+gap {
			names[i].y = names[i-1].y + gap
		}
	}
	if n := len(names); n > 0 && names[n-1].y > f.bottom {
		names[n-1].y = f.bottom
		for i := n - 2; i >= 0; i-- {
			names[i].y = math.Min(names[i].y, names[i+1].y-gap)
		}
	}
	g := s.Group("names", "", Paper)
	end := f.right + 7.0
	if c.CloseNames {
		end = f.right + 3.6
	}
	for _, n := range names {
		g.Add(Line{Points: []Point{{f.right + 0.3, n.want}, {f.right + 1.6, n.y}}, Pen: Pen{Color: c.Quiet, Width: 0.12}})
		g.Add(Line{Points: []Point{{f.right + 1.6, n.y}, {end, n.y}}, Pen: n.pen})
		g.Add(Text{At: Point{end + 0.8, n.y + 0.85}, Words: n.words, Height: chartLetters, Color: c.Ink})
	}
}
