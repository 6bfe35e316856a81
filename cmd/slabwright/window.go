package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"slabwright/report"
)

func windowCommand(s *settings) *cobra.Command {
	return &cobra.Command{
		Use:   "window [JOB]",
		Short: "The cut window of each pour by the clock, and how each joint was cut against it",
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
			if !anyWindow(content) {
				return withCode(exitNotKnown, fmt.Errorf("no pour has what a cut window needs (start, weather, strength, thickness); see \"slabwright status %s\"", dir))
			}
			if s.json {
				return printJSON(cmd.OutOrStdout(), content.Pours)
			}
			fmt.Fprint(cmd.OutOrStdout(), report.WindowText(content, textWidth))
			return nil
		},
	}
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
