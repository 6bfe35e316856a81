package concrete

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"slabwright/working"
)

// fourDigits is how far a line reworked from printed numbers may be off: each
// number has four significant digits, and exponents and differences magnify that.
const fourDigits = 0.01

// Every line must come out again from the numbers printed in it.
func TestEveryLineComesOutOnACalculator(t *testing.T) {
	slab := SlabDryingFromTop(0.15, 0.5, 7)
	var sheets []working.Sheet
	for _, key := range Cements() {
		m := mixOf(t, 30, key)
		for _, shift := range []float64{0, 2, -1} {
			m.SetShift = shift
			sheets = append(sheets, SetWorking(m, 12), SetWorking(m, 33))
		}
	}
	for _, model := range append(models(), NewAS3600(65, Normal), NewEN1992(60, Rapid)) {
		sheets = append(sheets, StrengthWorking(model, 2), StrengthWorking(model, 7), StrengthWorking(model, 90))
	}
	for _, mean := range []float64{28, 38, 60} {
		for _, class := range []CementClass{Slow, Normal, Rapid} {
			sheets = append(sheets, ShrinkageWorking(ShrinkageEN{mean, class}, slab, 90), CreepWorking(CreepEN{EN1992{Mean28: mean, Class: class, AggregateFactor: 1}}, slab, 3, 365))
		}
	}
	for _, s := range sheets {
		for _, l := range s.Lines {
			got, err := calculate(l.Numbers)
			if err != nil {
				t.Fatalf("%s, %s: %q: %v", s.Title, l.Symbol, l.Numbers, err)
			}
			if math.Abs(got-l.Value) > fourDigits*math.Abs(l.Value) {
				t.Errorf("%s, %s: %s gives %g, the line says %g", s.Title, l.Symbol, l.Numbers, got, l.Value)
			}
			if l.Source.Title == "" {
				t.Errorf("%s, %s has no source", s.Title, l.Symbol)
			}
		}
	}
}

func TestWorkingsEndInTheModel(t *testing.T) {
	slab := SlabDryingFromTop(0.15, 0.5, 7)
	last := func(s working.Sheet) float64 { return s.Lines[len(s.Lines)-1].Value }
	m := mixOf(t, 30, "II/V")
	h := m.Hydration()
	if got, want := last(SetWorking(m, 15)), h.FinalSet()/h.AgeRate(15); math.Abs(got/want-1) > 1e-12 {
		t.Errorf("final set %g h, want %g", got, want)
	}
	for _, model := range models() {
		if got, want := last(StrengthWorking(model, 7)), model.Modulus(7); got != want {
			t.Errorf("%s: modulus %g MPa, want %g", model.Code(), got, want)
		}
	}
	shrinkage := ShrinkageEN{38, Normal}
	if got, want := last(ShrinkageWorking(shrinkage, slab, 90)), TotalShrinkage(shrinkage, slab, 90); got != want {
		t.Errorf("shrinkage %g, want %g", got, want)
	}
	creep := CreepEN{NewEN1992(30, Normal)}
	if got, want := last(CreepWorking(creep, slab, 7, 365)), creep.Coefficient(slab, 7, 365); got != want {
		t.Errorf("creep %g, want %g", got, want)
	}
}

// calculate works out a line of numbers as a pocket calculator would.
func calculate(text string) (value float64, err error) {
	text = strings.NewReplacer("−", "-", "·", "*", " ", "").Replace(text)
	for _, digits := range []string{"⁻⁹", "⁻⁸", "⁻⁷", "⁻⁶", "⁻⁵", "⁻⁴"} { // 1.2·10⁻⁵
		n := strings.NewReplacer("⁻", "-", "⁹", "9", "⁸", "8", "⁷", "7", "⁶", "6", "⁵", "5", "⁴", "4").Replace(digits)
		text = strings.ReplaceAll(text, "*10"+digits, "e"+n)
	}
	p := &calculator{text: text}
	defer func() {
		if r := recover(); r != nil {
			err = r.(error)
		}
	}()
	value = p.sum()
	if p.text != "" {
		panic(strconv.ErrSyntax)
	}
	return value, nil
}

type calculator struct{ text string }

func (p *calculator) take(s string) bool {
	rest, ok := strings.CutPrefix(p.text, s)
	if ok {
		p.text = rest
	}
	return ok
}

func (p *calculator) sum() float64 {
	v := p.product()
	for {
		switch {
		case p.take("+"):
			v += p.product()
		case p.take("-"):
			v -= p.product()
		default:
			return v
		}
	}
}

func (p *calculator) product() float64 {
	v := p.power()
	for {
		switch {
		case p.take("*"):
			v *= p.power()
		case p.take("/"):
			v /= p.power()
		default:
			return v
		}
	}
}

func (p *calculator) power() float64 {
	if p.take("-") {
		return -p.power()
	}
	v := p.atom()
	if p.take("^") {
		return math.Pow(v, p.power())
	}
	return v
}

func (p *calculator) atom() float64 {
	for name, f := range map[string]func(a, b float64) float64{
		"exp(": func(a, _ float64) float64 { return math.Exp(a) }, "ln(": func(a, _ float64) float64 { return math.Log(a) },
		"sqrt(": func(a, _ float64) float64 { return math.Sqrt(a) }, "min(": math.Min, "max(": math.Max,
		"(": func(a, _ float64) float64 { return a },
	} {
		if !p.take(name) {
			continue
		}
		a, b := p.sum(), 0.0
		if p.take(";") {
			b = p.sum()
		}
		if !p.take(")") {
			panic(strconv.ErrSyntax)
		}
		return f(a, b)
	}
	n := 0
	for n < len(p.text) && (strings.ContainsRune("0123456789.e", rune(p.text[n])) || p.text[n] == '-' && n > 0 && p.text[n-1] == 'e') {
		n++
	}
	v, err := strconv.ParseFloat(p.text[:n], 64)
	if err != nil {
		panic(err)
	}
	p.text = p.text[n:]
	return v
}
