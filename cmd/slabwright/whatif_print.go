package main

import (
	"fmt"
	"io"
	"time"

	"slabwright/job"
	"slabwright/report"
)

// printWhatIfs sets the alternatives side by side.
func printWhatIfs(w io.Writer, j *job.Job, rows []report.WhatIf) {
	zone, err := time.LoadLocation(j.Place.Zone)
	if err != nil {
		zone = time.UTC
	}
	at := func(t *time.Time) string {
		if t == nil {
			return "-"
		}
		return t.In(zone).Format("Mon 15:04")
	}
	fmt.Fprintf(w, "%-28s %-10s %-10s %-10s %-8s %-16s %s\n", "", "opens", "best", "closes", "night?", "cracked by best", "peak drying kg/m²·h")
	for _, r := range rows {
		if r.Window.Why == "" && r.Text != "" {
			fmt.Fprintf(w, "%-28s not worked out: %s\n", r.Name, r.Text)
			continue
		}
		night := "no"
		if r.Night {
			night = "yes"
		}
		fmt.Fprintf(w, "%-28s %-10s %-10s %-10s %-8s %-16s %.1f\n", r.Name, at(r.Window.Opens), at(r.Window.Best), at(r.Window.Closes), night, aboutChance(r.Cracked), r.Peak)
		if r.Name != r.Changed {
			fmt.Fprintf(w, "%-28s %s\n", "", r.Changed)
		}
	}
	fmt.Fprintf(w, "\nTimes in %s. A dash: not in the time looked at.\n", j.Place.Zone)
}

func aboutChance(p float64) string {
	if p < 0.005 {
		return "under 1 %"
	}
	return fmt.Sprintf("%.0f %%", 100*p)
}
