package mesh

import (
	"flag"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

// cases is how many near-degenerate cases the exact signs are compared on; run
// with -cases 5000000 after touching them.
var cases = flag.Int("cases", 20_000, "near-degenerate cases per predicate")

// exact holds a float as a rational number.
func exact(x float64) *big.Rat { return new(big.Rat).SetFloat64(x) }

func sub(a, b float64) *big.Rat { return new(big.Rat).Sub(exact(a), exact(b)) }

func mul(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }

// bigOrient is the sign of the orientation by rational arithmetic.
func bigOrient(a, b, c Point) int {
	left := mul(sub(a[0], c[0]), sub(b[1], c[1]))
	right := mul(sub(a[1], c[1]), sub(b[0], c[0]))
	return left.Cmp(right)
}

// bigInCircle is the sign of the circle test by rational arithmetic.
func bigInCircle(a, b, c, d Point) int {
	p := [3]Point{a, b, c}
	sum := new(big.Rat)
	for i := range p {
		u, v, w := p[i], p[(i+1)%3], p[(i+2)%3]
		ux, uy := sub(u[0], d[0]), sub(u[1], d[1])
		lift := new(big.Rat).Add(mul(ux, ux), mul(uy, uy))
		cross := new(big.Rat).Sub(mul(sub(v[0], d[0]), sub(w[1], d[1])), mul(sub(v[1], d[1]), sub(w[0], d[0])))
		sum.Add(sum, mul(lift, cross))
	}
	return sum.Sign()
}

func sign(x float64) int {
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}

// nudged moves x by up to two floats, but leaves zero: next to it lie the numbers
// whose products vanish, which the mesher sets to zero on entry.
func nudged(r *rand.Rand, x float64) float64 {
	if x == 0 {
		return x
	}
	for range r.IntN(3) {
		x = math.Nextafter(x, float64(r.IntN(2)*2-1)*math.Inf(1))
	}
	return x
}

func TestOrientAgainstRationals(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	zero := 0
	for range *cases {
		a := Point{r.NormFloat64() * 30, r.NormFloat64() * 30}
		b := Point{r.NormFloat64() * 30, r.NormFloat64() * 30}
		if r.IntN(3) == 0 { // a grid gives exact zeros
			a, b = Point{float64(r.IntN(9)), float64(r.IntN(9))}, Point{float64(r.IntN(9)), float64(r.IntN(9))}
		}
		c := between(a, b, math.Trunc(r.Float64()*16)/8)
		c = Point{nudged(r, c[0]), nudged(r, c[1])}
		got, want := sign(Orient(a, b, c)), bigOrient(a, b, c)
		if got != want {
			t.Fatalf("Orient(%v, %v, %v) = %d, want %d", a, b, c, got, want)
		}
		if e := sign(orientExact(a, b, c)); e != want {
			t.Fatalf("orientExact(%v, %v, %v) = %d, want %d", a, b, c, e, want)
		}
		if want == 0 {
			zero++
		}
	}
	if zero == 0 || zero == *cases {
		t.Errorf("%d of %d cases on one line: the test does not reach both sides", zero, *cases)
	}
}

func TestInCircleAgainstRationals(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	var count [3]int
	for range *cases {
		p := nearCircle(r)
		got, want := sign(InCircle(p[0], p[1], p[2], p[3])), bigInCircle(p[0], p[1], p[2], p[3])
		if got != want {
			t.Fatalf("InCircle(%v) = %d, want %d", p, got, want)
		}
		if e := sign(inCircleExact(p[0], p[1], p[2], p[3])); e != want {
			t.Fatalf("inCircleExact(%v) = %d, want %d", p, e, want)
		}
		count[want+1]++
	}
	for s, n := range count {
		if n == 0 {
			t.Errorf("no case with sign %d", s-1)
		}
	}
}

// nearCircle gives four points on or within a few floats of one circle.
func nearCircle(r *rand.Rand) [4]Point {
	var p [4]Point
	if r.IntN(3) == 0 { // whole-number points of x²+y²=25·13, moved as one
		on := [...]Point{{18, 1}, {17, 6}, {15, 10}, {10, 15}, {6, 17}, {1, 18}, {-1, 18}, {-6, 17}, {-18, 1}, {17, -6}, {1, -18}}
		dx, dy := float64(r.IntN(1000)), float64(r.IntN(1000))
		for i := range p {
			q := on[r.IntN(len(on))]
			p[i] = Point{q[0] + dx, q[1] + dy}
		}
		if r.IntN(2) == 0 {
			p[3][0] = nudged(r, p[3][0])
		}
		return p
	}
	centre, radius := Point{r.NormFloat64() * 20, r.NormFloat64() * 20}, math.Exp(r.NormFloat64()*4)
	for i := range p {
		angle := r.Float64() * 2 * math.Pi
		if r.IntN(4) == 0 {
			angle = math.Round(angle) + r.Float64()*1e-9
		}
		p[i] = Point{nudged(r, centre[0]+radius*math.Cos(angle)), nudged(r, centre[1]+radius*math.Sin(angle))}
	}
	return p
}

// The worst the plain determinants were off by must lie within the bounds they
// are trusted to; a bound that is never approached would be no test of it.
func TestErrorBoundsHold(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 20_000 {
		a := Point{r.Float64(), r.Float64()}
		b := Point{r.Float64(), r.Float64()}
		c := between(a, b, r.Float64())
		left := (a[0] - c[0]) * (b[1] - c[1])
		right := (a[1] - c[1]) * (b[0] - c[0])
		truth := new(big.Rat).Sub(mul(sub(a[0], c[0]), sub(b[1], c[1])), mul(sub(a[1], c[1]), sub(b[0], c[0])))
		off, _ := new(big.Rat).Sub(exact(left-right), truth).Float64()
		if bound := orientError * (math.Abs(left) + math.Abs(right)); math.Abs(off) > bound {
			t.Fatalf("orientation of %v %v %v off by %g, bound %g", a, b, c, off, bound)
		}
	}
}

func BenchmarkOrient(b *testing.B) {
	p, q, s := Point{0.1, 0.2}, Point{3.1, 0.7}, Point{1.4, 2.2}
	for b.Loop() {
		Orient(p, q, s)
	}
}

func BenchmarkInCircle(b *testing.B) {
	p, q, s, u := Point{0.1, 0.2}, Point{3.1, 0.7}, Point{1.4, 2.2}, Point{1.2, 0.9}
	for b.Loop() {
		InCircle(p, q, s, u)
	}
}

func BenchmarkInCircleOnCircle(b *testing.B) {
	p, q, s, u := Point{0.1, 0.1}, Point{0.35, 0.1}, Point{0.35, 0.35}, Point{0.1, 0.35}
	for b.Loop() {
		InCircle(p, q, s, u)
	}
}
