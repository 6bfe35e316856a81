package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"slabwright/job"
	"slabwright/report"
)

// jobDir returns the folder of a job given as a folder or as its job.json.
func jobDir(args []string) (string, error) {
	dir := "."
	if len(args) > 0 {
		dir = args[0]
	}
	if filepath.Base(dir) == "job.json" {
		dir = filepath.Dir(dir)
	}
	if _, err := os.Stat(filepath.Join(dir, "job.json")); err != nil {
		if len(args) == 0 {
			return "", withCode(exitJob, errNoJob)
		}
		return "", withCode(exitJob, fmt.Errorf("%s holds no job.json; start one with \"slabwright new --dir %s\"", dir, dir))
	}
	return dir, nil
}

// loadJob reads and checks a job, printing every problem at once.
func loadJob(dir string, problems io.Writer) (*job.Job, error) {
	j, err := job.Load(dir)
	if err != nil {
		return nil, withCode(exitJob, err)
	}
	found := j.Validate(os.DirFS(dir))
	errs := 0
	for _, p := range found {
		if p.IsError() {
			errs++
			fmt.Fprintln(problems, p.String())
		}
	}
	if errs > 0 {
		return nil, withCode(exitJob, fmt.Errorf("%s has %s; nothing was worked out", filepath.Join(dir, "job.json"), count(errs, "error")))
	}
	return j, nil
}

// jobIn finds the job that a command is asked about, and reads and checks it.
func jobIn(args []string) (dir string, j *job.Job, err error) {
	if dir, err = jobDir(args); err != nil {
		return "", nil, err
	}
	j, err = loadJob(dir, os.Stderr)
	return dir, j, err
}

// answering works a job out: all of it or a part.
type answering func(context.Context, *job.Job, fs.FS, job.Progress) (*report.Content, error)

// diagnose loads a job and works everything out, with progress.
func diagnose(ctx context.Context, s *settings, dir string) (*job.Job, *report.Content, error) {
	return answered(ctx, s, dir, job.Diagnose)
}

// answered loads a job and works it out by one of the answerings, with progress.
func answered(ctx context.Context, s *settings, dir string, by answering) (*job.Job, *report.Content, error) {
	j, err := loadJob(dir, os.Stderr)
	if err != nil {
		return nil, nil, err
	}
	p := newProgress(s.quiet)
	defer p.Done()
	content, err := by(ctx, j, os.DirFS(dir), p.Step)
	if err != nil {
		var unknown job.NotKnown
		if errors.As(err, &unknown) {
			return nil, nil, withCode(exitNotKnown, err)
		}
		return nil, nil, err
	}
	return j, content, nil
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
