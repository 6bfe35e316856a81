package bayes

import (
	"math"
	"math/rand/v2"
	"testing"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.12g, want %.12g within %g", what, got, want, tol)
	}
}

// rounding is the agreement asked of sums done in two orders.
const rounding = 1e-12

func must(t *testing.T, m Model) *Model {
	t.Helper()
	built, err := New(m)
	if err != nil {
		t.Fatal(err)
	}
	return built
}

// urns: two urns, red and white balls, odds 1:3.
func urns(t *testing.T, temper float64) *Model {
	return must(t, Model{
		Hypotheses: []string{"A", "B"}, Odds: []float64{1, 3}, Companion: 0.6, Temper: temper,
		Variables: []Variable{
			{Name: "ball", States: []string{"red", "white"}, Likelihood: [][]float64{{0.8, 0.2}, {0.3, 0.7}}},
			{Name: "size", States: []string{"small", "big"}, Likelihood: [][]float64{{0.9, 0.1}, {0.5, 0.5}}, Group: "g"},
			{Name: "mass", States: []string{"light", "heavy"}, Likelihood: [][]float64{{0.6, 0.4}, {0.5, 0.5}}, Group: "g"},
		},
	})
}

func observe(t *testing.T, m *Model, pairs ...string) []Evidence {
	t.Helper()
	var all []Evidence
	for i := 0; i < len(pairs); i += 2 {
		e, err := m.Observe(pairs[i], pairs[i+1])
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, e)
	}
	return all
}

func TestPosteriorByHand(t *testing.T) {
	m := urns(t, 1)
	// A red ball: 1·0.8 against 3·0.3, so 0.8/1.7.
	near(t, "red", m.Posterior(observe(t, m, "ball", "red"), nil)[0], 0.8/1.7, rounding)
	// Half the log-likelihood: square roots of the chances.
	h := urns(t, 0.5)
	a, b := math.Sqrt(0.8), 3*math.Sqrt(0.3)
	near(t, "red, tempered", h.Posterior(observe(t, h, "ball", "red"), nil)[0], a/(a+b), rounding)
	// Small and heavy in one group: size spreads more (ln 1.8 against ln 0.8), so
	// mass counts 0.6.
	a, b = 0.9*math.Pow(0.4, 0.6), 3*0.5*math.Pow(0.5, 0.6)
	near(t, "group", m.Posterior(observe(t, m, "size", "small", "mass", "heavy"), nil)[0], a/(a+b), rounding)
	// No evidence: the prior.
	near(t, "prior", m.Prior(nil)[0], 0.25, rounding)
	// One excluded: the other is certain.
	near(t, "excluded", m.Posterior(observe(t, m, "ball", "red"), []bool{true, false})[1], 1, 0)
}

func TestSoftEvidenceByHand(t *testing.T) {
	m := urns(t, 1)
	e, err := m.ObserveSoft("ball", map[string]float64{"red": 3, "white": 1})
	if err != nil {
		t.Fatal(err)
	}
	a, b := 0.75*0.8+0.25*0.2, 3*(0.75*0.3+0.25*0.7)
	near(t, "three to one red", m.Posterior([]Evidence{e}, nil)[0], a/(a+b), rounding)
	even, _ := m.ObserveSoft("ball", map[string]float64{"red": 2, "white": 2})
	near(t, "even weights say nothing", m.Posterior([]Evidence{even}, nil)[0], 0.25, rounding)
}

func TestShiftOfTwoHypotheses(t *testing.T) {
	m := urns(t, 0.5)
	e := observe(t, m, "ball", "red", "size", "big")
	// With two hypotheses the shift is weight·temper·ln(likelihood ratio).
	near(t, "red for A", m.Shift(e, nil, 0, 0), 0.5*math.Log(0.8/0.3), rounding)
	near(t, "red for B", m.Shift(e, nil, 0, 1), -0.5*math.Log(0.8/0.3), rounding)
	near(t, "big for A", m.Shift(e, nil, 1, 0), 0.5*math.Log(0.1/0.5), rounding)
}

// What a piece says has the sign of its own likelihood ratio, group or not.
func TestShiftHasTheSignOfTheLikelihood(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for range 200 {
		m := random(t, r, 2)
		e := observe(t, m, "b", "x", "c", "y", "d", "z", "e", "x")
		for i := range e {
			ratio := e[i].LogLikelihood[0] - e[i].LogLikelihood[1]
			weight := m.Weights(e, nil)[i]
			near(t, e[i].Name, m.Shift(e, nil, i, 0), m.Temper*weight*ratio, 1e-9)
		}
	}
}

func TestEntropy(t *testing.T) {
	near(t, "certain", Entropy([]float64{1, 0}), 0, 0)
	near(t, "four alike", Entropy([]float64{0.25, 0.25, 0.25, 0.25}), 2, rounding)
	near(t, "1/2 1/4 1/4", Entropy([]float64{0.5, 0.25, 0.25}), 1.5, rounding)
}

func TestInformationByHand(t *testing.T) {
	m := urns(t, 1)
	// I = H(state) - Σ p(h)·H(state|h), the other way round from the code.
	p := []float64{0.25, 0.75}
	red := 0.25*0.8 + 0.75*0.3
	want := Entropy([]float64{red, 1 - red}) - 0.25*Entropy([]float64{0.8, 0.2}) - 0.75*Entropy([]float64{0.3, 0.7})
	near(t, "ball", m.Information(p, nil, "ball"), want, rounding)
	// With two hypotheses "is it A?" is the whole question.
	near(t, "about A", m.InformationAbout(0, p, nil, "ball"), want, rounding)
	near(t, "certain already", m.Information([]float64{1, 0}, nil, "ball"), 0, rounding)
}

// random returns a model of n hypotheses and variables in two groups.
func random(t *testing.T, r *rand.Rand, n int) *Model {
	m := Model{Companion: 0.6, Temper: 0.5}
	for h := range n {
		m.Hypotheses = append(m.Hypotheses, string(rune('A'+h)))
		m.Odds = append(m.Odds, 0.1+r.Float64())
	}
	for k := range 5 {
		v := Variable{Name: string(rune('a' + k)), States: []string{"x", "y", "z"}, Group: []string{"", "g", "g", "h", "h"}[k]}
		for range n {
			row, sum := make([]float64, 3), 0.0
			for s := range row {
				row[s] = 0.01 + r.Float64()
				sum += row[s]
			}
			for s := range row {
				row[s] /= sum
			}
			v.Likelihood = append(v.Likelihood, row)
		}
		m.Variables = append(m.Variables, v)
	}
	return must(t, m)
}

func TestInvariances(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		m := random(t, r, 4)
		e := observe(t, m, "a", "x", "b", "y", "c", "z", "d", "x", "e", "y")
		p := m.Posterior(e, nil)
		sum := 0.0
		for _, x := range p {
			sum += x
		}
		near(t, "sum", sum, 1, rounding)
		mixed := append([]Evidence(nil), e...)
		r.Shuffle(len(mixed), func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
		scaled := make([]float64, 4)
		for h := range scaled {
			scaled[h] = 7 * m.Odds[h]
		}
		for h := range p {
			near(t, "order of evidence", m.Posterior(mixed, nil)[h], p[h], rounding)
			near(t, "scale of odds", m.WithOdds(scaled).Posterior(e, nil)[h], p[h], rounding)
		}
		// Leaving a hypothesis out keeps the odds between the rest when no group weight
		// can change: with single evidence.
		one := e[:1]
		q, full := m.Posterior(one, []bool{true, false, false, false}), m.Posterior(one, nil)
		near(t, "odds between the rest", q[1]/q[2], full[1]/full[2], 1e-9)
	}
}

func TestInformationBounds(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		m := random(t, r, 3)
		belief := m.Posterior(observe(t, m, "b", "x"), nil)
		one, two := m.Information(belief, nil, "a"), m.Information(belief, nil, "a", "d")
		if one < 0 || two > Entropy(belief)+rounding {
			t.Fatalf("information %g, %g outside 0 to the entropy %g", one, two, Entropy(belief))
		}
		if two < one-rounding {
			t.Fatalf("two variables tell %g, one alone %g", two, one)
		}
		if both := one + m.Information(belief, nil, "d"); two > both+rounding {
			t.Fatalf("two variables tell %g, more than their sum %g", two, both)
		}
		about := m.InformationAbout(1, belief, nil, "a")
		if about > one+rounding {
			t.Fatalf("about one hypothesis %g, about all %g", about, one)
		}
		// Repeating a story that has been told is worth less.
		told := m.Information(belief, observe(t, m, "b", "x"), "c")
		if fresh := m.Information(belief, nil, "c"); told > fresh+rounding {
			t.Fatalf("a told story is worth %g, a fresh one %g", told, fresh)
		}
		// The outcomes' mean is the belief.
		for h := range belief {
			mean := 0.0
			for _, o := range m.Outcomes(belief, nil, "a") {
				mean += o.Chance * o.After[h]
			}
			near(t, "mean of outcomes", mean, belief[h], rounding)
		}
	}
}

func TestTemperingWidens(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 100 {
		m := random(t, r, 4)
		e := observe(t, m, "a", "x", "d", "y")
		prior := m.Prior(nil)
		weak, full := m.Tempered(1e-9).Posterior(e, nil), m.Tempered(1).Posterior(e, nil)
		for h := range prior {
			near(t, "no power, no change", weak[h], prior[h], 1e-7)
		}
		near(t, "full power is Bayes", full[0], bayesRule(m, e)[0], 1e-9)
	}
}

// bayesRule multiplies plain chances, for evidence of two lone variables.
func bayesRule(m *Model, e []Evidence) []float64 {
	p, sum := make([]float64, len(m.Odds)), 0.0
	for h := range p {
		p[h] = m.Odds[h]
		for _, x := range e {
			p[h] *= math.Exp(x.LogLikelihood[h])
		}
		sum += p[h]
	}
	for h := range p {
		p[h] /= sum
	}
	return p
}

func TestBadInput(t *testing.T) {
	good := Model{Hypotheses: []string{"A", "B"}, Odds: []float64{1, 1}, Companion: 0.6, Temper: 0.5}
	row := func(rows ...[]float64) []Variable {
		return []Variable{{Name: "v", States: []string{"x", "y"}, Likelihood: rows}}
	}
	for name, spoil := range map[string]func(*Model){
		"odds too few":    func(m *Model) { m.Odds = m.Odds[:1] },
		"odds zero":       func(m *Model) { m.Odds = []float64{0, 1} },
		"no tempering":    func(m *Model) { m.Temper = 0 },
		"companion":       func(m *Model) { m.Companion = 2 },
		"row missing":     func(m *Model) { m.Variables = row([]float64{0.5, 0.5}) },
		"row sum":         func(m *Model) { m.Variables = row([]float64{0.5, 0.5}, []float64{0.5, 0.6}) },
		"zero chance":     func(m *Model) { m.Variables = row([]float64{0.5, 0.5}, []float64{0, 1}) },
		"state too many":  func(m *Model) { m.Variables = row([]float64{0.5, 0.5}, []float64{0.5, 0.3, 0.2}) },
		"given twice":     func(m *Model) { v := row([]float64{0.5, 0.5}, []float64{0.5, 0.5}); m.Variables = append(v, v...) },
		"odds not finite": func(m *Model) { m.Odds = []float64{1, math.NaN()} },
	} {
		m := good
		spoil(&m)
		if _, err := New(m); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	m := urns(t, 1)
	for _, w := range []map[string]float64{{"green": 1}, {"red": -1}, {"red": 0}, {"red": math.NaN()}} {
		if _, err := m.ObserveSoft("ball", w); err == nil {
			t.Errorf("weights %v: no error", w)
		}
	}
	if _, err := m.Observe("colour", "red"); err == nil {
		t.Error("unknown variable: no error")
	}
}
