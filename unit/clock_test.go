package unit

import (
	"strings"
	"testing"
	"time"
	_ "time/tzdata"
)

func TestClock(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	at := func(s string) time.Time {
		v, err := time.Parse(time.RFC3339, s)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	for _, c := range []struct{ t, since, want string }{
		{"2026-06-18T16:40:00Z", "2026-06-18T07:40:00Z", "Thu 18:40, 9 h after placing"},
		{"2026-06-18T22:10:00Z", "2026-06-18T07:40:00Z", "Fri 00:10, 14 h 30 min after placing"},
		{"2026-06-18T07:00:00Z", "2026-06-18T07:40:00Z", "Thu 09:00, 40 min before placing"},
		{"2026-06-18T07:40:00Z", "2026-06-18T07:40:00Z", "Thu 09:40, at placing"},
		// clocks go forward at 02:00 on 29 March 2026: 23:00 to 04:00 is four hours
		{"2026-03-29T02:00:00Z", "2026-03-28T22:00:00Z", "Sun 04:00, 4 h after placing"},
		// clocks go back at 03:00 on 25 October 2026: 02:30 comes twice
		{"2026-10-25T00:30:00Z", "2026-10-24T20:30:00Z", "Sun 02:30 CEST, 4 h after placing"},
		{"2026-10-25T01:30:00Z", "2026-10-24T20:30:00Z", "Sun 02:30 CET, 5 h after placing"},
		{"2026-10-25T02:30:00Z", "2026-10-24T20:30:00Z", "Sun 03:30, 6 h after placing"},
		{"2026-06-22T09:40:00Z", "2026-06-18T07:40:00Z", "Mon 11:40, 4 d 2 h after placing"},
	} {
		got := strings.ReplaceAll(Clock(at(c.t), berlin, at(c.since)), "\u202f", " ")
		if got != c.want {
			t.Errorf("%s since %s: got %q, want %q", c.t, c.since, got, c.want)
		}
	}
	if got := Clock(at("2026-06-18T16:40:00Z"), berlin, time.Time{}); got != "Thu 18:40" {
		t.Errorf("without a start: %q", got)
	}
}
