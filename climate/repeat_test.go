package climate

import (
	"math"
	"strings"
	"testing"
	"time"
)

// wavyYear is a record of a year on one sine: mean 14, half swing 9, coldest on
// day 20, with a daily swing of 5 that must average out.
func wavyYear() Series {
	s := Series{WindHeight: 10, Source: Origin{Name: "wave", Kind: Typical}}
	first := time.Date(2023, 1, 1, 1, 0, 0, 0, time.UTC)
	for i := range 8760 {
		t := first.Add(time.Duration(i) * time.Hour)
		air := 14 - 9*math.Cos(2*math.Pi/365*(DayOfYear(t)-20)) + 5*math.Cos(2*math.Pi*float64(t.Hour())/24)
		s.Hours = append(s.Hours, NewHour(t, air, 0.6, 3))
	}
	return s
}

func TestYearlyWave(t *testing.T) {
	mean, amplitude, coldest, err := YearlyWave(wavyYear())
	if err != nil || math.Abs(mean-14) > 0.01 || math.Abs(amplitude-9) > 0.02 || math.Abs(coldest-20) > 0.1 {
		t.Errorf("mean %g, half swing %g, coldest %g (%v), want 14, 9, 20", mean, amplitude, coldest, err)
	}
	if _, _, _, err := YearlyWave(line(100)); err == nil || !strings.Contains(err.Error(), "a year is needed") {
		t.Errorf("four days are no year: %v", err)
	}
}

func TestRepeat(t *testing.T) {
	year := wavyYear()
	from, to := time.Date(2026, 5, 3, 4, 30, 0, 0, time.UTC), time.Date(2031, 5, 3, 0, 0, 0, 0, time.UTC)
	s, err := Repeat(year, from, to)
	if err != nil {
		t.Fatal(err)
	}
	if g := s.Gaps(from, to, time.Hour); len(g) != 3 || g[0].From.Month() != time.February || g[0].From.Year() != 2028 {
		t.Errorf("gaps %v, want only 29 February 2028", g)
	}
	for _, at := range []time.Time{from, to, time.Date(2029, 12, 31, 23, 30, 0, 0, time.UTC)} {
		h, err := s.At(at)
		if err != nil {
			t.Fatal(err)
		}
		want := 14 - 9*math.Cos(2*math.Pi/365*(DayOfYear(at)-20)) + 5*math.Cos(2*math.Pi*(float64(at.Hour())+float64(at.Minute())/60)/24)
		if math.Abs(h.Air-want) > 0.1 { // straight lines across a daily swing of 5 K leave 0.04 K
			t.Errorf("%v: air %g, want %g", at, h.Air, want)
		}
	}
	if len(year.Source.Notes) != 0 || len(s.Source.Notes) != 1 {
		t.Errorf("notes: year %v, repeated %v", year.Source.Notes, s.Source.Notes)
	}
	if n := len(s.Hours); n > 5*8760+30 {
		t.Errorf("%d hours kept, more than asked for", n)
	}
	if _, err := Repeat(line(10), from, to); err == nil {
		t.Error("ten hours laid end to end")
	}
	if _, err := Repeat(year, to, from); err == nil {
		t.Error("end before start")
	}
}
