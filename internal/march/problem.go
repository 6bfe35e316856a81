package march

// Local is a process that goes on at a node by itself and releases content as it
// does, such as cement hydrating. Each of the first Count nodes has a hidden
// state s (an equivalent age, say) that grows at Rate(u) and has released
// Release(s) so far, per unit area.
type Local interface {
	Count() int
	// Rate returns ds/dt at value u, and its derivative with u.
	Rate(node int, u float64) (rate, slope float64)
	// Release returns what has been released at hidden state s, and its derivative.
	Release(node int, s float64) (amount, slope float64)
}

// Potential is the integral of a diffusivity over the value: the flow through an
// interval is its conductance times the difference of the potential (Kirchhoff's
// transformation), so that a diffusivity falling twenty-fold between two nodes is
// still carried exactly. It returns the potential at u and the diffusivity there.
type Potential func(u float64) (potential, diffusivity float64)

// Problem is everything that is fixed while marching. Capacity and Conductance
// may be changed by the owner between steps (a conductivity that falls as cement
// hydrates).
type Problem struct {
	Grid        Grid
	Capacity    []float64 // content per unit of value and unit of area, by node
	Conductance []float64 // flow per unit of difference, by interval
	Top, Bottom End
	Local       Local     // nil: no release
	Potential   Potential // nil: flow follows the value itself
}

// Layer is a material between two depths of a grid.
type Layer struct {
	To           float64 // depth of its lower face, m
	Conductivity float64 // W/mK
	Capacity     float64 // J/m3K
}

// Layered returns the problem of layers on a grid that has a node on every lower
// face. The ends are sealed until set.
func Layered(g Grid, layers ...Layer) Problem {
	p := Problem{Grid: g, Top: Sealed{}, Bottom: Sealed{}}
	p.Capacity = make([]float64, len(g))
	p.Conductance = make([]float64, len(g)-1)
	layer := 0
	for i := 0; i+1 < len(g); i++ {
		middle := (g[i] + g[i+1]) / 2
		for layer+1 < len(layers) && middle > layers[layer].To {
			layer++
		}
		dx := g[i+1] - g[i]
		p.Conductance[i] = layers[layer].Conductivity / dx
		p.Capacity[i] += layers[layer].Capacity * dx / 2
		p.Capacity[i+1] += layers[layer].Capacity * dx / 2
	}
	return p
}

// Series returns the conductance of layers one behind the other: thickness and
// conductivity of each, e.g. a sheet between two nodes.
func Series(thickness, conductivity []float64) float64 {
	var resistance float64
	for i := range thickness {
		resistance += thickness[i] / conductivity[i]
	}
	return 1 / resistance
}
