package concrete

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// openData reads a table of the folder of open data, found by going up from here;
// the test is skipped where there is none.
func openData(t *testing.T, name string) (rows [][]float64) {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for ; ; dir = filepath.Dir(dir) {
		f, err := os.Open(filepath.Join(dir, "shared", "data", "concrete", name))
		if err == nil {
			defer f.Close()
			return readNumbers(t, f)
		}
		if dir == filepath.Dir(dir) {
			t.Skipf("no open data %s", name)
		}
	}
}

func readNumbers(t *testing.T, f *os.File) (rows [][]float64) {
	t.Helper()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range records[1:] {
		row := make([]float64, len(r))
		for i, cell := range r {
			if row[i], err = strconv.ParseFloat(cell, 64); err != nil {
				t.Fatal(err)
			}
		}
		rows = append(rows, row)
	}
	return rows
}

// tested is one mix of I-Cheng Yeh (1998) with its strength by age.
type tested struct {
	cement, slag, ash, water float64
	strength                 map[float64]float64
}

func (m tested) binder() float64 { return m.cement + m.slag + m.ash }
func (m tested) plain() bool     { return m.slag+m.ash == 0 }

func yeh(t *testing.T) (list []tested) {
	at := map[[7]float64]int{}
	for _, r := range openData(t, "strength-dev.csv") {
		key := [7]float64(r[:7])
		i, seen := at[key]
		if !seen {
			i = len(list)
			at[key] = i
			list = append(list, tested{r[0], r[1], r[2], r[3], map[float64]float64{}})
		}
		list[i].strength[r[7]] = r[8]
	}
	return list
}

// rms returns the root mean square of the errors a model makes at ages other than 28
// days from each mix's own 28-day strength.
func rms(mixes []tested, use func(tested) bool, slope func(tested) float64) (float64, int) {
	sum, n := 0.0, 0
	for _, m := range mixes {
		f28, ok := m.strength[28]
		if !ok || !use(m) {
			continue
		}
		model := NewEN1992(30, Normal)
		s := slope(m)
		model.Mean28, model.Slope = f28, &s
		for age, f := range m.strength {
			if age != 28 {
				sum += math.Pow(model.Strength(age)-f, 2)
				n++
			}
		}
	}
	return math.Sqrt(sum / float64(n)), n
}

// The development with age must beat one s for all mixes, be it the best one.
func TestDevelopmentAgainstCylinders(t *testing.T) {
	mixes := yeh(t)
	fitted := func(m tested) float64 {
		return DevelopmentSlope(m.water/m.binder(), m.slag/m.binder(), m.ash/m.binder())
	}
	one := func(s float64) func(tested) float64 { return func(tested) float64 { return s } }
	for _, c := range []struct {
		name           string
		use            func(tested) bool
		says, best     float64 // MPa rms: the comment of DevelopmentSlope, one s for all
		classN, within float64
	}{
		{"plain cement, four ages or more", func(m tested) bool { return m.plain() && len(m.strength) >= 4 }, 2.6, 3.96, 4.2, 0.05},
		{"every mix", func(tested) bool { return true }, 4.4, 5.5, 6.1, 0.06},
	} {
		got, n := rms(mixes, c.use, fitted)
		naive, _ := rms(mixes, c.use, one(0.295))
		class, _ := rms(mixes, c.use, one(0.25))
		t.Logf("%s: %.2f MPa rms over %d values, one s of 0.295 gives %.2f, class N %.2f", c.name, got, n, naive, class)
		if math.Abs(got-c.says) > c.within || math.Abs(naive-c.best) > c.within || math.Abs(class-c.classN) > c.within {
			t.Errorf("%s: %.3f, %.3f and %.3f MPa rms; the comment says %.1f, %.1f and %.1f", c.name, got, naive, class, c.says, c.best, c.classN)
		}
		if got > 0.85*naive {
			t.Errorf("%s: no better than one s for all", c.name)
		}
	}
}

// The 28-day strength from water and binder must beat leaving slag and ash uncounted.
func TestStrengthFromWaterAgainstCylinders(t *testing.T) {
	sum, asCement, n := 0.0, 0.0, 0.0
	for _, m := range yeh(t) {
		f, ok := m.strength[28]
		if !ok {
			continue
		}
		b := m.binder()
		binder := Binder{Cement: m.cement / b, Slag: m.slag / b, Ash: m.ash / b}
		mix := Mix{Binder: binder, BinderContent: b, Water: m.water}
		sum += math.Pow(mix.MeanStrength()-f, 2)
		asCement += math.Pow(MeanStrengthFor(m.water/b)-f, 2)
		n++
	}
	got, naive := math.Sqrt(sum/n), math.Sqrt(asCement/n)
	t.Logf("%.2f MPa rms over %.0f mixes, %.2f with slag and ash as cement", got, n, naive)
	if math.Abs(got-6.8) > 0.1 || math.Abs(naive-10.2) > 0.1 {
		t.Errorf("%.2f and %.2f MPa rms, the comment says 6.8 and 10.2", got, naive)
	}
}

// Heats of 13 cements (Woods, Steinour and Starke 1932) against the heat of their
// compounds. All had little sulfate and free lime, which are not in the table.
func TestHeatAgainstThirteenCements(t *testing.T) {
	const joulesPerCalorie = 4.184
	var potential, measured []float64
	for _, r := range openData(t, "cement-heat.csv") { // C3A, C3S, C4AF, C2S in %, cal/g
		potential = append(potential, CementHeat(Composition{C3A: r[0] / 100, C3S: r[1] / 100, C4AF: r[2] / 100, C2S: r[3] / 100}))
		measured = append(measured, r[4]*joulesPerCalorie)
	}
	ratio := 0.0
	for i := range potential {
		ratio += measured[i] / potential[i] / float64(len(potential))
	}
	if c := correlation(potential, measured); len(potential) != 13 || math.Abs(c-0.987) > 0.001 {
		t.Errorf("correlation %.4f over %d cements, want 0.987 over 13", c, len(potential))
	}
	if math.Abs(ratio-0.919) > 0.001 {
		t.Errorf("measured over potential heat %.4f, want 0.919", ratio)
	}
}

func correlation(x, y []float64) float64 {
	n := float64(len(x))
	var sx, sy, sxx, syy, sxy float64
	for i := range x {
		sx, sy, sxx, syy, sxy = sx+x[i], sy+y[i], sxx+x[i]*x[i], syy+y[i]*y[i], sxy+x[i]*y[i]
	}
	return (n*sxy - sx*sy) / math.Sqrt((n*sxx-sx*sx)*(n*syy-sy*sy))
}
