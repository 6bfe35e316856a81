package poursheet

import (
	"bytes"
	"fmt"
	"sort"
	"strings"
	"time"

	ical "github.com/arran4/golang-ical"
)

// Window is one cut window to be put in a calendar.
type Window struct {
	ID    string    // unique and the same from one version to the next: "demo-apron/A/P3/wet"
	Title string    // "Cut strip A, panel P3"
	Text  string    // what the crew must know
	Place string    // of the site
	Opens time.Time // any zone; written as UTC, which every calendar shows in its own
	Ends  time.Time // closing, or the last time worth cutting
	Made  time.Time // when the answer was worked out or the facts were last changed
}

// alarmBefore is how long before the window opens the phone rings.
const alarmBefore = time.Hour

// Calendar returns the windows as an iCalendar file (RFC 5545, UTC, lines ended by
// CR LF). Where the file made before is given, a window that has moved keeps its UID
// and its SEQUENCE is raised, so that calendars move their entry instead of
// doubling it.
//
// An error names the window whose times cannot be.
func Calendar(windows []Window, before []byte) ([]byte, error) {
	old, err := sequences(before)
	if err != nil {
		return nil, err
	}
	cal := ical.NewCalendar()
	cal.SetProductId("-//slabwright//cut windows//EN")
	sorted := append([]Window(nil), windows...)
	sort.SliceStable(sorted, func(i, j int) bool { return sorted[i].Opens.Before(sorted[j].Opens) })
	for _, w := range sorted {
		if w.Opens.IsZero() || !w.Ends.After(w.Opens) {
			return nil, fmt.Errorf("cut window %q: it ends at %s, not after it opens at %s", w.ID, w.Ends.UTC().Format(time.RFC3339), w.Opens.UTC().Format(time.RFC3339))
		}
		add(cal, w, old[uid(w)])
	}
	return []byte(cal.Serialize(ical.WithNewLine("\r\n"))), nil
}

func uid(w Window) string { return strings.ReplaceAll(w.ID, "/", "-") + "@slabwright" }

func add(cal *ical.Calendar, w Window, old entry) {
	e := cal.AddEvent(uid(w))
	e.SetDtStampTime(w.Made.UTC())
	e.SetStartAt(w.Opens.UTC())
	e.SetEndAt(w.Ends.UTC())
	e.SetSummary(w.Title)
	e.SetDescription(w.Text)
	if w.Place != "" {
		e.SetLocation(w.Place)
	}
	sequence := old.sequence
	if old.known && (!old.start.Equal(w.Opens.Truncate(time.Second)) || !old.end.Equal(w.Ends.Truncate(time.Second))) {
		sequence++
	}
	e.SetSequence(sequence)
	alarm := e.AddAlarm()
	alarm.SetAction(ical.ActionDisplay)
	alarm.SetTrigger(fmt.Sprintf("-PT%dM", int(alarmBefore.Minutes())))
	alarm.SetProperty(ical.ComponentPropertyDescription, w.Title)
}

// entry is a window as it stood in the file made before.
type entry struct {
	known      bool
	sequence   int
	start, end time.Time
}

// sequences reads the entries of the file made before.
func sequences(before []byte) (map[string]entry, error) {
	all := map[string]entry{}
	if len(before) == 0 {
		return all, nil
	}
	cal, err := ical.ParseCalendar(bytes.NewReader(before))
	if err != nil {
		return nil, fmt.Errorf("the calendar file that is there already cannot be read (%w); move it away or choose another name", err)
	}
	for _, e := range cal.Events() {
		old := entry{known: true}
		if p := e.GetProperty(ical.ComponentPropertySequence); p != nil {
			if _, err := fmt.Sscan(p.Value, &old.sequence); err != nil {
				old.sequence = 0
			}
		}
		old.start, _ = e.GetStartAt()
		old.end, _ = e.GetEndAt()
		all[e.Id()] = old
	}
	return all, nil
}
