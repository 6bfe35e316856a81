package job

import (
	"fmt"
	"strings"
	"time"
	"unicode"

	"slabwright/plan"
	"slabwright/site"
	"slabwright/source"
	"slabwright/walk"
)

// firstLoad is the clock time at which a pour is taken to start when only its day
// is known. Our own choice: first load at seven.
const firstLoad = 7 * time.Hour

// New starts a job from a few answers. What nobody answered is left out; what the
// program puts in is marked as default with the reason.
func New(a NewAnswers) *Job {
	j := &Job{
		Version: Version, ID: slug(a.Name), Title: a.Name + ": why it cracked",
		Question: "Why has the slab cracked, does it matter, and what is to be done now?",
		Place:    site.Place{Name: a.Place, Zone: a.Zone, Exposure: defaultWord("external", "taken as outdoors until somebody says otherwise: the harder case for drying and cooling")},
	}
	if a.What == ToPour {
		j.Title = a.Name + ": pour plan"
		j.Question = "How is the slab laid out, when is it poured and when is it sawn, so that it does not crack?"
	}
	slab := plan.Slab{ID: "A", Name: a.Name, Outline: a.Outline}
	if a.Thickness != nil {
		slab.Thickness = stated(float64(*a.Thickness))
		j.Planned.Thickness = stated(float64(*a.Thickness))
		if a.What == ToPour {
			j.Planned.SawDepth = &source.Fact{Value: float64(*a.Thickness) / 4, Known: source.Default, By: "slabwright", Note: "a quarter of the thickness, common practice for a wet saw"}
		}
	}
	j.Slabs = []plan.Slab{slab}
	if a.Strength != nil {
		j.Mixes = []site.Mix{{ID: "M1", Name: "as ordered", Strength: stated(float64(*a.Strength)),
			CementClass: defaultWord("N", "normal hardening until the ticket says otherwise")}}
	}
	j.Pours = []site.Pour{firstPour(a)}
	j.Walks = []walk.Walk{}
	return j
}

// firstPour is one placement over the whole outline.
func firstPour(a NewAnswers) site.Pour {
	pour := site.Pour{ID: "P1", Name: "Pour 1", Area: append([]plan.Point(nil), a.Outline...)}
	if a.Strength != nil {
		pour.Mix = "M1"
	}
	if a.Date != nil {
		start := *a.Date
		if a.DateOnly {
			start = start.Add(firstLoad)
			pour.Name += " (start taken as 07:00, the hour is not known)"
		}
		pour.Start = &start
	}
	return pour
}

// stated is a number somebody gave at the start: written down, not measured.
func stated(v float64) *source.Fact {
	return &source.Fact{Value: v, Known: source.Recorded, Note: "as stated when the job was started"}
}

func defaultWord(value, why string) *source.Choice {
	return &source.Choice{Value: value, Known: source.Default, By: "slabwright", Note: why}
}

// slug makes a short id that is a fit file name: "Yard 3, north" is yard-3-north.
func slug(name string) string {
	const longest = 40
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
		if b.Len() >= longest {
			break
		}
	}
	if s := strings.Trim(b.String(), "-"); s != "" {
		return s
	}
	return fmt.Sprintf("job-%d", Version)
}
