package main

import (
	"context"
	"fmt"
	"io"

	"slabwright/causes"
)

// calibration invents jobs with known causes and prints how often stated chances come
// true.
func calibration(ctx context.Context, out io.Writer, jobs int, seed uint64, asJSON bool) error {
	if jobs < leastJobs {
		return withCode(exitUsage, fmt.Errorf("--jobs %d: give %d or more; fewer say nothing about chances", jobs, leastJobs))
	}
	c, err := causes.Calibrate(ctx, jobs, seed)
	if err != nil {
		return err
	}
	if asJSON {
		if err := printJSON(out, c); err != nil {
			return err
		}
	} else {
		printCalibration(out, c)
	}
	if !c.Rules[0].Met {
		return withCode(exitDisproved, fmt.Errorf("stated chances are off by up to %.2f; allowed is %.2f", c.Rules[0].Worst, c.Allowed))
	}
	return nil
}

const leastJobs = 50

func printCalibration(w io.Writer, c causes.Calibration) {
	fmt.Fprintf(w, "Stated chances against what came true, over %d invented jobs with %d findings (seed %d)\n\n", c.Jobs, c.Findings, c.Seed)
	fmt.Fprintf(w, "A cause is planted at each finding and its evidence drawn from the bands, site by site, and partly kept back.\nThe jobs know nothing of how a ranking is made. How they were drawn (slabwright's own judgement):\n")
	for _, d := range c.Draws {
		fmt.Fprintf(w, "  %-72s %.2f\n", d.What, d.Value)
	}
	for _, r := range c.Rules {
		printRule(w, c, r)
	}
	fmt.Fprintf(w, "\nThis shows that the chances fit the bands and the dependence assumed. It cannot show that the bands are right in the field.\n")
}

func printRule(w io.Writer, c causes.Calibration, r causes.RuleRecord) {
	verdict := fmt.Sprintf("met: no row with enough chances is off by more than %.2f", c.Allowed)
	if !r.Met {
		verdict = fmt.Sprintf("NOT met: off by up to %.2f, allowed %.2f", r.Worst, c.Allowed)
	}
	fmt.Fprintf(w, "\n%s\n  %s\n", r.Name, verdict)
	fmt.Fprintf(w, "  %-12s %9s %9s %9s %9s %8s\n", "stated", "chances", "mean", "true", "± 1 s.e.", "gap")
	for _, b := range r.Bins {
		note := ""
		if !b.Enough {
			note = "  too few to judge"
		}
		fmt.Fprintf(w, "  %.1f to %.1f   %9d %9.3f %9.3f %9.3f %+8.3f%s\n", b.From, b.To, b.Count, b.Stated, b.True, b.Error, b.Gap, note)
	}
	fmt.Fprintf(w, "  planted cause first at %d of %d findings; decided %d, of which right %d; cannot tell yet %d; %.2f bits of surprise a finding\n",
		r.First, c.Findings, r.Decided, r.Right, r.Undecided, r.Surprise)
}
