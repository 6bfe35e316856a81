package climate

import (
	"fmt"
	"math"
	"sort"
	"time"
)

// Series is a record of weather in order of time, and where it comes from.
type Series struct {
	Hours      []Hour        `json:"hours"`
	Source     Origin        `json:"source"`
	WindHeight float64       `json:"wind_height_m"` // of the instrument, 10 for a station
	MeanOver   time.Duration `json:"mean_over_ns"`  // sun and rain are means over this span before each stamp; 0: at the stamp
}

// Span returns the first and last instant of the series; both are zero times when
// it is empty.
func (s Series) Span() (from, to time.Time) {
	if len(s.Hours) == 0 {
		return
	}
	return s.Hours[0].Time, s.Hours[len(s.Hours)-1].Time
}

// At returns the weather at an instant, on the straight line between the records
// before and after. A record that lacks one quantity is passed over for that
// quantity; ask [Series.Gaps] how far apart the records are. Sun given as a mean
// belongs to the middle of its span. Rain holds through its span. Cloud, sun, sky
// and rain are NaN where the records on both sides do not know them.
//
// Outside its span the series says so in an error: weather is never stretched.
func (s Series) At(t time.Time) (Hour, error) {
	from, to := s.Span()
	if len(s.Hours) == 0 {
		return Hour{}, fmt.Errorf("weather at %s: the record is empty", stamp(t))
	}
	if t.Before(from) || t.After(to) {
		return Hour{}, fmt.Errorf("weather at %s: the record %s runs from %s to %s; add the hours that are missing",
			stamp(t), s.Source.Name, stamp(from), stamp(to))
	}
	out := Hour{Time: t.UTC()}
	for _, q := range quantitiesOfHour {
		v, ok := s.value(q, t)
		if !ok && q.needed {
			return Hour{}, fmt.Errorf("weather at %s: the record does not know the %s on both sides of this time", stamp(t), q.name)
		}
		*q.get(&out) = v
	}
	return out, nil
}

// value interpolates one quantity.
func (s Series) value(q quantity, t time.Time) (float64, bool) {
	if q.name == "rain" {
		i := sort.Search(len(s.Hours), func(i int) bool { return !s.Hours[i].Time.Before(t) })
		v := s.Hours[i].Rain
		return v, !math.IsNaN(v)
	}
	shift := time.Duration(0)
	if q.mean {
		shift = s.MeanOver / 2
	}
	after := sort.Search(len(s.Hours), func(i int) bool { return !s.Hours[i].Time.Add(-shift).Before(t) })
	next := s.known(q, after, 1)
	if after < len(s.Hours) && s.Hours[after].Time.Add(-shift).Equal(t) && next == after {
		return *q.get(&s.Hours[after]), true
	}
	last := s.known(q, after-1, -1)
	switch {
	case last < 0 && next < 0:
		return math.NaN(), false
	case last < 0 || next < 0:
		// only a mean shifted past the end of the record may take its neighbour's value
		if q.mean && (after == 0 && next == 0 || after == len(s.Hours) && last == after-1) {
			return *q.get(&s.Hours[max(last, next)]), true
		}
		return math.NaN(), false
	case !q.needed && next-last > 1:
		return math.NaN(), false
	}
	a, b := &s.Hours[last], &s.Hours[next]
	share := float64(t.Sub(a.Time.Add(-shift))) / float64(b.Time.Sub(a.Time))
	va, vb := *q.get(a), *q.get(b)
	return va + share*(vb-va), true
}

// known returns the nearest record from i in a direction that knows the quantity,
// or -1. What is not needed is not bridged: only the record at i counts.
func (s Series) known(q quantity, i, step int) int {
	for ; i >= 0 && i < len(s.Hours); i += step {
		v := *q.get(&s.Hours[i])
		if !math.IsNaN(v) && !(q.name == "sky radiation" && v <= 0) {
			return i
		}
		if !q.needed {
			break
		}
	}
	return -1
}

// Gap is a stretch without a record of one quantity.
type Gap struct {
	Quantity string // "air temperature", "humidity", "wind", or "sun" and the rest
	From, To time.Time
}

// String returns the gap in words.
func (g Gap) String() string {
	return fmt.Sprintf("no %s from %s to %s (%s)", g.Quantity, stamp(g.From), stamp(g.To), hoursText(g.To.Sub(g.From)))
}

// Gaps returns the stretches that touch the time between two instants and have no
// record of air, humidity or wind for longer than a time. Before the first and
// after the last record any stretch counts, since nothing bridges it. An hour of
// missing wind does little; six hours across noon hide the peak.
func (s Series) Gaps(from, to time.Time, longest time.Duration) []Gap {
	var gaps []Gap
	for _, q := range quantitiesOfHour {
		if !q.needed {
			continue
		}
		var last *Hour
		for i := range s.Hours {
			h := &s.Hours[i]
			if math.IsNaN(*q.get(h)) {
				continue
			}
			switch {
			case last == nil && h.Time.After(from):
				gaps = append(gaps, Gap{q.name, from, earlier(h.Time, to)})
			case last != nil && h.Time.Sub(last.Time) > longest && h.Time.After(from) && last.Time.Before(to):
				gaps = append(gaps, Gap{q.name, last.Time, h.Time})
			}
			last = h
		}
		switch {
		case last == nil:
			gaps = append(gaps, Gap{q.name, from, to})
		case last.Time.Before(to):
			gaps = append(gaps, Gap{q.name, later(last.Time, from), to})
		}
	}
	sort.SliceStable(gaps, func(i, j int) bool { return gaps[i].From.Before(gaps[j].From) })
	return gaps
}

func earlier(a, b time.Time) time.Time {
	if a.Before(b) {
		return a
	}
	return b
}

func later(a, b time.Time) time.Time {
	if a.After(b) {
		return a
	}
	return b
}

func stamp(t time.Time) string { return t.UTC().Format("2006-01-02 15:04 UTC") }

func hoursText(d time.Duration) string { return fmt.Sprintf("%.3g h", d.Hours()) }
