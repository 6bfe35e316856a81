package climate

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
	"time"
)

var noon = time.Date(2026, 1, 15, 12, 0, 0, 0, time.UTC)

func after(hours float64) time.Time { return noon.Add(time.Duration(hours * float64(time.Hour))) }

// line returns a record on straight lines, which interpolation must meet exactly.
func line(n int) Series {
	s := Series{WindHeight: 10, Source: Origin{Name: "line", Kind: AtSite}}
	for i := range n {
		h := NewHour(after(float64(i)), 20+float64(i), 0.5+0.01*float64(i), 2+0.5*float64(i))
		h.Sun, h.Cloud, h.Rain = 100*float64(i), 0.1*float64(i), float64(i)
		s.Hours = append(s.Hours, h)
	}
	return s
}

func TestAtMeetsStraightLines(t *testing.T) {
	s := line(6)
	for _, x := range []float64{0, 0.25, 1, 2.75, 5} {
		h, err := s.At(after(x))
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			what      string
			got, want float64
		}{{"air", h.Air, 20 + x}, {"humidity", h.Humidity, 0.5 + 0.01*x}, {"wind", h.Wind, 2 + 0.5*x},
			{"sun", h.Sun, 100 * x}, {"cloud", h.Cloud, 0.1 * x}, {"rain", h.Rain, math.Ceil(x)}} {
			if math.Abs(c.got-c.want) > 1e-12 {
				t.Errorf("%s at %g h: got %g, want %g", c.what, x, c.got, c.want)
			}
		}
		if !math.IsNaN(h.Sky) {
			t.Errorf("sky at %g h: got %g, nobody knows it", x, h.Sky)
		}
	}
}

func TestAtOutsideSaysSo(t *testing.T) {
	s := line(3)
	for _, x := range []float64{-0.1, 2.1} {
		if _, err := s.At(after(x)); err == nil || !strings.Contains(err.Error(), "runs from 2026-01-15 12:00 UTC to 2026-01-15 14:00 UTC") {
			t.Errorf("at %g h: error %v does not name the span", x, err)
		}
	}
	if _, err := (Series{}).At(noon); err == nil {
		t.Error("an empty record answers")
	}
}

// Hourly means belong to the middle of their hour: the sun's sum is kept.
func TestMeansBelongToTheMiddle(t *testing.T) {
	s := line(6)
	s.MeanOver = time.Hour
	h, err := s.At(after(2.5))
	if err != nil || h.Sun != 300 {
		t.Errorf("sun at 2.5 h: got %g (%v), want the mean stamped 3 h, 300", h.Sun, err)
	}
	if h, _ := s.At(after(5)); h.Sun != 500 {
		t.Errorf("sun at the end: got %g, want the last mean", h.Sun)
	}
	if h, _ := s.At(after(0)); h.Sun != 50 {
		t.Errorf("sun at the start: got %g, want half way between the first two means", h.Sun)
	}
}

func TestMissingValuesAreBridgedOrUnknown(t *testing.T) {
	s := line(6)
	s.Hours[2].Wind, s.Hours[2].Sun = math.NaN(), math.NaN()
	h, err := s.At(after(2))
	if err != nil || math.Abs(h.Wind-3) > 1e-12 {
		t.Errorf("wind bridged: got %g (%v), want 3", h.Wind, err)
	}
	if h.Air != 22 {
		t.Errorf("air beside a missing wind: got %g, want 22", h.Air)
	}
	if !math.IsNaN(h.Sun) {
		t.Errorf("sun that nobody read: got %g", h.Sun)
	}
	s.Hours[5].Air = math.NaN()
	if _, err := s.At(after(4.5)); err == nil || !strings.Contains(err.Error(), "air temperature") {
		t.Errorf("air missing at the end: error %v", err)
	}
}

func TestGaps(t *testing.T) {
	s := line(8)
	s.Hours = append(s.Hours[:3], s.Hours[6:]...) // records at 0 1 2 6 7 h
	s.Hours[1].Wind = math.NaN()
	got := s.Gaps(after(-1), after(8), time.Hour)
	var text []string
	for _, g := range got {
		text = append(text, g.String())
	}
	for _, want := range []string{
		"no air temperature from 2026-01-15 11:00 UTC to 2026-01-15 12:00 UTC (1 h)",
		"no wind from 2026-01-15 12:00 UTC to 2026-01-15 14:00 UTC (2 h)",
		"no humidity from 2026-01-15 14:00 UTC to 2026-01-15 18:00 UTC (4 h)",
		"no wind from 2026-01-15 19:00 UTC to 2026-01-15 20:00 UTC (1 h)",
	} {
		if !strings.Contains(strings.Join(text, "\n"), want) {
			t.Errorf("missing %q among\n%s", want, strings.Join(text, "\n"))
		}
	}
	if len(got) != 10 { // three quantities: before, middle, after; and the lost wind
		t.Errorf("%d gaps, want 10:\n%s", len(got), strings.Join(text, "\n"))
	}
	if g := line(8).Gaps(after(1), after(6), time.Hour); len(g) != 0 {
		t.Errorf("a full record has gaps %v", g)
	}
	if g := (Series{}).Gaps(after(1), after(6), time.Hour); len(g) != 3 {
		t.Errorf("an empty record has %d gaps, want 3", len(g))
	}
}

func TestDoubtful(t *testing.T) {
	s := line(6)
	s.Hours[1].Humidity, s.Hours[2].Humidity = 55, 61
	s.Hours[3].Humidity = -0.2
	s.Hours[4].Wind = 40
	s.Hours[5].Air = 81
	var text []string
	for _, d := range s.Doubtful() {
		text = append(text, d.String())
	}
	all := strings.Join(text, "\n")
	for _, want := range []string{"humidity 55 is outside 0–1", "(and 1 more)", "fraction (0.55)", "Negative humidity",
		"wind 40 m/s is more than is usual", "km/h", "11.1 m/s", "air temperature 81 °C is outside", "°F"} {
		if !strings.Contains(all, want) {
			t.Errorf("missing %q among\n%s", want, all)
		}
	}
	if len(text) != 4 {
		t.Errorf("%d doubts, want 4:\n%s", len(text), all)
	}
	if d := line(6).Doubtful(); len(d) != 0 {
		t.Errorf("a sound record is doubted: %v", d)
	}
}

func TestDoubtfulStuckAndOrder(t *testing.T) {
	s := line(20)
	for i := range s.Hours {
		s.Hours[i].Air = 21
	}
	s.Hours[7].Time = s.Hours[6].Time
	var stuck, order bool
	for _, d := range s.Doubtful() {
		stuck = stuck || strings.Contains(d.Text, "does not change") && d.Quantity == "air temperature"
		order = order || d.Quantity == "time" && d.Impossible
	}
	if !stuck || !order {
		t.Errorf("stuck instrument seen %v, order seen %v: %v", stuck, order, s.Doubtful())
	}
}

// A record kept as JSON comes back the same, what is not known left out.
func TestSeriesKeeps(t *testing.T) {
	s := line(3)
	s.Hours[1].Sun = math.NaN()
	data, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(string(data), "sky_W_m2") {
		t.Error("what nobody knows is written")
	}
	var back Series
	if err := json.Unmarshal(data, &back); err != nil {
		t.Fatal(err)
	}
	again, _ := json.Marshal(back)
	if string(again) != string(data) || !math.IsNaN(back.Hours[1].Sun) || back.Hours[2].Air != 22 {
		t.Errorf("kept %s\nback %s", data, again)
	}
}

func TestOriginInWords(t *testing.T) {
	far, up := 12400.0, -35.0
	o := Origin{Name: "Airport", Kind: Station, Distance: &far, Higher: &up}
	if got, want := o.String(), "Airport, station, 12 km from the slab, 35 m below it"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	cautions := strings.Join(Origin{Name: "Airport", Kind: Station, Distance: &far, Higher: new(400.0)}.Cautions(), " ")
	for _, want := range []string{"12 km away", "2.6 K warmer"} { // 400 m at 6.5 K a kilometre
		if !strings.Contains(cautions, want) {
			t.Errorf("%q is missing in %q", want, cautions)
		}
	}
	for _, kind := range []Kind{Forecast, Made, Typical, Station} {
		if n := (Origin{Kind: kind}).Cautions(); len(n) != 1 {
			t.Errorf("%s: cautions %v, want one", kind, n)
		}
	}
	if got := (Origin{}).String(); got != "origin not stated" {
		t.Errorf("got %q", got)
	}
}
