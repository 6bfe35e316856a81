//go:build linux

package fem

import (
	"fmt"
	"math"
	"os"
	"runtime"
	"runtime/debug"
	"strings"
	"testing"

	"slabwright/internal/sparse"
)

// BenchmarkGrowth solves model M from a given mesh to the stress in the middle of
// every element on one core, from 41 088 to 289 408 and, unless -short, 1 154 304
// unknowns, as Automatic chooses. It prints medians of five times of the processor,
// which a busy machine disturbs less than the clock, the way chosen, the most memory
// held, and the power of the unknowns with which the time grows: from mesh to mesh,
// and through all of them by least squares.
func BenchmarkGrowth(b *testing.B) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for _, shape := range []*Shape{T3, Q4} {
		b.Run(shape.Name, func(b *testing.B) {
			for b.Loop() {
				growth(b, shape)
			}
		})
	}
}

func growth(b *testing.B, shape *Shape) {
	var size, time []float64
	for _, k := range []int{3, 4, 6, 8, 12, 16} {
		if k > 8 && testing.Short() {
			continue
		}
		mesh := standardMesh(shape, k)
		var system *System
		forgetMemory(b)
		ms := medianOf(func() { _, system = fullM(b, mesh) })
		size, time = append(size, math.Log(float64(2*mesh.Nodes()))), append(time, math.Log(ms))
		power := math.NaN()
		if n := len(size); n > 1 {
			power = (time[n-1] - time[n-2]) / (size[n-1] - size[n-2])
		}
		b.Logf("k=%d: %d unknowns, %s, %.0f ms, power %.3f, %d MiB", k, 2*mesh.Nodes(), system.method, ms, power, mostMemory(b))
	}
	last := len(size) - 1
	b.ReportMetric((time[last]-time[0])/(size[last]-size[0]), "power-end-to-end")
	b.ReportMetric(slope(size, time), "power-least-squares")
}

// slope is that of the straight line nearest to the points.
func slope(x, y []float64) float64 {
	mx, my, sxy, sxx := 0.0, 0.0, 0.0, 0.0
	for i := range x {
		mx, my = mx+x[i]/float64(len(x)), my+y[i]/float64(len(x))
	}
	for i := range x {
		sxy += (x[i] - mx) * (y[i] - my)
		sxx += (x[i] - mx) * (x[i] - mx)
	}
	return sxy / sxx
}

// forgetMemory gives back what is free and starts the count of the most memory anew.
func forgetMemory(b testing.TB) {
	b.Helper()
	debug.FreeOSMemory()
	if err := os.WriteFile("/proc/self/clear_refs", []byte("5"), 0); err != nil {
		b.Log("the most memory counts from the start of the program: ", err)
	}
}

// mostMemory is the most memory the program has held, MiB.
func mostMemory(b testing.TB) int {
	b.Helper()
	text, err := os.ReadFile("/proc/self/status")
	if err != nil {
		b.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(text), "VmHWM:")
	var kb int
	if _, err := fmt.Sscan(rest, &kb); err != nil {
		b.Fatal(err)
	}
	return kb >> 10
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

// BenchmarkCurling solves case P2 of model P, a plate that lifts off the ground, with
// 61 632 unknowns, on all cores, and the same with the wheel.
func BenchmarkCurling(b *testing.B) {
	for _, kind := range []*PlateShape{ACM, MITC4} {
		for _, which := range []string{"P2", "P3"} {
			mesh := standardMesh(kind.Mesh, 3)
			b.Run(which+"/"+kind.Name, func(b *testing.B) {
				start := processorTime()
				rounds := 0
				for b.Loop() {
					rounds = solveP(b, which, kind, mesh).rounds
				}
				b.ReportMetric((processorTime()-start)/float64(b.N), "cpu-ms")
				b.ReportMetric(float64(rounds), "rounds")
			})
		}
	}
}

// BenchmarkSteps takes model M with 41 088 unknowns through 24 hours in which the
// sheet hardens and shrinks, unevenly, on a bed that slips: a new stiffness in every
// round, the pattern, the order and the memory being those of the first. Each way
// starts from the hour before.
func BenchmarkSteps(b *testing.B) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for _, method := range []Method{Direct, OldFactor} {
		b.Run(method.String(), func(b *testing.B) {
			start := processorTime()
			rounds := 0
			for b.Loop() {
				rounds = steps(b, method)
			}
			b.ReportMetric((processorTime()-start)/float64(b.N), "cpu-ms")
			b.ReportMetric(float64(rounds)/24, "rounds/step")
		})
	}
}

func steps(b testing.TB, method Method) (rounds int) {
	b.Helper()
	mesh := standardMesh(Q4, 3)
	hour := 0.0
	sheet := &Sheet{Mesh: mesh, Law: func(p Place) Layer {
		age := 1 - math.Exp(-(hour+1)/8*(1+0.2*p.X/24))
		shrunk := -300e-6 * hour / 24 * (1 + 0.3*p.Y/15)
		return Layer{Thickness: 0.15, Stiffness: Isotropic(20e9*age, 0.2), FreeStrain: [3]float64{shrunk, shrunk, 0}}
	}}
	bed := &Bed{Mesh: mesh}
	slip := NewSlipping(bed.Points(), 10e6, func(Place) float64 { return 5.4e3 })
	bed.Law, bed.Accepted = slip.Law, slip.Accepted
	system := NewSystem(mesh.X, mesh.Y, 2, sheet, bed)
	var last []float64
	for hour = 1; hour <= 24; hour++ {
		sol, err := system.Solve(Settings{Workers: 1, Method: method, Start: last, Tolerance: 1e-6})
		if err != nil {
			b.Fatal(err)
		}
		rounds += sol.Rounds
		last = sol.U
	}
	return rounds
}
