package report

import (
	"fmt"
	"time"
)

// OverrideRow is a chance that the engineer set in place of the one worked out.
type OverrideRow struct {
	Cause  string     `json:"cause"`
	Name   string     `json:"name"`
	Was    Chance     `json:"was"` // worked out
	Set    Chance     `json:"set"`
	Reason string     `json:"reason"`
	By     string     `json:"by"`
	At     *time.Time `json:"at,omitempty"`
}

// text says it in a sentence.
func (o OverrideRow) text() string {
	when := ""
	if o.At != nil {
		when = " on " + o.At.Format("2 Jan 2006")
	}
	return fmt.Sprintf("%s was set to %s by %s%s, in place of %s worked out, because %s", sentenceCase(o.Name), o.Set.About, o.By, when, o.Was.About, o.Reason)
}

// overrideTexts are the sentences of all chances set by hand.
func overrideTexts(rows []OverrideRow) (texts []string) {
	for _, o := range rows {
		texts = append(texts, o.text())
	}
	return texts
}
