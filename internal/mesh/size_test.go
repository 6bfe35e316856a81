package mesh

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The raster must give what trying every source gives.
func TestGradedIsTheSmallestOfAllSources(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for _, n := range []int{0, 1, 3, 40, 500} {
		sources := make([]Source, n)
		for i := range sources {
			sources[i] = Source{Point{r.Float64() * 30, r.Float64() * 10}, math.Exp(-4 * r.Float64())}
		}
		g := Grade(0.8, 1.2, sources...)
		for range 3000 {
			p := Point{r.Float64()*50 - 10, r.Float64()*30 - 10}
			want := 0.8
			for _, s := range sources {
				want = min(want, s.Size+0.2*distance(s.At, p))
			}
			if got := g.At(p); math.Abs(got-want) > 1e-12 {
				t.Fatalf("%d sources: size %v at %v, want %v", n, got, p, want)
			}
		}
	}
}

// Following n triangles outward, each growth times the one before, the size must
// be that of the next.
func TestGradedGrowsByTheRatio(t *testing.T) {
	g := Grade(100, 1.3, Source{Size: 0.01})
	d, h := 0.0, 0.01
	for range 20 {
		if got := g.At(Point{d, 0}); math.Abs(got-h) > 1e-12*h {
			t.Fatalf("size %v at %v, want %v", got, d, h)
		}
		d, h = d+h, h*1.3
	}
}

func TestAlongKeepsEndsAndSpacing(t *testing.T) {
	s := Along([]Point{{0, 0}, {1, 0}, {1, 0.25}}, 0.1, 0.3)
	if s[0].At != (Point{0, 0}) || s[len(s)-1].At != (Point{1, 0.25}) {
		t.Errorf("ends at %v and %v", s[0].At, s[len(s)-1].At)
	}
	for i := 1; i < len(s); i++ {
		if d := distance(s[i-1].At, s[i].At); d > 0.3 {
			t.Errorf("%v apart", d)
		}
	}
}

func TestSizesAreChecked(t *testing.T) {
	for _, s := range []Sizing{Uniform(0), Uniform(math.NaN()), Grade(0, 1.2), Grade(1, 1, Source{Size: 0.1}),
		Grade(1, 1.2, Source{Size: -1}), Grade(1, 1.2, Source{Size: math.NaN()}), Grade(1, 1.2, Source{At: Point{math.Inf(1), 0}, Size: 0.1})} {
		_, err := Build(Domain{Outline: [][]Point{square(0, 0, 1)}, Size: s})
		if e, ok := err.(*Error); !ok || (e.Code != BadOption && e.Code != NotFinite) {
			t.Errorf("%+v: got %v", s, err)
		}
	}
}
