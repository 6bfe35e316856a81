package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"slabwright/job"
	"slabwright/report"
	"slabwright/unit"
)

const replayHelp = `Follows the slab in plan from its first truck on: what opens and what cracks
where and when, in the expected course, beside what was seen; then how likely
that is metre by metre, from many replays with the uncertain facts spread over
their ranges. Ctrl-C stops it and prints what had come by then.

Examples:
  slabwright replay yard
  slabwright replay yard --until 90d --members 200
  slabwright replay yard --plain | sort
  slabwright replay yard --json > replay.json`

func replayCommand(s *settings) *cobra.Command {
	var until string
	var members int
	var plain bool
	cmd := &cobra.Command{
		Use:   "replay [JOB]",
		Short: "What opens and cracks where and when, from first truck to two years",
		Long:  replayHelp,
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			o, err := replayOptions(until, members)
			if err != nil {
				return withCode(exitUsage, err)
			}
			dir, j, err := jobIn(args)
			if err != nil {
				return err
			}
			p := newProgress(s.quiet)
			content, err := job.Replay(cmd.Context(), j, os.DirFS(dir), o, p.Step)
			p.Done()
			if content == nil || err != nil && !errors.Is(err, context.Canceled) {
				return notKnown(err)
			}
			if content.Replay == nil {
				return withCode(exitNotKnown, errors.New("the slab cannot be replayed in plan: "+whyNoReplay(content)))
			}
			switch w := cmd.OutOrStdout(); {
			case s.json:
				if e := printJSON(w, content.Replay); e != nil {
					return e
				}
			case plain:
				fmt.Fprint(w, report.ReplayPlain(content))
			default:
				fmt.Fprint(w, report.ReplayText(content, textWidth))
			}
			if err != nil {
				return withCode(exitStopped, errors.New("stopped; what had come by then is printed"))
			}
			return nil
		},
	}
	f := cmd.Flags()
	f.StringVar(&until, "until", "2y", "how far after the first truck: 48h, 90d, 2y")
	f.IntVar(&members, "members", 60, "replays from which the chances are counted")
	f.BoolVar(&plain, "plain", false, "one event a line, parted by tabs")
	return cmd
}

// whyNoReplay is what the job lacks for a replay.
func whyNoReplay(c *report.Content) string {
	var lines []string
	for _, m := range c.Missing {
		if strings.Contains(m.So, "replayed") {
			lines = append(lines, m.What+" ("+m.Field+")")
		}
	}
	if len(lines) == 0 {
		return "a fact is missing"
	}
	return "not known: " + strings.Join(lines, "; ")
}

// replayOptions reads the flags; both are checked before one is told.
func replayOptions(until string, members int) (o job.ReplayOptions, err error) {
	var wrong []error
	hours, bad := hoursOf(until)
	switch {
	case bad != nil:
		wrong = append(wrong, fmt.Errorf("--until: %w", bad))
	case hours < job.LeastReplayHours || hours > job.MostReplayHours:
		wrong = append(wrong, fmt.Errorf("--until: %s is outside %.0f h to %.0f years", until, job.LeastReplayHours, job.MostReplayHours/(365*24)))
	}
	if members < 1 || members > job.MostReplayMembers {
		wrong = append(wrong, fmt.Errorf("--members: %d is outside 1 to %d", members, job.MostReplayMembers))
	}
	return job.ReplayOptions{Hours: hours, Members: members}, errors.Join(wrong...)
}

// hoursOf reads a time that may be in years.
func hoursOf(text string) (float64, error) {
	low := strings.ToLower(strings.TrimSpace(text))
	for _, word := range []string{"years", "year", "y"} {
		if number, ok := strings.CutSuffix(low, word); ok {
			years, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
			if err != nil {
				return 0, fmt.Errorf("%q is no number of years; write it as 2y", text)
			}
			return years * 365 * 24, nil
		}
	}
	return unit.Parse(unit.DurationOf, text)
}
