package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"maps"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"

	"github.com/spf13/cobra"

	"slabwright/job"
	"slabwright/report"
	"slabwright/web"
)

func openCommand(s *settings) *cobra.Command {
	var port int
	var noBrowser bool
	cmd := &cobra.Command{
		Use:   "open [JOB]",
		Short: "Show the job on its plan in the browser, on this computer only",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			dir, err := jobDir(args)
			if err != nil {
				return err
			}
			ready := func(address string) {
				if s.json {
					_ = printJSON(cmd.OutOrStdout(), map[string]string{"address": address})
				} else {
					fmt.Fprintln(cmd.OutOrStdout(), address)
				}
				if !noBrowser {
					showPage(cmd.Context(), address, s.quiet)
				}
			}
			if !s.quiet {
				fmt.Fprintln(os.Stderr, "Only this computer can reach it. Stop with Ctrl-C.")
			}
			err = web.Open(cmd.Context(), port, pageOf(dir), ready)
			var taken *net.OpError
			if errors.As(err, &taken) {
				return withCode(exitUsage, err)
			}
			return err
		},
	}
	cmd.Flags().IntVar(&port, "port", 0, "port on 127.0.0.1; 0 takes a free one")
	cmd.Flags().BoolVar(&noBrowser, "no-browser", false, "only print the address")
	return cmd
}

// pageOf serves one job folder: it is read again when job.json has changed.
func pageOf(dir string) http.Handler {
	progress, causes := &web.Progress{}, &causeDesk{dir: dir}
	content := func(ctx context.Context) (*report.Content, error) {
		j, err := soundJob(dir)
		if err != nil {
			return nil, err
		}
		return causes.diagnose(ctx, j, progress)
	}
	return web.Handler(content, web.Options{
		Job: filepath.Base(dir), Progress: progress, Fresh: func() string { return stamp(dir) },
		Empty: func(err error) bool {
			var unknown job.NotKnown
			return errors.As(err, &unknown)
		},
		PDF:       written(report.PDF),
		HTML:      written(report.HTML),
		Drawing:   written(func(c *report.Content) ([]byte, error) { return report.PlanSVG(c), nil }),
		Asks:      allAsks((&designDesk{dir: dir}).asks(), causes.asks()),
		LogErrors: func(what string, err error) { fmt.Fprintf(os.Stderr, "slabwright: %s: %v\n", what, err) },
	})
}

// allAsks puts the questions of several desks together.
func allAsks(desks ...map[string]web.Ask) map[string]web.Ask {
	all := map[string]web.Ask{}
	for _, d := range desks {
		maps.Copy(all, d)
	}
	return all
}

// soundJob reads a job that has no problem that keeps it from being worked out.
func soundJob(dir string) (*job.Job, error) {
	j, err := job.Load(dir)
	if err != nil {
		return nil, err
	}
	return j, soundness(j, dir)
}

// soundness is all that is wrong with a job, or nil.
func soundness(j *job.Job, dir string) error {
	var wrong []error
	for _, p := range job.Errors(j.Validate(os.DirFS(dir))) {
		wrong = append(wrong, errors.New(p.String()))
	}
	return errors.Join(wrong...)
}

// written adapts a function that makes a paper to one that writes it.
func written(paper func(*report.Content) ([]byte, error)) func(io.Writer, *report.Content) error {
	return func(w io.Writer, c *report.Content) error {
		data, err := paper(c)
		if err != nil {
			return err
		}
		_, err = w.Write(data)
		return err
	}
}

// stamp changes when job.json does.
func stamp(dir string) string {
	info, err := os.Stat(filepath.Join(dir, "job.json"))
	if err != nil {
		return err.Error()
	}
	return fmt.Sprint(info.ModTime().UnixNano(), info.Size())
}

// showPage opens the address in the browser; when that does not work the address
// printed is enough.
func showPage(ctx context.Context, address string, quiet bool) {
	name, args := "xdg-open", []string{address}
	switch runtime.GOOS {
	case "darwin":
		name = "open"
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", address}
	}
	if err := exec.CommandContext(ctx, name, args...).Start(); err != nil && !quiet {
		fmt.Fprintf(os.Stderr, "No browser could be started (%v); open the address by hand.\n", err)
	}
}
