package flexure

import "math"

// Field is a bent slab for drawing: places of the nodes, triangles between them, and
// what there is at each node. Nodes on a joint stand twice, once for each side, so that
// a step shows. Numbers are rounded to what a drawing can show.
type Field struct {
	X         []float64    `json:"x_m"`
	Y         []float64    `json:"y_m"`
	W         []float64    `json:"w_mm"`     // deflection, down
	ByLoads   []float64    `json:"added_mm"` // part that the loads add
	Bottom    []float64    `json:"bottom_mpa"`
	Top       []float64    `json:"top_mpa"`
	Triangles [][3]int32   `json:"triangles"`
	Joints    [][][2]int32 `json:"joints"` // of each joint of the plan, its sides as pairs of nodes of the first side
	Deepest   Peak         `json:"deepest"`
	Highest   Peak         `json:"highest"`
	MostTop   Peak         `json:"top"`
	MostUnder Peak         `json:"bottom"`
	Theory    Theory       `json:"theory"`
}

// Field returns the slab for drawing.
func (b *Bent) Field() Field {
	m, unknowns := b.frame.net.mesh, b.frame.net.kind.Unknowns
	f := Field{Deepest: b.Deepest, Highest: b.Highest, MostTop: b.Top, MostUnder: b.Bottom, Theory: b.Theory, Joints: make([][][2]int32, len(b.Plate.Slab.Joints))}
	for n := range m.X {
		w, still := b.u[n*unknowns], b.dead[n*unknowns]
		bottom, top, _, _ := b.Plate.allStress(b.moment[n])
		f.X, f.Y = append(f.X, rounded(m.X[n], 1e3)), append(f.Y, rounded(m.Y[n], 1e3))
		f.W, f.ByLoads = append(f.W, rounded(w*1e3, 1e5)), append(f.ByLoads, rounded((w-still)*1e3, 1e5))
		f.Bottom, f.Top = append(f.Bottom, rounded(bottom/1e6, 1e4)), append(f.Top, rounded(top/1e6, 1e4))
	}
	for e := range m.Elements() {
		of := m.Of(e)
		for k := 2; k < len(of); k++ {
			f.Triangles = append(f.Triangles, [3]int32{of[0], of[k-1], of[k]})
		}
	}
	for _, c := range b.frame.net.faces {
		f.Joints[c.joint] = append(f.Joints[c.joint], [2]int32{c.node[0], c.node[1]})
	}
	return f
}

func rounded(v, parts float64) float64 { return math.Round(v*parts) / parts }
