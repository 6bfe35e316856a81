package main

import (
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"slabwright": func() { os.Exit(run(os.Args[1:])) }})
}

// The scripts run the command as a person would and look at what it prints, where
// it prints it and the code it ends with.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "testdata/script", Cmds: map[string]func(*testscript.TestScript, bool, []string){
		"ends": ends,
	}})
}

// ends is "ends CODE args...": it runs slabwright and fails unless it ends with this
// exit code.
func ends(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: ends CODE args...")
	}
	err := ts.Exec("slabwright", args[1:]...)
	got := "0"
	if err != nil {
		got = exitOf(err)
	}
	if got != args[0] {
		ts.Fatalf("slabwright %v ended with %s, want %s", args[1:], got, args[0])
	}
}
