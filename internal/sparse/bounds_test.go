//go:build linux

package sparse

import (
	"runtime"
	"syscall"
	"testing"
)

// BenchmarkBounds shows what bounds the solvers on this machine, on one core. The
// factor is bounded by arithmetic: its rate stands beside that of one dense front that
// stays in the cache. Multigrid is bounded by memory: the rate at which its finest
// level passes by stands beside that of a plain copy, reading and writing counted.
func BenchmarkBounds(b *testing.B) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	a, x, y := sheetOn(b, 700, 700, 1e-3)
	b.Run("dense-front", func(b *testing.B) {
		const n = 400
		panel, limit, w := make([]float64, n*n+slack), make([]float64, n+4), &worker{team: 1}
		start := processorTime()
		for b.Loop() {
			for j := range n {
				clear(panel[j*n : (j+1)*n])
				panel[j*n+j] = 1
			}
			w.eliminate(n, n, n, panel, limit, nil, 0)
		}
		b.ReportMetric(n*n*n/3*perNano(b, start), "GFlop/s")
	})
	b.Run("factor", func(b *testing.B) {
		f, err := Analyse(a.Pattern, x, y).Factor(a, 1)
		if err != nil {
			b.Fatal(err)
		}
		start := processorTime()
		for b.Loop() {
			if err := f.Refactor(a, 1); err != nil {
				b.Fatal(err)
			}
		}
		b.ReportMetric(2*f.Operations()*perNano(b, start), "GFlop/s")
		b.ReportMetric(float64(8*f.Entries())*perNano(b, start), "GB/s-of-factor")
	})
	b.Run("copy", func(b *testing.B) {
		from, to := make([]float64, 1<<24), make([]float64, 1<<24)
		start := processorTime()
		for b.Loop() {
			copy(to, from)
		}
		b.ReportMetric(2*8*(1<<24)*perNano(b, start), "GB/s")
	})
	l, err := newLevel(rowsOf(a), true)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("finest-level", func(b *testing.B) {
		start := processorTime()
		for b.Loop() {
			l.residual(l.q, l.r, l.z)
		}
		bytes := 4 * (len(l.value) + len(l.node) + len(l.start) + 3*len(l.z))
		b.ReportMetric(float64(bytes)*perNano(b, start), "GB/s")
		b.ReportMetric(float64(2*len(l.value))*perNano(b, start), "GFlop/s")
	})
	b.Run("double-product", func(b *testing.B) {
		q, z := make([]float64, a.Unknowns()), make([]float64, a.Unknowns())
		start := processorTime()
		for b.Loop() {
			a.Multiply(q, z)
		}
		b.ReportMetric(float64(8*len(a.Value)+4*len(a.Row)+24*len(q))*perNano(b, start), "GB/s")
	})
}

// perNano is how many rounds go into a nanosecond of the processor, which a busy
// machine disturbs less than the clock.
func perNano(b *testing.B, start int64) float64 {
	return float64(b.N) / float64(processorTime()-start)
}

func processorTime() int64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return u.Utime.Nano() + u.Stime.Nano()
}
