package climate

import (
	"bytes"
	"math"
	"os"
	"testing"
	"time"
)

// sound says that a record that was read can be used: in order of time, finite or
// not known, possible, and answering between its ends where it knows.
func sound(t *testing.T, s Series) {
	t.Helper()
	for i := range s.Hours {
		if i > 0 && !s.Hours[i].Time.After(s.Hours[i-1].Time) {
			t.Fatalf("record %d is not later than the one before", i)
		}
		for _, q := range quantitiesOfHour {
			v := *q.get(&s.Hours[i])
			if math.IsInf(v, 0) || !math.IsNaN(v) && !(v >= q.low && v <= q.high) {
				t.Fatalf("record %d: %s %g was let through", i, q.name, v)
			}
		}
	}
	if from, to := s.Span(); len(s.Hours) > 0 {
		for _, at := range []float64{0, 0.37, 1} {
			h, err := s.At(from.Add(time.Duration(at * float64(to.Sub(from)))))
			if err == nil && (math.IsNaN(h.Air) || math.IsNaN(h.Humidity) || math.IsNaN(h.Wind)) {
				t.Fatal("NaN in silence")
			}
		}
	}
}

func FuzzReadCSV(f *testing.F) {
	f.Add([]byte("time,air_C,rh_%,wind_km_h\n2026-01-15T14:00+11:00,31.5,22,18\n2026-01-15T15:00+11:00,32,20 %,20\n"))
	f.Add([]byte("time (UTC+10);air (F);dew (F);wind mph;cloud (oktas);rain (in)\n15/01/2026 2:00 pm;88,7;50;5;3;0,1\n"))
	f.Add([]byte("date\ttime\tair\thumidity\twind\n1/2/2026\t24:00\t1\t2\t3\n"))
	f.Add([]byte("\xff\xfet\x00i\x00m\x00e\x00"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if s, err := ReadCSV(bytes.NewReader(data), Table{}); err == nil {
			sound(t, s)
		} else if err.Error() == "" {
			t.Fatal("an error without a word")
		}
	})
}

func FuzzReadEPW(f *testing.F) {
	if data, err := os.ReadFile("testdata/weather/tucson-three-days.epw"); err == nil {
		f.Add(data[:min(len(data), 3500)])
	}
	f.Add([]byte("LOCATION,X,,,,,1,2,3,4\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if s, err := ReadEPW(bytes.NewReader(data), "x", 0); err == nil {
			sound(t, s)
		}
	})
}

func FuzzReadTMY3(f *testing.F) {
	if data, err := os.ReadFile("testdata/weather/miami-three-days.tmy3.csv"); err == nil {
		f.Add(data[:min(len(data), 3500)])
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if s, err := ReadTMY3(bytes.NewReader(data), "x", 2026); err == nil {
			sound(t, s)
		}
	})
}
