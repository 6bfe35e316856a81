// Package poursheet makes the sheets a slab is set out, poured and sawn by.
//
// Plain facts go in, finished sheets come out: the joint drawing with its schedules
// ([Drawing], as PDF, SVG, DXF and CSV), the cut sheet for the saw crew
// ([CutSheet]), the go or hold sheet of the evening before ([GoSheet]), the duty
// table ([DutySheet]), the inspection and test list ([InspectionSheet]), the notes
// for the specification with what they leave open ([NotesSheet]), and the cut
// windows for a calendar ([Calendar]).
//
// It works nothing out but lengths, counts and where things stand on paper: windows,
// chances and limits are handed to it.
package poursheet
