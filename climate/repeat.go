package climate

import (
	"fmt"
	"time"
)

// Repeat returns a record of about a year laid end to end so that it covers the
// time between two instants: five years of drying out need weather that nobody has
// measured yet. A note says so. Each copy keeps its days of the calendar; on
// 29 February of a leap year there is no record and the days around are joined.
//
// The record must span 364 to 367 days.
func Repeat(s Series, from, to time.Time) (Series, error) {
	first, last := s.Span()
	if days := last.Sub(first).Hours() / 24; days < 364 || days > 367 {
		return Series{}, fmt.Errorf("repeat: the record %s covers %.0f days; only a year can be laid end to end", s.Source.Name, days)
	}
	if to.Before(from) {
		return Series{}, fmt.Errorf("repeat: the end %s is before the start %s", stamp(to), stamp(from))
	}
	out := s
	out.Hours = nil
	begin, end := from.Year()-first.Year()-1, to.Year()-first.Year()+1
	for n := begin; n <= end; n++ {
		for _, h := range s.Hours {
			h.Time = h.Time.AddDate(n, 0, 0)
			if k := len(out.Hours); k > 0 && !h.Time.After(out.Hours[k-1].Time) {
				continue // the year's last hour and the next one's first
			}
			out.Hours = append(out.Hours, h)
		}
	}
	i, j := 0, len(out.Hours)
	for i+1 < j && !out.Hours[i+1].Time.After(from) {
		i++
	}
	for j-1 > i && !out.Hours[j-2].Time.Before(to) {
		j--
	}
	out.Hours = out.Hours[i:j:j]
	out.Source.Notes = append(append([]string{}, s.Source.Notes...), "one year laid end to end; not the weather of these days")
	return out, nil
}
