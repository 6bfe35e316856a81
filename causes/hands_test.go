package causes

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

func TestHandsKeepThreeQuestionsApart(t *testing.T) {
	r := Rank(Cases()[2].Evidence) // late cut
	at := time.Date(2026, 5, 5, 6, 0, 0, 0, time.UTC)
	rows := Hands(r, []Departure{
		{ID: "D1", Party: "Hobday Sawing", Roles: []string{"saw crew"}, What: "saw came at 06:00 instead of 18:00", At: at, Bears: []string{"late-cut"}},
		{ID: "D2", Party: "supplier", What: "ticket without batching time", Bears: []string{"crazing"}},
		{ID: "D3", Party: "Yard Owner", Roles: []string{"user"}, What: "asked to wait with the saw", Bears: []string{"LSC"}},
	})
	var saw, ticket, owner *Hand
	for i := range rows {
		h := &rows[i]
		switch {
		case h.Cause == "late-cut" && h.Role == "saw crew":
			saw = h
		case strings.Contains(h.Departure, "ticket"):
			ticket = h
		case strings.Contains(h.Departure, "asked to wait"):
			owner = h
		}
		text := strings.ToLower(fmt.Sprintf("%+v", *h))
		for _, word := range []string{"liable", "fault", "negligen", "blame"} {
			if strings.Contains(text, word) {
				t.Errorf("%q in %+v", word, *h)
			}
		}
	}
	if saw == nil || !saw.Departed || !saw.Bears || !strings.Contains(saw.Departure, "06:00") || !strings.Contains(saw.Control, "the first who could") || saw.Moment == "" {
		t.Errorf("saw crew: %+v", saw)
	}
	if ticket == nil || ticket.Bears || ticket.Cause != "" || !strings.Contains(ticket.Causal, "not here") {
		t.Errorf("a departure that caused nothing: %+v", ticket)
	}
	if owner == nil || owner.Cause != "late-cut" || !owner.Bears {
		t.Errorf("a party outside the chain: %+v", owner)
	}
	// The chain stays visible where nobody departed from anything.
	for _, h := range Hands(r, nil) {
		if h.Departed || h.Departure != "none on record" {
			t.Errorf("no departure on record, yet %+v", h)
		}
	}
}

func TestSlabFindingsExplainEachOther(t *testing.T) {
	sure := Rank(Cases()[2].Evidence) // late cut
	weak := Rank(evidence("pattern=line", "orientation=across", "width=0.3-1"))
	sure.Finding, weak.Finding = "F1", "F2"
	alone := weak.Weight("late-cut").P
	s := RankSlab([]Ranking{sure, weak})
	var late SlabCause
	for _, c := range s.Causes {
		if c.Cause == "late-cut" {
			late = c
		}
	}
	if late.Expected <= sure.Weight("late-cut").P+alone {
		t.Errorf("late cut is expected at %.3f findings, not above %.3f as if they were apart", late.Expected, sure.Weight("late-cut").P+alone)
	}
	expected := 0.0
	for _, c := range s.Causes {
		expected += c.Expected
		if c.AtAll < 0 || c.AtAll > 1 || c.AtAll > c.Expected+rounding {
			t.Errorf("%s: at all %g, expected %g", c.Cause, c.AtAll, c.Expected)
		}
	}
	near(t, "all findings are shared out", expected, 2, 1e-9)
	single := RankSlab([]Ranking{sure})
	near(t, "a single finding stays as it is", single.Causes[0].Expected, sure.All[0].P, 1e-9)
	if RankSlab(nil).Answer == "" {
		t.Error("no words for a slab without findings")
	}
}

func TestSlabLinks(t *testing.T) {
	curl, chips := Rank(Cases()[5].Evidence), Rank(Cases()[11].Evidence)
	s := RankSlab([]Ranking{curl, chips})
	if len(s.Links) != 1 || !strings.Contains(s.Links[0], "lifted edge") {
		t.Errorf("links: %v", s.Links)
	}
}
