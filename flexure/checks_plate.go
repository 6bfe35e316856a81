package flexure

import (
	"context"
	"fmt"
	"math"
	"sync"

	"slabwright/plan"
	"slabwright/source"
)

// plateQuantities answer rows that bend a slab as a plate.
var plateQuantities = map[string]source.Func{
	"plate_w":          unitPlate(func(c unitCase) float64 { return c.deflection() }),
	"plate_m":          unitPlate(func(c unitCase) float64 { return c.moment() }),
	"plate_corner":     unitPlate(func(c unitCase) float64 { return onBisector(c.bent).Value * 0.15 * 0.15 / c.load }),
	"plate_reach":      unitPlate(func(c unitCase) float64 { return onBisector(c.bent).At.Norm() / c.bent.Stiff }),
	"plate_lte":        unitPlate(func(c unitCase) float64 { return c.bent.Joints[0].LTE }),
	"plate_lte_stress": unitPlate(func(c unitCase) float64 { return c.bent.Joints[0].Stress }),
	"plate_mm":         squarePlate(func(_ source.Inputs, h Here, _ *Bent) float64 { return h.Deflection * 1e3 }),
	"plate_bottom":     squarePlate(func(_ source.Inputs, h Here, _ *Bent) float64 { return h.Bottom / 1e6 }),
	"plate_bisector":   squarePlate(func(_ source.Inputs, _ Here, b *Bent) float64 { return onBisector(b).Value / 1e6 }),
	"plate_along":      squarePlate(alongEdge),
	"yard_w":           yardPlate(func(h Here) float64 { return h.Deflection * 1e3 }),
	"yard_bottom":      yardPlate(func(h Here) float64 { return h.Bottom / 1e6 }),
	"yard_top":         yardPlate(func(h Here) float64 { return h.Top / 1e6 }),
	"plate_contact":    squarePlate(func(_ source.Inputs, _ Here, b *Bent) float64 { return b.Contact }),
}

// yardPlate reads a place of the yard of 353 m² with a notch and a pit, colder on top by
// 10 K, under a wheel near its edge.
func yardPlate(answer func(Here) float64) source.Func {
	return func(in source.Inputs) float64 {
		h, _ := solvedOnce("yard", problemP()).At(plan.Point{X: in.Num("x"), Y: in.Num("y")})
		return answer(h)
	}
}

func problemP() Plate {
	outline := []plan.Point{{}, {X: 24}, {X: 24, Y: 13}, {X: 21, Y: 13}, {X: 21, Y: 15}, {Y: 15}}
	return Plate{Slab: plan.Slab{ID: "P", Outline: outline, Fixtures: []plan.Fixture{{ID: "pit", Kind: plan.Pit, Opening: true, Shape: rectangle(9, 6, 10.2, 6.9)}}},
		Thickness: 0.15, Modulus: 20e9, Poisson: 0.2, Support: 50e6, UnitWeight: 24e3,
		Warp:  Warp{Difference: -10, Expansion: 10e-6},
		Loads: []Load{Patch("wheel", plan.Point{X: 12, Y: 0.25}, 40e3, 0.25, 0.25, 0)}}
}

// solved keeps plates that several rows ask about.
var solved sync.Map

func solvedOnce(key string, p Plate) *Bent {
	if b, ok := solved.Load(key); ok {
		return b.(*Bent)
	}
	b, err := p.Solve(context.Background())
	if err != nil {
		panic("flexure: " + key + ": " + err.Error())
	}
	solved.Store(key, b)
	return b
}

// unitCase is one wheel on a large slab.
type unitCase struct {
	bent *Bent
	at   plan.Point
	load float64
}

// unitSlab is a slab of usual concrete: results are made to have no unit, so that only
// Poisson's ratio and a/l count.
func unitSlab(nu float64) Plate {
	return Plate{Thickness: 0.15, Modulus: 30e9, Poisson: nu, Support: 50e6, Pulls: true}
}

// unitPlate reads "nu= al= at=", with agg over k l for a joint. The slab reaches 7 l to
// other edges.
func unitPlate(answer func(unitCase) float64) source.Func {
	return func(in source.Inputs) float64 {
		at, load := in.Word("at"), 10e3
		p := unitSlab(in.Num("nu"))
		l := p.stiffness()
		a, far := in.Num("al")*l, 7*l
		x0, y0 := -far, 0.0
		place, wheel := plan.Point{}, Load{ID: "wheel", Force: load, At: plan.Point{Y: a}, Radius: a}
		switch at {
		case "interior":
			y0, wheel.At = -far, plan.Point{}
		case "corner":
			x0, wheel.At = 0, plan.Point{X: a, Y: a}
		case "semicircle":
			wheel.Radius, wheel.Area = 0, halfCircle(a)
		case "joint":
			y0 = -far
			p.Slab.Joints = []plan.Joint{{ID: "J", Kind: plan.Formed, Path: []plan.Point{{X: x0}, {X: far}}}}
			p.Joints = []Transfer{{Joint: "J", Kind: Interlock, Interlock: in.Num("agg") * p.Support * l}}
		}
		p.Slab.ID, p.Slab.Outline, p.Loads = "S", rectangle(x0, y0, far, far), []Load{wheel}
		b := solvedOnce(fmt.Sprintf("unit %s %g %g %g", at, in.Num("nu"), in.Num("al"), in.NumOr("agg", 0)), p)
		return answer(unitCase{b, place, load})
	}
}

func rectangle(x0, y0, x1, y1 float64) []plan.Point {
	return []plan.Point{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}
}

// halfCircle has its diameter on y = 0.
func halfCircle(a float64) (ring []plan.Point) {
	const parts = circleSides / 2
	r := a * math.Sqrt(math.Pi/parts/math.Sin(math.Pi/parts))
	for i := range parts + 1 {
		t := math.Pi * float64(i) / parts
		ring = append(ring, plan.Point{X: r * math.Cos(t), Y: r * math.Sin(t)})
	}
	return ring
}

// deflection is w k l²/P at the place named.
func (c unitCase) deflection() float64 {
	h, _ := c.bent.At(c.at)
	return h.Deflection * c.bent.Plate.Support * c.bent.Stiff * c.bent.Stiff / c.load
}

// moment is 6 M/P underneath at the place named.
func (c unitCase) moment() float64 {
	h, _ := c.bent.At(c.at)
	return h.Bottom * c.bent.Plate.Thickness * c.bent.Plate.Thickness / c.load
}

// onBisector is the greatest tension on top along the bisector of the corner at the
// origin. The greatest of all may be a little more, on an edge.
func onBisector(b *Bent) (most Peak) {
	for r := 0.1; r < 2.5; r += 0.01 {
		at := plan.Point{X: r * b.Stiff / math.Sqrt2, Y: r * b.Stiff / math.Sqrt2}
		if h, ok := b.At(at); ok {
			higher(&most, h.Top, at, h.TopWay)
		}
	}
	return most
}

// squarePlate reads a square panel of side L in m, with P in kN on a patch of 0.2 m at
// centre, edge or corner, or dT in K; "see" is where to look: centre, edge, corner.
func squarePlate(answer func(source.Inputs, Here, *Bent) float64) source.Func {
	return func(in source.Inputs) float64 {
		side := in.Num("L")
		p := Plate{Thickness: 0.15, Modulus: 30e9, Poisson: 0.2, Support: 50e6, UnitWeight: 24e3 * in.NumOr("weight", 0), Pulls: in.NumOr("pulls", 0) == 1,
			Warp: Warp{Difference: in.NumOr("dT", 0), Expansion: 1e-5}, Slab: plan.Slab{ID: "S", Outline: rectangle(0, 0, side, side)}}
		places := map[string]plan.Point{"centre": {X: side / 2, Y: side / 2}, "edge": {X: side / 2}, "corner": {}}
		key := fmt.Sprintf("square %g %g %g %v", side, p.Warp.Difference, p.UnitWeight, p.Pulls)
		if force := in.NumOr("P", 0); force > 0 {
			at := places[in.Word("load")]
			at = plan.Point{X: math.Max(at.X, 0.1), Y: math.Max(at.Y, 0.1)}
			p.Loads = []Load{Patch("wheel", at, force*1e3, 0.2, 0.2, 0)}
			key += in.Word("load")
		}
		b := solvedOnce(key, p)
		h, _ := b.At(places[in.Word("see")])
		return answer(in, h, b)
	}
}

// alongEdge is the stress along x underneath; negative for tension on top.
func alongEdge(_ source.Inputs, h Here, b *Bent) float64 {
	return 6 * h.Moment[0] / (b.Plate.Thickness * b.Plate.Thickness) / 1e6
}
