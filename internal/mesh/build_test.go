package mesh

import "testing"

func TestTry(t *testing.T) {
	for _, h := range []float64{0, 1, 0.25, 0.05} {
		d := slab()
		if h > 0 {
			d.Size = Uniform(h)
		}
		m, err := Build(d)
		if err != nil {
			t.Fatal(err)
		}
		sound(t, m.work.t)
		t.Logf("%g %+v", h, m.Quality())
	}
}
