package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"slabwright/job"
)

const newHelp = `Start a job from a few questions. Every question has a flag; on a terminal what
no flag answers is asked for, elsewhere it is left open. Values carry their unit:
150mm, 6in, 32MPa, 25C; a bare number is refused where it could mean two things.

Example:
  slabwright new --dir yard --what cracked --name "Yard 3" --zone Europe/London \
    --outline "18 x 12 m" --thickness 150mm --strength 32MPa --date "2026-06-18 07:30"`

func newCommand(s *settings) *cobra.Command {
	var dir string
	var noInput bool
	questions := job.Questions()
	texts := make([]string, len(questions))
	cmd := &cobra.Command{
		Use:   "new",
		Short: "Start a job folder from a few questions or flags",
		Long:  newHelp,
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			asker := &asking{in: bufio.NewReader(cmd.InOrStdin()), out: os.Stderr, live: !noInput && !s.quiet && isTerminal(os.Stdin)}
			answers, err := asker.all(questions, texts, func(flag string) bool { return cmd.Flags().Changed(flag) })
			if err != nil {
				return err
			}
			if dir == "" {
				return withCode(exitUsage, errors.New("say which folder to make with --dir, for instance --dir yard"))
			}
			return startJob(cmd.OutOrStdout(), s, dir, answers)
		},
	}
	cmd.Flags().StringVar(&dir, "dir", "", "folder to make")
	cmd.Flags().BoolVar(&noInput, "no-input", false, "ask nothing; leave open what no flag answers")
	for i, q := range questions {
		cmd.Flags().StringVar(&texts[i], q.Flag, "", q.Prompt)
	}
	return cmd
}

// asking puts questions to a person at a terminal.
type asking struct {
	in   *bufio.Reader
	out  io.Writer
	live bool
}

// all answers every question by its flag or by asking. All wrong flags come back
// together.
func (a *asking) all(questions []job.Question, texts []string, given func(flag string) bool) (job.NewAnswers, error) {
	var answers job.NewAnswers
	var wrong []error
	for i, q := range questions {
		switch {
		case given(q.Flag):
			wrong = append(wrong, q.Answer(&answers, texts[i]))
		case a.live:
			if err := a.one(q, &answers); err != nil {
				return answers, err
			}
		default:
			wrong = append(wrong, q.Answer(&answers, ""))
		}
	}
	return answers, withCode(exitUsage, errors.Join(wrong...))
}

// one asks until the answer can be taken; an empty line leaves it open where that is
// allowed.
func (a *asking) one(q job.Question, answers *job.NewAnswers) error {
	for {
		fmt.Fprintf(a.out, "%s\n  (%s)\n> ", q.Prompt, q.Why)
		line, err := a.in.ReadString('\n')
		if err != nil && line == "" {
			return withCode(exitUsage, errors.New("the questions were broken off; nothing was written"))
		}
		if err := q.Answer(answers, strings.TrimSpace(line)); err != nil {
			fmt.Fprintf(a.out, "  %v\n", err)
			continue
		}
		return nil
	}
}

// startJob writes the new folder; one that holds anything already is left alone.
func startJob(w io.Writer, s *settings, dir string, answers job.NewAnswers) error {
	if entries, err := os.ReadDir(dir); err == nil && len(entries) > 0 {
		return withCode(exitUsage, fmt.Errorf("%s is not empty; choose another folder", dir))
	}
	j := job.New(answers)
	for _, sub := range []string{"", "photos", "weather", "papers"} {
		if err := os.MkdirAll(filepath.Join(dir, sub), 0o755); err != nil {
			return fmt.Errorf("cannot make %s: %w", dir, err)
		}
	}
	if err := j.Save(dir); err != nil {
		return err
	}
	status := job.Status(j)
	if s.json {
		return printJSON(w, map[string]any{"dir": dir, "status": status})
	}
	fmt.Fprint(w, status.Text())
	if !s.quiet {
		fmt.Fprintf(os.Stderr, "Written: %s\n", filepath.Join(dir, "job.json"))
	}
	return nil
}
