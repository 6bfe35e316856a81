package main

import (
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"slabwright/job"
	"slabwright/report"
)

func windowCommand(s *settings) *cobra.Command {
	var calendar string
	cmd := &cobra.Command{
		Use:   "window [JOB]",
		Short: "The cut window of each pour by the clock, and how each joint was cut against it",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			dir, err := jobDir(args)
			if err != nil {
				return err
			}
			j, content, err := answered(cmd.Context(), s, dir, job.PourDays)
			if err != nil {
				return err
			}
			if !anyWindow(content) {
				return withCode(exitNotKnown, fmt.Errorf("no pour has what a cut window needs (start, weather, strength, thickness); see \"slabwright status %s\"", dir))
			}
			if calendar != "" {
				n, err := writeCalendar(j, content, calendar)
				if err != nil {
					return err
				}
				if !s.quiet {
					fmt.Fprintf(os.Stderr, "Written: %s (%s)\n", calendar, count(n, "window"))
				}
			}
			if s.json {
				return printJSON(cmd.OutOrStdout(), content.Pours)
			}
			fmt.Fprint(cmd.OutOrStdout(), report.WindowText(content, textWidth))
			return nil
		},
	}
	cmd.Flags().StringVar(&calendar, "calendar", "", "also write the windows to this iCalendar file (.ics)")
	return cmd
}

// anyWindow reports whether a cut window could be given for at least one pour.
func anyWindow(c *report.Content) bool {
	for _, p := range c.Pours {
		if p.Window.Opens != nil || p.Window.Why != "" {
			return true
		}
	}
	return false
}
