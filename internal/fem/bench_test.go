//go:build linux

package fem

import (
	"fmt"
	"math"
	"runtime"
	"testing"

	"slabwright/internal/sparse"
)

// BenchmarkModelM solves model M from a given mesh to the stress in the middle of
// every element, on one core: 41 088, 289 408 and, unless -short, 1 154 304 unknowns.
// Beside the time by the clock it reports that of the processor, which a busy machine
// disturbs less, and the power of the unknowns with which it grows from the step before.
func BenchmarkModelM(b *testing.B) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	var last, size float64
	for _, k := range []int{3, 8, 16} {
		if k == 16 && testing.Short() {
			continue
		}
		mesh := standardMesh(Q4, k)
		b.Run(fmt.Sprintf("full/k=%d", k), func(b *testing.B) {
			start := processorTime()
			for b.Loop() {
				fullM(b, mesh)
			}
			now := (processorTime() - start) / float64(b.N)
			b.ReportMetric(now, "cpu-ms")
			if last > 0 {
				b.ReportMetric(math.Log(now/last)/math.Log(float64(mesh.Nodes())/size), "power")
			}
			last, size = now, float64(mesh.Nodes())
		})
		b.Run(fmt.Sprintf("pattern-known/k=%d", k), func(b *testing.B) {
			sheet, system := fullM(b, mesh)
			start := processorTime()
			for b.Loop() {
				againM(b, sheet, system)
			}
			b.ReportMetric((processorTime()-start)/float64(b.N), "cpu-ms")
		})
	}
}

func fullM(b testing.TB, mesh *Mesh) (*Sheet, *System) {
	sheet := &Sheet{Mesh: mesh, Law: shrinking}
	system := NewSystem(mesh.X, mesh.Y, 2, sheet)
	againM(b, sheet, system)
	return sheet, system
}

func againM(b testing.TB, sheet *Sheet, system *System) {
	sol, err := system.Solve(Settings{Workers: 1})
	if err != nil {
		b.Fatal(err)
	}
	sheet.CentreStress(sol.U)
}

// BenchmarkStages times the stages of the full solve one by one.
func BenchmarkStages(b *testing.B) {
	mesh := standardMesh(Q4, 3)
	sheet := &Sheet{Mesh: mesh, Law: shrinking}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	b.Run("pattern", func(b *testing.B) {
		for b.Loop() {
			sparse.NewPattern(mesh.Nodes(), 2, mesh.Connectivity())
		}
	})
	p := sparse.NewPattern(mesh.Nodes(), 2, mesh.Connectivity())
	r := make([]float64, p.Unknowns())
	u := make([]float64, p.Unknowns())
	system := NewSystem(mesh.X, mesh.Y, 2, sheet)
	b.Run("assemble", func(b *testing.B) {
		for b.Loop() {
			system.evaluate(system.pattern.NewMatrix(), r, u, 1)
		}
	})
	a := system.pattern.NewMatrix()
	system.evaluate(a, r, u, 1)
	b.Run("analyse", func(b *testing.B) {
		for b.Loop() {
			sparse.Analyse(system.pattern, mesh.X, mesh.Y)
		}
	})
	s := sparse.Analyse(system.pattern, mesh.X, mesh.Y)
	f, err := s.Factor(a, 1)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("factor", func(b *testing.B) {
		for b.Loop() {
			f, err = s.Factor(a, 1)
		}
	})
	b.Run("refactor", func(b *testing.B) {
		for b.Loop() {
			err = f.Refactor(a, 1)
		}
		b.ReportMetric(float64(s.Entries())/1e6, "Mentries")
		b.ReportMetric(s.Operations()/1e6, "Mmul")
		b.ReportMetric(2*s.Operations()/b.Elapsed().Seconds()*float64(b.N)/1e9, "GFlop/s")
	})
	b.Run("solve", func(b *testing.B) {
		for b.Loop() {
			f.SolveTo(u, r)
		}
	})
	b.Run("stress", func(b *testing.B) {
		for b.Loop() {
			sheet.CentreStress(u)
		}
	})
}

// BenchmarkMultigrid solves model M without a factor: 289 408 and, unless -short,
// 1 154 304 unknowns.
func BenchmarkMultigrid(b *testing.B) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for _, k := range []int{8, 16} {
		if k == 16 && testing.Short() {
			continue
		}
		mesh := standardMesh(Q4, k)
		sheet := &Sheet{Mesh: mesh, Law: shrinking}
		b.Run(fmt.Sprintf("k=%d", k), func(b *testing.B) {
			start := processorTime()
			for b.Loop() {
				sol, err := NewSystem(mesh.X, mesh.Y, 2, sheet).Solve(Settings{Workers: 1, Method: Multigrid})
				if err != nil {
					b.Fatal(err)
				}
				sheet.CentreStress(sol.U)
			}
			b.ReportMetric((processorTime()-start)/float64(b.N), "cpu-ms")
		})
	}
}
