package earlyage

import (
	"context"
	"math"
	"os"
	"testing"
	"time"

	"slabwright/concrete"
	"slabwright/internal/table"
)

// sanityMix is a mix of the sanity battery.
type sanityMix struct {
	name, cement   string
	characteristic float64
	shift          float64 // h at 21.1 °C
}

var sanityMixes = []sanityMix{
	{"plain C30/37", "CEM I 42.5N", 30, 0},
	{"rapid C35/45", "CEM I 52.5R", 35, 0},
	{"limestone C25/30", "CEM II/A-LL", 25, 0},
	{"fly ash C25/30", "CEM II/B-V", 25, 0},
	{"slag C30/37", "CEM III/A", 30, 0},
	{"type I, 40 MPa", "I", 40, 0},
	{"plain, retarder +3 h", "CEM I 42.5N", 30, 3},
	{"plain, accelerator -1.5 h", "CEM I 42.5N", 30, -1.5},
}

// sanityDay is a day and the concrete and ground that go with it.
type sanityDay struct {
	name            string
	placed          time.Time
	placing, ground float64
	weather         Weather
	opens           [2]float64 // hours after placing that practice knows for the first cut of an ordinary saw
}

var sanityDays = []sanityDay{
	{"hot 32 °C, humid", july, 30, 26, day(32, 4, 0.65, 2, 30), [2]float64{3, 10}},
	{"hot 32 °C, dry wind", july, 30, 24, day(32, 7, 0.25, 5, 35), [2]float64{3, 10}},
	{"hot 32 °C, overcast", july, 30, 24, overcast(day(32, 3, 0.6, 2, 40)), [2]float64{3, 10}},
	{"mild 18 °C, clear", may, 20, 15, day(18, 5, 0.6, 2, 45), [2]float64{5, 18}},
	{"mild 18 °C, overcast", may, 19, 15, overcast(day(18, 2, 0.8, 3, 45)), [2]float64{5, 18}},
	{"cold 8 °C, clear", november, 14, 9, day(8, 4, 0.75, 2, 50), [2]float64{10, 36}},
	{"cold 8 °C, overcast wind", november, 14, 9, overcast(day(8, 2, 0.85, 5, 50)), [2]float64{10, 36}},
}

var may = time.Date(2026, 5, 10, 8, 0, 0, 0, time.UTC)

// sanityPour is a mix on a day.
func sanityPour(t testing.TB, m sanityMix, d sanityDay) Pour {
	t.Helper()
	mix, err := concrete.DefaultMix(m.characteristic, m.cement)
	if err != nil {
		t.Fatal(err)
	}
	mix.PlacingTemperature, mix.SetShift = d.placing, m.shift
	const thickness = 0.15
	c := pourOn(t, d.placed, d.placing, d.ground, d.weather)
	c.Concrete = FromMix(mix, mix.EN1992(), ENLongTerm(mix, thickness, 0.6, 3), thickness)
	c.Thickness, c.Until = thickness, 60
	return Pour{Column: c, Restraint: usualRestraint(), Seed: 11, Count: 1}
}

// sevenTenths is the low end of the stress over strength at which concrete is
// reported to crack (0.7 to 1.0, ACI 207.2R, from memory).
const sevenTenths = 0.7

// sanityCloses is the hour at which the expected course comes to it, without limit if
// never: a closing that hangs on no spread of doubts.
func sanityCloses(t testing.TB, p Pour) float64 {
	t.Helper()
	_, closes := sanityBoth(t, p)
	return closes
}

func sanityWindow(t testing.TB, p Pour) CutWindow {
	t.Helper()
	w, _ := sanityBoth(t, p)
	return w
}

func sanityBoth(t testing.TB, p Pour) (w CutWindow, closes float64) {
	t.Helper()
	saw, _ := SawFor("ordinary", "medium")
	m, err := RunMembers(context.Background(), p)
	if err != nil {
		t.Fatal(err)
	}
	h := m.Expected()
	ratio := make([]float64, len(h.Hours))
	for i, at := range p.Restraint.Follow(h, p.Column.Thickness, p.Column.Concrete.Poisson) {
		ratio[i] = at.Ratio
	}
	return m.Window(saw, 0), after(reached(h.Hours, ratio, sevenTenths))
}

// departure is a case of the battery in which the model disagrees with practice.
type departure struct {
	got float64 // h after placing
	why string
}

// departures are the cases on record, by day and mix.
func departures(t *testing.T) map[[2]string]departure {
	t.Helper()
	text, err := os.ReadFile("testdata/sanity/first-cut-outside-practice.csv")
	if err != nil {
		t.Fatal(err)
	}
	out := map[[2]string]departure{}
	for _, row := range table.Read("first-cut-outside-practice.csv", string(text)).Records() {
		out[[2]string{row["day"], row["mix"]}] = departure{number(row["opens_h"]), row["why"]}
	}
	return out
}

// The first cut of an ordinary saw over eight mixes and seven days opens within the
// hours that practice knows (common practice, no source: hot 3 to 10 h, mild 5 to 18
// h, cold 10 to 36 h), and never after the slab has cracked. Where the model
// disagrees the case is on record with its hours and the reason; a case that comes or
// goes, or moves by more than an hour, must be looked at.
func TestSanityOfTheFirstCut(t *testing.T) {
	known := departures(t)
	for _, d := range sanityDays {
		for _, m := range sanityMixes {
			w, closes := sanityBoth(t, sanityPour(t, m, d))
			record, recorded := known[[2]string{d.name, m.name}]
			switch inside := w.opens >= d.opens[0] && w.opens <= d.opens[1]; {
			case !inside && !recorded:
				t.Errorf("%s, %s: opens %.1f h after placing, practice %g to %g h, not on record", d.name, m.name, w.opens, d.opens[0], d.opens[1])
			case inside && recorded:
				t.Errorf("%s, %s: opens %.1f h after placing, inside practice; take it off the record", d.name, m.name, w.opens)
			case recorded && math.Abs(w.opens-record.got) > 1:
				t.Errorf("%s, %s: opens %.1f h after placing, on record %.1f h", d.name, m.name, w.opens, record.got)
			}
			if closes <= w.opens {
				t.Errorf("%s, %s: no window on a steady day: opens %.1f h, closes %.1f h", d.name, m.name, w.opens, closes)
			}
			delete(known, [2]string{d.name, m.name})
		}
	}
	for key := range known {
		t.Errorf("%v is on record but not in the battery", key)
	}
}
