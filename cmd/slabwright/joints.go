package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"slabwright/job"
	"slabwright/report"
)

const jointsHelp = `Works out how far apart joints may stand on this slab and proposes joint plans, set
beside the joints that are drawn in the job: which rules each keeps, what it takes,
what it costs by the job's own rates, and how likely the slab is to crack away from
its joints in its first 90 days. --out writes them as pages: side by side, then each
with its drawing at true scale and the rules it does not keep.

Examples:
  slabwright joints yard
  slabwright joints yard --out plans.pdf
  slabwright joints yard --take "squarest panels"
  slabwright joints yard --json`

func jointsCommand(s *settings) *cobra.Command {
	var take string
	var f plansFlags
	cmd := &cobra.Command{
		Use:   "joints [JOB]",
		Short: "Joint plans for the next slab, beside the joints as drawn",
		Long:  jointsHelp,
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			dir, j, err := jobIn(args)
			if err != nil {
				return err
			}
			if err := f.check(take); err != nil {
				return err
			}
			d, err := designOf(cmd.Context(), s, j, dir)
			if err != nil {
				return err
			}
			if f.out != "" {
				return f.write(cmd, s, j, dir, d)
			}
			if take != "" {
				return takePlan(cmd.OutOrStdout(), j, dir, d, take)
			}
			if s.json {
				return printJSON(cmd.OutOrStdout(), d)
			}
			fmt.Fprint(cmd.OutOrStdout(), report.DesignText(d, textWidth))
			return nil
		},
	}
	cmd.Flags().StringVar(&take, "take", "", "put the joint plan of this name into the job")
	cmd.Flags().StringVar(&f.out, "out", "", "PDF file to write: the plans side by side, then each with its drawing and rules")
	cmd.Flags().StringVar(&f.paper, "paper", "A3", "sheet of --out: A4, A3, Letter or Tabloid")
	cmd.Flags().StringVar(&f.units, "units", "", "lengths on the drawings of --out: mm or m")
	cmd.Flags().BoolVar(&f.force, "force", false, "write over a file")
	return cmd
}

// designed loads a job and works out its joint plans, with progress.
func designed(ctx context.Context, s *settings, dir string) (*report.Design, error) {
	j, err := loadJob(dir, os.Stderr)
	if err != nil {
		return nil, err
	}
	return designOf(ctx, s, j, dir)
}

func designOf(ctx context.Context, s *settings, j *job.Job, dir string) (*report.Design, error) {
	p := newProgress(s.quiet)
	defer p.Done()
	d, err := job.Design(ctx, j, os.DirFS(dir), p.Step)
	return d, notKnown(err)
}

// takePlan writes a proposed plan into the job.
func takePlan(w io.Writer, j *job.Job, dir string, d *report.Design, name string) error {
	l, err := job.PlanNamed(d, name)
	switch {
	case err != nil:
		return withCode(exitUsage, err)
	case strings.EqualFold(l.Name, d.Drawn.Name):
		return withCode(exitUsage, errors.New("the joints as drawn are in the job already"))
	}
	if err := j.TakeJoints(l.Slab); err != nil {
		return err
	}
	if err := soundness(j, dir); err != nil {
		return withCode(exitJob, err)
	}
	if err := j.Save(dir); err != nil {
		return err
	}
	fmt.Fprintf(w, "%s now has the joints of %q: %s.\n", dir, l.Name, count(l.PanelCount(), "panel"))
	if off := j.PoursOffForms(); len(off) > 0 {
		fmt.Fprintf(w, "The forms of this plan are not where %s %s: give the areas of the pours anew (pours[].area_m), or the cut sheets go by the old ones.\n", strings.Join(off, ", "), map[bool]string{true: "ends", false: "end"}[len(off) == 1])
	}
	fmt.Fprintf(w, "Next: slabwright sheets %s\n", dir)
	return nil
}
