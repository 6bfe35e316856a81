package poursheet

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"slabwright/internal/page"
)

// Title is what stands in the title block of every sheet. An empty word is left out
// or written as a line to be filled in.
type Title struct {
	Number   string // the practice's job number
	Job      string
	Slab     string
	Client   string
	Place    string
	Drawn    string // who made it
	Checked  string
	Revision string // empty: DRAFT
	Zone     string // IANA name of the site's zone
	Made     time.Time
	Version  string // of the program
	DataHash string // of what it was made from
}

func (t Title) draft() bool { return t.Revision == "" || strings.EqualFold(t.Revision, "draft") }

func (t Title) revision() string { return or(t.Revision, "DRAFT") }

// clock returns the site's zone; an unknown one is UTC, and its times say so.
func (t Title) clock() clock {
	if zone, err := time.LoadLocation(t.Zone); err == nil && t.Zone != "" {
		return clock{zone, ""}
	}
	return clock{time.UTC, " UTC"}
}

// head is what every page of a sheet carries in its foot.
func (t Title) head(sheet string) page.Head {
	c := t.clock()
	foot := []string{or(t.Number, or(t.Job, "no job number")), or(t.Slab, "slab"), sheet, "rev " + t.revision()}
	if !t.Made.IsZero() {
		foot = append(foot, t.Made.In(c.zone).Format("2 Jan 2006"))
	}
	foot = append(foot, "slabwright "+or(t.Version, "–"))
	if t.DataHash != "" {
		foot = append(foot, "data "+t.DataHash[:min(12, len(t.DataHash))])
	}
	made := t.Made
	if made.IsZero() {
		made = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) // a date of its own, never the clock's
	}
	return page.Head{Title: sheet + ", " + or(t.Slab, or(t.Job, "slab")), Author: t.Drawn, Subject: sheet, Language: "en",
		Foot: strings.Join(foot, " · "), Draft: t.draft(), Created: made}
}

// clock writes times as the site reads them.
type clock struct {
	zone *time.Location
	mark string // " UTC" where the zone is not known
}

// full is "Fri 19 Sep 19:30"; hour "19:30"; weekday "Fri 19:30".
func (c clock) full(t time.Time) string    { return t.In(c.zone).Format("Mon 2 Jan 15:04") + c.mark }
func (c clock) hour(t time.Time) string    { return t.In(c.zone).Format("15:04") + c.mark }
func (c clock) weekday(t time.Time) string { return t.In(c.zone).Format("Mon 15:04") + c.mark }

const thin = "\u202f"

func or(s, otherwise string) string {
	if strings.TrimSpace(s) == "" {
		return otherwise
	}
	return s
}

// fixed writes a number with so many decimals and a true minus.
func fixed(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	return strings.Replace(s, "-", "−", 1)
}

func with(number, unit string) string { return number + thin + unit }

// hours writes a time after placing: "9 h", "4.5 h".
func hours(v float64) string {
	if v < 10 {
		return with(fixed(v, 1), "h")
	}
	return with(fixed(v, 0), "h")
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
