package job

import (
	"cmp"
	"fmt"
	"io/fs"
	"strings"
	"time"

	"slabwright/internal/draw"
	"slabwright/internal/page"
	"slabwright/poursheet"
	"slabwright/report"
)

// PlansPDF prints joint plans: side by side, then each with its drawing at true scale
// and the rules it does not keep, then what stands behind the spacing.
func (j *Job) PlansPDF(files fs.FS, d *report.Design, o SheetOptions) ([]byte, error) {
	paper := o.Paper
	if paper.Width == 0 {
		paper = page.A3
	}
	if paper.Width < paper.Height {
		paper = paper.Turned()
	}
	p := report.DesignPaper{Paper: paper, Drawing: func(l report.Layout) (*draw.Scene, error) {
		one := j.PlanDrawing(files, l, o.Made)
		one.Units, one.Paper, one.Lying = o.Units, paper, true
		return one.Scene()
	}}
	return p.PDF(d)
}

// PlanDrawing is the joint drawing of a joint plan of the job's slab.
func (j *Job) PlanDrawing(files fs.FS, l report.Layout, made time.Time) poursheet.Drawing {
	d := poursheet.Drawing{Title: j.sheetTitle(files, made), Slab: l.Slab, Panels: l.Panels}
	d.Title.Slab = strings.TrimPrefix(d.Title.Slab+", "+l.Name, ", ")
	d.Slab.Name = cmp.Or(d.Slab.Name, d.Slab.ID) + ", " + l.Name
	if f := j.Planned.SawDepth; f != nil {
		d.SawDepth = &f.Value
	}
	return d
}

// PlanNamed returns the joint plan of a name: as drawn or one of those proposed.
func PlanNamed(d *report.Design, name string) (report.Layout, error) {
	var names []string
	for _, l := range append([]report.Layout{d.Drawn}, d.Proposed...) {
		if strings.EqualFold(l.Name, strings.TrimSpace(name)) {
			return l, nil
		}
		names = append(names, fmt.Sprintf("%q", l.Name))
	}
	return report.Layout{}, fmt.Errorf("there is no joint plan %q; there are: %s", name, strings.Join(names, ", "))
}
