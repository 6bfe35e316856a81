package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"slabwright/job"
	"slabwright/report"
)

// plansFlags say where joint plans are printed.
type plansFlags struct {
	out, paper, units string
	force             bool
}

// check refuses what cannot be written before anything is worked out.
func (f plansFlags) check(take string) error {
	if f.out == "" {
		return nil
	}
	if take != "" {
		return withCode(exitUsage, errors.New("say --out to print the plans or --take to put one into the job, not both at once"))
	}
	if !strings.EqualFold(filepath.Ext(f.out), ".pdf") {
		return withCode(exitUsage, fmt.Errorf("--out %s: the plans are written as .pdf; one plan as .svg, .dxf or .csv is \"slabwright draw --plan NAME\"", f.out))
	}
	if _, err := os.Stat(f.out); err == nil && !f.force {
		return withCode(exitUsage, fmt.Errorf("%s is already there; choose another name, or say --force to write over it", f.out))
	}
	if _, err := writtenUnits(f.units); err != nil {
		return err
	}
	_, err := paperOf(f.paper)
	return err
}

func (f plansFlags) write(cmd *cobra.Command, s *settings, j *job.Job, dir string, d *report.Design) error {
	units, _ := writtenUnits(f.units)
	paper, err := paperOf(f.paper)
	if err != nil {
		return err
	}
	data, err := j.PlansPDF(os.DirFS(dir), d, job.SheetOptions{Units: units, Paper: paper})
	if err != nil {
		return err
	}
	if err := writeWhole(f.out, data); err != nil {
		return err
	}
	if s.json {
		return printJSON(cmd.OutOrStdout(), map[string]any{"file": f.out, "bytes": len(data)})
	}
	if !s.quiet {
		fmt.Fprint(cmd.OutOrStdout(), report.DesignSummary(d, textWidth))
		fmt.Fprintf(os.Stderr, "Written: %s\n", f.out)
	}
	return nil
}
