package climate

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// clockReader reads the time column of a table.
type clockReader struct {
	zone     *time.Location // of local times, nil when none was given
	dayFirst *bool          // order in 03/04/2026; nil while it is not known
	last     time.Time
}

// read returns the instant of a time as written: ISO 8601 with or without offset,
// with a space for the T, day and month in either order with / or ., 24:00, and
// 12-hour times with am or pm.
func (c *clockReader) read(text string) (time.Time, error) {
	text = strings.TrimSpace(text)
	for _, layout := range []string{time.RFC3339, "2006-01-02T15:04Z07:00", "2006-01-02 15:04:05Z07:00", "2006-01-02 15:04Z07:00", "2006-01-02 15:04 Z07:00"} {
		if t, err := time.Parse(layout, text); err == nil {
			return t.UTC(), nil
		}
	}
	day, clock, _ := strings.Cut(strings.Replace(text, "T", " ", 1), " ")
	y, m, d, err := c.date(day)
	if err != nil {
		return time.Time{}, err
	}
	hour, minute, second, err := clockOf(clock)
	if err != nil {
		return time.Time{}, err
	}
	if c.zone == nil {
		return time.Time{}, fmt.Errorf("time has no zone: found %q. Write the offset (2026-01-15T14:00+11:00) or give the zone of the site", text)
	}
	return c.local(y, m, d, hour, minute, second)
}

// local turns a clock time of the zone into an instant. In the hour that the clock
// shows twice in autumn the second showing is taken once the record has passed the
// first; in the hour it skips in spring there is no such instant.
func (c *clockReader) local(y, m, d, hour, minute, second int) (time.Time, error) {
	day := d
	if hour == 24 {
		hour, day = 0, d+1
	}
	t := time.Date(y, time.Month(m), day, hour, minute, second, 0, c.zone)
	if t.Hour() != hour || t.Minute() != minute {
		return time.Time{}, fmt.Errorf("time does not exist in %s: the clock was put forward over %02d:%02d. If the logger keeps standard time give its offset as the zone, such as UTC+10", c.zone, hour, minute)
	}
	for _, shift := range []time.Duration{-time.Hour, -30 * time.Minute} { // the first showing, if Go gave the second
		if e := t.Add(shift); e.Hour() == hour && e.Minute() == minute {
			t = e
		}
	}
	for _, shift := range []time.Duration{30 * time.Minute, time.Hour} {
		if l := t.Add(shift); !t.After(c.last) && l.After(c.last) && l.Hour() == hour && l.Minute() == minute {
			t = l
			break
		}
	}
	return t.UTC(), nil
}

// date reads 2026-01-15, 15/01/2026, 1/15/2026, 15.01.2026.
func (c *clockReader) date(text string) (y, m, d int, err error) {
	sign := strings.IndexAny(text, "-/.")
	if sign < 0 {
		return 0, 0, 0, fmt.Errorf("time is not a date: found %q. Write 2026-01-15 14:00", text)
	}
	parts := strings.Split(text, text[sign:sign+1])
	if len(parts) != 3 {
		return 0, 0, 0, fmt.Errorf("time is not a date: found %q. Write 2026-01-15 14:00", text)
	}
	var n [3]int
	for i, p := range parts {
		if n[i], err = strconv.Atoi(strings.TrimSpace(p)); err != nil {
			return 0, 0, 0, fmt.Errorf("time is not a date: found %q. Write 2026-01-15 14:00", text)
		}
	}
	switch {
	case len(parts[0]) == 4:
		y, m, d = n[0], n[1], n[2]
	case text[sign] == '.':
		y, m, d = n[2], n[1], n[0]
	case c.dayFirst == nil && n[0] <= 12 && n[1] <= 12 && n[0] != n[1]:
		return 0, 0, 0, fmt.Errorf("time may be read two ways: found %q and no day above 12 in the file. Write 2026-01-15 or say which comes first", text)
	case c.dayFirst != nil && *c.dayFirst || c.dayFirst == nil && n[0] > 12:
		y, m, d = n[2], n[1], n[0]
	default:
		y, m, d = n[2], n[0], n[1]
	}
	if y < 100 {
		y += 2000
	}
	if t := time.Date(y, time.Month(m), d, 0, 0, 0, 0, time.UTC); m < 1 || m > 12 || t.Day() != d || y < 1800 || y > 2200 {
		return 0, 0, 0, fmt.Errorf("time is not a day of the calendar: found %q", text)
	}
	return y, m, d, nil
}

// learn looks through the dates of a file for one that tells day from month.
func (c *clockReader) learn(texts []string) {
	for _, text := range texts {
		day, _, _ := strings.Cut(strings.TrimSpace(text), " ")
		a, rest, ok := strings.Cut(day, "/")
		b, _, ok2 := strings.Cut(rest, "/")
		first, err := strconv.Atoi(a)
		second, err2 := strconv.Atoi(b)
		if !ok || !ok2 || err != nil || err2 != nil || len(a) == 4 {
			continue
		}
		if (first > 12) != (second > 12) {
			dayFirst := first > 12
			c.dayFirst = &dayFirst
			return
		}
	}
}

// clockOf reads 14, 14:00, 14:00:30, 24:00, 2:00 pm; nothing is midnight.
func clockOf(text string) (hour, minute, second int, err error) {
	wrong := fmt.Errorf("time is not a clock time: found %q. Write 14:00", text)
	lower := strings.ToLower(strings.TrimSpace(text))
	lower, pm := strings.CutSuffix(lower, "pm")
	lower, am := strings.CutSuffix(lower, "am")
	lower = strings.TrimSpace(lower)
	if lower == "" && !am && !pm {
		return 0, 0, 0, nil
	}
	parts := strings.Split(lower, ":")
	if len(parts) > 3 {
		return 0, 0, 0, wrong
	}
	n := [3]int{}
	for i, p := range parts {
		p, _, _ = strings.Cut(p, ".") // seconds may carry a fraction
		if n[i], err = strconv.Atoi(p); err != nil {
			return 0, 0, 0, wrong
		}
	}
	if am || pm {
		if n[0] < 1 || n[0] > 12 {
			return 0, 0, 0, wrong
		}
		n[0] %= 12
		if pm {
			n[0] += 12
		}
	}
	if n[0] < 0 || n[1] < 0 || n[2] < 0 || n[0] > 24 || n[1] > 59 || n[2] > 59 || n[0] == 24 && n[1]+n[2] > 0 {
		return 0, 0, 0, wrong
	}
	return n[0], n[1], n[2], nil
}
