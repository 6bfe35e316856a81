package earlyage

import (
	"math"
	"testing"

	"slabwright/concrete"
)

// The sum of exponentials against the time function of the code it was fitted to,
// from two minutes to sixty years.
func TestFittedDuration(t *testing.T) {
	creep, member := benchmarkCreep()
	c := NewCreep(func(age, loaded float64) float64 { return creep.Coefficient(member, loaded, age) })
	whole := creep.Coefficient(member, creepReference, creepReference+creepHorizon)
	for d := 1.5e-3; d < 22000; d *= 1.7 {
		want := creep.Coefficient(member, creepReference, creepReference+d) / whole
		if got := c.Duration(d); math.Abs(got-want) > 0.004 {
			t.Errorf("%.4g days: share %.4f, code %.4f", d, got, want)
		}
	}
}

// A strain that swings as a young slab's does, by exponentials in rate form and by
// the full integral of superposition in package concrete: two routes.
func TestRateFormAgainstSuperposition(t *testing.T) {
	creep, member := benchmarkCreep()
	modulus := func(age float64) float64 { return concrete.TangentOverSecantEN * creep.Modulus(age) }
	c := NewCreep(func(age, loaded float64) float64 { return creep.Coefficient(member, loaded, age) })
	var ages, strains []float64
	for i := 0; i <= 480; i++ {
		age := 1 + float64(i)/96
		ages = append(ages, age)
		strains = append(strains, 1e-4*math.Sin(2*math.Pi*age)-4e-5*(age-1))
	}
	compliance := func(loaded, age float64) float64 { return creep.Compliance(member, loaded, age) }
	want := concrete.Superpose(compliance, ages, strains)
	fibre, f := newRelaxing(c), newFade(c)
	worst, largest := 0.0, 0.0
	fibre.take(strains[0], c, &f, modulus(ages[0]), 0)
	for i := 1; i < len(ages); i++ {
		f.set(c, ages[i]-ages[i-1])
		middle := (ages[i] + ages[i-1]) / 2
		fibre.take(strains[i]-strains[i-1], c, &f, modulus(middle), c.Ageing(middle)/modulus(28))
		worst = math.Max(worst, math.Abs(fibre.stress-want[i]))
		largest = math.Max(largest, math.Abs(want[i]))
	}
	if worst > 0.02*largest {
		t.Errorf("rate form and superposition up to %.4f MPa apart, largest stress %.3f MPa", worst, largest)
	}
}

// Creep only takes away: the stress of a strain held from a week on falls and keeps
// its sign. (Loaded at one day the code's product form, superposed, overshoots zero
// after years: a known limit of such forms, and why stresses here are for days and
// months.)
func TestRelaxationFalls(t *testing.T) {
	creep, member := benchmarkCreep()
	c := NewCreep(func(age, loaded float64) float64 { return creep.Coefficient(member, loaded, age) })
	modulus := func(age float64) float64 { return creep.Modulus(age) }
	previous := 1.0
	for _, r := range Relaxation(c, modulus, modulus(28), 7, []float64{7.1, 7.5, 8, 10, 16, 100, 1000, 10000}) {
		if r >= previous || r <= 0 {
			t.Fatalf("share %.3f after %.3f", r, previous)
		}
		previous = r
	}
}
