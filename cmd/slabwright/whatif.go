package main

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"slabwright/job"
	"slabwright/unit"
)

const whatifHelp = `Runs one pour again with one thing changed and sets the cut windows side by side,
at the same accepted risk and seed. Without a flag it tries the usual ones: an
earlier start, the cool of the evening, cooler concrete, a cover at once, the
early-entry saw, the next day. Flags together make one alternative.

Examples:
  slabwright whatif yard
  slabwright whatif yard --pour B --start -3h --concrete 16C
  slabwright whatif yard --pour B --cure plastic --saw early-entry --json`

// alternative are the flags of one change, as typed.
type alternative struct {
	start, concrete, cure, saw, set, water, uncut string
	day                                           int
}

func whatifCommand(s *settings) *cobra.Command {
	var pour string
	var alt alternative
	cmd := &cobra.Command{
		Use:   "whatif [JOB]",
		Short: "The same pour with one thing changed, cut windows side by side",
		Long:  whatifHelp,
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			changes, err := alt.changes()
			if err != nil {
				return withCode(exitUsage, err)
			}
			dir, j, err := jobIn(args)
			if err != nil {
				return err
			}
			p := newProgress(s.quiet)
			rows, err := job.WhatIfs(cmd.Context(), j, os.DirFS(dir), pour, changes, p.Step)
			p.Done()
			if err != nil {
				return notKnown(err)
			}
			if s.json {
				return printJSON(cmd.OutOrStdout(), rows)
			}
			printWhatIfs(cmd.OutOrStdout(), j, rows)
			return nil
		},
	}
	f := cmd.Flags()
	f.StringVar(&pour, "pour", "", "pour to change, by its id; the first when left out")
	f.StringVar(&alt.start, "start", "", "start earlier or later: -3h, +90min")
	f.IntVar(&alt.day, "day", 0, "days later (+1) or earlier (-1)")
	f.StringVar(&alt.concrete, "concrete", "", "temperature of the concrete at placing: 16C, 60F")
	f.StringVar(&alt.cure, "cure", "", "cover put on at the end of finishing: plastic, hessian, compound, blanket ...")
	f.StringVar(&alt.saw, "saw", "", "wet or early-entry")
	f.StringVar(&alt.set, "set", "", "set later (+) or earlier (-) by admixture: +2h, -1h")
	f.StringVar(&alt.water, "less-water", "", "water taken out of the mix: 15kg/m3")
	f.StringVar(&alt.uncut, "uncut", "", "longest length left uncut: 10m, 30ft")
	return cmd
}

// notKnown gives an error about a missing fact its exit code.
func notKnown(err error) error {
	var unknown job.NotKnown
	if errors.As(err, &unknown) {
		return withCode(exitNotKnown, err)
	}
	return err
}

// changes reads the flags: one change of all that were given, or the usual ones.
func (a alternative) changes() ([]job.Change, error) {
	if a == (alternative{}) {
		return job.UsualChanges(), nil
	}
	c := job.Change{Name: "changed", Shift: time.Duration(a.day) * 24 * time.Hour, Cure: a.cure}
	var wrong []error
	number := func(flag, text string, q unit.Quantity, into func(float64)) {
		if text == "" {
			return
		}
		sign := 1.0
		if q == unit.DurationOf {
			text, sign = strings.TrimPrefix(text, "+"), 1
			if after, ok := strings.CutPrefix(text, "-"); ok {
				text, sign = after, -1
			}
		}
		v, err := unit.Parse(q, text)
		if err != nil {
			wrong = append(wrong, fmt.Errorf("--%s: %w", flag, err))
			return
		}
		into(sign * v)
	}
	number("start", a.start, unit.DurationOf, func(v float64) { c.Shift += unit.Duration(v).Time() })
	number("concrete", a.concrete, unit.TemperatureOf, func(v float64) { c.Concrete = &v })
	number("set", a.set, unit.DurationOf, func(v float64) { c.SetShiftHours = &v })
	number("less-water", a.water, unit.DensityOf, func(v float64) { c.WaterLess = v })
	number("uncut", a.uncut, unit.LengthOf, func(v float64) { c.UncutLengthMax = &v })
	switch a.saw {
	case "", "wet":
	case "early-entry":
		c.EarlyEntry = true
	default:
		wrong = append(wrong, fmt.Errorf("--saw: %q is neither wet nor early-entry", a.saw))
	}
	return []job.Change{c}, errors.Join(wrong...)
}
