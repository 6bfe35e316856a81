package earlyage

import (
	"context"
	"math"
	"testing"
	"time"
)

// The ends of the range run by themselves must move the opening as much as the
// regression over the members says: another route.
func TestSensitivitiesAgainstTheEnds(t *testing.T) {
	saw, _ := SawFor("ordinary", "medium")
	p := doubtfulPour(t)
	m := membersOf(t, p)
	rows := m.Sensitivities(saw, 0)
	if rows[0].Key != "speed" {
		t.Errorf("most comes from %q, want the speed of the cement with its wide range", rows[0].Key)
	}
	shares := 0.0
	for _, row := range rows {
		shares += row.OpensShare
		if row.Low == row.High || row.OpensShare < 0.01 {
			continue
		}
		opens := func(value float64) float64 {
			values := make([]float64, len(m.unknowns))
			for k, u := range m.unknowns {
				if values[k] = u.Value; u.Key == row.Key {
					values[k] = value
				}
			}
			ready, err := p.ready()
			if err != nil {
				t.Fatal(err)
			}
			c, err := ready.follow(context.Background(), values, nil)
			if err != nil {
				t.Fatal(err)
			}
			return m.opening(&c.member, saw)
		}
		ends := 60 * (opens(row.High) - opens(row.Low))
		if math.Abs(ends-row.Opens) > 0.25*math.Abs(ends)+6 {
			t.Errorf("%s: %.0f min by the members, %.0f min by its ends", row.Key, row.Opens, ends)
		}
		t.Logf("%-55s opens %+4.0f min (%.0f %%), closes %+4.0f min (%.0f %%); ends %+.0f min", row.Name, row.Opens, 100*row.OpensShare, row.Closes, 100*row.ClosesShare, ends)
	}
	if shares < 0.85 || shares > 1.1 {
		t.Errorf("shares of the opening sum to %.2f", shares)
	}
	few := doubtfulPour(t)
	few.Count = 8
	if row := membersOf(t, few).Sensitivities(saw, 0)[0]; !math.IsNaN(row.Opens) {
		t.Errorf("nine members for sixteen unknowns gave %.0f min", row.Opens)
	}
}

func TestBestCutOrder(t *testing.T) {
	start := time.Date(2026, 5, 10, 8, 0, 0, 0, time.UTC)
	strip := func(hours ...float64) []Panel {
		var out []Panel
		for i, h := range hours {
			out = append(out, Panel{string(rune('a' + i)), start.Add(time.Duration(h * float64(time.Hour))), 5})
		}
		return out
	}
	names := func(cuts []Cut) (s string) {
		for _, c := range cuts {
			s += c.Between[0] + c.Between[1] + " "
		}
		return s
	}
	// All placed together: halves, then quarters, then the rest.
	got := BestCutOrder(strip(0, 0, 0, 0, 0, 0, 0, 0), 10*time.Minute)
	if want := "de bc fg ab cd ef gh "; names(got) != want || got[0].Uncut != 40 || got[1].Uncut != 20 {
		t.Errorf("order %s(%.0f m, %.0f m), want %s", names(got), got[0].Uncut, got[1].Uncut, want)
	}
	// Placed hours apart: no joint before its own concrete is as old as the first was.
	got = BestCutOrder(strip(0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5), 10*time.Minute)
	now := got[0].Ripe
	for _, c := range got {
		if c.Ripe.After(now) {
			now = c.Ripe
		}
		now = now.Add(10 * time.Minute)
	}
	if names(got)[:2] != "ab" || len(got) != 7 {
		t.Errorf("order %s, want the oldest first", names(got))
	}
	// A quick saw follows the placing, a slow one skips.
	if slow := names(BestCutOrder(strip(0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7), time.Hour)); slow == "ab bc cd de ef fg gh " {
		t.Errorf("a slow saw cut joint by joint: %s", slow)
	}
	if got := BestCutOrder(strip(0), time.Minute); got != nil {
		t.Errorf("one panel gave %v", got)
	}
}

// Panels between the runs, here an hour and a half apart, must open within ten minutes and
// close within 36 minutes of what each gives when it is run by itself: the bands of
// this interpolation, own judgement.
func TestPanelWindows(t *testing.T) {
	saw, _ := SawFor("ordinary", "medium")
	p := Pour{Column: mild(t), Restraint: usualRestraint(), Seed: 2, Count: 40}
	p.Column.Until = 48
	var placed []time.Time
	for i := range 9 {
		placed = append(placed, p.Column.Placed.Add(time.Duration(8-i)*45*time.Minute)) // the last first
	}
	windows, err := PanelWindows(context.Background(), p, placed, saw, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	for i, w := range windows {
		if i > 0 && !w.Opens.Before(windows[i-1].Opens) {
			t.Errorf("placed %v opens %v, placed %v opens %v", placed[i], w.Opens, placed[i-1], windows[i-1].Opens)
		}
		own, err := Window(context.Background(), p.placedAt(placed[i]), saw, 0.1)
		if err != nil {
			t.Fatal(err)
		}
		if off := w.Opens.Sub(own.Opens); off.Abs() > 10*time.Minute {
			t.Errorf("placed %v opens %v, run by itself %v", placed[i], w.Opens, own.Opens)
		}
		ownHours, hours := reached(hoursOf(own.Curve), cracked(own.Curve), own.Risk), reached(hoursOf(w.Curve), cracked(w.Curve), w.Risk)
		if math.Abs(ownHours-hours) > 0.6 {
			t.Errorf("placed %v: accepted chance passed at %.2f h, run by itself %.2f h", placed[i], hours, ownHours)
		}
		if !w.Closes.IsZero() && (w.ClosesEarly.After(w.Closes) || !w.ClosesLate.IsZero() && w.ClosesLate.Before(w.Closes)) {
			t.Errorf("placed %v closes %v, %v, %v", placed[i], w.ClosesEarly, w.Closes, w.ClosesLate)
		}
	}
	if same, err := PanelWindows(context.Background(), p, placed[8:], saw, 0.1); err != nil || !same[0].Opens.Equal(windows[8].Opens) {
		t.Errorf("one panel alone: %v, %v", same, err)
	}
}

// Early, expected and late always stand in this order, also where the chance closes
// the window.
func TestRangesHoldTheExpected(t *testing.T) {
	for name, c := range map[string]Column{"hot": hot(t), "mild": mild(t), "cold": cold(t)} {
		m := membersOf(t, Pour{Column: c, Restraint: usualRestraint(), Seed: 4, Count: 40})
		for _, key := range []string{"ordinary", "early-entry"} {
			saw, _ := SawFor(key, "medium")
			for _, risk := range []float64{0.01, 0.05, 0.1, 0.3, 0.6} {
				w := m.Window(saw, risk)
				ordered := func(what string, early, at, late time.Time) {
					if !at.IsZero() && (early.IsZero() || early.After(at) || !late.IsZero() && late.Before(at)) || at.IsZero() && !late.IsZero() {
						t.Errorf("%s %s at %g: %s %v, %v, %v", name, key, risk, what, early, at, late)
					}
				}
				ordered("opens", w.OpensEarly, w.Opens, w.OpensLate)
				ordered("closes", w.ClosesEarly, w.Closes, w.ClosesLate)
			}
		}
	}
}

func TestRatioAtChance(t *testing.T) {
	for _, variation := range []float64{0.05, 0.18, 0.4} {
		for _, chance := range []float64{0.001, 0.1, 0.5, 0.9} {
			if back := CrackChance(RatioAtChance(chance, variation), variation); math.Abs(back-chance) > 1e-9 {
				t.Errorf("chance %g at variation %g comes back as %g", chance, variation, back)
			}
		}
	}
}
