package mesh

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// collected is one input with the area its mesh must have.
type collected struct {
	name string
	d    Domain
	area float64
}

// collectedInputs reads rings (outline and holes), graphs and point sets; the
// last two are put in a box. Each folder says where its files are from and under what
// licence.
func collectedInputs(t testing.TB) []collected {
	t.Helper()
	var out []collected
	files, err := filepath.Glob(filepath.Join("testdata", "*", "*"))
	if err != nil || len(files) == 0 {
		t.Fatalf("nothing in testdata: %v", err)
	}
	for _, file := range files {
		if filepath.Base(file) == "LICENCE" {
			continue
		}
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		c := collected{name: filepath.Base(filepath.Dir(file)) + "/" + filepath.Base(file)}
		switch filepath.Base(filepath.Dir(file)) {
		case "rings":
			var rings [][]Point
			if err := json.Unmarshal(data, &rings); err != nil {
				t.Fatalf("%s: %v", c.name, err)
			}
			c.d = Domain{Outline: rings[:1], Holes: rings[1:]}
			c.area = math.Abs(ringArea(rings[0]))
			for _, hole := range rings[1:] {
				c.area -= math.Abs(ringArea(hole))
			}
		case "graphs":
			c.d.Points, c.d.Lines = readGraph(t, string(data))
			c.box()
		case "points":
			if err := json.Unmarshal(data, &c.d.Points); err != nil {
				t.Fatalf("%s: %v", c.name, err)
			}
			c.box()
		default: // inputs of fuzz tests
			continue
		}
		out = append(out, c)
	}
	return out
}

func (c *collected) box() {
	low, high := bounds(c.d.Points)
	m := 0.1 * max(high[0]-low[0], high[1]-low[1])
	c.d.Outline = [][]Point{{{low[0] - m, low[1] - m}, {high[0] + m, low[1] - m}, {high[0] + m, high[1] + m}, {low[0] - m, high[1] + m}}}
	c.area = (high[0] - low[0] + 2*m) * (high[1] - low[1] + 2*m)
}

// readGraph reads a count of points and edges, the points, and the edges.
func readGraph(t testing.TB, text string) (points []Point, lines [][]Point) {
	t.Helper()
	r := strings.NewReader(text)
	var n, e int
	if _, err := fmt.Fscan(r, &n, &e); err != nil {
		t.Fatal(err)
	}
	points = make([]Point, n)
	for i := range points {
		if _, err := fmt.Fscan(r, &points[i][0], &points[i][1]); err != nil {
			t.Fatal(err)
		}
	}
	for range e {
		var i, j int
		if _, err := fmt.Fscan(r, &i, &j); err != nil {
			t.Fatal(err)
		}
		lines = append(lines, []Point{points[i], points[j]})
	}
	return points, lines
}

// Rings that touch themselves and one another, run back on themselves or cross; lines
// that hang, overlap or nearly meet; points almost on a line. All mesh with the exact
// area, or are refused at a place.
func TestCollectedPolygonsMesh(t *testing.T) {
	refused := map[string]bool{
		"graphs/cdt.txt": true, "rings/bad-hole.json": true, "rings/empty-square.json": true, "rings/infinite-loop-jhl.json": true,
		"rings/issue107.json": true, "rings/issue83.json": true, "rings/simplified-us-border.json": true,
	}
	inputs := collectedInputs(t)
	if len(inputs) != 60 {
		t.Errorf("%d inputs, want 60", len(inputs))
	}
	for _, c := range inputs {
		m, err := Build(c.d)
		if refused[c.name] != (err != nil) {
			t.Errorf("%s: %v", c.name, err)
		}
		if err != nil {
			if e, ok := err.(*Error); !ok || math.IsNaN(e.At[0]) || !strings.Contains(err.Error(), "near x") {
				t.Errorf("%s: %v names no place", c.name, err)
			}
			continue
		}
		q := checkMesh(t, c.name, m, &c.d, c.area)
		t.Logf("%s: %d triangles, smallest angle %.3g, %d below", c.name, q.Triangles, q.SmallestAngle, q.Below)
	}
}
