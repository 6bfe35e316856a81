package flexure

import (
	"fmt"
	"math"

	"slabwright/internal/fem"
	"slabwright/internal/mesh"
	"slabwright/plan"
)

// triangleNet meshes in triangles.
func (p Plate) triangleNet(paths []plan.Polyline, parted []bool, loads []Load) (*net, error) {
	n := &net{kind: fem.DKT}
	if p.theory() == Thick {
		n.kind = fem.MITC3
	}
	d := mesh.Domain{Outline: [][]mesh.Point{toMesh(p.Slab.Outline)}, Smooth: 2, Unstructured: true, Snap: 1e-4, MaxTriangles: tooMany}
	for _, h := range p.openings() {
		d.Holes = append(d.Holes, toMesh(h))
	}
	for i, path := range paths {
		if parted[i] {
			d.Lines = append(d.Lines, toMesh(path))
		} else {
			d.Lines = append(d.Lines, nil)
		}
	}
	for _, z := range p.Zones {
		d.Lines = append(d.Lines, toMesh(append(append([]plan.Point(nil), z.Area...), z.Area[0])))
	}
	d.Size = mesh.Grade(p.size(), growth, p.fineAt(loads)...)
	m, err := mesh.Build(d)
	if err != nil {
		return nil, fmt.Errorf("the plan cannot be cut into triangles: %w", err)
	}
	slit := m.Slit(func(line int32) bool { return int(line) < len(parted) && parted[line] })
	n.mesh = fem.FromTriangles(slit.Points, slit.Triangles)
	for _, e := range slit.Edges {
		for _, mark := range m.Marks[e.Set] {
			if j := int(mark.Index); mark.Kind == mesh.OnLine && j < len(paths) {
				n.addFace([4]int32{e.A, e.B, e.C, e.D}, j, paths[j])
				break
			}
		}
	}
	return n, nil
}

// fineAt lists the places where elements must be small.
func (p Plate) fineAt(loads []Load) (fine []mesh.Source) {
	if len(loads) > 0 {
		for _, q := range p.sharpPlaces() {
			fine = append(fine, mesh.Source{At: mesh.Point{q.X, q.Y}, Size: p.size() * atSharp})
		}
	}
	for _, l := range loads {
		size := p.fineUnder(l)
		if len(l.Line) > 0 {
			fine = append(fine, mesh.Along(toMesh(l.Line), size, size)...)
			continue
		}
		low, high := l.box()
		across := int(math.Ceil(math.Max(high.X-low.X, high.Y-low.Y)/size)) + 1
		for i := range across + 1 {
			for j := range across + 1 {
				q := plan.Point{X: low.X + (high.X-low.X)*float64(i)/float64(across), Y: low.Y + (high.Y-low.Y)*float64(j)/float64(across)}
				fine = append(fine, mesh.Source{At: mesh.Point{q.X, q.Y}, Size: size})
			}
		}
	}
	return fine
}

func toMesh(ring []plan.Point) []mesh.Point {
	out := make([]mesh.Point, len(ring))
	for i, p := range ring {
		out[i] = mesh.Point{p.X, p.Y}
	}
	return out
}
