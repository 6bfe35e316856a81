package table

import (
	"slices"
	"strings"
	"testing"
)

const cement = "# a remark\nkind,share,note\nplain,0.5,\"one, two\"\nslag,0.7,\n"

func TestRead(t *testing.T) {
	c := Read("cement.csv", cement)
	if i := c.Find("slag"); i != 1 || c.Number(i, "share") != 0.7 || c.Text(0, "note") != "one, two" {
		t.Errorf("got row %d of %+v", i, c)
	}
	if c.Find("ash") != -1 {
		t.Error("found what is not there")
	}
	if got := c.Numbers("share"); !slices.Equal(got, []float64{0.5, 0.7}) {
		t.Errorf("numbers: %v", got)
	}
	if got := c.Keys(); !slices.Equal(got, []string{"plain", "slag"}) {
		t.Errorf("keys: %v", got)
	}
	if got := c.Records()[1]; len(got) != 3 || got["kind"] != "slag" || got["note"] != "" {
		t.Errorf("record: %v", got)
	}
}

func TestFaultsNameTheTable(t *testing.T) {
	for what, fault := range map[string]func(){
		"empty":       func() { Read("cement.csv", "") },
		"head only":   func() { Read("cement.csv", "kind,share\n") },
		"uneven":      func() { Read("cement.csv", "kind,share\nplain\n") },
		"no column":   func() { Read("cement.csv", cement).Text(0, "colour") },
		"not numeric": func() { Read("cement.csv", cement).Number(0, "note") },
	} {
		func() {
			defer func() {
				if text, ok := recover().(string); !ok || !strings.Contains(text, "cement.csv") {
					t.Errorf("%s: %q", what, text)
				}
			}()
			fault()
			t.Errorf("%s: accepted", what)
		}()
	}
}
