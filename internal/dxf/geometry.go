package dxf

import "math"

// Point is a place in plan, in the units of the drawing.
type Point struct{ X, Y float64 }

// To returns the distance to another point.
func (p Point) To(q Point) float64 { return math.Hypot(q.X-p.X, q.Y-p.Y) }

// vector is a place or direction in space.
type vector struct{ x, y, z float64 }

func (a vector) plus(b vector) vector   { return vector{a.x + b.x, a.y + b.y, a.z + b.z} }
func (a vector) minus(b vector) vector  { return vector{a.x - b.x, a.y - b.y, a.z - b.z} }
func (a vector) times(f float64) vector { return vector{a.x * f, a.y * f, a.z * f} }
func (a vector) norm() float64          { return math.Sqrt(a.x*a.x + a.y*a.y + a.z*a.z) }
func (a vector) flat() Point            { return Point{a.x, a.y} }
func (a vector) to(b vector) float64    { return b.minus(a).norm() }
func (a vector) cross(b vector) vector {
	return vector{a.y*b.z - a.z*b.y, a.z*b.x - a.x*b.z, a.x*b.y - a.y*b.x}
}

// between returns the place at share t of the way from a to b.
func between(a, b vector, t float64) vector { return a.plus(b.minus(a).times(t)) }

// frame maps the coordinates of a block or an object onto those of the drawing:
// o + x·X + y·Y + z·Z.
type frame struct{ x, y, z, o vector }

// world leaves coordinates as they are.
var world = frame{x: vector{x: 1}, y: vector{y: 1}, z: vector{z: 1}}

func (f frame) turn(v vector) vector {
	return f.x.times(v.x).plus(f.y.times(v.y)).plus(f.z.times(v.z))
}

func (f frame) at(v vector) vector { return f.o.plus(f.turn(v)) }

// then returns the frame that first goes through g, then through f.
func (f frame) then(g frame) frame { return frame{f.turn(g.x), f.turn(g.y), f.turn(g.z), f.at(g.o)} }

// stretch is by how much the frame makes a length longer at most.
func (f frame) stretch() float64 { return max(f.x.norm(), f.y.norm(), f.z.norm()) }

// moved is the frame that moves the origin to o.
func moved(o vector) frame { return frame{world.x, world.y, world.z, o} }

// scaledTurned is the frame that scales each axis and then turns anticlockwise
// about z.
func scaledTurned(scale vector, degrees float64) frame {
	s, c := math.Sincos(degrees * math.Pi / 180)
	return frame{vector{c, s, 0}.times(scale.x), vector{-s, c, 0}.times(scale.y), vector{z: scale.z}, vector{}}
}

// objectFrame is the frame of an object whose plane stands square to n, by the
// arbitrary axis rule of the DXF reference: x lies along Y×n near the poles, along
// Z×n elsewhere. A normal of no length is taken as upright.
func objectFrame(n vector) frame {
	const nearPole = 1.0 / 64
	length := n.norm()
	if length == 0 {
		return world
	}
	n = n.times(1 / length)
	up := vector{z: 1}
	if math.Abs(n.x) < nearPole && math.Abs(n.y) < nearPole {
		up = vector{y: 1}
	}
	x := up.cross(n)
	x = x.times(1 / x.norm())
	return frame{x, n.cross(x), n, vector{}}
}
