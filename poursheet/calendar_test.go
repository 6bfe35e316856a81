package poursheet

import (
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // the zone must be known on every machine
)

var (
	london, _ = time.LoadLocation("Europe/London")
	made      = time.Date(2026, 10, 24, 9, 0, 0, 0, time.UTC)
)

// window of the night in which the clocks go back: 22:30 to 01:30, 4 h apart.
func window() Window {
	return Window{ID: "yard/A/P1/wet", Title: "Cut strip A, panel P1", Text: "45 mm deep; trial cut first. Ring the engineer when it ravels, whatever the hour it is.",
		Place: "Yard, north gate", Made: made,
		Opens: time.Date(2026, 10, 24, 22, 30, 0, 0, london), Ends: time.Date(2026, 10, 25, 1, 30, 0, 0, time.UTC)}
}

func text(t *testing.T, windows []Window, before []byte) string {
	t.Helper()
	data, err := Calendar(windows, before)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// RFC 5545: UID and DTSTAMP are there, times are UTC, lines end in CR LF and are not
// longer than 75 octets.
func TestCalendarForm(t *testing.T) {
	s := text(t, []Window{window()}, nil)
	for _, want := range []string{"BEGIN:VCALENDAR\r\n", "VERSION:2.0\r\n", "UID:yard-A-P1-wet@slabwright\r\n", "DTSTAMP:20261024T090000Z\r\n",
		"DTSTART:20261024T213000Z\r\n", "DTEND:20261025T013000Z\r\n", "SEQUENCE:0\r\n", "TRIGGER:-PT60M\r\n", "END:VCALENDAR\r\n"} {
		if !strings.Contains(s, want) {
			t.Errorf("no %q in\n%s", want, s)
		}
	}
	for _, line := range strings.Split(strings.TrimSuffix(s, "\r\n"), "\r\n") {
		if len(line) > 75 || strings.ContainsAny(line, "\r\n") {
			t.Errorf("line of %d octets: %q", len(line), line)
		}
	}
}

// A window that moved keeps its UID and its SEQUENCE rises; one that did not, does not.
func TestMovedWindowRaisesSequence(t *testing.T) {
	first := text(t, []Window{window()}, nil)
	same := text(t, []Window{window()}, []byte(first))
	if same != first {
		t.Errorf("nothing moved, yet the file changed:\n%s", same)
	}
	moved := window()
	moved.Opens = moved.Opens.Add(40 * time.Minute)
	second := text(t, []Window{moved}, []byte(first))
	third := text(t, []Window{window()}, []byte(second))
	if !strings.Contains(second, "SEQUENCE:1\r\n") || !strings.Contains(third, "SEQUENCE:2\r\n") {
		t.Errorf("moved twice:\n%s\n%s", second, third)
	}
}

func TestCalendarRefuses(t *testing.T) {
	bad := window()
	bad.Ends = bad.Opens
	if _, err := Calendar([]Window{bad}, nil); err == nil || !strings.Contains(err.Error(), "yard/A/P1/wet") {
		t.Errorf("got %v, want the window named", err)
	}
	if _, err := Calendar([]Window{window()}, []byte("BEGIN:VCALENDAR\r\nnothing")); err == nil || !strings.Contains(err.Error(), "choose another name") {
		t.Errorf("got %v, want the file refused", err)
	}
}
