//go:build linux

package fem

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"syscall"
	"testing"
)

// buildBeside compiles the program that solves the same mesh with CHOLMOD, or skips.
func buildBeside(b testing.TB) string {
	b.Helper()
	gcc, err := exec.LookPath("gcc")
	if err != nil {
		b.Skip("no gcc here; the comparison with CHOLMOD is left out")
	}
	program := filepath.Join(b.TempDir(), "compare")
	args := []string{"-O3", "-march=native", "-o", program, filepath.Join("testdata", "cholmod", "compare.c"), "-I/usr/include/suitesparse", "-lcholmod", "-lm"}
	if out, err := exec.Command(gcc, args...).CombinedOutput(); err != nil {
		b.Skipf("CHOLMOD (package libsuitesparse-dev) is not here; the comparison is left out: %s", firstLine(out))
	}
	return program
}

func firstLine(text []byte) []byte {
	line, _, _ := bytes.Cut(text, []byte("\n"))
	return line
}

// writeMesh writes a mesh as the program reads it.
func writeMesh(b testing.TB, m *Mesh) string {
	b.Helper()
	var out bytes.Buffer
	put := func(v any) {
		if err := binary.Write(&out, binary.LittleEndian, v); err != nil {
			b.Fatal(err)
		}
	}
	put([]int64{int64(m.Nodes()), int64(m.Elements()), int64(m.Shape.Corners)})
	for i := range m.X {
		put([]float64{m.X[i], m.Y[i]})
	}
	nodes := make([]int64, len(m.Node))
	for i, n := range m.Node {
		nodes[i] = int64(n)
	}
	put(nodes)
	name := filepath.Join(b.TempDir(), "mesh")
	if err := os.WriteFile(name, out.Bytes(), 0o600); err != nil {
		b.Fatal(err)
	}
	return name
}

// beside holds median times of the processor in milliseconds and the energies found.
type beside struct {
	full, known, pattern, analysis, factor, rest float64
	elastic, bed                                 float64
}

func runBeside(b testing.TB, program, mesh, order string) (r beside) {
	b.Helper()
	cmd := exec.Command(program, mesh, order)
	cmd.Env = append(os.Environ(), "OPENBLAS_NUM_THREADS=1", "OMP_NUM_THREADS=1")
	out, err := cmd.Output()
	if err != nil {
		b.Fatal(err)
	}
	if _, err := fmt.Sscan(string(out), &r.full, &r.known, &r.pattern, &r.analysis, &r.factor, &r.rest, &r.elastic, &r.bed); err != nil {
		b.Fatal(err)
	}
	return r
}

// medianOf runs work five times and returns the median time of the processor in
// milliseconds, which other programs on the machine disturb less than the clock.
func medianOf(work func()) float64 {
	times := make([]float64, 5)
	for i := range times {
		runtime.GC() // what earlier work left is not counted
		start := processorTime()
		work()
		times[i] = processorTime() - start
	}
	slices.Sort(times)
	return times[2]
}

func processorTime() float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		panic(err)
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e6
}

// BenchmarkBesideCholmod solves model M with 41 088 unknowns here and with CHOLMOD,
// turn by turn on one core, and prints the ratios: below 1 is quicker here. CHOLMOD
// runs with the order it chooses and with METIS; the better time of each counts.
func BenchmarkBesideCholmod(b *testing.B) {
	program := buildBeside(b)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for _, shape := range []*Shape{T3, Q4} {
		mesh := standardMesh(shape, 3)
		file := writeMesh(b, mesh)
		b.Run(shape.Name, func(b *testing.B) {
			for b.Loop() {
				onceBeside(b, mesh, program, file)
			}
		})
	}
}

func onceBeside(b *testing.B, mesh *Mesh, program, file string) {
	var sheet *Sheet
	var system *System
	full := medianOf(func() { sheet, system = fullM(b, mesh) })
	known := medianOf(func() { againM(b, sheet, system) })
	theirs := runBeside(b, program, file, "own")
	metis := runBeside(b, program, file, "metis")
	b.Logf("full: here %.1f ms, CHOLMOD %.1f ms (pattern and assembly %.1f, analysis %.1f, factor %.1f, solve and stress %.1f), with METIS %.1f ms",
		full, theirs.full, theirs.pattern, theirs.analysis, theirs.factor, theirs.rest, metis.full)
	b.Logf("pattern known: here %.1f ms, CHOLMOD %.1f ms, with METIS %.1f ms", known, theirs.known, metis.known)
	sol, err := system.Solve(Settings{Workers: 1})
	if err != nil {
		b.Fatal(err)
	}
	e := sheet.Energy(sol.U)
	if math.Abs(e.Sheet-theirs.elastic) > 1e-5 || math.Abs(e.Bed-theirs.bed) > 1e-5 {
		b.Fatalf("energies differ: here %.6f and %.6f, CHOLMOD %.6f and %.6f", e.Sheet, e.Bed, theirs.elastic, theirs.bed)
	}
	b.ReportMetric(full/min(theirs.full, metis.full), "full/CHOLMOD")
	b.ReportMetric(known/min(theirs.known, metis.known), "known/CHOLMOD-known")
	b.ReportMetric(known/min(theirs.full, metis.full), "known/CHOLMOD-full")
}
