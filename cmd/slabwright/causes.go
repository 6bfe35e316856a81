package main

import (
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"slabwright/job"
	"slabwright/report"
)

func causesCommand(s *settings) *cobra.Command {
	var finding string
	var suppose []string
	cmd := &cobra.Command{
		Use:   "causes [JOB]",
		Short: "Why each finding is there: for, against, missing, ruled out",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			dir, err := jobDir(args)
			if err != nil {
				return err
			}
			if err := knownFinding(dir, finding); err != nil {
				return err
			}
			if len(suppose) > 0 {
				return causesIf(cmd, s, dir, finding, suppose)
			}
			_, content, err := diagnose(cmd.Context(), s, dir)
			if err != nil {
				return err
			}
			if len(content.Findings) == 0 {
				return withCode(exitNotKnown, fmt.Errorf("the job has no finding yet; add a walk to job.json, see \"slabwright status %s\"", dir))
			}
			sheets, err := chosen(content, finding)
			if err != nil {
				return err
			}
			if s.json {
				return printJSON(cmd.OutOrStdout(), map[string]any{"slab": content.Slab, "findings": sheets})
			}
			if finding == "" {
				fmt.Fprint(cmd.OutOrStdout(), report.FindingsText(content, textWidth))
				return nil
			}
			fmt.Fprint(cmd.OutOrStdout(), report.CausesText(content, finding, textWidth))
			return nil
		},
	}
	cmd.Flags().StringVar(&finding, "finding", "", "one finding in full, by its id")
	cmd.Flags().StringArrayVar(&suppose, "if", nil, "with --finding: change one fact and see the shift, as FACT=VALUE: aggregate=around, width=\"1.5 mm\", age=unknown; may be given again")
	return cmd
}

// knownFinding reports a finding that the last walk does not have, before anything is
// worked out; an empty id is none to look for.
func knownFinding(dir, id string) error {
	if id == "" {
		return nil
	}
	j, err := loadJob(dir, os.Stderr)
	if err != nil {
		return err
	}
	var ids []string
	for _, known := range job.LastFindings(j) {
		if known == id {
			return nil
		}
		ids = append(ids, known)
	}
	return withCode(exitUsage, fmt.Errorf("no finding %q; there are %v", id, ids))
}

// chosen returns the sheets asked for: all, or the one with this id.
func chosen(c *report.Content, id string) ([]report.FindingSheet, error) {
	if id == "" {
		return c.Findings, nil
	}
	var ids []string
	for _, f := range c.Findings {
		if f.Finding.ID == id {
			return []report.FindingSheet{f}, nil
		}
		ids = append(ids, f.Finding.ID)
	}
	return nil, withCode(exitUsage, fmt.Errorf("no finding %q; there are %v", id, ids))
}

// causesIf prints what changed facts do to the causes of one finding.
func causesIf(cmd *cobra.Command, s *settings, dir, finding string, suppose []string) error {
	if finding == "" {
		return withCode(exitUsage, fmt.Errorf("--if changes a fact of one finding: say which with --finding"))
	}
	var facts []job.SupposedFact
	for _, text := range suppose {
		variable, value, ok := strings.Cut(text, "=")
		if !ok {
			return withCode(exitUsage, fmt.Errorf("--if %q: write it as FACT=VALUE, for instance --if aggregate=around", text))
		}
		facts = append(facts, job.SupposedFact{Variable: strings.TrimSpace(variable), Value: strings.TrimSpace(value)})
	}
	j, err := loadJob(dir, os.Stderr)
	if err != nil {
		return err
	}
	p := newProgress(s.quiet)
	shift, err := job.CausesIf(cmd.Context(), j, os.DirFS(dir), finding, facts, p.Step)
	p.Done()
	if err != nil {
		return withCode(exitUsage, err)
	}
	if s.json {
		return printJSON(cmd.OutOrStdout(), shift)
	}
	fmt.Fprint(cmd.OutOrStdout(), report.ShiftText(shift, textWidth))
	return nil
}
