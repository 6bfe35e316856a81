package working

import (
	"math"
	"strings"
	"testing"

	"slabwright/source"
)

func TestRework(t *testing.T) {
	in := []Input{In("a", 3, "", ""), In("b_c", 4, "", ""), In("α'", 0.5, "", ""), In("f_ct,eff", 2, "", ""), In("n", -2, "", "")}
	for _, c := range []struct {
		formula string
		want    float64
	}{
		{"a + b_c·2", 11}, {"a − b_c/2", 1}, {"(a + b_c)·α'", 3.5}, {"sqrt(a^2 + b_c^2)", 5}, {"√(a² + b_c²)", 5}, {"-a^2", -9},
		{"2a", 6}, {"2(a + 1)", 8}, {"a^-2·9", 1}, {"10⁻²·a", 0.03}, {"ln(exp(a))", 3}, {"max(a, b_c, 1)", 4}, {"min(a; b_c)", 3},
		{"|n|", 2}, {"a·n", -6}, {"f_ct,eff·a", 6}, {"2·π", 2 * math.Pi}, {"e^a", math.Exp(3)}, {"a/b_c/2", 0.375}, {"[a + {b_c}]·2", 14},
		{"a^(1/2)", math.Sqrt(3)}, {"log10(100)", 2}, {"tanh(α')", math.Tanh(0.5)},
	} {
		got, err := New("x", "", c.formula, c.want, "", source.Cite("mechanics", ""), in...).Rework()
		if err != nil || math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s = %g (%v), want %g", c.formula, got, err, c.want)
		}
	}
	for _, c := range []struct{ formula, has string }{{"a + q", `no input "q"`}, {"(a", "no )"}, {"a )", "cannot go on"}, {"", "no input"}, {"1.2.3", "no number"}} {
		_, err := New("x", "", c.formula, 0, "", source.Cite("mechanics", ""), in...).Rework()
		if err == nil || !strings.Contains(err.Error(), c.has) {
			t.Errorf("%q: %v, want an error with %q", c.formula, err, c.has)
		}
	}
}
