package main

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"testing"
)

func exitOf(err error) string {
	var exit *exec.ExitError
	if errors.As(err, &exit) {
		return fmt.Sprint(exit.ExitCode())
	}
	return err.Error()
}

func TestExitCode(t *testing.T) {
	for _, c := range []struct {
		err  error
		want int
	}{
		{errors.New("anything"), exitFailed},
		{withCode(exitJob, errors.New("no job")), exitJob},
		{fmt.Errorf("pour A: %w", context.Canceled), exitStopped},
		{fmt.Errorf("wrapped: %w", withCode(exitNotKnown, errors.New("x"))), exitNotKnown},
	} {
		if got := exitCode(c.err); got != c.want {
			t.Errorf("%v ends with %d, want %d", c.err, got, c.want)
		}
	}
	if withCode(exitJob, nil) != nil {
		t.Error("no error must stay no error")
	}
}
