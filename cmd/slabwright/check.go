package main

import (
	"context"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"slabwright/checks"
	"slabwright/job"
	"slabwright/report"
)

const checkHelp = `Checks the slab for the loads and the use given, rule by rule, by the code of
the job: bending, curl and folding under wheels, axles, posts, lines and goods;
fatigue; punching; joints and dowels; steel; ground; surface. Each row says what
is asked, what there is, and how much of it is used. What nobody has said is put
in as a default and listed below with what turns when it is wrong.

Examples:
  slabwright check yard
  slabwright check yard --json | jq '.rows[] | select(.pass | not)'
  slabwright working yard 2.1             the calculation behind one row`

func checkCommand(s *settings) *cobra.Command {
	return &cobra.Command{
		Use:   "check [JOB]",
		Short: "What the slab must bear against what it can, rule by rule",
		Long:  checkHelp,
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
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
}

// checkWidth is how wide the table of checks is set, letters.
const checkWidth = 110

// calculated loads a job and makes its checks, with progress.
func calculated(ctx context.Context, s *settings, args []string) (*checks.Calc, error) {
	dir, err := jobDir(args)
	if err != nil {
		return nil, err
	}
	j, err := loadJob(dir, os.Stderr)
	if err != nil {
		return nil, err
	}
	p := newProgress(s.quiet)
	defer p.Done()
	c, err := job.Checks(ctx, j, p.Step)
	return c, notKnown(err)
}
