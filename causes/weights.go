package causes

import "sort"

// causeWeight is the row of cause h.
func (w *weighing) causeWeight(h int) Weight {
	c := catalogue[h]
	read := func(belief []float64) float64 { return belief[h] }
	x := w.weight(c.ID, read)
	x.Cause, x.Name, x.Plain, x.Exact, x.Layer = c.ID, c.Name, c.Plain, c.Exact, c.Kind
	x.Confirm, x.DoNot, x.Sources = c.Confirm, c.DoNot, c.Sources
	if w.excluded[h] {
		x.State, x.RuledOut = RuledOut, "considered and ruled out because "+w.because[c.ID]
		x.For, x.Against = nil, nil
		return x
	}
	x.Missing = w.missing(h)
	return x
}

func (w *weighing) weight(cause string, read func(belief []float64) float64) Weight {
	var x Weight
	x.P, x.Low, x.High = w.span(read)
	x.About = AboutRange(x.P, x.Low, x.High)
	x.For, x.Against = w.arguments(cause, read)
	return x
}

// mechanismWeights is the layer of what pulled it apart.
func (w *weighing) mechanismWeights() []Weight {
	var all []Weight
	for _, m := range mechanisms {
		x := w.weight(m.ID, func(belief []float64) float64 { return w.mechanismChance(belief, m.ID) })
		x.Cause, x.Name, x.Plain, x.Exact, x.Layer, x.Sources = m.ID, m.Name, m.Plain, m.Exact, "mechanism", m.Sources
		all = append(all, x)
	}
	return sorted(all)
}

// NoTrigger is the id of the trigger row that says nothing special about the
// place was found.
const NoTrigger = "no-trigger"

// triggerWeights is the layer of why here and then. The chance that none of the
// triggers is at work stands among them.
func (w *weighing) triggerWeights() []Weight {
	var all []Weight
	for h, c := range catalogue {
		if c.Kind == "trigger" {
			all = append(all, w.causeWeight(h))
		}
	}
	none := w.weight(NoTrigger, func(belief []float64) float64 {
		p := 0.0
		for h, c := range catalogue {
			if c.Kind != "trigger" {
				p += belief[h]
			}
		}
		return p
	})
	none.Cause, none.Name, none.Layer = NoTrigger, "nothing special about this place", "trigger"
	none.Plain = "Nothing about this place, such as a late cut or a corner, is needed to explain it."
	none.Exact = "The chance that none of the local triggers of the catalogue is at work; the cause is then one of the mechanisms by itself."
	return sorted(append(all, none))
}

func sorted(all []Weight) []Weight {
	sort.SliceStable(all, func(i, j int) bool { return all[i].P > all[j].P })
	return all
}
