package causes

import (
	"strings"
	"testing"

	"slabwright/internal/bayes"
)

// weighEvidence is the evidence of weigh, for tests that need only that.
func weighEvidence(e Evidence) []bayes.Evidence { return weigh(e).evidence }

func TestCatalogue(t *testing.T) {
	if len(catalogue) != 33 || catalogue[32].ID != Other {
		t.Fatalf("%d causes, want 32 and other", len(catalogue))
	}
	codes := map[string]bool{}
	for _, c := range catalogue {
		if codes[c.Code] {
			t.Errorf("code %s twice", c.Code)
		}
		codes[c.Code] = true
		if words := len(strings.Fields(c.Plain)); words > 30 || words < 5 {
			t.Errorf("%s: plain sentence of %d words", c.ID, words)
		}
		if c.Exact == "" || c.Confirm == "" || c.DoNot == "" || len(c.Sources) == 0 || c.Age == "" || c.Depth == "" {
			t.Errorf("%s is not complete", c.ID)
		}
		if (c.Kind == "trigger") != (c.Shares == nil) {
			t.Errorf("%s is a %s with mechanisms %v", c.ID, c.Kind, c.Shares)
		}
		sum := 0.0
		for _, s := range c.Shares {
			sum += s
		}
		if c.Shares != nil && sum != 1 {
			t.Errorf("%s: mechanisms add up to %g", c.ID, sum)
		}
		if c.ID != Other && len(c.Who) == 0 {
			t.Errorf("%s: nobody in the chain", c.ID)
		}
	}
}

// Every party of a chain has something it could have done, and nobody is given
// something to do who is not in the chain.
func TestChainAndPreventionAgree(t *testing.T) {
	for _, c := range catalogue {
		chain := map[string]bool{}
		for _, role := range c.Who {
			chain[role] = true
			known := false
			for _, p := range parties {
				known = known || p.ID == role
			}
			if !known {
				t.Errorf("%s: %s is not a party", c.ID, role)
			}
			found := false
			for _, p := range c.Prevention {
				found = found || p.Party == role && p.Action != "" && p.Moment != ""
			}
			if !found {
				t.Errorf("%s: no prevention by %s", c.ID, role)
			}
		}
		for _, p := range c.Prevention {
			if !chain[p.Party] {
				t.Errorf("%s: prevention by %s, who is not in the chain", c.ID, p.Party)
			}
		}
	}
}

func TestWordsAreNeutral(t *testing.T) {
	for _, c := range catalogue {
		text := strings.ToLower(c.Plain + c.Exact + c.Confirm + c.DoNot + c.Name)
		for _, p := range c.Prevention {
			text += strings.ToLower(p.Action + p.Moment)
		}
		for _, word := range []string{"liable", "at fault", "negligen", "defect", "failure", "blame"} {
			if strings.Contains(text, word) {
				t.Errorf("%s says %q", c.ID, word)
			}
		}
	}
}

func TestEveryVariableHasATest(t *testing.T) {
	for _, v := range variables {
		if v.Name == "exposure" {
			continue // known from the place
		}
		if cheapest(v.Name) == "" {
			t.Errorf("no test shows %s", v.Name)
		}
	}
	for _, test := range testTable {
		if test.First != "" {
			found := false
			for _, other := range testTable {
				found = found || other.ID == test.First
			}
			if !found {
				t.Errorf("%s comes after unknown %s", test.ID, test.First)
			}
		}
	}
}

// telling is how much likelier a state is under a cause than over all causes.
func telling(cause string, v Variable, state int) float64 {
	mean := 0.0
	for _, c := range catalogue {
		mean += Chance(c.ID, v.Name, v.States[state]) / float64(len(catalogue))
	}
	return Chance(cause, v.Name, v.States[state]) / mean
}

// A cause shown by its own typical states (the most telling of equals) must lead: a row that cannot win
// even then is a mistake in the bands.
func TestEveryCauseCanLead(t *testing.T) {
	for _, c := range catalogue {
		if c.ID == Other {
			continue
		}
		e := Evidence{Finding: c.ID, Exposure: External, Frost: true}
		for _, v := range variables {
			digits, ok := bands[v.Name].digits[c.ID]
			if !ok {
				continue
			}
			best := 0
			for i, d := range digits {
				if d > rune(digits[best]) || d == rune(digits[best]) && telling(c.ID, v, i) > telling(c.ID, v, best) {
					best = i
				}
			}
			e.Observations = append(e.Observations, see(v.Name+"="+v.States[best])...)
		}
		if top := Rank(e).Top(); top.Cause != c.ID {
			t.Errorf("%s by its own typical signs: %s leads (%.2f)", c.ID, top.Cause, top.P)
		}
	}
}
