package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"slabwright/report"
)

func causesCommand(s *settings) *cobra.Command {
	var finding string
	cmd := &cobra.Command{
		Use:   "causes [JOB]",
		Short: "Why each finding is there: for, against, missing, ruled out",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			dir, err := jobDir(args)
			if err != nil {
				return err
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
	return cmd
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
