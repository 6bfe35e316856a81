package report

import (
	"fmt"
	"strings"
)

// when says when something of a replay came: to the minute in the first days, then
// between two steps of it.
func (e *ReplayEvent) when(clk clock) string {
	if e.Since < e.Hours {
		from := e.At.Add(-hoursLong(e.Hours - e.Since))
		return clk.write(from, "2 Jan") + " to " + clk.write(e.At, "2 Jan 2006")
	}
	return clk.hour(e.At)
}

// age says how old the concrete there was.
func (e *ReplayEvent) age() string { return ageWords(e.Placed) + " after placing" }

// ageWords says hours as hours, days or months.
func ageWords(hours float64) string {
	switch {
	case hours < 72:
		return fixed(hours, 0) + " h"
	case hours < 60*24:
		return fixed(hours/24, 0) + " days"
	}
	return fixed(hours/24/30.4, 0) + " months"
}

// handWords sets the hand figure beside the tension.
func (e *ReplayEvent) handWords() string {
	s := fmt.Sprintf("by hand, base alone: %s MPa", fixed(e.Hand, 2))
	if e.Held != "" {
		s += "; " + e.Held
	}
	return s
}

// ReplayText is the replay as a dated list for a terminal.
func ReplayText(c *Content, width int) string {
	w, r, clk := newWriter(width), c.Replay, clockOf(c.Head)
	if r == nil {
		w.line("The slab was not replayed in plan.")
		return w.String()
	}
	if r.Partial != "" {
		w.line("PARTIAL. " + sentence(r.Partial))
		w.blank()
	}
	w.line("From the first truck, " + clk.hour(r.Start) + " (" + clk.name + "), to " + ageWords(r.Hours) + " after it")
	for _, s := range r.Summary {
		w.hanging("  - ", sentence(s))
	}
	w.blank()
	w.line("What opens and cracks, in the expected course")
	if len(r.Events) == 0 {
		w.line("  Nothing.")
	}
	for i := range r.Events {
		replayEventText(w, clk, &r.Events[i])
	}
	if len(r.Unmet) > 0 {
		w.blank()
		w.line("Seen, and not in the expected course")
		for _, u := range r.Unmet {
			w.hanging("  "+u.Finding+"  ", sentence(u.Text))
		}
	}
	replayOpeningsText(w, r)
	replayChancesText(w, r)
	return w.String()
}

func replayEventText(w *writer, clk clock, e *ReplayEvent) {
	w.hanging("  ", e.when(clk)+", "+e.age()+": "+e.What+" "+e.Where+".")
	w.hanging("      ", sentence(sentenceCase(e.Why))+" "+sentence(sentenceCase(e.handWords())))
	w.hanging("      ", sentence(sentenceCase(e.Seen)))
}

func replayOpeningsText(w *writer, r *Replay) {
	if len(r.Openings) == 0 {
		return
	}
	w.blank()
	w.line("How wide it stands at the end, mm")
	w.row(fmt.Sprintf("  %-6s %12s %8s %8s", "", "open of m", "mean", "widest"))
	for _, o := range r.Openings {
		w.row(fmt.Sprintf("  %-6s %12s %8s %8s", o.Line, fixed(o.Open, 1)+" of "+fixed(o.Length, 1), fixed(1000*o.Mean, 2), fixed(1000*o.Widest, 2)))
	}
}

func replayChancesText(w *writer, r *Replay) {
	c := r.Chances
	if c == nil {
		return
	}
	w.blank()
	w.line(fmt.Sprintf("Chances, from %d replays with the uncertain facts spread", c.Members))
	if c.Cracked > 0 {
		w.hanging("  ", fmt.Sprintf("First crack outside the joints: %s after the first truck in the middle of the samples (%s to %s for 8 in 10 of them).", ageWords(c.First[1]), ageWords(c.First[0]), ageWords(c.First[2])))
	}
	w.hanging("  ", "Joints, chance to have opened, metre by metre from the start of each, per cent")
	for _, j := range c.Joints {
		w.hanging(fmt.Sprintf("    %-5s ", j.Joint), perMetreWords(j)+"  "+j.Found)
	}
	w.hanging("  ", "Panels, chance of a crack at the likeliest square metre, and metres of crack to be expected")
	for _, p := range c.Panels {
		s := fmt.Sprintf("%s, %s m", perCent(p.Worst), fixed(p.Metres, 1))
		if p.Where != "" {
			s += ", likeliest at " + p.Where
		}
		if len(p.Found) > 0 {
			s += "; seen: " + strings.Join(p.Found, ", ")
		}
		w.hanging(fmt.Sprintf("    %-5s ", p.Panel), s)
	}
}

// perMetreWords lists the chances of a joint in stretches of a metre.
func perMetreWords(j JointOpens) string {
	var out []string
	for _, v := range j.perMetre() {
		out = append(out, fixed(100*v, 0))
	}
	return strings.Join(out, " ")
}

// perMetre takes the stretches of a joint together to a metre each.
func (j JointOpens) perMetre() (out []float64) {
	n := 1
	if j.Step > 0 {
		n = max(1, int(1/j.Step+0.5))
	}
	for i := 0; i < len(j.Opened); i += n {
		part := j.Opened[i:min(i+n, len(j.Opened))]
		sum := 0.0
		for _, v := range part {
			sum += v
		}
		out = append(out, sum/float64(len(part)))
	}
	return out
}

func perCent(share float64) string { return fixed(100*share, 0) + " %" }

// ReplayPlain is one event a line, parted by tabs: time in UTC, hours after the first
// truck, line, what, metres, share of strength, tension and hand figure in MPa, finding.
func ReplayPlain(c *Content) string {
	var s strings.Builder
	if c.Replay == nil {
		return ""
	}
	if c.Replay.Partial != "" {
		fmt.Fprintf(&s, "# partial: %s\n", c.Replay.Partial)
	}
	for _, e := range c.Replay.Events {
		fmt.Fprintf(&s, "%s\t%.2f\t%s\t%s\t%.2f\t%.3f\t%.3f\t%.3f\t%s\n", e.At.UTC().Format("2006-01-02T15:04Z"), e.Hours, e.Line, e.What, e.Length, e.Share, e.Stress, e.Hand, or(e.Finding, "-"))
	}
	return s.String()
}
