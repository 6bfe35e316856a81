// Package job is one commission from its folder to its answers and back.
//
// In goes a folder with job.json, photos/, weather/ and papers/ ([Load]); out come
// the job as types, everything that cannot be as written, all at once
// ([Job.Validate]), where it stands and what to find out next ([Job.Status]), and
// the same folder with what changed ([Job.Save]), nothing unknown lost and nothing
// half written. [New] starts a job from a few questions; [Schema] publishes the
// form of job.json. Ranges, words and what an unknown fact blocks are tables:
// ranges.csv, choices.csv, needs.csv.
//
// It leaves out the physics and the reasoning: those are called, not done, here.
package job
