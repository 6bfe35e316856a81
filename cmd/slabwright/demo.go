package main

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"slabwright/job"
	"slabwright/report"
)

const demoHelp = `Writes two worked examples and runs them: an invented lorry apron that has cracked,
with page one of why, and in a folder beside it the apron that replaces it, with its
old joints and what is proposed instead.`

func demoCommand(s *settings) *cobra.Command {
	var dir string
	cmd := &cobra.Command{
		Use:   "demo",
		Short: "Write two worked examples (an invented lorry apron, and its replacement), run them and print page one",
		Long:  demoHelp,
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return runDemo(cmd, s, filepath.Clean(dir))
		},
	}
	cmd.Flags().StringVar(&dir, "dir", "slabwright-demo", "folder to write the first example to; the second goes beside it")
	return cmd
}

func runDemo(cmd *cobra.Command, s *settings, dir string) error {
	next := dir + "-replacement"
	if err := job.WriteDemo(dir); err != nil {
		return err
	}
	if err := job.WriteNextDemo(next); err != nil {
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
	design, err := designed(cmd.Context(), s, next)
	if err != nil {
		return err
	}
	if s.json {
		return printJSON(cmd.OutOrStdout(), map[string]any{"dir": dir, "page_one": content.PageOne, "files": files, "replacement": next, "design": design})
	}
	fmt.Fprint(cmd.OutOrStdout(), report.PageOneText(content, textWidth))
	fmt.Fprintln(cmd.OutOrStdout())
	fmt.Fprint(cmd.OutOrStdout(), report.DesignSummary(design, textWidth))
	if !s.quiet {
		fmt.Fprintf(os.Stderr, "\nWritten: %s\n", dir)
		for _, f := range files {
			fmt.Fprintf(os.Stderr, "  %s\n", f)
		}
		fmt.Fprintf(os.Stderr, "Written: %s\nNext: slabwright open %s\n      slabwright joints %s\n", next, dir, next)
	}
	return nil
}

// textWidth is how wide page one is set on a terminal.
const textWidth = 100
