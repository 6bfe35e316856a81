package job

import (
	"fmt"
	"strings"

	"slabwright/plan"
	"slabwright/poursheet"
	"slabwright/source"
)

// given makes the sheets that set the job's facts against a list: inspection and
// notes.
func (m *sheetMaker) given() {
	g := m.j.Given()
	inspection := poursheet.InspectionSheet{Title: m.title, Paper: m.crewPaper(), Pour: m.title.Slab, Given: g}
	data, err := inspection.PDF()
	m.keep("inspection.pdf", data, err)
	notes := poursheet.NotesSheet{Title: m.title, Paper: m.crewPaper(), Given: g}
	data, err = notes.PDF()
	m.keep("notes.pdf", data, err)
}

// Given returns the facts of the job in words, by the keys of the inspection list and
// of the list of minimum information. A fact nobody stated is not there.
func (j *Job) Given() poursheet.Given {
	g := poursheet.Given{}
	put := func(key, words string) {
		if words != "" {
			g[key] = words
		}
	}
	p := j.Planned
	put("thickness", inMM(first(p.Thickness, j.slab().Thickness)))
	put("cover", inMM(p.Cover))
	put("sawdepth", inMM(p.SawDepth))
	put("sawwithin", plainFact(p.SawWithin, "within %g h of placing"))
	put("water", plainFact(p.MaxWater, "%.2f"))
	put("wateronsite", p.WaterOnSite.Or(""))
	put("cure", p.Cure.Or(""))
	put("curewithin", inHours(p.CureWithin))
	put("drying", plainFact(p.MaxDrying, "not above %.1f kg/m²·h"))
	if words := p.Isolation.Or(""); words != "none drawn" {
		put("isolation", words)
	}
	if words := p.CornerJoints.Or(""); words != "not drawn" {
		put("corners", words)
	}
	put("clear", inMM(p.DowelClear))
	put("wheel", plainFact(first(p.WheelLoad, j.Wheel.Load), "%.0f kN"))
	put("base", joinWords(j.Ground.Base.Or(""), inMM(j.Ground.BaseDepth)))
	put("membrane", j.Ground.Membrane.Or(""))
	put("support", plainFact(j.Ground.Support, "%.0f MN/m³"))
	if len(j.Mixes) > 0 {
		put("strength", plainFact(j.Mixes[0].Strength, "%.0f MPa cylinder strength"))
		put("slump", inMM(j.Mixes[0].Slump))
		if air := j.Mixes[0].Air; air != nil {
			put("air", fmt.Sprintf("%.1f %%", 100*air.Value))
		}
	}
	put("revision", j.Revision)
	j.givenOfSlab(put)
	return g
}

// slab returns the first slab, or one with nothing in it.
func (j *Job) slab() plan.Slab {
	if len(j.Slabs) == 0 {
		return plan.Slab{}
	}
	return j.Slabs[0]
}

// givenOfSlab puts what the drawing of the slab states.
func (j *Job) givenOfSlab(put func(key, words string)) {
	s := j.slab()
	if len(s.Joints) > 0 {
		kinds := map[plan.JointKind]int{}
		for _, joint := range s.Joints {
			kinds[joint.Kind]++
		}
		var words []string
		for _, k := range []plan.JointKind{plan.Sawn, plan.Formed, plan.Isolation} {
			if kinds[k] > 0 {
				words = append(words, fmt.Sprintf("%d %s", kinds[k], k))
			}
		}
		put("joints", strings.Join(words, ", ")+", as drawn")
	}
	put("transfer", transferOf(s))
	for _, joint := range s.Joints {
		if x := joint.Dowels; x != nil && x.Diameter != nil && x.Spacing != nil && x.Length != nil {
			put("dowels", fmt.Sprintf("%.0f mm, %.0f mm long, at %.0f mm", 1000*x.Diameter.Value, 1000*x.Length.Value, 1000*x.Spacing.Value))
			break
		}
	}
	if len(s.Steel) > 0 {
		z := s.Steel[0]
		words := z.Name
		if z.Diameter != nil && z.PitchX != nil && z.PitchY != nil {
			words = fmt.Sprintf("%.0f mm bars at %.0f × %.0f mm", 1000*z.Diameter.Value, 1000*z.PitchX.Value, 1000*z.PitchY.Value)
		}
		put("steel", words)
		put("atjoints", z.AtJoints.Or(""))
	}
}

// transferOf is the load transfer of the joints, stated only where every joint has
// one.
func transferOf(s plan.Slab) string {
	var words []string
	for _, joint := range s.Joints {
		if joint.Kind == plan.Isolation {
			continue
		}
		word := joint.Transfer.Or("")
		if word == "" {
			return ""
		}
		if !has(words, word) {
			words = append(words, word)
		}
	}
	return strings.Join(words, ", ")
}

// first returns the first fact that is known.
func first(facts ...*source.Fact) *source.Fact {
	for _, f := range facts {
		if f != nil {
			return f
		}
	}
	return nil
}

func plainFact(f *source.Fact, form string) string {
	if f == nil {
		return ""
	}
	return fmt.Sprintf(form, f.Value)
}

func inMM(f *source.Fact) string {
	if f == nil {
		return ""
	}
	return fmt.Sprintf("%.0f mm", 1000*f.Value)
}

func inHours(f *source.Fact) string { return plainFact(f, "%g h") }

func joinWords(words ...string) string {
	var kept []string
	for _, w := range words {
		if w != "" {
			kept = append(kept, w)
		}
	}
	return strings.Join(kept, ", ")
}
