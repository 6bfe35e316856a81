package main

import (
	"os"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"slabwright/job"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"slabwright": func() { os.Exit(run(os.Args[1:])) }})
}

// The scripts run the command as a person would and look at what it prints, where
// it prints it and the code it ends with.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{Dir: "testdata/script", Cmds: map[string]func(*testscript.TestScript, bool, []string){
		"ends": ends, "example": example, "fewer": fewer,
	}})
}

// example is "example JOB": it writes the worked examples without running them, the
// first to JOB and the second to JOB-replacement, as demo does.
func example(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: example JOB")
	}
	ts.Check(job.WriteDemo(ts.MkAbs(args[0])))
	ts.Check(job.WriteNextDemo(ts.MkAbs(args[0] + "-replacement")))
}

// fewer is "fewer JOB": it asks for four samples instead of the usual 200, so that
// the scripts stay short.
func fewer(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: fewer JOB")
	}
	name := ts.MkAbs(args[0] + "/job.json")
	text := ts.ReadFile(name)
	changed := strings.Replace(text, `"basis": {`, `"basis": {"members": 4,`, 1)
	if changed == text {
		ts.Fatalf("%s has no basis to change", name)
	}
	ts.Check(os.WriteFile(name, []byte(changed), 0o644))
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
