package unit

import (
	"strconv"
	"time"
)

// Clock writes an instant as a crew reads it: weekday, clock of the site and how
// long after placing, "Thu 18:40, 9 h after placing". Without a start (the zero
// time) the last part is left out.
//
// The hours are counted between instants, so a night on which the clocks change
// still gives the hours that pass; a clock time that comes twice that night names
// its zone ("Sun 02:30 CET").
func Clock(t time.Time, zone *time.Location, since time.Time) string {
	text := ClockTime(t, zone)
	if since.IsZero() {
		return text
	}
	switch past := t.Sub(since).Round(time.Minute); {
	case past == 0:
		return text + ", at placing"
	case past < 0:
		return text + ", " + hoursMinutes(-past) + " before placing"
	default:
		return text + ", " + hoursMinutes(past) + " after placing"
	}
}

// ClockTime writes weekday and clock, "Thu 18:40".
func ClockTime(t time.Time, zone *time.Location) string {
	local := t.In(zone)
	text := local.Format("Mon 15:04")
	if comesTwice(local) {
		text += " " + local.Format("MST")
	}
	return text
}

// comesTwice reports whether the same date and clock time is met again when the
// clocks are put back (by one hour, or half an hour on Lord Howe Island).
func comesTwice(local time.Time) bool {
	const minute = "2006-01-02 15:04"
	for _, shift := range []time.Duration{time.Hour, -time.Hour, 30 * time.Minute, -30 * time.Minute} {
		if local.Add(shift).Format(minute) == local.Format(minute) {
			return true
		}
	}
	return false
}

// hoursMinutes writes "9 h", "9 h 30 min", "40 min"; days only from three on.
func hoursMinutes(d time.Duration) string {
	sign := ""
	if d < 0 {
		sign, d = "−", -d
	}
	minutes := int64(d.Round(time.Minute) / time.Minute)
	if minutes >= 3*24*60 {
		days, hours := minutes/(24*60), (minutes%(24*60)+30)/60
		if hours == 24 {
			days, hours = days+1, 0
		}
		text := sign + strconv.FormatInt(days, 10) + thin + "d"
		if hours > 0 {
			text += " " + strconv.FormatInt(hours, 10) + thin + "h"
		}
		return text
	}
	h, m := strconv.FormatInt(minutes/60, 10)+thin+"h", strconv.FormatInt(minutes%60, 10)+thin+"min"
	switch {
	case minutes < 60:
		return sign + m
	case minutes%60 == 0:
		return sign + h
	}
	return sign + h + " " + m
}
