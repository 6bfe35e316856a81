package job

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"slabwright/concrete"
	"slabwright/remedies"
	"slabwright/report"
	"slabwright/source"
	"slabwright/working"
)

// basis puts the choices that every figure stands on at the top of the assumptions.
func (d *diagnosis) basis() {
	b := d.job.Basis
	code := b.Code
	if code == "" {
		code = "EN 1992-1-1"
	}
	d.assume("strength, shrinkage and creep", code+" for strength, EN 1992-1-1 for shrinkage and creep", "given", "chosen in basis.code", "strength at early ages by 10 % or so")
	if b.Risk == nil {
		d.assume("chance of a crack elsewhere at which the cut window closes", "10 %", string(source.Default), "not chosen in basis.risk", "the closing of the cut window")
	}
	d.assume("weights of the causes", "bands of our own judgement; observations of one finding taken as hanging together", "own", "published guides give ranges, not chances; how far the chances stated come true is shown by prove --calibration; replace the priors by your own tallies when 30 closed cases are at hand", "every chance shown")
}

// concreteSheets puts the set, strength, shrinkage and creep of the first mix that
// could be run among the workings.
func (d *diagnosis) concreteSheets() {
	run := d.firstRun()
	if run == nil {
		return
	}
	long := d.longTerm(run.mix)
	age := 365.0
	if w := d.lastWalk(); w != nil {
		age = math.Round(w.Date.Sub(*run.pour.Start).Hours() / 24)
	}
	en := run.mix.EN1992()
	shrinkage := concrete.ShrinkageEN{Mean28: en.Mean28, Class: run.mix.Class}
	for _, s := range []working.Sheet{
		concrete.SetWorking(run.mix, run.mix.PlacingTemperature),
		concrete.StrengthWorking(d.strengthModel(run.mix), 28),
		concrete.ShrinkageWorking(shrinkage, long.Member, age),
		concrete.CreepWorking(concrete.CreepEN{EN1992: en}, long.Member, 7, age),
	} {
		d.book.Add(s)
	}
}

// movementSheet is the calculation of the movement still to come.
func (d *diagnosis) movementSheet(shrinkage func(float64) float64, age, past, toCome, length, now, opening float64) working.Sheet {
	en, statics := source.Cite("en1992", "3.1.4(6)"), source.Cite("mechanics", "")
	s := working.Sheet{ID: "movement", Title: "Movement still to come", Basis: []string{
		"Base friction is left out, so the opening is an upper bound for one joint between moving panels."}}
	s.Add(
		working.New("ε_now", fmt.Sprintf("shrinkage at %.0f days", age), "1000·ε_t", 1000*past, "mm/m", en, working.In("ε_t", past, "", "")),
		working.New("ε_later", "shrinkage still to come", "1000·(ε_end - ε_now)", 1000*toCome, "mm/m", en,
			working.In("ε_end", past+toCome, "", "final"), working.In("ε_now", past, "", "so far")).
			Beside("what comes between now and 30 years", 1000*(shrinkage(thirtyYears)-past), en, "the rest comes after 30 years"),
		working.New("w", "opening of a joint by the coldest day, one mean panel feeding it", "1000·L·(ε_later + α·(T - T_c))", 1000*opening, "mm", statics,
			working.In("L", length, "m", "mean panel length"), working.In("ε_later", toCome, "", "still to come"),
			working.In("α", d.hold.expansion, "1/K", "expansion"), working.In("T", now, "°C", "slab on the day of the walk"),
			working.In("T_c", d.hold.coldest, "°C", "coldest of the year, put in")))
	return s
}

const thirtyYears = 30 * 365.0

// finish gathers what stands at the end of the content.
func (d *diagnosis) finish() *report.Content {
	d.concreteSheets()
	c := d.content
	c.Workings = d.book.Sheets
	c.Sources = d.sourcesUsed()
	for _, p := range d.job.unknowns() {
		d.lack(p.Field, strings.TrimPrefix(p.Found, "not known: "), so(p.Blocks))
	}
	for _, x := range remedies.Cautions() {
		c.Cautions = append(c.Cautions, x.Text)
	}
	d.say("done", 1)
	return c
}

func so(blocks []string) string {
	if len(blocks) == 0 {
		return "nothing depends on it"
	}
	return "so these answers are not given: " + list(blocks)
}

func sortedSources(titles map[string]source.Citation) []report.SourceRow {
	var rows []report.SourceRow
	for title, c := range titles {
		if title != "" {
			rows = append(rows, report.SourceRow{Title: title, How: string(c.How)})
		}
	}
	sort.Slice(rows, func(a, b int) bool { return rows[a].Title < rows[b].Title })
	return rows
}
