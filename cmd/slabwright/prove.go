package main

import (
	"fmt"
	"io"

	"github.com/spf13/cobra"

	"slabwright/causes"
	"slabwright/job"
)

func proveCommand(s *settings) *cobra.Command {
	var failedOnly, calibrated bool
	var jobs int
	var seed uint64
	cmd := &cobra.Command{
		Use:   "prove",
		Short: "Compare the program with published values and textbook cases, row by row",
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if calibrated {
				return calibration(cmd.Context(), cmd.OutOrStdout(), jobs, seed, s.json)
			}
			proof := job.Prove()
			if s.json {
				if err := printJSON(cmd.OutOrStdout(), proof); err != nil {
					return err
				}
			} else {
				printProof(cmd.OutOrStdout(), proof, failedOnly)
			}
			if bad := proof.Failed(); bad > 0 {
				return withCode(exitDisproved, fmt.Errorf("%s not met", count(bad, "published row")))
			}
			return nil
		},
	}
	cmd.Flags().BoolVar(&calibrated, "calibration", false, "invent jobs with known causes and set stated chances beside what came true")
	cmd.Flags().IntVar(&jobs, "jobs", 4000, "with --calibration: how many jobs to invent")
	cmd.Flags().Uint64Var(&seed, "seed", 1, "with --calibration: the seed; the same seed gives the same jobs")
	cmd.Flags().BoolVar(&failedOnly, "failed", false, "only the rows that are not met")
	return cmd
}

func printProof(w io.Writer, proof job.Proof, failedOnly bool) {
	for _, table := range proof.Tables {
		if failedOnly && table.Failed() == 0 {
			continue
		}
		fmt.Fprintf(w, "\n%s: %s\n", table.Package, table.Source)
		fmt.Fprintf(w, "  %-26s %-40s %12s %12s %10s  %-10s %s\n", "row", "of", "expected", "got", "off by", "tolerance", "how the expected value is known")
		for _, r := range table.Rows {
			if failedOnly && r.OK {
				continue
			}
			mark := " "
			if !r.OK {
				mark = "!"
			}
			tol := fmt.Sprintf("%g %s", r.Tol, r.Unit)
			if r.Relative {
				tol = fmt.Sprintf("%g %%", 100*r.Tol)
			}
			fmt.Fprintf(w, "%s %-26s %-40s %12.6g %12.6g %10.2g  %-10s %s\n", mark, r.ID, r.Quantity+" "+r.Inputs, r.Expected, r.Got, r.Off, tol, r.Known)
			if r.Fail != "" {
				fmt.Fprintf(w, "    %s\n", r.Fail)
			}
		}
	}
	fmt.Fprintf(w, "\nTextbook cases (accepted cause first?)\n")
	for _, c := range proof.Cases {
		if failedOnly && c.OK {
			continue
		}
		mark := " "
		if !c.OK {
			mark = "!"
		}
		told := "decided"
		if !c.Decided {
			told = "cannot tell yet"
		}
		fmt.Fprintf(w, "%s %-4s %-26s expected %-22s got %-22s %-16s %-16s %s\n", mark, c.Case.ID, c.Case.Site, c.Case.Expected, c.Got, c.About, told, c.Case.Rule)
	}
	printWhole(w, proof, failedOnly)
	fmt.Fprintf(w, "\n%d published rows: %d met, %d not met. %d textbook cases: %d first, %d undecided, %d other.\n",
		proof.Rows, proof.Rows-proof.RowsFailed, proof.RowsFailed, len(proof.Cases), proof.CasesFirst, proof.CasesUndecided, proof.CasesOther)
}

// printWhole prints the cases that are whole jobs, and the counts of each set.
func printWhole(w io.Writer, proof job.Proof, failedOnly bool) {
	fmt.Fprintf(w, "\nCases from published guidance as whole jobs: plan, pour and walk through the whole chain\n")
	for _, r := range proof.Whole {
		if failedOnly && r.First {
			continue
		}
		mark := " "
		if !r.First {
			mark = "!"
		}
		told := "decided"
		if !r.Decided {
			told = "cannot tell yet"
		}
		fmt.Fprintf(w, "%s %-4s %-38s expected %-22s got %-22s %-20s %-16s %s (%s)\n", mark, r.Case.ID, r.Case.Title, r.Case.Expected, r.Got, causes.About(r.Chance), told, r.Case.Guide, r.Case.Known)
	}
	for _, t := range proof.WholeSets {
		fmt.Fprintf(w, "  %s: %d cases, the guide's cause in front at %d; decided %d, of which right %d; cannot tell yet %d; mean chance stated for the cause in front %.2f.\n",
			t.Set, t.Cases, t.First, t.Decided, t.Right, t.Undecided, t.Stated)
		if t.FirstAtRun > 0 {
			fmt.Fprintf(w, "    Written before the program was run on them: %d in front at the first run; %s brought faults of wiring to light that were mended since; no band or prior was changed.\n", t.FirstAtRun, count(t.Mended, "case"))
		}
	}
	if proof.WholeFault != "" {
		fmt.Fprintf(w, "! %s\n", proof.WholeFault)
	}
}
