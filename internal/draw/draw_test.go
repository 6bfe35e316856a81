package draw

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"codeberg.org/go-pdf/fpdf"
)

var black = RGB(0, 0, 0)

func sample() *Scene {
	s := New(100, 60, "A <title> & more", "what it shows")
	g := s.Group("parts", "Parts", Fit(Point{0, 0}, Point{8, 4}, 10, Point{50, 30}))
	g.Add(Area{Ring: []Point{{0, 0}, {8, 0}, {8, 4}, {0, 4}}, Holes: [][]Point{{{2, 1}, {3, 1}, {3, 2}, {2, 2}}},
		Pen: Pen{Color: black, Width: 0.5}, Fill: RGB(250, 250, 250), Hatch: &Hatch{Angle: 45, Pitch: 2, Pen: Pen{Color: black, Width: 0.1}}})
	g.Add(Line{Points: []Point{{0, 2}, {8, 2}}, Pen: Pen{Color: black, Width: 0.3, Dash: []float64{3, 1}}, Start: Tick, End: Arrow})
	g.Add(Text{At: Point{4, 2}, Words: "5 < 6", Height: 3, Anchor: Middle, Angle: 30, Color: black, Halo: RGB(255, 255, 255)})
	g.Add(Disc{At: Point{1, 1}, Radius: 2, Pen: Pen{Color: black, Width: 0.2}})
	return s
}

func TestSVGIsWellFormedAndSaysWhatItIs(t *testing.T) {
	out := sample().SVG()
	dec := xml.NewDecoder(bytes.NewReader(out))
	var names []string
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%v in\n%s", err, out)
		}
		if start, ok := tok.(xml.StartElement); ok {
			names = append(names, start.Name.Local)
		}
	}
	if len(names) < 3 || names[1] != "title" || names[2] != "desc" {
		t.Errorf("the svg must begin with title and desc, begins %v", names[:min(3, len(names))])
	}
	text := strings.Replace(string(out), `xmlns="http://www.w3.org/2000/svg"`, "", 1)
	for _, outside := range []string{"http", "url(", "href", "<script", "@import"} {
		if strings.Contains(text, outside) {
			t.Errorf("the svg refers to something outside: %q", outside)
		}
	}
	if !bytes.Equal(out, sample().SVG()) {
		t.Error("the same scene gave other bytes")
	}
}

func TestFitIsTrueToScaleAndTurnsYUp(t *testing.T) {
	to := Fit(Point{2, 3}, Point{12, 8}, 10, Point{60, 40}) // 1:100
	low, high := to.At(Point{2, 3}), to.At(Point{12, 8})
	if d := high.X - low.X; math.Abs(d-100) > 1e-9 {
		t.Errorf("10 m at 1:100 is %g mm, want 100", d)
	}
	if !(high.Y < low.Y) || math.Abs(low.Y-high.Y-50) > 1e-9 {
		t.Errorf("y runs from %g down to %g, want 50 mm upwards", low.Y, high.Y)
	}
	if mid := (Point{(low.X + high.X) / 2, (low.Y + high.Y) / 2}); math.Hypot(mid.X-60, mid.Y-40) > 1e-9 {
		t.Errorf("middle at %v, want (60, 40)", mid)
	}
}

// Length of the hatch times its pitch is the area, whatever the angle: each line
// stands for a strip one pitch wide. With a pitch of 1/200 of the size the error
// is below 1 %.
func TestHatchFillsTheAreaAndLeavesHoles(t *testing.T) {
	ring := []Point{{0, 0}, {40, 0}, {40, 20}, {15, 20}, {15, 30}, {0, 30}} // 950
	hole := []Point{{5, 5}, {12, 5}, {12, 12}, {5, 12}}                     // 49
	const pitch = 0.2
	for _, angle := range []float64{0, 17, 45, 90, 133} {
		sum := 0.0
		for _, l := range hatchLines([][]Point{ring, hole}, angle, pitch) {
			sum += math.Hypot(l[1].X-l[0].X, l[1].Y-l[0].Y)
			mid := Point{(l[0].X + l[1].X) / 2, (l[0].Y + l[1].Y) / 2}
			if mid.X > 5 && mid.X < 12 && mid.Y > 5 && mid.Y < 12 {
				t.Fatalf("angle %g: a line runs through the hole at %v", angle, mid)
			}
		}
		if got := sum * pitch; math.Abs(got/901-1) > 0.01 {
			t.Errorf("angle %g: hatch covers %.1f, area is 901", angle, got)
		}
	}
}

func TestPDFPutsLinesWhereTheyBelong(t *testing.T) {
	doc := fpdf.New("P", "mm", "A4", "")
	doc.SetCompression(false)
	doc.AddPage()
	s := New(50, 50, "", "")
	s.Group("", "", Paper).Add(Line{Points: []Point{{0, 0}, {20, 10}}, Pen: Pen{Color: black, Width: 1, Dash: []float64{2, 1}}})
	s.PDF(doc, 10, 20, "Helvetica", nil)
	var out bytes.Buffer
	if err := doc.Output(&out); err != nil {
		t.Fatal(err)
	}
	// 10 mm is 28.35 points; y is measured from the foot: 297 - 20 mm is 785.20.
	for _, want := range []string{"28.35 785.2", "85.04 756.85", "2.83 w", "[5.67 2.83]"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("no %q in the page", want)
		}
	}
}

func TestStepsAreRoundAndCover(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      int
		first     float64
		step      float64
	}{{0, 1.2, 4, 0, 0.5}, {0, 45, 5, 0, 10}, {-3, 7, 5, -2, 2}, {0, 0.004, 4, 0, 0.001}, {10.5, 41, 4, 20, 10}} {
		values, step := Steps(c.low, c.high, c.want)
		if math.Abs(step-c.step) > 1e-12 || math.Abs(values[0]-c.first) > 1e-12 {
			t.Errorf("Steps(%g, %g, %d) starts %g step %g, want %g step %g", c.low, c.high, c.want, values[0], step, c.first, c.step)
		}
		if last := values[len(values)-1]; last > c.high+1e-9 || last < c.high-step {
			t.Errorf("Steps(%g, %g) ends at %g", c.low, c.high, last)
		}
	}
}

// Whatever the marks, no words overlap in a row and no line of a mark runs through
// the words of another.
func TestMarksNeverRunIntoEachOther(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		c := Chart{X: Axis{Min: 0, Max: 36}}
		for range 1 + rng.IntN(14) {
			c.Marks = append(c.Marks, Mark{At: rng.Float64() * 36, Words: strings.Repeat("m", 1+rng.IntN(20))})
		}
		const left, right = 13.0, 150.0
		rows, rowOf := c.markRows(left, right)
		at := func(i int) float64 { return left + c.Marks[i].At/36*(right-left) }
		for i := range c.Marks {
			if rowOf[i] < 0 || rowOf[i] >= rows {
				t.Fatalf("mark %d in row %d of %d", i, rowOf[i], rows)
			}
			end := at(i) + WidthOf(c.Marks[i].Words, chartLetters)
			for j := range c.Marks {
				if i != j && at(j) > at(i) && at(j) < end && rowOf[j] >= rowOf[i] {
					t.Fatalf("the line of mark %d (row %d) runs through the words of %d (row %d)", j, rowOf[j], i, rowOf[i])
				}
			}
		}
	}
}

func TestCurvesStayInTheFrame(t *testing.T) {
	f := frame{10, 5, 110, 55, Axis{Min: 0, Max: 10}, Axis{Min: 0, Max: 2}}
	runs := clippedRuns([]float64{-1, 2, 4, 5, 7, 12}, []float64{0.5, 3, 1, math.NaN(), 1, 1.5}, f)
	if len(runs) < 3 {
		t.Errorf("a value not known and one outside must break the curve, got %d runs", len(runs))
	}
	for _, run := range runs {
		for _, p := range run {
			if p.X < 10-1e-9 || p.X > 110+1e-9 || p.Y < 5-1e-9 || p.Y > 55+1e-9 {
				t.Errorf("point %v outside the frame", p)
			}
		}
	}
}

func TestChartNamesEveryCurveAndLimit(t *testing.T) {
	c := Chart{Width: 120, Height: 50, Title: "t", Desc: "d", X: Axis{Min: 0, Max: 2, Title: "hours"}, Y: Axis{Min: 0, Max: 2, Title: "share"},
		Curves: []Curve{{Name: "median", X: []float64{0, 1, 2}, Y: []float64{0, 1, 1.5}, Low: []float64{0, 0.8, 1}, High: []float64{0, 1.2, 1.9}, Pen: Pen{Color: black, Width: 0.5}, Band: RGB(200, 200, 200)},
			{Name: "other", X: []float64{0, 2}, Y: []float64{0, 1.51}, Pen: Pen{Color: black, Width: 0.2}}},
		Limits: []Limit{{1, "cracks at 1"}}, Spans: []Span{{From: 0.5, To: 1, Words: "window", Fill: RGB(1, 2, 3)}}, Marks: []Mark{{0.7, "cut J3", Pen{Color: black, Width: 0.1}}}}
	out := string(c.Scene().SVG())
	for _, want := range []string{">median<", ">other<", ">cracks at 1<", ">window<", ">cut J3<", ">hours<", ">share<"} {
		if !strings.Contains(out, want) {
			t.Errorf("%s is not on the chart", want)
		}
	}
}

func TestMistakesArePanicsThatSayWhose(t *testing.T) {
	for name, f := range map[string]func(){
		"hatch": func() { hatchLines(nil, 0, 0) },
		"steps": func() { Steps(1, 1, 4) },
		"chart": func() { Chart{}.Scene() },
		"ruler": func() { Ruler{}.Scene() },
	} {
		func() {
			defer func() {
				if p, _ := recover().(string); !strings.HasPrefix(p, "draw: ") {
					t.Errorf("%s: panic %q does not begin with the package", name, p)
				}
			}()
			f()
		}()
	}
}
