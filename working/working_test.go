package working

import (
	"math"
	"strings"
	"testing"

	"slabwright/source"
)

func TestSubstitute(t *testing.T) {
	for _, c := range []struct {
		formula string
		inputs  []Input
		want    string
	}{
		{"E·h³/12", []Input{In("E", 30000, "", ""), In("h", 0.15, "", "")}, "30000·0.1500³/12"},
		// a symbol inside a longer word is another symbol
		{"k + kc + ack", []Input{In("k", 2, "", "")}, "2.000 + kc + ack"},
		{"kc + k", []Input{In("k", 2, "", ""), In("kc", 0.5, "", "")}, "0.5000 + 2.000"},
		{"exp(e) + e", []Input{In("e", 3, "", "")}, "exp(3.000) + 3.000"},
		// subscripts, primes, underscores and commas belong to the symbol
		{"f_ct,eff·A_ct/f_ct", []Input{In("f_ct,eff", 2, "", ""), In("A_ct", 5, "", ""), In("f_ct", 4, "", "")}, "2.000·5.000/4.000"},
		{"σ₁ − σ₂", []Input{In("σ₁", 2, "", ""), In("σ₂", 1, "", "")}, "2.000 − 1.000"},
		{"fₜ·x'", []Input{In("fₜ", 2, "", ""), In("x'", 1, "", "")}, "2.000·1.000"},
		// commas between arguments do not join
		{"max(a, b)", []Input{In("a", 1, "", ""), In("b", 2, "", "")}, "max(1.000, 2.000)"},
		{"min(a,1)", []Input{In("a", 3, "", "")}, "min(3.000,1)"},
		// negative numbers in parentheses
		{"α·ΔT − a", []Input{In("α", 1e-5, "", ""), In("ΔT", -15, "", ""), In("a", -2, "", "")}, "1.000·10⁻⁵·(−15.00) − (−2.000)"},
		{"a^2", []Input{In("a", -3, "", "")}, "(−3.000)^2"},
		// a power of ten under an exponent or division is one number
		{"x²/y", []Input{In("x", 2e-5, "", ""), In("y", 3e8, "", "")}, "(2.000·10⁻⁵)²/(3.000·10⁸)"},
		// numbers of the formula stay as printed
		{"0.5·x + 10x", []Input{In("x", 4, "", "")}, "0.5·4.000 + 10·4.000"},
		{"2(x + y)", []Input{In("x", 4, "", ""), In("y", math.NaN(), "", "")}, "2(4.000 + not known)"},
		{"x2 + x", []Input{In("x", 1, "", ""), In("x2", 7, "", "")}, "7.000 + 1.000"},
		{"", nil, ""},
	} {
		if got := Substitute(c.formula, c.inputs); got != c.want {
			t.Errorf("%q: got %q, want %q", c.formula, got, c.want)
		}
	}
}

func TestFigure(t *testing.T) {
	for _, c := range []struct {
		value  float64
		digits int
		want   string
	}{
		{0, 3, "0"}, {math.Copysign(0, -1), 3, "0"}, {1, 3, "1.00"}, {0.15, 3, "0.150"}, {27.579, 3, "27.6"}, {4000, 3, "4000"},
		{1234567, 3, "1234567"}, {12345678, 3, "1.23·10⁷"}, {1e-4, 2, "0.00010"}, {0.000099, 2, "9.9·10⁻⁵"}, {-15, 3, "−15.0"},
		{-2.4e-5, 3, "−2.40·10⁻⁵"}, {math.NaN(), 3, "not known"}, {math.Inf(1), 3, "without limit"}, {math.Inf(-1), 3, "without limit"},
		// rounding up to the next power of ten must not add a figure
		{9.999, 3, "10.0"}, {0.9996, 3, "1.00"}, {99.96, 3, "100"}, {-9.999, 3, "−10.0"}, {9.996e-5, 3, "1.00·10⁻⁴"},
		{1, 1, "1"}, {0.04, 1, "0.04"},
	} {
		if got := Figure(c.value, c.digits); got != c.want {
			t.Errorf("%g to %d figures: got %q, want %q", c.value, c.digits, got, c.want)
		}
	}
}

func TestLine(t *testing.T) {
	cite := source.Cite("mechanics", "")
	l := New("q", "Weight", "γ·h", 3.6, "kPa", cite, In("γ", 24, "kN/m3", "Unit weight"), In("h", 0.15, "m", "Thickness"))
	if l.Numbers != "24.00·0.1500" || l.Text != "3.60" || l.Value != 3.6 {
		t.Errorf("got %+v", l)
	}
	for _, c := range []struct {
		value, beside float64
		apart         float64
		flag          bool
	}{
		{10, 11, 0.1, false}, {10, 12, 0.2, false}, {10, 12.1, 0.21, true}, {10, 7.9, 0.21, true}, {-10, -11, 0.1, false},
		{0, 0, 0, false}, {0, 0.5, 0.5, true},
	} {
		l.Value = c.value
		got := l.Beside("hand", c.beside, cite, "").Check
		if math.Abs(got.Apart-c.apart) > 1e-12 || got.Flag != c.flag {
			t.Errorf("%g beside %g: apart %g flag %v, want %g %v", c.beside, c.value, got.Apart, got.Flag, c.apart, c.flag)
		}
	}
	l.Value = 10
	if got := l.Beside("hand", math.NaN(), cite, "").Check; !got.Flag {
		t.Error("a check that gives no number must be flagged")
	}
	if l.Check != nil {
		t.Error("Beside changed the line it was called on")
	}
}

func TestBook(t *testing.T) {
	var b Book
	s := Sheet{ID: "window-1", Title: "Cut window"}
	s.Add(Line{Symbol: "a"}, Line{Symbol: "b"})
	b.Add(s)
	if got := b.Find("window-1"); got == nil || len(got.Lines) != 2 {
		t.Errorf("got %+v", got)
	}
	if b.Find("window-2") != nil {
		t.Error("found a sheet that is not there")
	}
	defer func() {
		if p, ok := recover().(string); !ok || !strings.Contains(p, "window-1 added twice") {
			t.Errorf("recovered %v", p)
		}
	}()
	b.Add(s)
}
