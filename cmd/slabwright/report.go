package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"slabwright/report"
)

func reportCommand(s *settings) *cobra.Command {
	var out string
	var force bool
	cmd := &cobra.Command{
		Use:   "report [JOB] --out FILE",
		Short: "Write the report as .pdf or .html, the plan as .svg, or everything as .json",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			kind, err := outputKind(out)
			if err != nil {
				return err
			}
			if _, err := os.Stat(out); err == nil && !force {
				return withCode(exitUsage, fmt.Errorf("%s is already there; choose another name, or say --force to write over it", out))
			}
			dir, err := jobDir(args)
			if err != nil {
				return err
			}
			_, content, err := diagnose(cmd.Context(), s, dir)
			if err != nil {
				return err
			}
			data, err := render(content, kind)
			if err != nil {
				return err
			}
			if err := writeWhole(out, data); err != nil {
				return err
			}
			if s.json {
				return printJSON(cmd.OutOrStdout(), map[string]any{"file": out, "bytes": len(data), "data_hash": content.Head.DataHash})
			}
			if !s.quiet {
				fmt.Fprintf(os.Stderr, "Written: %s\n", out)
			}
			return nil
		},
	}
	cmd.Flags().StringVar(&out, "out", "", "file to write: its ending says the form (.pdf, .html, .svg, .json)")
	cmd.Flags().BoolVar(&force, "force", false, "write over a file that is already there")
	return cmd
}

func outputKind(out string) (string, error) {
	if out == "" {
		return "", withCode(exitUsage, errors.New("say where to write with --out FILE, for instance --out report.pdf"))
	}
	kind := strings.ToLower(filepath.Ext(out))
	switch kind {
	case ".pdf", ".html", ".svg", ".json":
		return kind, nil
	}
	return "", withCode(exitUsage, fmt.Errorf("--out %s: the ending must be .pdf, .html, .svg or .json", out))
}

func render(c *report.Content, kind string) ([]byte, error) {
	switch kind {
	case ".pdf":
		return report.PDF(c)
	case ".html":
		return report.HTML(c)
	case ".svg":
		return report.PlanSVG(c), nil
	}
	var b strings.Builder
	err := printJSON(&b, c)
	return []byte(b.String()), err
}
