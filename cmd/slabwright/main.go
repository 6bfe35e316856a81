// Command slabwright finds out why a concrete slab on ground cracked, what to do
// about it and who could have stopped it. It reads a job folder and prints, draws
// and serves what the job knows; results go to standard output, everything else
// to standard error.
package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"
)

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(gcPercent)
	}
	os.Exit(run(os.Args[1:]))
}

// gcPercent lets the heap grow further between collections than usual: replays make much
// that lasts shortly, and some of the time went into collecting it.
const gcPercent = 200

// run carries out one command and returns its exit code.
func run(args []string) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	root := rootCommand()
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	if err == nil {
		return exitDone
	}
	code := exitCode(err)
	if errors.Is(err, context.Canceled) {
		err = errors.New("stopped; nothing half-written was kept")
	}
	fmt.Fprintln(os.Stderr, "slabwright: "+err.Error())
	return code
}
