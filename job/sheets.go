package job

import (
	"fmt"
	"io/fs"
	"time"

	"slabwright/poursheet"
)

// sheetTitle is the title block of the job's sheets. The date is given, never the
// clock's, so that the same job gives the same bytes.
func (j *Job) sheetTitle(files fs.FS, made time.Time) poursheet.Title {
	t := poursheet.Title{Number: j.Number, Job: j.Title, Client: j.Client, Place: j.Place.Name, Drawn: j.Author, Revision: j.Revision,
		Zone: j.Place.Zone, Version: ProgramVersion, DataHash: (&diagnosis{files: files}).hash(), Made: made}
	if len(j.Slabs) > 0 {
		t.Slab = j.Slabs[0].Name
		if t.Slab == "" {
			t.Slab = j.Slabs[0].ID
		}
	}
	return t
}

// JointDrawing returns the joint drawing of the job's first slab.
func (j *Job) JointDrawing(files fs.FS, made time.Time) (poursheet.Drawing, error) {
	if len(j.Slabs) == 0 {
		return poursheet.Drawing{}, NotKnown{"the job has no slab to draw yet: give its outline in slabs[0].outline_m, or take it from a drawing with \"slabwright draw --from FILE\""}
	}
	slab := j.Slabs[0]
	panels, err := slab.Panels()
	if err != nil {
		return poursheet.Drawing{}, fmt.Errorf("the slab cannot be divided into panels: %w", err)
	}
	d := poursheet.Drawing{Title: j.sheetTitle(files, made), Slab: slab, Panels: panels}
	if f := j.Planned.SawDepth; f != nil {
		d.SawDepth = &f.Value
	}
	return d, nil
}
