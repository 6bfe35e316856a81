package climate

import (
	"math"
	"strings"
	"testing"
	"time"
)

func TestDryingDay(t *testing.T) {
	e := hotDay(t)
	from, to := e.Series.Span()
	warm := func(time.Time) float64 { return 30 }
	d, err := DryingDay(e, warm, from, to, 30*time.Minute)
	if err != nil {
		t.Fatal(err)
	}
	if len(d.Rows) != 49 {
		t.Fatalf("%d rows, want 49", len(d.Rows))
	}
	r := d.Rows[27]
	h, _ := e.Series.At(r.Time)
	v := h.Wind * WindReduction(0.5, 10, 0.03)
	for _, c := range []struct {
		form      string
		got, want float64
	}{
		{"Uno", r.Uno, Uno(30, h.Air, h.Humidity, 3.6*v)},
		{"Uno US", r.UnoUS, UnoUS(86, h.Air*1.8+32, h.Humidity, v/0.44704) * 4.88242764},
		{"Menzel", r.Menzel, Menzel(SaturationPressure(30), SaturationPressure(h.Air), h.Humidity, 3.6*v)},
	} {
		if math.Abs(c.got/c.want-1) > 1e-8 {
			t.Errorf("%s: got %g, want %g", c.form, c.got, c.want)
		}
	}
	peak := d.Peak()
	for _, r := range d.Rows {
		if r.Highest() > peak.Highest() || r.Lowest() > r.Highest() {
			t.Errorf("%v: highest %g, lowest %g, peak %g", r.Time, r.Highest(), r.Lowest(), peak.Highest())
		}
	}
	// the peak lies in the windy afternoon
	if clock := peak.Time.In(zoneOf(t, "Australia/Melbourne")).Hour(); clock < 12 || clock > 18 {
		t.Errorf("peak at %d o'clock", clock)
	}
	if notes := d.Notes(); len(notes) != 1 || !strings.Contains(notes[0], "above the 35 °C") {
		t.Errorf("38 °C air: notes %q", notes)
	}
	low, high := d.HoursAbove(DryingRow.Highest, DryingLimitLowBleed), d.HoursAbove(DryingRow.Highest, DryingLimit)
	if !(low > high && high >= 0 && low < 24) {
		t.Errorf("%g hours above 0.5, %g above 1.0", low, high)
	}
	// the film of the closed form's bleed, fed with the day's rate from 08:00
	start := from.Add(8 * time.Hour)
	_, gone := FilmHistory(Bleed{Rate: 0.8, End: 3}.At, d.Evaporation(DryingRow.Highest, start), 0.05, 6)
	least := FilmExhausted(Bleed{Rate: 0.8, End: 3}, peak.Highest())
	if !(gone > least) {
		t.Errorf("film gone at %g h, sooner than under the peak rate all day, %g h", gone, least)
	}
}

// A rate that rises and falls on straight lines is above the limit between the
// crossings.
func TestAboveFindsCrossings(t *testing.T) {
	d := DryingRecord{Step: time.Hour}
	for i, e := range []float64{0, 0.5, 1.5, 1.5, 0.5, 1.1} {
		d.Rows = append(d.Rows, DryingRow{Time: after(float64(i)), Uno: e, UnoUS: e, Menzel: e})
	}
	got := d.Above(DryingRow.Highest, 1.0)
	if len(got) != 2 || !got[0].From.Equal(after(1.5)) || !got[0].To.Equal(after(3.5)) {
		t.Fatalf("stretches %v", got)
	}
	if hours := d.HoursAbove(DryingRow.Highest, 1.0); math.Abs(hours-2-1.0/6) > 1e-6 {
		t.Errorf("%g hours, want 2 and 10 minutes", hours)
	}
	rate := d.Evaporation(DryingRow.Highest, after(1))
	for _, c := range [][2]float64{{-5, 0}, {0, 0.5}, {0.5, 1}, {1, 1.5}, {9, 1.1}} {
		if got := rate(c[0]); math.Abs(got-c[1]) > 1e-9 {
			t.Errorf("rate %g h on: got %g, want %g", c[0], got, c[1])
		}
	}
}

func TestDryingDayErrors(t *testing.T) {
	e := hotDay(t)
	from, to := e.Series.Span()
	unknown := func(time.Time) float64 { return math.NaN() }
	if _, err := DryingDay(e, unknown, from, to, time.Hour); err == nil || !strings.Contains(err.Error(), "not known") {
		t.Errorf("unknown concrete: %v", err)
	}
	if _, err := DryingDay(e, unknown, to, from, time.Hour); err == nil || !strings.Contains(err.Error(), "before the start") {
		t.Errorf("end before start: %v", err)
	}
	if _, err := DryingDay(e, func(time.Time) float64 { return 20 }, from, to.Add(time.Hour), time.Hour); err == nil {
		t.Error("past the record")
	}
}

// The sheet's lines hold the values of the functions and the numbers put in.
func TestDryingSheet(t *testing.T) {
	share := WindReduction(0.5, 10, 0.03)
	s := DryingSheet("peak", 31, 27, 0.5, 19/3.6/share, 10, 0.03) // 19 km/h at the slab
	values := map[string]float64{}
	for _, l := range s.Lines {
		values[l.Symbol] = l.Value
		if l.Source.Title == "" || l.Numbers == l.Formula {
			t.Errorf("%s: source %q, numbers %q", l.Symbol, l.Source, l.Numbers)
		}
		for _, in := range l.Inputs {
			if strings.Contains(l.Numbers, in.Symbol) && len(in.Symbol) > 1 {
				t.Errorf("%s: %s is left standing in %q", l.Symbol, in.Symbol, l.Numbers)
			}
		}
		if l.Check != nil && l.Check.Flag {
			t.Errorf("%s: check %g is %.0f %% from %g", l.Symbol, l.Check.Value, 100*l.Check.Apart, l.Value)
		}
	}
	// Uno's and Menzel's rows of the published tables: 1.152 and 1.189 kg/m2/h
	for symbol, want := range map[string]float64{"f_w": 0.4843, "V": 19, "E_U": 1.152, "E_M": 1.189} {
		if got := values[symbol]; math.Abs(got/want-1) > 0.005 {
			t.Errorf("%s: got %g, want %g", symbol, got, want)
		}
	}
	if last := s.Lines[len(s.Lines)-1]; last.Verdict != "fail" {
		t.Errorf("1.19 kg/m2/h against 1.0: verdict %q", last.Verdict)
	}
	for _, c := range []struct{ concrete, air, humidity, wind float64 }{{20, 20, 0.7, 3}, {25, 25, 0.5, 6}} {
		v := DryingSheet("x", c.concrete, c.air, c.humidity, c.wind, 10, 0.03)
		last := v.Lines[len(v.Lines)-1]
		want := "pass"
		if last.Value*DryingLimit > DryingLimitLowBleed {
			want = "note"
		}
		if last.Verdict != want {
			t.Errorf("%+v: ratio %g, verdict %q, want %q", c, last.Value, last.Verdict, want)
		}
	}
}
