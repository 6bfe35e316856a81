package march

import (
	"fmt"
	"math"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// besideC builds the same problem in plain C and returns what runs it: the
// seconds a week takes, its Newton iterations and the middle of the slab at the
// end. It skips where there is no compiler.
func besideC(t testing.TB) func(weeks int) (seconds float64, iterations int, middle float64) {
	t.Helper()
	compiler := ""
	for _, name := range []string{"cc", "gcc", "clang"} {
		if path, err := exec.LookPath(name); err == nil {
			compiler = path
			break
		}
	}
	if compiler == "" {
		t.Skip("no C compiler (cc, gcc or clang) on the path: nothing to compare with")
	}
	program := filepath.Join(t.TempDir(), "modelt")
	if out, err := exec.Command(compiler, "-O2", "-o", program, "testdata/modelt.c", "-lm").CombinedOutput(); err != nil {
		t.Skipf("the C program does not build here: %v\n%s", err, out)
	}
	return func(weeks int) (seconds float64, iterations int, middle float64) {
		out, err := exec.Command(program, fmt.Sprint(weeks)).Output()
		if err == nil {
			_, err = fmt.Sscan(string(out), &seconds, &iterations, &middle)
		}
		if err != nil {
			t.Fatalf("C program: %v, output %q", err, out)
		}
		return seconds, iterations, middle
	}
}

func week(t testing.TB, m *Marcher) {
	for range 2016 {
		if err := m.Euler(300); err != nil {
			t.Fatal(err)
		}
	}
}

// The C program must do the same work, else its time says nothing.
func TestSameAsC(t *testing.T) {
	_, iterations, middle := besideC(t)(1)
	m := newModelT(1)
	week(t, m)
	if m.Iterations != iterations || math.Abs(m.Value[15]-middle) > 1e-7 {
		t.Errorf("Go %d iterations, %.8f °C; C %d iterations, %.8f °C", m.Iterations, m.Value[15], iterations, middle)
	}
}

// The model week by this package and by plain C in turns, so that a busy machine
// slows both: x-of-C is the time over that of the C program. "exact" computes the
// cement's exponentials as C does, "tables" is how the package is used.
func BenchmarkModelTBesideC(b *testing.B) {
	c := besideC(b)
	for _, run := range []struct {
		name  string
		local Local
	}{{"exact", newModelT(1).Local}, {"tables", newTabled(newModelT(1).Local.(cement))}} {
		b.Run(run.name, func(b *testing.B) {
			// the best of the turns of each: what else runs on the machine only ever adds
			fastest, fastestC := math.Inf(1), math.Inf(1)
			for b.Loop() {
				m := newModelT(1)
				m.Local = run.local
				start := time.Now()
				week(b, m)
				fastest = math.Min(fastest, time.Since(start).Seconds())
				seconds, _, _ := c(1)
				fastestC = math.Min(fastestC, seconds)
			}
			b.ReportMetric(fastest/fastestC, "x-of-C")
			b.ReportMetric(1000*fastest, "ms/week")
			b.ReportMetric(1000*fastestC, "ms/week-C")
		})
	}
}
