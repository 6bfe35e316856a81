package plan

import (
	"fmt"
	"math"
	"sort"
)

// JointReach is how far short of an edge, an opening or another joint a joint may
// stop and still count as reaching it, in metres. A saw blade cannot cut up to an
// upstand, and lines drawn on a phone stop a little short. Chosen by the project.
const JointReach = 0.05

// FreeEdge is what a side of a panel is on when no joint and no fixture runs there.
const FreeEdge = "edge"

// Panel is a piece of slab bounded by joints and edges. It is derived from the
// plan, never typed.
type Panel struct {
	ID            string   `json:"id"` // P1, P2 ... row by row from the lower left
	Ring          Ring     `json:"ring_m"`
	Openings      []Ring   `json:"openings_m,omitempty"`
	Area          float64  `json:"area_m2"`
	Centroid      Point    `json:"centroid"`
	Length        float64  `json:"length_m"`         // long side of the least rectangle round it
	Width         float64  `json:"width_m"`          // its short side
	LongDirection float64  `json:"long_deg"`         // of the long side, 0 to 180 anticlockwise from x
	Aspect        float64  `json:"aspect"`           // length over width
	Rectangle     Ring     `json:"rectangle_m"`      // the least rectangle
	Sides         []Side   `json:"sides"`            // side i runs from point i of Ring
	Around        []string `json:"around,omitempty"` // fixtures of the openings
	InsideCorners []Corner `json:"inside_corners,omitempty"`
	SharpCorners  []Corner `json:"sharp_corners,omitempty"` // below SharpBelow
}

// Side is one straight side of a panel and what it is on.
type Side struct {
	From    Point  `json:"from"`
	To      Point  `json:"to"`
	On      string `json:"on"` // joint id, fixture id or FreeEdge
	Joint   string `json:"joint,omitempty"`
	Fixture string `json:"fixture,omitempty"`
}

// Segment returns the side as a straight piece.
func (s Side) Segment() Segment { return Segment{s.From, s.To} }

// Panels returns the pieces into which joints and edges divide the slab, in the
// order of their numbers. A joint that stops inside a panel, or runs to a hole and
// no further, divides nothing. The areas add up to the outline less the openings.
//
// The error is the first [Problem] that makes the outline unusable.
func (s Slab) Panels() ([]Panel, error) {
	if bad := s.checkOutline(); len(bad) > 0 {
		return nil, bad[0]
	}
	net := node(s.dividers(), SnapTolerance)
	faces := s.slabFaces(net)
	for range 100 {
		edges, merged := withoutSlivers(net, faces)
		if !merged {
			break
		}
		net.edges = edges
		faces = s.slabFaces(net)
	}
	if len(faces) == 0 {
		place := s.Outline[0]
		return nil, Problem{Field: "outline_m", Place: &place, Found: "nothing is left of the slab",
			Want: "an outline larger than its openings", Mend: "Look at the openings."}
	}
	corners := s.InsideCorners()
	panels := make([]Panel, len(faces))
	for i, f := range faces {
		panels[i] = s.panel(net, f, corners)
	}
	number(panels)
	return panels, nil
}

// dividers returns every straight piece that may divide the slab.
func (s Slab) dividers() []Segment {
	pieces := cleanRing(s.Outline).Sides()
	for _, f := range s.openings() {
		pieces = append(pieces, cleanRing(f.Shape).Sides()...)
	}
	for i := range s.Joints {
		pieces = append(pieces, s.reachingPath(i).Pieces()...)
	}
	return pieces
}

// openings returns the fixtures that are holes in the slab.
func (s Slab) openings() []Fixture {
	var holes []Fixture
	for _, f := range s.Fixtures {
		if f.Opening && len(f.Shape) >= 3 && Ring(f.Shape).Area() > 0 {
			holes = append(holes, f)
		}
	}
	return holes
}

// reachingPath returns the path of the i-th joint with each end run on to what it
// stops less than JointReach short of.
func (s Slab) reachingPath(i int) Polyline {
	path := append(Polyline{}, s.Joints[i].Path...)
	if path.Length() == 0 {
		return path
	}
	var targets []Segment
	targets = append(targets, Ring(s.Outline).Sides()...)
	for _, f := range s.openings() {
		targets = append(targets, Ring(f.Shape).Sides()...)
	}
	for k, j := range s.Joints {
		if k != i {
			targets = append(targets, Polyline(j.Path).Pieces()...)
		}
	}
	pieces := path.Pieces()
	path[len(path)-1] = runOn(pieces[len(pieces)-1].A, path[len(path)-1], targets)
	path[0] = runOn(pieces[0].B, path[0], targets)
	return path
}

func runOn(before, end Point, targets []Segment) Point {
	d, _ := end.Minus(before).Unit()
	ray := Segment{end, end.Plus(d.Times(JointReach))}
	best := math.Inf(1)
	for _, t := range targets {
		if _, off := t.Nearest(end); off <= SnapTolerance {
			return end
		}
		if share, _, ok := ray.Cross(t); ok {
			best = math.Min(best, share)
		}
	}
	if math.IsInf(best, 1) {
		return end
	}
	return ray.At(best)
}

// slabFaces returns the regions of the network that are slab.
func (s Slab) slabFaces(net network) []face {
	var slab []face
	for _, f := range net.split() {
		p, ok := somewhere(net.ring(f.outer), net.rings(f.holes))
		if ok && s.contains(p) {
			slab = append(slab, f)
		}
	}
	return slab
}

func (n network) rings(loops [][]int) []Ring {
	rings := make([]Ring, len(loops))
	for i, l := range loops {
		rings[i] = n.ring(l)
	}
	return rings
}

// contains reports whether p is inside the outline and in no opening.
func (s Slab) contains(p Point) bool {
	if !Ring(s.Outline).Contains(p) {
		return false
	}
	for _, f := range s.openings() {
		if Ring(f.Shape).Contains(p) {
			return false
		}
	}
	return true
}

// number orders panels row by row, each row from left to right, and names them. A
// row takes in every panel that starts below the middle of its lowest one.
func number(panels []Panel) {
	bottom := func(p Panel) float64 { low, _ := p.Ring.Box(); return low.Y }
	sort.SliceStable(panels, func(i, j int) bool {
		a, b := math.Round(bottom(panels[i])/SnapTolerance), math.Round(bottom(panels[j])/SnapTolerance)
		if a != b {
			return a < b
		}
		return panels[i].Centroid.X < panels[j].Centroid.X
	})
	for i := 0; i < len(panels); {
		low, high := panels[i].Ring.Box()
		middle := (low.Y + high.Y) / 2
		j := i + 1
		for j < len(panels) && bottom(panels[j]) < middle {
			j++
		}
		row := panels[i:j]
		sort.SliceStable(row, func(a, b int) bool { return row[a].Centroid.X < row[b].Centroid.X })
		i = j
	}
	for i := range panels {
		panels[i].ID = fmt.Sprintf("P%d", i+1)
	}
}
