package main

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"slabwright/job"
	"slabwright/report"
)

func demoCommand(s *settings) *cobra.Command {
	var dir string
	cmd := &cobra.Command{
		Use:   "demo",
		Short: "Write a worked example (an invented lorry apron), run it and print page one",
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return runDemo(cmd, s, dir)
		},
	}
	cmd.Flags().StringVar(&dir, "dir", "slabwright-demo", "folder to write the example job to")
	return cmd
}

func runDemo(cmd *cobra.Command, s *settings, dir string) error {
	if err := job.WriteDemo(dir); err != nil {
		return err
	}
	_, content, err := diagnose(cmd.Context(), s, dir)
	if err != nil {
		return err
	}
	files, err := writeOutputs(content, filepath.Join(dir, "out"))
	if err != nil {
		return err
	}
	if s.json {
		return printJSON(cmd.OutOrStdout(), map[string]any{"dir": dir, "page_one": content.PageOne, "files": files})
	}
	fmt.Fprint(cmd.OutOrStdout(), report.PageOneText(content, textWidth))
	if !s.quiet {
		fmt.Fprintf(os.Stderr, "\nWritten: %s\n", dir)
		for _, f := range files {
			fmt.Fprintf(os.Stderr, "  %s\n", f)
		}
		fmt.Fprintf(os.Stderr, "Next: slabwright open %s\n", dir)
	}
	return nil
}

// textWidth is how wide page one is set on a terminal.
const textWidth = 100
