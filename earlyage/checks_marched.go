package earlyage

import (
	"math"

	"slabwright/internal/march"
	"slabwright/source"
)

// marchedQuantities are the same closed forms by finite volumes.
var marchedQuantities = map[string]source.Func{
	"surface step marched": func(in source.Inputs) float64 {
		return halfSpace(in.Num("x"), in.Num("t"), 1, 1/in.Num("a"), in.Num("Ti"), march.Held(march.Constant(in.Num("Ts"))))
	},
	"film marched": func(in source.Inputs) float64 {
		k := in.Num("k")
		return halfSpace(in.Num("x"), in.Num("t"), k, k/in.Num("a"), 0, march.Film{Coefficient: march.Constant(in.Num("h")), Ambient: march.Constant(1)})
	},
	"flux marched": func(in source.Inputs) float64 {
		k := in.Num("k")
		return halfSpace(in.Num("x"), in.Num("t"), k, k/in.Num("a"), 0, march.Flux(march.Constant(in.Num("q"))))
	},
	"slab film marched": func(in source.Inputs) float64 {
		g := march.TwoSided(0, 1, 40, 1.05)
		p := march.Layered(g, march.Layer{To: 1, Conductivity: 1, Capacity: 1})
		p.Top = march.Film{Coefficient: march.Constant(in.Num("Bi")), Ambient: march.Constant(0)}
		return marched(p, constant(g, 1), in.Num("Fo"), 1-in.Num("place"))
	},
	"contact temperature marched": func(in source.Inputs) float64 {
		const n = 60
		upper, lower := march.Graded(0, 0.3, n, 0.9), march.Graded(0.3, 0.6, n, 1/0.9)
		g := upper.Then(lower)
		rhoC1, rhoC2 := in.Num("rho1")*in.Num("c1"), in.Num("rho2")*in.Num("c2")
		p := march.Layered(g, march.Layer{To: 0.3, Conductivity: in.Num("k1"), Capacity: rhoC1},
			march.Layer{To: 0.6, Conductivity: in.Num("k2"), Capacity: rhoC2})
		start := constant(g, in.Num("T1"))
		for i := n + 1; i < len(start); i++ {
			start[i] = in.Num("T2")
		}
		start[n] = (rhoC1*in.Num("T1") + rhoC2*in.Num("T2")) / (rhoC1 + rhoC2) // half of each
		return marched(p, start, 600, 0.3)
	},
	"decaying source marched": func(in source.Inputs) float64 {
		g := march.TwoSided(0, in.Num("L"), 30, 1.03)
		p := march.Layered(g, march.Layer{To: in.Num("L"), Conductivity: in.Num("k"), Capacity: in.Num("rhoc")})
		p.Top, p.Bottom = march.Held(march.Constant(0)), march.Held(march.Constant(0))
		p.Local = decaying{g.Volumes(), in.Num("q0"), in.Num("b")}
		return marched(p, constant(g, 0), in.Num("t"), in.Num("x"))
	},
	"steady source marched": func(in source.Inputs) float64 {
		length, k, q := in.Num("L"), in.Num("k"), in.Num("q")
		g := march.Uniform(0, length, 40)
		p := march.Layered(g, march.Layer{To: length, Conductivity: k, Capacity: 2.4e6})
		p.Top, p.Bottom = march.Held(march.Constant(0)), march.Held(march.Constant(0))
		p.Local = decaying{g.Volumes(), q, 1e-12}
		return marched(p, constant(g, 0), 40*length*length*2.4e6/k, length/2)
	},
	"mean loss marched": func(in source.Inputs) float64 {
		length := in.Num("L") * 1e-3
		g := march.Graded(0, length, 100, 1.04)
		p := march.Layered(g, march.Layer{To: length, Conductivity: in.Num("D") * 1e-6, Capacity: 1})
		p.Top = march.Held(march.Constant(0))
		m := march.New(p, 0, constant(g, 1))
		marchTo(m, in.Num("t"))
		return 1 - g.Mean(m.Value, 0, len(g)-1)
	},
}

// decaying is a source q0 exp(-b t) that runs by the clock.
type decaying struct {
	volume []float64
	q0, b  float64
}

func (d decaying) Count() int                              { return len(d.volume) }
func (d decaying) Rate(int, float64) (rate, slope float64) { return 1, 0 }
func (d decaying) Release(i int, s float64) (amount, slope float64) {
	return -d.volume[i] * d.q0 / d.b * math.Expm1(-d.b*s), d.volume[i] * d.q0 * math.Exp(-d.b*s)
}

// halfSpace is the value at depth x of a deep column from start under an end.
func halfSpace(x, t, k, capacity, start float64, top march.End) float64 {
	deep := 8 * math.Sqrt(k/capacity*t)
	g := march.Graded(0, deep, 200, 1.015)
	p := march.Layered(g, march.Layer{To: deep, Conductivity: k, Capacity: capacity})
	p.Top = top
	return marched(p, constant(g, start), t, x)
}

func constant(g march.Grid, value float64) []float64 {
	out := make([]float64, len(g))
	for i := range out {
		out[i] = value
	}
	return out
}

// marched is the value at depth x and time t.
func marched(p march.Problem, start []float64, t, x float64) float64 {
	m := march.New(p, 0, start)
	marchTo(m, t)
	return valueAt(m, x)
}

// marchTo marches to time t with steps chosen by a small error.
func marchTo(m *march.Marcher, t float64) {
	if _, err := m.Advance(t, march.Control{Error: 1e-5, First: t * 1e-7, Min: t * 1e-12, Max: t / 100}, nil); err != nil {
		panic("earlyage: " + err.Error())
	}
}

// valueAt is the value at depth x, by a parabola through the three nearest nodes.
func valueAt(m *march.Marcher, x float64) float64 {
	g := m.Grid
	i := min(max(g.Index(x), 1), len(g)-2)
	a, b, c := g[i-1], g[i], g[i+1]
	return m.Value[i-1]*(x-b)*(x-c)/((a-b)*(a-c)) + m.Value[i]*(x-a)*(x-c)/((b-a)*(b-c)) + m.Value[i+1]*(x-a)*(x-b)/((c-a)*(c-b))
}
