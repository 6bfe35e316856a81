package fem

import "math"

// linePoint is a point of a rule on −1…1.
type linePoint struct{ at, weight float64 }

// Gauss rules on −1…1, exact for polynomials of degree 3, 5, 7 and 9.
// Source: Abramowitz and Stegun, table 25.4, in closed form.
var (
	gauss2 = []linePoint{{-1 / math.Sqrt(3), 1}, {1 / math.Sqrt(3), 1}}
	gauss3 = []linePoint{{-math.Sqrt(0.6), 5. / 9}, {0, 8. / 9}, {math.Sqrt(0.6), 5. / 9}}
	gauss4 = gaussFour()
	gauss5 = gaussFive()
)

func gaussFour() []linePoint {
	inner, outer := math.Sqrt((3-2*math.Sqrt(1.2))/7), math.Sqrt((3+2*math.Sqrt(1.2))/7)
	wi, wo := (18+math.Sqrt(30))/36, (18-math.Sqrt(30))/36
	return []linePoint{{-outer, wo}, {-inner, wi}, {inner, wi}, {outer, wo}}
}

func gaussFive() []linePoint {
	inner, outer := math.Sqrt(5-2*math.Sqrt(10./7))/3, math.Sqrt(5+2*math.Sqrt(10./7))/3
	wi, wo := (322+13*math.Sqrt(70))/900, (322-13*math.Sqrt(70))/900
	return []linePoint{{-outer, wo}, {-inner, wi}, {0, 128. / 225}, {inner, wi}, {outer, wo}}
}

// squareRule is the product of a rule with itself.
func squareRule(line []linePoint) []rulePoint {
	var rule []rulePoint
	for _, b := range line {
		for _, a := range line {
			rule = append(rule, rulePoint{a.at, b.at, a.weight * b.weight})
		}
	}
	return rule
}

// triangleRule3 is exact for degree 2.
var triangleRule3 = []rulePoint{{1. / 6, 1. / 6, 1. / 6}, {2. / 3, 1. / 6, 1. / 6}, {1. / 6, 2. / 3, 1. / 6}}

// triangleRule6 is exact for degree 4.
// Source: Strang and Fix, An analysis of the finite element method (1973), table 4.1,
// here in closed form.
var triangleRule6 = triangleSix()

func triangleSix() []rulePoint {
	root := math.Sqrt(38 - 44*math.Sqrt(0.4))
	near, far := (8-math.Sqrt(10)+root)/18, (8-math.Sqrt(10)-root)/18
	spread := math.Sqrt(213125 - 53320*math.Sqrt(10))
	wNear, wFar := (620+spread)/3720/2, (620-spread)/3720/2
	var rule []rulePoint
	for _, p := range []struct{ a, w float64 }{{near, wNear}, {far, wFar}} {
		rule = append(rule, rulePoint{p.a, p.a, p.w}, rulePoint{1 - 2*p.a, p.a, p.w}, rulePoint{p.a, 1 - 2*p.a, p.w})
	}
	return rule
}
