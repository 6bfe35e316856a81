package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"slabwright/unit"
)

const longHelp = `slabwright reads a job folder about a concrete slab on ground and says why it
cracked, whether it matters, what to do now and who could have stopped it.

Examples:
  slabwright demo                         write a worked example and run it
  slabwright new --dir yard               start a job from a few questions
  slabwright status yard                  where the job stands and what is missing
  slabwright causes yard --finding F1     why one crack is there
  slabwright replay yard                  what opened and cracked where, hour by hour
  slabwright check yard                   what it must bear against what it can
  slabwright open yard                    the same on a plan, in the browser

Exit codes:
  0 done                    1 went wrong, not your doing
  2 a flag is wrong         3 the job folder cannot be read or has errors
  4 not known: this answer needs a fact nobody gave
  5 prove: a published value is not met
  130 stopped`

// settings are the flags every command has.
type settings struct {
	json  bool
	quiet bool
}

func rootCommand() *cobra.Command {
	var s settings
	root := &cobra.Command{
		Use:           "slabwright",
		Short:         "Why a concrete slab on ground cracked, what now, and who could have stopped it",
		Long:          longHelp,
		Version:       versionText(),
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          knownCommand,
		RunE:          func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		return withCode(exitUsage, fmt.Errorf("%w; see \"%s --help\"", err, cmd.CommandPath()))
	})
	root.PersistentFlags().BoolVar(&s.json, "json", false, "print the result as JSON (fields in docs/json.md)")
	root.PersistentFlags().BoolVarP(&s.quiet, "quiet", "q", false, "say nothing but the result")
	root.AddCommand(demoCommand(&s), newCommand(&s), statusCommand(&s), causesCommand(&s), windowCommand(&s), whatifCommand(&s), replayCommand(&s), jointsCommand(&s),
		checkCommand(&s), workingCommand(&s), reportCommand(&s), drawCommand(&s), sheetsCommand(&s), openCommand(&s), schemaCommand(), proveCommand(&s))
	for _, cmd := range root.Commands() {
		cmd.Args = usageArgs(cmd.Args)
	}
	return root
}

// knownCommand refuses a word that is no command, with a guess at what was meant.
func knownCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	names := []string{}
	for _, c := range cmd.Commands() {
		names = append(names, c.Name())
	}
	if near, ok := unit.Nearest(args[0], names); ok {
		return withCode(exitUsage, fmt.Errorf("%q is not a command; did you mean %q?", args[0], near))
	}
	return withCode(exitUsage, fmt.Errorf("%q is not a command; see \"slabwright --help\"", args[0]))
}

// usageArgs makes a wrong number of arguments a usage error.
func usageArgs(check cobra.PositionalArgs) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if check == nil {
			return nil
		}
		if err := check(cmd, args); err != nil {
			return withCode(exitUsage, fmt.Errorf("%w; see \"%s --help\"", err, cmd.CommandPath()))
		}
		return nil
	}
}

// printJSON writes a value as indented JSON.
func printJSON(w io.Writer, v any) error {
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}

var errNoJob = errors.New("no job folder here: give one, or start one with \"slabwright new\" or \"slabwright demo\"")
