package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"slabwright/job"
)

func statusCommand(s *settings) *cobra.Command {
	return &cobra.Command{
		Use:   "status [JOB]",
		Short: "Where the job stands, what is missing and what that keeps from being answered",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			dir, err := jobDir(args)
			if err != nil {
				return err
			}
			j, err := job.Load(dir)
			if err != nil {
				return withCode(exitJob, err)
			}
			status := job.Status(j)
			if s.json {
				err = printJSON(cmd.OutOrStdout(), status)
			} else {
				_, err = fmt.Fprint(cmd.OutOrStdout(), status.Text())
			}
			if err == nil && len(status.Errors) > 0 {
				return withCode(exitJob, fmt.Errorf("%s to mend", count(len(status.Errors), "error")))
			}
			return err
		},
	}
}
