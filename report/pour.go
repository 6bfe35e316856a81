package report

import (
	"fmt"

	"slabwright/internal/draw"
	"slabwright/internal/page"
)

// pourChapter is one pour day: sentences first, then the ruler, the charts and
// the tables.
func pourChapter(c *Content, p *PourDay, r *refs, first bool) []block {
	clk := clockOf(c.Head)
	b := []block{room{110}}
	if first {
		b = append(b, heading{1, "The pour days", "pours"})
	}
	b = append(b, heading{2, or(p.Name, p.ID) + ", " + clk.day(p.Start), "p-" + p.ID})
	lead := "Placed from " + clk.hour(p.Start)
	if p.End != nil {
		lead += " to " + clk.time(*p.End)
	}
	b = append(b, para{text: page.Plain(lead + ". " + sentence(p.Weather)), note: r.list("Workings ", p.Workings...)})
	if len(p.Sentences) > 0 {
		b = append(b, bulletsOf(p.Sentences))
	}
	if len(p.Events) > 0 {
		b = append(b, figure{"ruler-" + p.ID, RulerChart(c, p), page.Plain("The day on one ruler, " + clk.name + ". Shaded: the hours in which a saw leaves a clean edge and the slab has not yet cracked elsewhere.")})
	}
	add := func(id string, s *draw.Scene, caption string) {
		if s != nil {
			b = append(b, figure{id + "-" + p.ID, s, page.Plain(caption)})
		}
	}
	// beside folds the figures of a chart under it; a screen alone has room for them
	beside := func(t table) {
		if r.screen() && len(t.rows) > 0 {
			summary := or(t.caption, "The same")
			t.caption = ""
			b = append(b, fold{summary + ", as a table", []block{t}})
		}
	}
	add("share", ShareChart(c, p), "Tension over tensile strength in the slab before any cut: median and the range of the samples. Shaded: the cut window of the wet saw. Where the band reaches 1 some slabs like this have cracked.")
	beside(columnTable(c, p))
	b = append(b, windowTable(c, p, r))
	if len(p.Panels) > 0 {
		b = append(b, panelsTable(c, p, r))
		add("panels", PanelsChart(c, p), "Each panel on its own clock, from the time concrete came to it: a cut is right while the edge is ready and the chance of a crack elsewhere is still small."+morePanels(p))
		beside(panelCurves(p))
	}
	if len(p.Cuts) > 0 {
		b = append(b, cutsTable(c, p))
	}
	b = append(b, measuredBlocks(p, r)...)
	if s := MovesChart(p); s != nil {
		add("moves", s, "Which unknown moves the cut window most, one at a time over its range. At the right: its share of the spread, and the range.")
		beside(movesTable(p))
	}
	if len(p.WhatIfs) > 0 {
		b = append(b, whatIfTable(c, p))
	}
	add("drying", DryingChart(c, p), "Drying rate at the surface by three published forms. Until set, what dries faster than bleed water rises leaves the surface dry and open to cracking.")
	beside(dryingTable(c, p))
	add("plastic", PlasticChart(c, p), "The fresh slab to final set. Left: drying against bleeding. Middle: water standing on top, and drawn out of the concrete. Right: chance of plastic shrinkage cracks (tearing) and of cracks over bars by each hour.")
	beside(plasticTable(c, p))
	add("temperature", TemperatureChart(c, p), "Temperature through the depth. A top that cools below the middle pulls on itself before any joint is there to give way.")
	add("profiles", ProfilesChart(c, p), "Through the depth at chosen hours, the top of the slab at the top. Own stress is what the layers do to each other; tension is positive.")
	beside(profilesTable(c, p))
	if len(p.Trucks) > 0 {
		b = append(b, trucksTable(c, p))
	}
	if len(p.NotGiven) > 0 {
		b = append(b, heading{3, "Not answered", ""}, bulletsOf(p.NotGiven))
	}
	return b
}

// morePanels says how many panels are in the table alone.
func morePanels(p *PourDay) string {
	if more := len(p.Panels) - mostPanels; more > 0 {
		return fmt.Sprintf(" The other %d panels are in the table.", more)
	}
	return ""
}

// dryingTable is the weather and the drying rates hour by hour.
func dryingTable(c *Content, p *PourDay) table {
	clk := clockOf(c.Head)
	t := table{caption: "Weather and drying hour by hour", columns: numberColumns("Time", "Air °C", "Humidity", "Wind m/s", "Sun W/m²", "Concrete °C", "Uno kg/m²h", "Uno, US units", "Menzel")}
	for _, h := range p.Drying {
		t.rows = append(t.rows, numberRow(clk.short(h.Time), fixed(h.Air, 1), fixed(h.Humidity, 2), fixed(h.Wind, 1), fixed(h.Sun, 0), fixed(h.Concrete, 1), fixed(h.Uno, 2), fixed(h.UnoUS, 2), fixed(h.Menzel, 2)))
	}
	return t
}

// columnTable is the slab hour by hour.
func columnTable(c *Content, p *PourDay) table {
	clk := clockOf(c.Head)
	t := table{caption: "The slab hour by hour", columns: numberColumns("Time", "Hours after placing", "Top °C", "Middle °C", "Bottom °C", "Strength MPa", "Tensile MPa", "Modulus GPa", "Share of tensile strength", "lowest", "highest")}
	for _, h := range p.Column {
		t.rows = append(t.rows, numberRow(clk.short(h.Time), fixed(h.Hours, 1), fixed(h.Top, 1), fixed(h.Middle, 1), fixed(h.Bottom, 1), fixed(h.Strength, 1), fixed(h.Tensile, 2), fixed(h.Modulus/1000, 1), fixed(h.Share, 2), fixed(h.ShareLow, 2), fixed(h.ShareHigh, 2)))
	}
	return t
}

// numberColumns are a first column of words and others of numbers.
func numberColumns(heads ...string) []page.Column {
	var columns []page.Column
	for i, h := range heads {
		c := page.Column{Head: h, Share: 1, Align: page.AlignDecimal}
		if i == 0 {
			c = page.Column{Head: h, Share: 1.4}
		}
		columns = append(columns, c)
	}
	return columns
}

func numberRow(cells ...string) []page.Text {
	row := make([]page.Text, len(cells))
	for i, c := range cells {
		row[i] = page.Plain(c)
	}
	return row
}

func windowTable(c *Content, p *PourDay, r *refs) table {
	clk := clockOf(c.Head)
	t := table{caption: "Cut window", whole: true, tight: true, size: denseSize, columns: []page.Column{{Head: "Saw", Share: 9}, {Head: "Opens (range)", Share: 23}, {Head: "Best", Share: 12}, {Head: "Closes (range)", Share: 23}, {Head: "Why", Share: 34}, {Head: "", Share: 8}}}
	for _, w := range []*Window{&p.Window, p.Early} {
		if w == nil || (w.Opens == nil && w.Why == "") {
			continue
		}
		closes := clk.span(w.Closes, w.ClosesLow, w.ClosesHigh, "not in the time looked at")
		t.rows = append(t.rows, []page.Text{page.Plain(or(w.Saw, "–")), page.Plain(clk.span(w.Opens, w.OpensLow, w.OpensHigh, "not found")),
			page.Plain(clk.hourOr(w.Best, "–")), page.Plain(closes), page.Plain(sentence(w.Why)), r.list("", w.Working)})
	}
	return t
}

func cutsTable(c *Content, p *PourDay) table {
	clk := clockOf(c.Head)
	t := table{caption: "Joints as sawn", whole: true, tight: true, size: denseSize, columns: []page.Column{{Head: "Joint", Share: 8}, {Head: "Cut at", Share: 18}, {Head: "Hours after placing", Share: 11, Align: page.AlignDecimal},
		{Head: "State", Share: 14}, {Head: "Chance it had cracked before", Share: 19}, {Head: "Depth mm", Share: 9, Align: page.AlignDecimal}, {Head: "of thickness", Share: 11, Align: page.AlignDecimal}, {Head: "Edge; opened; by", Share: 24}}}
	for _, cut := range p.Cuts {
		note := or(cut.Edge, "edge not noted") + "; opened: " + or(cut.Opened, "not known")
		if cut.By != "" {
			note += "; " + cut.By
		}
		t.rows = append(t.rows, []page.Text{page.Bold(cut.Joint), page.Plain(clk.hour(cut.At)), page.Plain(fixed(cut.Hours, 1)), page.Plain(cut.State),
			page.Plain(chanceWords(cut.Chance)), page.Plain(number(cut.Depth, 1000, 0)), page.Plain(number(cut.DepthShare, 1, 2)), page.Plain(note)})
	}
	return t
}

func trucksTable(c *Content, p *PourDay) table {
	clk := clockOf(c.Head)
	t := table{caption: "Trucks", whole: true, tight: true, size: denseSize, columns: []page.Column{{Head: "Ticket", Share: 12}, {Head: "Discharge", Share: 13}, {Head: "Age min", Share: 8, Align: page.AlignRight}, {Head: "Volume m³", Share: 10, Align: page.AlignDecimal},
		{Head: "Slump mm", Share: 9, Align: page.AlignRight}, {Head: "Concrete °C", Share: 10, Align: page.AlignDecimal}, {Head: "Water added L/m³", Share: 12, Align: page.AlignDecimal}, {Head: "Asked by", Share: 12}, {Head: "Note", Share: 24}}}
	for _, tr := range p.Trucks {
		start := "–"
		if tr.Start != nil {
			start = clk.short(*tr.Start)
		}
		t.rows = append(t.rows, []page.Text{page.Plain(tr.Ticket), page.Plain(start), page.Plain(number(tr.AgeMin, 1, 0)), page.Plain(number(tr.Volume, 1, 1)),
			page.Plain(number(tr.Slump, 1000, 0)), page.Plain(number(tr.Concrete, 1, 1)), page.Plain(number(tr.WaterAdded, 1, 1)), page.Plain(or(tr.AskedBy, "–")), page.Plain(tr.Note)})
	}
	return t
}
