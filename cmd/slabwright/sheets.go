package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"slabwright/job"
)

func sheetsCommand(s *settings) *cobra.Command {
	var out, paper, units, date string
	var early, force bool
	cmd := &cobra.Command{
		Use:   "sheets [JOB] --out DIR",
		Short: "Every sheet for the pour: joint drawing, cut sheets, go or hold, duties, inspection, notes, calendar",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if out == "" {
				return withCode(exitUsage, errors.New("say where to write with --out DIR, for instance --out sheets"))
			}
			o := job.SheetOptions{Early: early}
			var err error
			if o.Units, err = writtenUnits(units); err != nil {
				return err
			}
			if o.Paper, err = paperOf(paper); err != nil {
				return err
			}
			if o.Made, err = dayOf(date); err != nil {
				return err
			}
			dir, err := jobDir(args)
			if err != nil {
				return err
			}
			return writeSheets(cmd, s, dir, out, o, force)
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&out, "out", "", "folder to write the sheets to")
	flags.StringVar(&paper, "paper", "A3", "sheet of the joint drawing: A4, A3, Letter or Tabloid; crew sheets are A4 or Letter")
	flags.StringVar(&units, "units", "mm", "lengths on the joint drawing in mm or m")
	flags.StringVar(&date, "date", "", "date in the title block, year-month-day; left to be written in without it")
	flags.BoolVar(&early, "early-entry", false, "cut windows for an early-entry saw instead of a wet one")
	flags.BoolVar(&force, "force", false, "write over sheets that are already there")
	return cmd
}

// writeSheets works out the pours, makes every sheet, and only then writes.
func writeSheets(cmd *cobra.Command, s *settings, dir, out string, o job.SheetOptions, force bool) error {
	j, content, err := answered(cmd.Context(), s, dir, job.PourDays)
	if err != nil {
		return err
	}
	files, left, err := j.Sheets(os.DirFS(dir), content, o)
	if err != nil {
		return asNotKnown(err)
	}
	for _, f := range files {
		if _, err := os.Stat(filepath.Join(out, f.Name)); err == nil && !force {
			return withCode(exitUsage, fmt.Errorf("%s is already there; choose another folder, or say --force to write over it", filepath.Join(out, f.Name)))
		}
	}
	var names []string
	for _, f := range files {
		name := filepath.Join(out, f.Name)
		if err := writeWhole(name, f.Data); err != nil {
			return err
		}
		names = append(names, name)
	}
	if anyWindow(content) {
		name := filepath.Join(out, "cut-windows.ics")
		if _, err := writeCalendar(j, content, name); err == nil {
			names = append(names, name)
		}
	}
	if s.json {
		return printJSON(cmd.OutOrStdout(), map[string]any{"files": names, "left_out": left})
	}
	for _, n := range names {
		fmt.Fprintln(cmd.OutOrStdout(), n)
	}
	if !s.quiet {
		for _, l := range left {
			fmt.Fprintln(os.Stderr, "Left out: "+l)
		}
	}
	return nil
}
