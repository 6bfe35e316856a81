package march

import "math"

// cubic is a + s(b + s(c + s d)) over one part of a table, s from 0 to 1.
type cubic struct{ a, b, c, d, inverse float64 }

// hermite is the cubic that meets values and slopes at both ends of a part.
func hermite(v0, slope0, v1, slope1, width float64) cubic {
	rise, s0, s1 := v1-v0, slope0*width, slope1*width
	return cubic{v0, s0, 3*rise - 2*s0 - s1, s0 + s1 - 2*rise, 1 / width}
}

func (c *cubic) at(s float64) (value, slope float64) {
	return c.a + s*(c.b+s*(c.c+s*c.d)), (c.b + s*(2*c.c+3*s*c.d)) * c.inverse
}

// Table is a smooth function at evenly spaced points, joined by cubics that match
// value and slope: as good as the function, without its exponentials. Outside its
// range it goes on as a straight line.
type Table struct {
	low, step float64
	rows      []cubic
}

// NewTable tabulates a function that returns value and slope over n parts of [low,
// high]. Its error is about (step^4/384) times the fourth derivative.
func NewTable(f func(x float64) (value, slope float64), low, high float64, n int) *Table {
	t := &Table{low: low, step: (high - low) / float64(n), rows: make([]cubic, n)}
	v0, s0 := f(low)
	for i := range t.rows {
		v1, s1 := f(low + float64(i+1)*t.step)
		t.rows[i] = hermite(v0, s0, v1, s1, t.step)
		v0, s0 = v1, s1
	}
	return t
}

// At returns value and slope.
func (t *Table) At(x float64) (value, slope float64) {
	s := (x - t.low) / t.step
	i := int(s)
	if s < 0 || i >= len(t.rows) {
		return t.beyond(s)
	}
	return t.rows[i].at(s - float64(i))
}

func (t *Table) beyond(s float64) (value, slope float64) {
	i, end := 0, 0.0
	if s > 0 {
		i, end = len(t.rows)-1, 1
	}
	value, slope = t.rows[i].at(end)
	return value + slope*t.step*(s-float64(i)-end), slope
}

// octaveShift keeps the exponent and five bits of the mantissa of a number.
const octaveShift = 52 - 5

// Octaves is a smooth function of a positive number over many powers of ten. Its
// points divide every doubling into 32 equal parts; the place of a number among
// them comes from its bits, so it costs no logarithm.
type Octaves struct {
	base int
	rows []cubic
	low  []float64
}

// NewOctaves tabulates a function that returns value and slope from low to high.
func NewOctaves(f func(x float64) (value, slope float64), low, high float64) *Octaves {
	base := int(math.Float64bits(low) >> octaveShift)
	n := int(math.Float64bits(high)>>octaveShift) - base + 1
	o := &Octaves{base: base, rows: make([]cubic, n), low: make([]float64, n)}
	point := func(i int) float64 { return math.Float64frombits(uint64(base+i) << octaveShift) }
	v0, s0 := f(point(0))
	for i := range o.rows {
		o.low[i] = point(i)
		v1, s1 := f(point(i + 1))
		o.rows[i] = hermite(v0, s0, v1, s1, point(i+1)-point(i))
		v0, s0 = v1, s1
	}
	return o
}

// At returns value and slope. Below the range it gives zero, above it the last
// value.
func (o *Octaves) At(x float64) (value, slope float64) {
	i := int(math.Float64bits(x)>>octaveShift) - o.base
	if x <= 0 || i < 0 {
		return 0, 0
	}
	if i >= len(o.rows) {
		value, _ = o.rows[len(o.rows)-1].at(1)
		return value, 0
	}
	row := &o.rows[i]
	return row.at((x - o.low[i]) * row.inverse)
}
