package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"slabwright/internal/dxf"
	"slabwright/internal/page"
	"slabwright/job"
	"slabwright/plan"
	"slabwright/poursheet"
)

// drawFlags are the flags of draw.
type drawFlags struct {
	out, from, units, paper, date      string
	outline, columns, openings, joints string
	kind, plan                         string
	join                               float64
	force                              bool
}

func drawCommand(s *settings) *cobra.Command {
	var f drawFlags
	cmd := &cobra.Command{
		Use:   "draw [JOB] --out FILE | --from FILE.dxf --outline LAYER",
		Short: "The joint drawing to set out from, or the slab taken from a drawing",
		Long: `draw writes the joint drawing at true scale with running dimensions from one
setting-out point, as .pdf (with schedules), .svg, .dxf or .csv; or it reads the
outline, columns, openings and joints of a DXF into the job's slab.

  slabwright draw yard --out joints.pdf --paper A3
  slabwright draw yard --out joints.dxf --units m
  slabwright draw yard --plan "fewest joints" --out fewest.pdf
  slabwright draw yard --from floor.dxf --units mm --outline EDGE --columns COLS --joints JTS`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			switch {
			case f.from != "" && f.out != "":
				return withCode(exitUsage, errors.New("say --from to read a drawing or --out to write one, not both at once"))
			case f.from != "":
				return f.read(cmd, s, args)
			}
			return f.write(cmd, s, args)
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&f.out, "out", "", "file to write: its ending says the form (.pdf, .svg, .dxf, .csv)")
	flags.StringVar(&f.units, "units", "", "lengths written in mm or m; with --from, the unit of the drawing (mm, cm, m, in, ft)")
	flags.StringVar(&f.paper, "paper", "A3", "sheet: A4, A3, Letter or Tabloid")
	flags.StringVar(&f.date, "date", "", "date in the title block, year-month-day; left to be written in without it")
	flags.StringVar(&f.plan, "plan", "", "draw the proposed joint plan of this name instead of the job's own joints")
	flags.StringVar(&f.from, "from", "", "DXF file to take the slab from")
	flags.StringVar(&f.outline, "outline", "", "layer of the edge of the slab")
	flags.StringVar(&f.columns, "columns", "", "layer of the columns")
	flags.StringVar(&f.openings, "openings", "", "layer of pits, drains and other openings")
	flags.StringVar(&f.joints, "joints", "", "layer of the joints")
	flags.StringVar(&f.kind, "kind", "", "what the joints are: sawn, formed or isolation")
	flags.Float64Var(&f.join, "join", 1000*job.DrawingJoin, "how far apart ends of lines may lie and still meet, mm")
	flags.BoolVar(&f.force, "force", false, "write over a file, or over the outline the job has already")
	return cmd
}

// write writes the joint drawing.
func (f drawFlags) write(cmd *cobra.Command, s *settings, args []string) error {
	kind := strings.ToLower(filepath.Ext(f.out))
	switch {
	case f.out == "":
		return withCode(exitUsage, errors.New("say where to write with --out FILE, for instance --out joints.pdf, or what to read with --from FILE.dxf"))
	case !strings.Contains(".pdf .svg .dxf .csv", kind) || kind == "":
		return withCode(exitUsage, fmt.Errorf("--out %s: the ending must be .pdf, .svg, .dxf or .csv", f.out))
	}
	if _, err := os.Stat(f.out); err == nil && !f.force {
		return withCode(exitUsage, fmt.Errorf("%s is already there; choose another name, or say --force to write over it", f.out))
	}
	units, err := writtenUnits(f.units)
	if err != nil {
		return err
	}
	paper, err := paperOf(f.paper)
	if err != nil {
		return err
	}
	dir, j, err := jobIn(args)
	if err != nil {
		return err
	}
	made, err := dayOf(f.date)
	if err != nil {
		return err
	}
	d, err := f.drawing(cmd, s, j, dir, made)
	if err != nil {
		return asNotKnown(err)
	}
	d.Units, d.Paper = units, paper
	data, err := drawn(d, kind)
	if err != nil {
		return err
	}
	if err := writeWhole(f.out, data); err != nil {
		return err
	}
	if s.json {
		return printJSON(cmd.OutOrStdout(), map[string]any{"file": f.out, "bytes": len(data), "schedule": d.Schedule()})
	}
	if !s.quiet {
		fmt.Fprintf(os.Stderr, "Written: %s\n", f.out)
	}
	return nil
}

// drawing is that of the job's own joints, or of a plan proposed for it.
func (f drawFlags) drawing(cmd *cobra.Command, s *settings, j *job.Job, dir string, made time.Time) (poursheet.Drawing, error) {
	if f.plan == "" {
		return j.JointDrawing(os.DirFS(dir), made)
	}
	d, err := designOf(cmd.Context(), s, j, dir)
	if err != nil {
		return poursheet.Drawing{}, err
	}
	l, err := job.PlanNamed(d, f.plan)
	if err != nil {
		return poursheet.Drawing{}, withCode(exitUsage, err)
	}
	return j.PlanDrawing(os.DirFS(dir), l, made), nil
}

func drawn(d poursheet.Drawing, kind string) ([]byte, error) {
	switch kind {
	case ".svg":
		return d.SVG()
	case ".dxf":
		return d.DXF()
	case ".csv":
		return d.CSV()
	}
	return d.PDF()
}

// dayOf reads the date of a drawing; without one it is left to be written in by hand,
// since the same job is to give the same drawing on any day.
func dayOf(word string) (time.Time, error) {
	if word == "" {
		return time.Time{}, nil
	}
	day, err := time.Parse(time.DateOnly, word)
	if err != nil {
		return day, withCode(exitUsage, fmt.Errorf("--date %s: write it as year-month-day, for instance 2026-11-25", word))
	}
	return day, nil
}

func asNotKnown(err error) error {
	var unknown job.NotKnown
	if errors.As(err, &unknown) {
		return withCode(exitNotKnown, err)
	}
	return err
}

func writtenUnits(word string) (poursheet.Units, error) {
	switch strings.ToLower(word) {
	case "", "mm":
		return poursheet.Millimetres, nil
	case "m":
		return poursheet.Metres, nil
	}
	return 0, withCode(exitUsage, fmt.Errorf("--units %s: lengths are written in mm or m", word))
}

func paperOf(name string) (page.Paper, error) {
	var names []string
	for _, p := range page.Papers {
		if strings.EqualFold(name, p.Name) {
			return p, nil
		}
		names = append(names, p.Name)
	}
	return page.Paper{}, withCode(exitUsage, fmt.Errorf("--paper %s: sheets are %s", name, strings.Join(names, ", ")))
}

// read takes the slab from a drawing.
func (f drawFlags) read(cmd *cobra.Command, s *settings, args []string) error {
	data, err := os.ReadFile(f.from)
	if err != nil {
		return withCode(exitUsage, fmt.Errorf("--from: %w", err))
	}
	choice, err := f.choice(data)
	if err != nil {
		return err
	}
	dir, err := jobDir(args)
	if err != nil {
		return err
	}
	j, err := job.Load(dir)
	if err != nil {
		return withCode(exitJob, err)
	}
	if len(j.Slabs) > 0 && len(j.Slabs[0].Outline) > 0 && !f.force {
		return withCode(exitUsage, fmt.Errorf("the job has an outline already, of %s; say --force to put that of the drawing in its place", count(len(j.Slabs[0].Outline), "corner")))
	}
	notes, err := j.TakeDrawing(data, choice)
	if err != nil {
		return withCode(exitUsage, fmt.Errorf("%s: %w; nothing was changed", f.from, err))
	}
	errs := 0
	for _, p := range j.Validate(os.DirFS(dir)) {
		if p.IsError() {
			errs++
			fmt.Fprintln(os.Stderr, p.String())
		}
	}
	if errs > 0 {
		return withCode(exitJob, fmt.Errorf("with this drawing the job has %s; nothing was changed", count(errs, "error")))
	}
	if err := j.Save(dir); err != nil {
		return err
	}
	return told(cmd, s, j.Slabs[0], notes)
}

// told says what was taken from the drawing.
func told(cmd *cobra.Command, s *settings, slab plan.Slab, notes []string) error {
	if s.json {
		return printJSON(cmd.OutOrStdout(), map[string]any{"slab": slab, "notes": notes})
	}
	low, high := plan.Ring(slab.Outline).Box()
	openings := 0
	for _, f := range slab.Fixtures {
		if f.Opening {
			openings++
		}
	}
	fmt.Fprintf(cmd.OutOrStdout(), "Taken: an outline of %s, %.3f m by %.3f m, %.1f m2; %s; %s.\n", count(len(slab.Outline), "corner"),
		high.X-low.X, high.Y-low.Y, plan.Ring(slab.Outline).Area(), count(openings, "opening or column"), count(len(slab.Joints), "joint"))
	for _, n := range notes {
		fmt.Fprintln(cmd.OutOrStdout(), "- "+n)
	}
	return nil
}

// choice reads the flags that say what is taken for what; without a layer for the
// outline it asks, with the layers there are.
func (f drawFlags) choice(data []byte) (job.DrawingChoice, error) {
	c := job.DrawingChoice{Outline: f.outline, Columns: f.columns, Openings: f.openings, Joints: f.joints, Kind: plan.JointKind(strings.ToLower(f.kind)), Join: f.join / 1000}
	switch c.Kind {
	case "", plan.Sawn, plan.Formed, plan.Isolation:
	default:
		return c, withCode(exitUsage, fmt.Errorf("--kind %s: a joint is sawn, formed or isolation", f.kind))
	}
	if !(c.Join > 0) || c.Join > 1 {
		return c, withCode(exitUsage, fmt.Errorf("--join %g: ends are joined up to 1000 mm apart, and from above 0", f.join))
	}
	if f.units != "" {
		unit, err := dxf.ParseUnit(f.units)
		if err != nil {
			return c, withCode(exitUsage, fmt.Errorf("--units: %w", err))
		}
		c.Unit = unit
	}
	if c.Outline != "" {
		return c, nil
	}
	layers, err := job.DrawingLayers(data)
	if err != nil {
		return c, withCode(exitUsage, fmt.Errorf("%s: %w", f.from, err))
	}
	if len(layers) == 0 {
		return c, withCode(exitUsage, fmt.Errorf("%s holds no lines to take a slab from", f.from))
	}
	return c, withCode(exitUsage, fmt.Errorf("which layer is the edge of the slab? Say --outline LAYER; the drawing has\n  %s", strings.Join(layers, "\n  ")))
}
