package main

import (
	"context"
	"errors"
)

// Exit codes, as printed by --help and in the README.
const (
	exitDone      = 0   // done
	exitFailed    = 1   // something went wrong that is not the user's doing
	exitUsage     = 2   // a flag or argument is wrong
	exitJob       = 3   // the job folder cannot be read, or has errors
	exitNotKnown  = 4   // the job is sound, but this answer needs a fact nobody gave
	exitDisproved = 5   // prove: a published row is not met
	exitStopped   = 130 // stopped by the user
)

// codedError carries the exit code an error ends the program with.
type codedError struct {
	code int
	err  error
}

func (e codedError) Error() string { return e.err.Error() }
func (e codedError) Unwrap() error { return e.err }

func withCode(code int, err error) error {
	if err == nil {
		return nil
	}
	return codedError{code, err}
}

func exitCode(err error) int {
	if errors.Is(err, context.Canceled) {
		return exitStopped
	}
	var coded codedError
	if errors.As(err, &coded) {
		return coded.code
	}
	return exitFailed
}
