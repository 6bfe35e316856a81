package main

import (
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"slabwright/checks"
	"slabwright/job"
	"slabwright/report"
)

const checkHelp = `Checks the slab for the loads and the use given, rule by rule, by the code of
the job: bending, curl and folding under wheels, axles, posts, lines and goods;
fatigue; punching; joints and dowels; steel; ground; surface. Each row says what
is asked, what there is, and how much of it is used. What nobody has said is put
in as a default and listed below with what turns when it is wrong. --if changes
a number, in the unit it is printed in, and lists what moves by more than 5 %.

Examples:
  slabwright check yard
  slabwright check yard --if thickness=200 --if L1.force=80
  slabwright check yard --json | jq '.rows[] | select(.pass | not)'
  slabwright working yard 2.1             the calculation behind one row`

func checkCommand(s *settings) *cobra.Command {
	var changes []string
	cmd := &cobra.Command{
		Use:   "check [JOB]",
		Short: "What the slab must bear against what it can, rule by rule",
		Long:  checkHelp,
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(changes) > 0 {
				return checkIf(cmd, s, args, changes)
			}
			c, err := calculated(cmd.Context(), s, args)
			if err != nil {
				return err
			}
			if s.json {
				return printJSON(cmd.OutOrStdout(), c)
			}
			fmt.Fprint(cmd.OutOrStdout(), report.ChecksText(c, checkWidth))
			return nil
		},
	}
	cmd.Flags().StringArrayVar(&changes, "if", nil, "change a number and list what moves: thickness=200 (the names are the keys of --json)")
	return cmd
}

// checkIf makes the checks as the job stands and with numbers changed, and lists what
// moves.
func checkIf(cmd *cobra.Command, s *settings, args, changes []string) error {
	_, j, err := jobIn(args)
	if err != nil {
		return err
	}
	in, err := j.ChecksInput()
	if err != nil {
		return notKnown(err)
	}
	in.Quick = true
	changed := in
	for _, c := range changes {
		key, text, ok := strings.Cut(c, "=")
		value, bad := strconv.ParseFloat(strings.TrimSpace(text), 64)
		if !ok || bad != nil {
			return withCode(exitUsage, fmt.Errorf("--if %s: write KEY=NUMBER, such as thickness=200", c))
		}
		if changed, err = changed.With(strings.TrimSpace(key), value); err != nil {
			return withCode(exitUsage, fmt.Errorf("--if %s: %w", c, err))
		}
	}
	before, err := checks.Run(cmd.Context(), in)
	if err != nil {
		return err
	}
	after, err := checks.Run(cmd.Context(), changed)
	if err != nil {
		return withCode(exitUsage, err)
	}
	moves := checks.Compare(before, after)
	if s.json {
		return printJSON(cmd.OutOrStdout(), moves)
	}
	printMoves(cmd.OutOrStdout(), moves, strings.Join(changes, ", "))
	return nil
}

func printMoves(out io.Writer, moves []checks.Move, changes string) {
	fmt.Fprintf(out, "With %s, %s by more than 5 %%\n", changes, movesWords(len(moves)))
	for _, m := range moves {
		turned := ""
		switch {
		case m.Flips && m.To > 1:
			turned = "  no longer met !"
		case m.Flips:
			turned = "  becomes met"
		}
		fmt.Fprintf(out, "  %-72s %6.2f -> %6.2f%s\n", m.Check, m.From, m.To, turned)
	}
}

// checkWidth is how wide the table of checks is set, letters.
const checkWidth = 110

// calculated loads a job and makes its checks, with progress.
func calculated(ctx context.Context, s *settings, args []string) (*checks.Calc, error) {
	_, j, err := jobIn(args)
	if err != nil {
		return nil, err
	}
	p := newProgress(s.quiet)
	defer p.Done()
	c, err := job.Checks(ctx, j, p.Step)
	return c, notKnown(err)
}

func movesWords(n int) string {
	if n == 1 {
		return "1 check moves"
	}
	return fmt.Sprintf("%d checks move", n)
}
