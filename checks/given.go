package checks

import (
	_ "embed"
	"fmt"

	"slabwright/internal/table"
	"slabwright/source"
	"slabwright/working"
)

//go:embed given.csv
var givenCSV string

var givenTable = table.Read("given.csv", givenCSV)

// given is one number of an input with its row of given.csv.
type given struct {
	Key  string // "thickness", or "rack.force" for a load
	row  int
	fact *source.Fact
	of   string // what it belongs to: a load's name
}

func (g given) text(column string) string    { return givenTable.Text(g.row, column) }
func (g given) number(column string) float64 { return givenTable.Number(g.row, column) }

// printed is the value in the unit it is printed and worked in.
func (g given) printed() float64 { return g.fact.Value * g.number("scale") }

// input is the number as it goes into a line.
func (g given) input() working.Input {
	i := working.In(g.text("symbol"), g.printed(), g.text("printed_unit"), g.label())
	i.Known = string(g.fact.Known)
	return i
}

// label says in words what the number is.
func (g given) label() string {
	if g.of == "" {
		return g.text("what")
	}
	return g.of + ": " + g.text("what")
}

var givenRows = func() map[string]int {
	rows := map[string]int{}
	for i := range givenTable.Rows {
		rows[givenTable.Text(i, "key")] = i
	}
	return rows
}()

// collector gathers the numbers of an input in the order they are printed.
type collector struct {
	list []given
	of   string
	pre  string
}

func (c *collector) add(key string, fact *source.Fact) {
	if fact == nil {
		return
	}
	row, ok := givenRows[key]
	if !ok {
		panic("checks: no row of given.csv for " + key)
	}
	c.list = append(c.list, given{Key: c.pre + key, row: row, fact: fact, of: c.of})
}

// givens returns every number of the input that is known. The facts pointed to are
// those of the input itself.
func (in *Input) givens() []given {
	c := &collector{}
	c.add("thickness", &in.Slab.Thickness)
	c.add("length", &in.Slab.Length)
	c.add("width", &in.Slab.Width)
	c.add("strength", &in.Concrete.Strength)
	c.add("modulus", in.Concrete.Modulus)
	c.add("poisson", &in.Concrete.Poisson)
	c.add("unit_weight", &in.Concrete.UnitWeight)
	c.add("expansion", &in.Concrete.Expansion)
	c.add("shrinkage", &in.Concrete.Shrinkage)
	c.add("support", &in.Ground.Support)
	c.add("cbr", in.Ground.CBR)
	c.add("friction", &in.Ground.Friction)
	c.add("hot", in.Use.Hot)
	c.add("cold", in.Use.Cold)
	c.add("residual", in.Use.Residual)
	in.jointGivens(c)
	in.steelGivens(c)
	for i := range in.Loads {
		in.Loads[i].givens(c)
	}
	return c.list
}

func (in *Input) jointGivens(c *collector) {
	j := &in.Joint
	c.add("transfer", j.Share)
	c.add("spacing", &j.Spacing)
	c.add("cooling", &j.Cooling)
	c.add("filler", j.Filler)
	c.add("fill_width", j.FillWidth)
	if d := j.Dowels; d != nil {
		c.add("dowel_diameter", &d.Diameter)
		c.add("dowel_length", &d.Length)
		c.add("dowel_spacing", &d.Spacing)
		c.add("dowel_support", &d.Support)
		c.add("dowel_yield", &d.Yield)
	}
}

func (in *Input) steelGivens(c *collector) {
	s := in.Steel
	if s == nil {
		return
	}
	c.add("bar_diameter", &s.Diameter)
	c.add("bar_spacing", &s.Spacing)
	c.add("cover", &s.Cover)
	c.add("yield", &s.Yield)
	c.add("free_length", &s.Free)
}

func (l *Load) givens(c *collector) {
	c.of, c.pre = l.title(), l.ID+"."
	for _, f := range []struct {
		key  string
		fact *source.Fact
	}{{"force", l.Force}, {"per_metre", l.PerMetre}, {"per_area", l.PerArea}, {"pressure", l.Pressure}, {"track", l.Track}, {"pair", l.Pair},
		{"plate_x", l.PlateX}, {"plate_y", l.PlateY}, {"pitch", l.Pitch}, {"back", l.Back}, {"passes", l.Passes}} {
		c.add(f.key, f.fact)
	}
	c.of, c.pre = "", ""
}

// title is what a load is called.
func (l *Load) title() string {
	if l.Name != "" {
		return l.Name
	}
	return fmt.Sprintf("%s %s", l.Kind, l.ID)
}

// clone returns a copy whose facts can be changed without touching the first.
func (in Input) clone() Input {
	in.Concrete.Modulus = copied(in.Concrete.Modulus)
	in.Ground.CBR = copied(in.Ground.CBR)
	in.Joint.Share, in.Joint.Filler, in.Joint.FillWidth = copied(in.Joint.Share), copied(in.Joint.Filler), copied(in.Joint.FillWidth)
	in.Use.Hot, in.Use.Cold, in.Use.Residual = copied(in.Use.Hot), copied(in.Use.Cold), copied(in.Use.Residual)
	in.Joint.Dowels, in.Steel = copied(in.Joint.Dowels), copied(in.Steel)
	in.Loads = append([]Load(nil), in.Loads...)
	for i := range in.Loads {
		l := &in.Loads[i]
		for _, f := range []**source.Fact{&l.Force, &l.PerMetre, &l.PerArea, &l.Pressure, &l.Track, &l.Pair, &l.PlateX, &l.PlateY, &l.Pitch, &l.Back, &l.Passes} {
			*f = copied(*f)
		}
	}
	return in
}

func copied[T any](p *T) *T {
	if p == nil {
		return nil
	}
	c := *p
	return &c
}
