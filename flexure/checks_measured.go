package flexure

import (
	"fmt"
	"math"
	"math/rand/v2"

	"slabwright/plan"
	"slabwright/source"
)

// measuredQuantities answer rows of measured slabs.
var measuredQuantities = map[string]source.Func{
	"road_test_strain": func(in source.Inputs) float64 {
		return roadTestStrain(inches(in.Num("D")), inches(in.Num("clear")), Warp{})
	},
	"joints_below_half": func(source.Inputs) float64 {
		below, _ := jointPopulation(4000)
		return below
	},
	"joints_above_nine_tenths": func(source.Inputs) float64 {
		_, above := jointPopulation(4000)
		return above
	},
}

func inches(v float64) float64 { return v * 0.0254 }

// roadTestStrain is the greatest microstrain along the edge that the axle adds.
func roadTestStrain(thickness, clear float64, warp Warp) float64 {
	const psi, kip, pci = 6894.76, 4448.22, 0.271447e6
	axle := Axle{Force: 18 * kip, Track: inches(72), Pair: inches(13), Pressure: 70 * psi}
	p := Plate{Thickness: thickness, Modulus: 6.25e6 * psi, Poisson: 0.28, Support: 60 * pci, UnitWeight: 24e3, Warp: warp, Fine: 0.08, Size: 0.4,
		Slab: plan.Slab{ID: "lane", Outline: rectangle(0, 0, 12.2, 3.66)}}
	outer := clear + EqualAreaRadius(axle.Force/4/axle.Pressure) // middle of the outer tyre
	p.Loads = axle.At("axle", plan.Point{X: 6.1, Y: outer + axle.Pair/2 + axle.Track/2}, 0)
	b := solvedOnce(fmt.Sprintf("road test %g %g %g", thickness, clear, warp.Difference), p)
	most := 0.0
	for x := 5.5; x <= 6.7; x += 0.05 {
		h, _ := b.At(plan.Point{X: x})
		most = math.Max(most, 6*h.Added[0]/(thickness*thickness)/p.Modulus*1e6)
	}
	return most
}

// jointPopulation returns the shares of joints of pavements whose load transfer by
// falling weight is below 50 % and above 90 %. Two joints in three are dowelled, all
// seasons, bases from granular to lean concrete. The draw is the same each time.
func jointPopulation(joints int) (below, above float64) {
	r := rand.New(rand.NewPCG(12, 1))
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	low, high := 0, 0
	for range joints {
		p := Plate{Thickness: between(0.2, 0.28), Modulus: between(28e9, 40e9), Poisson: 0.15, Support: between(25e6, 110e6)}
		spacing := between(4.5, 6.5)
		fall := between(0, 30) // K below the temperature at set
		opening := between(0.65, 0.8) * spacing * (1e-5*fall + between(50e-6, 200e-6))
		j := Transfer{Kind: Interlock, Opening: opening}
		if r.Float64() < 2./3 {
			j.Kind = Dowelled
			j.Interlock = InterlockStiffness(opening, p.Support, p.stiffness())
			j.Bars = Bars{Diameter: between(0.025, 0.038), Spacing: 0.305, Support: 81e9 * math.Pow(407./81, r.Float64()), Modulus: 200e9}
		}
		switch e := MeasuredTransfer(j.Efficiency(p, 0.15), between(GranularTransfer, LeanTransfer)); {
		case e < 0.5:
			low++
		case e > 0.9:
			high++
		}
	}
	return float64(low) / float64(joints), float64(high) / float64(joints)
}
