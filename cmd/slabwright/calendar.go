package main

import (
	"fmt"
	"os"
	"time"

	"slabwright/job"
	"slabwright/poursheet"
	"slabwright/report"
)

// writeCalendar writes the cut windows of a job as an iCalendar file; entries of a
// file that is there already are moved, not doubled.
func writeCalendar(j *job.Job, c *report.Content, file string) (int, error) {
	before, err := os.ReadFile(file)
	if err != nil && !os.IsNotExist(err) {
		return 0, err
	}
	windows := calendarWindows(c)
	if len(windows) == 0 {
		return 0, withCode(exitNotKnown, fmt.Errorf("no pour has a cut window to put in a calendar; see \"slabwright status\""))
	}
	data, err := poursheet.Calendar(windows, before)
	if err != nil {
		return 0, withCode(exitUsage, err)
	}
	return len(windows), writeWhole(file, data)
}

// calendarWindows are the windows panel by panel, or of the whole pour where panels
// are not known. One that does not close ends where the record does, at most a day
// after it opens.
func calendarWindows(c *report.Content) []poursheet.Window {
	var all []poursheet.Window
	for _, p := range c.Pours {
		text := "Cut a quarter of the thickness deep; trial cut first, and ring the engineer when it ravels. Chances and what they stand on are in the report."
		add := func(id, title string, w report.Window) {
			if w.Opens == nil {
				return
			}
			ends := w.Opens.Add(24 * time.Hour)
			if w.Closes != nil && w.Closes.After(*w.Opens) {
				ends = *w.Closes
			}
			all = append(all, poursheet.Window{ID: c.Head.Job + "/" + p.ID + "/" + id, Title: title, Text: text, Place: c.Head.Place,
				Opens: *w.Opens, Ends: ends, Made: p.Start})
		}
		if len(p.Panels) == 0 {
			add("pour", "Cut window of "+p.Name, p.Window)
		}
		for _, panel := range p.Panels {
			add(panel.Panel, fmt.Sprintf("Cut %s, panel %s", p.Name, panel.Panel), panel.Wet)
		}
	}
	return all
}
