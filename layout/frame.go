package layout

import (
	"math"

	"slabwright/plan"
)

// frame is a pair of line families: lines of one a ("across") and lines of one b
// ("along"). In a straight frame they are straight and square to one another; in a
// fan they are rays from a centre (one a) and arcs round it (one b). Both coordinates
// are in metres.
type frame struct {
	fan    bool
	origin plan.Point // of a fan, its centre
	axis   plan.Point // direction of growing a at b = 0; of a fan, the ray a = 0
	ref    float64    // of a fan: radius at which a is a true length
	closed bool       // of a fan: the slab goes all round
}

// straight returns the frame whose a grows in a direction, degrees.
func straight(origin plan.Point, degrees float64) frame {
	return frame{origin: origin, axis: plan.Direction(degrees)}
}

// to returns the coordinates of a place.
func (f frame) to(p plan.Point) (a, b float64) {
	v := p.Minus(f.origin)
	x, y := v.Dot(f.axis), v.Dot(f.axis.Left())
	if !f.fan {
		return x, y
	}
	return math.Atan2(y, x) * f.ref, math.Hypot(x, y)
}

// from returns the place of coordinates.
func (f frame) from(a, b float64) plan.Point {
	x, y := a, b
	if f.fan {
		s, c := math.Sincos(a / f.ref)
		x, y = b*c, b*s
	}
	return f.origin.Plus(f.axis.Times(x)).Plus(f.axis.Left().Times(y))
}

// arcStep is the greatest turn at a point of an arc drawn as straight pieces,
// radians: 10 degrees, half of what plan counts as a corner.
const arcStep = 10 * math.Pi / 180

// trace returns the straight pieces in plan of a path in coordinates.
func (f frame) trace(path [][2]float64) plan.Polyline {
	var out plan.Polyline
	for i, c := range path {
		if i > 0 && f.fan {
			before := path[i-1]
			n := math.Ceil(math.Abs(c[0]-before[0])/f.ref/arcStep - 1e-9)
			for k := 1.0; k < n; k++ {
				out = append(out, f.from(before[0]+(c[0]-before[0])*k/n, before[1]+(c[1]-before[1])*k/n))
			}
		}
		out = append(out, f.from(c[0], c[1]))
	}
	return out
}

// box returns the least and greatest coordinates of the points.
func (f frame) box(points []plan.Point) (low, high [2]float64) {
	low, high = [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		a, b := f.to(p)
		low[0], low[1] = math.Min(low[0], a), math.Min(low[1], b)
		high[0], high[1] = math.Max(high[0], a), math.Max(high[1], b)
	}
	if f.closed {
		low[0], high[0] = -math.Pi*f.ref, math.Pi*f.ref
	}
	return low, high
}

// frames returns the frames worth trying for a slab: along its longest run of sides,
// along a second one that is not square to it, and fans about the centre of curved
// sides and about the point where two long sides that are not parallel would meet.
func frames(s plan.Slab, given *float64) []frame {
	ring := plan.Ring(s.Outline).Anticlockwise()
	low, _ := ring.Box()
	if given != nil {
		return []frame{straight(low, *given)}
	}
	var out []frame
	for _, d := range mainDirections(ring) {
		out = append(out, straight(low, d))
	}
	return append(out, fans(s, ring)...)
}

// mainDirections returns the directions, 0 to 90 degrees, that carry most of the
// length of the sides, the strongest first; at most two.
func mainDirections(ring plan.Ring) []float64 {
	type bin struct{ degrees, length float64 }
	var bins []bin
	for _, s := range ring.Sides() {
		d := s.B.Minus(s.A)
		degrees := math.Mod(math.Atan2(d.Y, d.X)*180/math.Pi+360, 90)
		found := false
		for i := range bins {
			if apart := math.Abs(bins[i].degrees - degrees); math.Min(apart, 90-apart) < 1 {
				bins[i].length += s.Length()
				found = true
			}
		}
		if !found {
			bins = append(bins, bin{degrees, s.Length()})
		}
	}
	var out []float64
	for range 2 {
		best := -1
		for i, b := range bins {
			if b.length > 0.15*ring.Perimeter() && (best < 0 || b.length > bins[best].length) {
				best = i
			}
		}
		if best < 0 {
			break
		}
		out = append(out, tidy(bins[best].degrees))
		bins[best].length = 0
	}
	if len(out) == 0 {
		out = []float64{0}
	}
	return out
}

// tidy takes a direction that is nearly square to the axes as square.
func tidy(degrees float64) float64 {
	if math.Min(degrees, 90-degrees) < 0.02 {
		return 0
	}
	return degrees
}
