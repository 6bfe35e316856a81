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

// polygonFolder looks upward for the folder of collected polygons.
func polygonFolder(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		found := filepath.Join(dir, "shared", "data", "polygons")
		if _, err := os.Stat(found); err == nil {
			return found
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Skip("no folder shared/data/polygons above the working folder")
		}
		dir = up
	}
}

// collected is one input with the area its mesh must have.
type collected struct {
	name string
	d    Domain
	area float64
}

// collectedInputs reads rings (outline and holes), graphs and point sets; the
// last two are put in a box.
func collectedInputs(t testing.TB, folder string) []collected {
	t.Helper()
	var out []collected
	files, err := filepath.Glob(filepath.Join(folder, "*", "*"))
	if err != nil || len(files) == 0 {
		t.Fatalf("nothing in %s: %v", folder, err)
	}
	for _, file := range files {
		if info, err := os.Stat(file); err != nil || info.IsDir() {
			continue
		}
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		c := collected{name: filepath.Base(filepath.Dir(file)) + "/" + filepath.Base(file)}
		switch filepath.Base(filepath.Dir(file)) {
		case "earcut", "rings":
			if filepath.Ext(file) != ".json" {
				continue
			}
			var rings [][]Point
			if err := json.Unmarshal(data, &rings); err != nil {
				t.Fatalf("%s: %v", c.name, err)
			}
			c.d = Domain{Outline: rings[:1], Holes: rings[1:]}
			c.area = math.Abs(ringArea(rings[0]))
			for _, hole := range rings[1:] {
				c.area -= math.Abs(ringArea(hole))
			}
		case "pslg":
			c.d.Points, c.d.Lines = readGraph(t, string(data))
			c.box()
		case "points":
			if err := json.Unmarshal(data, &c.d.Points); err != nil {
				t.Fatalf("%s: %v", c.name, err)
			}
			c.box()
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

func TestCollectedPolygonsMesh(t *testing.T) {
	meshed, refused := checkCollected(t, collectedInputs(t, polygonFolder(t)))
	t.Logf("%d meshed, %d refused", meshed, refused)
}

// Ten of them are kept here: rings that touch themselves and one another, run back
// on themselves, or cross.
func TestTouchingRingsMesh(t *testing.T) {
	if meshed, refused := checkCollected(t, collectedInputs(t, "testdata")); meshed != 8 || refused != 2 {
		t.Errorf("%d meshed and %d refused, want 8 and 2", meshed, refused)
	}
}

func checkCollected(t *testing.T, inputs []collected) (meshed, refused int) {
	for _, c := range inputs {
		m, err := Build(c.d)
		if err != nil {
			refused++
			if e, ok := err.(*Error); !ok || math.IsNaN(e.At[0]) {
				t.Errorf("%s: %v names no place", c.name, err)
			}
			t.Logf("%s refused: %v", c.name, err)
			continue
		}
		meshed++
		q := checkMesh(t, c.name, m, &c.d, c.area)
		t.Logf("%s: %d triangles, smallest angle %.3g, %d below", c.name, q.Triangles, q.SmallestAngle, q.Below)
	}
	return meshed, refused
}
