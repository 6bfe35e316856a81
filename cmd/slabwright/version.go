package main

import "slabwright/job"

// versionText names the program's version as it is printed in reports.
func versionText() string { return job.ProgramVersion }
