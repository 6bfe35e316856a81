package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"slabwright/checks"
	"slabwright/report"
	"slabwright/unit"
	"slabwright/xlsx"
)

const workingHelp = `Shows the calculations behind the checks, line by line: what is found, its
formula, the numbers put in, the answer, the source, and an independent check
beside it. SHEET is a number from the table of checks (2.1) or a name
(bending-L1-joint); without it, all of them.

Examples:
  slabwright working yard
  slabwright working yard 2.1
  slabwright working yard --pdf calc.pdf --xlsx calc.xlsx`

func workingCommand(s *settings) *cobra.Command {
	var pdf, sheet string
	var force bool
	cmd := &cobra.Command{
		Use:   "working [JOB] [SHEET] [--pdf FILE] [--xlsx FILE]",
		Short: "The calculations line by line, as text, as sheets on paper, as a workbook that calculates",
		Long:  workingHelp,
		Args:  cobra.MaximumNArgs(2),
		RunE: func(cmd *cobra.Command, args []string) error {
			for _, f := range []struct{ name, want string }{{pdf, ".pdf"}, {sheet, ".xlsx"}} {
				if err := mayWrite(f.name, f.want, force); err != nil {
					return err
				}
			}
			which := ""
			if len(args) == 2 {
				which, args = args[1], args[:1]
			}
			c, err := calculated(cmd.Context(), s, args)
			if err != nil {
				return err
			}
			if err := writeCalc(s, c, pdf, sheet); err != nil {
				return err
			}
			switch {
			case s.json:
				return printJSON(cmd.OutOrStdout(), c)
			case (pdf != "" || sheet != "") && which == "":
				return nil
			}
			text, found := report.WorkingText(c, which, textWidth)
			if !found {
				return withCode(exitUsage, noSheet(c, which))
			}
			fmt.Fprint(cmd.OutOrStdout(), text)
			return nil
		},
	}
	cmd.Flags().StringVar(&pdf, "pdf", "", "write the calculation sheets to this file")
	cmd.Flags().StringVar(&sheet, "xlsx", "", "write a workbook with live formulas to this file")
	cmd.Flags().BoolVar(&force, "force", false, "write over a file that is already there")
	return cmd
}

// mayWrite refuses a name with another ending, and a file that is there already.
func mayWrite(name, ending string, force bool) error {
	if name == "" {
		return nil
	}
	if !strings.EqualFold(filepath.Ext(name), ending) {
		return withCode(exitUsage, fmt.Errorf("%s: the ending must be %s", name, ending))
	}
	if _, err := os.Stat(name); err == nil && !force {
		return withCode(exitUsage, fmt.Errorf("%s is already there; choose another name, or say --force to write over it", name))
	}
	return nil
}

func writeCalc(s *settings, c *checks.Calc, pdf, sheet string) error {
	for _, f := range []struct {
		name string
		make func(*checks.Calc) ([]byte, error)
	}{{pdf, report.CalcPDF}, {sheet, xlsx.Calc}} {
		if f.name == "" {
			continue
		}
		data, err := f.make(c)
		if err != nil {
			return err
		}
		if err := writeWhole(f.name, data); err != nil {
			return err
		}
		if !s.quiet {
			fmt.Fprintf(os.Stderr, "Written: %s\n", f.name)
		}
	}
	return nil
}

// noSheet names the sheet that was probably meant.
func noSheet(c *checks.Calc, which string) error {
	var names []string
	for _, sh := range c.Sheets {
		names = append(names, sh.ID)
	}
	if near, ok := unit.Nearest(which, names); ok {
		return fmt.Errorf("no sheet %q; did you mean %q?", which, near)
	}
	if len(names) == 0 {
		return errors.New("there is no sheet")
	}
	return fmt.Errorf("no sheet %q; \"slabwright check\" lists them by number, the first is %s", which, c.Sheets[0].Number)
}
