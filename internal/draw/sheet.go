package draw

import (
	"math"
	"strconv"
)

// Scales are the n of 1:n that a scale rule carries.
var Scales = []float64{10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000, 1250, 1500, 2000, 2500, 5000, 10000}

// North draws an arrow of 14 mm about a place, to where north lies when up on paper
// points so many degrees clockwise of it; nil says that nobody knows.
func North(at Point, bearing *float64, ink, quiet Color) []Shape {
	if bearing == nil {
		return []Shape{Text{At: at, Words: "North", Height: 2.4, Anchor: Middle, Color: quiet},
			Text{At: Point{at.X, at.Y + 3}, Words: "not known", Height: 2.4, Anchor: Middle, Color: quiet}}
	}
	sin, cos := math.Sincos(*bearing * math.Pi / 180)
	tip, tail := Point{at.X - 7*sin, at.Y - 7*cos}, Point{at.X + 7*sin, at.Y + 7*cos}
	return []Shape{Line{Points: []Point{tail, tip}, Pen: Pen{Color: ink, Width: 0.3}, End: Arrow},
		Text{At: Point{at.X - 9.3*sin, at.Y - 9.3*cos + 1}, Words: "N", Height: 3, Anchor: Middle, Bold: true, Color: ink}}
}

// ScaleBar draws a bar of round length for a drawing at 1:n in metres, about 45 mm on
// paper, in parts.
func ScaleBar(x, y, n float64, ink Color) []Shape {
	_, step := Steps(0, 45*n/1000, 5)
	mm := step * 1000 / n
	count := int(45 / mm)
	var shapes []Shape
	for i := range count {
		a := Point{x + float64(i)*mm, y}
		fill := Color{}
		if i%2 == 0 {
			fill = ink
		}
		shapes = append(shapes, Area{Ring: []Point{a, {a.X + mm, a.Y}, {a.X + mm, a.Y + 1.4}, {a.X, a.Y + 1.4}}, Fill: fill, Pen: Pen{Color: ink, Width: 0.15}},
			Text{At: Point{a.X, y - 1.2}, Words: scaleNumber(float64(i) * step), Height: 2.4, Anchor: Middle, Color: ink})
	}
	return append(shapes, Text{At: Point{x + float64(count)*mm, y - 1.2}, Words: scaleNumber(float64(count)*step) + "\u202fm", Height: 2.4, Anchor: Middle, Color: ink})
}

func scaleNumber(v float64) string {
	decimals := 1
	if v == math.Trunc(v) {
		decimals = 0
	}
	return strconv.FormatFloat(v, 'f', decimals, 64)
}
