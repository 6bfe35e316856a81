package job

import (
	"bytes"
	"fmt"
	"io/fs"
	"math"
	"strconv"
	"strings"
	"time"

	"slabwright/climate"
	"slabwright/concrete"
	"slabwright/earlyage"
	"slabwright/ground"
	"slabwright/site"
	"slabwright/source"
)

// weatherOf reads the weather of a pour: its file, or else the hours typed in, or else
// a day made from least and greatest. It is nil when the job has none of them.
func (d *diagnosis) weatherOf(i int) (*climate.Series, error) {
	p := d.job.Pours[i]
	switch {
	case p.Weather != "":
		return ReadWeather(d.files, p, d.zone)
	case len(p.WeatherHours) > 0:
		return typedWeather(p), nil
	case p.WeatherDay != nil && p.Start != nil && p.WeatherDay.Min != nil && p.WeatherDay.Max != nil:
		return d.madeWeather(p)
	}
	return nil, nil
}

// ReadWeather reads the weather file of a pour from the job's folder: a table
// (.csv), or a year in the EPW form (.epw) or the older comma form (.tmy3.csv). Lines of the
// file that start with # may say "station: NAME; kind: station; distance_m: 4200;
// height_difference_m: 6".
func ReadWeather(files fs.FS, p site.Pour, zone *time.Location) (*climate.Series, error) {
	name := "weather/" + p.Weather
	data, err := fs.ReadFile(files, name)
	if err != nil {
		return nil, fmt.Errorf("weather %q: the file is not in the job folder's weather/: %w", p.Weather, err)
	}
	origin, rest := weatherHead(data)
	if origin.Name == "" {
		origin.Name = p.Weather
	}
	year := 0
	if p.Start != nil {
		year = p.Start.Year()
	}
	switch low := strings.ToLower(p.Weather); {
	case strings.HasSuffix(low, ".epw"):
		s, err := climate.ReadEPW(bytes.NewReader(data), p.Weather, year)
		return &s, err
	case strings.HasSuffix(low, ".tmy3.csv"):
		s, err := climate.ReadTMY3(bytes.NewReader(data), p.Weather, year)
		return &s, err
	}
	s, err := climate.ReadCSV(bytes.NewReader(rest), climate.Table{Zone: zone, Source: origin, WindHeight: p.WindHeight.Or(climate.StationWindHeight)})
	if err != nil {
		return nil, err
	}
	return &s, nil
}

// weatherHead takes the # lines off the top of a weather file, leaving blank lines
// so that line numbers in messages stay true.
func weatherHead(data []byte) (climate.Origin, []byte) {
	origin := climate.Origin{Kind: climate.Station}
	lines := strings.Split(string(data), "\n")
	for i, line := range lines {
		text, ok := strings.CutPrefix(strings.TrimSpace(line), "#")
		if !ok {
			break
		}
		lines[i] = ""
		for _, part := range strings.Split(text, ";") {
			key, value, _ := strings.Cut(part, ":")
			setOrigin(&origin, strings.TrimSpace(key), strings.TrimSpace(value))
		}
	}
	return origin, []byte(strings.Join(lines, "\n"))
}

func setOrigin(o *climate.Origin, key, value string) {
	number := func() *float64 {
		v, err := strconv.ParseFloat(value, 64)
		if err != nil {
			return nil
		}
		return &v
	}
	switch key {
	case "station":
		o.Name = value
	case "kind":
		o.Kind = climate.Kind(value)
	case "distance_m":
		o.Distance = number()
	case "height_difference_m":
		o.Higher = number()
	}
}

// concreteMix turns the facts of a mix into the numbers of the model. What is not
// known is the usual value for its strength, and is among the assumptions.
func (d *diagnosis) concreteMix(f site.Mix) (concrete.Mix, error) {
	cement := f.CementType.Or("")
	if _, ok := concrete.TypicalCement(cement); !ok {
		named := cement
		cement = "CEM I 42.5N"
		why := "not given; the usual cement for a yard"
		if named != "" {
			why = fmt.Sprintf("%q is not in the table of cements", named)
		}
		d.assume("cement", cement+", its composition typical", string(source.Default), why, "set by about an hour, heat by 10 %")
	} else {
		d.assume("cement composition", "typical of "+cement, string(source.Default), "no mill certificate", "set by about an hour, heat by 10 %")
	}
	m, err := concrete.DefaultMix(f.Strength.Value, cement)
	if err != nil {
		return m, err
	}
	const moves = "heat and set a little"
	m.Name = f.Name
	m.BinderContent = d.use(f.Cement, m.BinderContent, "binder", " kg/m³", "not given; usual for the strength", moves)
	m.Water = d.use(f.Water, f.WaterCement.Or(m.Water/m.BinderContent)*m.BinderContent, "water", " kg/m³", "not given; from w/c or usual for the strength", moves)
	m.Aggregate = d.use(f.Aggregate, m.Aggregate, "aggregate", " kg/m³", "not given; fills the volume", "very little")
	m.Slump = 1000 * f.Slump.Or(m.Slump/1000)
	m.Air = f.Air.Or(m.Air)
	m.SetShift = f.SetShift.Or(0)
	if f.CementClass != nil {
		m.Class = concrete.CementClass(f.CementClass.Value)
	}
	if slag, ash, fume := f.Slag.Or(0), f.FlyAsh.Or(0), f.SilicaFume.Or(0); slag+ash+fume > 0 {
		m.Binder = m.Binder.WithSCM(slag, ash, ashLime, fume)
	}
	if m, err = m.WithAggregate(f.AggregateKind.Or("unknown")); err != nil {
		return m, err
	}
	if f.Expansion != nil {
		m.Expansion = f.Expansion.Value
	} else {
		d.assume("thermal expansion of concrete", fmt.Sprintf("%.1f·10⁻⁶ /K (%.1f to %.1f)", 1e6*m.Expansion, 1e6*m.ExpansionLow, 1e6*m.ExpansionHigh),
			string(source.Default), "usual for "+f.AggregateKind.Or("unknown")+" aggregate", "thermal strain in proportion")
	}
	return m, nil
}

// ashLime is the lime (CaO) share put in for fly ash: siliceous ash, from memory.
const ashLime = 0.05

// column follows the slab through its depth, as expected and with its uncertain
// facts spread.
func (p *pourRun) column() error {
	d := p.d
	long := d.longTerm(p.mix)
	from, to := p.weather.Series.Span()
	if p.pour.Start.Before(from) || p.centre.Add(12*time.Hour).After(to) {
		return fmt.Errorf("weather %q runs from %s to %s and does not cover the pour from %s and the 12 h after it; add the hours that are missing",
			p.pour.Weather, d.clock(from), d.clock(to), d.clock(*p.pour.Start))
	}
	until := math.Min(runHours, math.Floor(to.Sub(p.centre).Hours()))
	if until < runHours {
		p.day.NotGiven = append(p.day.NotGiven, fmt.Sprintf("The weather record ends %.0f h after placing; nothing is given after that.", until))
	}
	c := earlyage.Column{
		Concrete:  earlyage.FromMix(p.mix, d.withCylinders(d.strengthModel(p.mix), p.pour.Mix), long, d.slab.Thickness.Value),
		Thickness: d.slab.Thickness.Value, Below: d.layers(),
		Placed: p.centre, PlacingTemperature: p.mix.PlacingTemperature, Ground: d.groundTemperature(p),
		Weather: earlyage.FromExposure(p.weather), WindFactor: 1,
		Absorptivity: earlyage.DefaultAbsorptivity, Emissivity: earlyage.DefaultEmissivity,
		Covers: p.covers(), Drying: climate.DryingUno, Until: until,
	}
	p.day.Doubts = append(p.day.Doubts, c.Doubts()...)
	p.model = earlyage.Pour{Column: c, Restraint: d.restraint(p), Doubt: p.doubt(), Observed: p.observed(),
		Count: d.job.Basis.Members, Seed: d.job.Basis.Seed}
	var err error
	if p.members, err = earlyage.RunMembers(d.ctx, p.model); err != nil {
		return err
	}
	p.history = p.members.Expected()
	if p.brief {
		return nil
	}
	return p.profiles(c)
}

// longTerm is the shrinkage and creep of the slab by EN 1992-1-1.
func (d *diagnosis) longTerm(m concrete.Mix) earlyage.LongTerm {
	return earlyage.ENLongTerm(m, d.slab.Thickness.Value, d.yearHumidity(), dryingFromDays)
}

// dryingFromDays is the age at which drying shrinkage starts: a day of curing
// compound holds back little more. Our own judgement.
const dryingFromDays = 1.0

// yearHumidity is the mean humidity the slab dries to over the years.
func (d *diagnosis) yearHumidity() float64 {
	humidity, name := 0.75, "outdoors"
	if d.exposure() == "indoor" {
		humidity, name = 0.50, "indoors"
	}
	d.assume("mean humidity over the years", fmt.Sprintf("%.0f %%", 100*humidity), string(source.Default), "usual "+name, "long-term shrinkage by about 1 % per 1 % of humidity")
	return humidity
}

func (d *diagnosis) strengthModel(m concrete.Mix) concrete.StrengthModel {
	switch d.job.Basis.Code {
	case "ACI":
		return concrete.NewACI209(m.Characteristic+aciExcess, "I moist")
	case "AS 3600":
		return concrete.NewAS3600(m.Characteristic, m.Class)
	case "MC2010":
		return concrete.NewMC2010(m.Characteristic, m.CementStrength, 1)
	}
	return m.EN1992()
}

// aciExcess is the mean strength over the specified one put in for the ACI model,
// MPa; ACI 318 requires about 8 for concrete of 21 to 35 MPa without records.
const aciExcess = 8.0

// layers are what lies under the slab for the heat, 2 m deep and more.
func (d *diagnosis) layers() []earlyage.Layer {
	base := d.use(d.job.Ground.BaseDepth, 0.15, "depth of base", " m", "not given; usual", "slab temperature by less than 1 K")
	soil := soilWord(d.job.Ground.Soil.Or(""))
	if d.job.Ground.Soil == nil {
		d.assume("soil", soil, string(source.Default), "not given", "slab temperature by less than 1 K")
	}
	rock, _ := ground.SoilOf("crushed rock base")
	below, _ := ground.SoilOf(soil)
	return []earlyage.Layer{
		{Name: rock.Name, Thickness: base, Conductivity: rock.Conductivity.Value, Capacity: rock.HeatCapacity()},
		{Name: below.Name, Thickness: 2.2, Conductivity: below.Conductivity.Value, Capacity: below.HeatCapacity()},
	}
}

// soilWord maps the job's word for the soil to a row of the soil table.
func soilWord(word string) string {
	switch word {
	case "sand":
		return "moist sand"
	case "gravel":
		return "moist gravel"
	case "rock":
		return "rock"
	}
	return "moist clay"
}

// groundTemperature is what the ground has when the slab is placed: the mean air of
// the day before at its surface, easing into the deep ground within half a metre.
// Own reading of the damping of a few days' weather.
func (d *diagnosis) groundTemperature(p *pourRun) func(float64) float64 {
	surface := d.meanAir(p, p.pour.Start.Add(-24*time.Hour), *p.pour.Start)
	deep := d.use(d.job.Ground.GroundTemp, surface, "ground temperature", " °C", "not measured; mean air of the day before", "slab temperature by about a fifth of the error")
	const easing = 0.4 // m
	return func(depth float64) float64 { return deep + (surface-deep)*math.Exp(-depth/easing) }
}

// meanAir is the mean air temperature over what the record has of a span.
func (d *diagnosis) meanAir(p *pourRun, from, to time.Time) float64 {
	start, _ := p.weather.Series.Span()
	if from.Before(start) {
		from = start
	}
	sum, n := 0.0, 0.0
	for t := from; !t.After(to); t = t.Add(time.Hour) {
		if h, err := p.weather.Series.At(t); err == nil {
			sum, n = sum+h.Air, n+1
		}
	}
	if n == 0 {
		h, _ := p.weather.Series.At(*p.pour.Start)
		return h.Air
	}
	return sum / n
}

// covers are the curing measures as hours after the middle of the pour.
func (p *pourRun) covers() []earlyage.Cover {
	var all []earlyage.Cover
	for _, c := range p.pour.Cure {
		if c.On == nil {
			continue
		}
		cover, ok := earlyage.TypicalCover(coverWord(c.Kind))
		if !ok {
			p.day.NotGiven = append(p.day.NotGiven, fmt.Sprintf("Cure %q is not in the table of covers and was left out of the slab's temperature.", c.Kind))
			continue
		}
		cover.On = c.On.Sub(p.centre).Hours()
		if c.Off != nil {
			cover.Off = c.Off.Sub(p.centre).Hours()
		}
		all = append(all, cover)
	}
	return all
}

func coverWord(kind string) string {
	if kind == "hessian" {
		return "hessian-wet"
	}
	return kind
}

// restraint is what holds the uncut strip: base friction over the strip's length.
func (d *diagnosis) restraint(p *pourRun) earlyage.Restraint {
	mu, low, high := d.friction()
	return earlyage.Restraint{UncutLength: d.stripLength(p), Friction: mu, FrictionLow: low, FrictionHigh: high,
		UnitWeight: d.unitWeight(), BedStiffness: bedStiffness, Subgrade: d.support() / 1000}
}

// bedStiffness is the shear stiffness of a base before it slips, N/mm3: slip is
// complete within about half a millimetre in push-off tests. Own judgement.
const bedStiffness = 0.05

func (d *diagnosis) friction() (value, low, high float64) {
	if f := d.job.Ground.Friction; f != nil {
		low, high = f.Bounds()
		return d.use(f, 0, "friction of the base", "", "", "base friction stress in proportion"), low, high
	}
	f := usualFriction(d.job.Ground)
	d.assume("friction of the base", fmt.Sprintf("%.2f (%.2f to %.2f), %s", f.Value, f.Low, f.High, f.Base), string(source.Default), "not measured", "base friction stress in proportion")
	return f.Value, f.Low, f.High
}

// usualFriction is the friction of a base that nobody measured: that of the sheet on it,
// else of the base itself, else of crushed stone.
func usualFriction(g site.Ground) ground.Friction {
	word := g.Base.Or("crushed stone")
	if word == "stabilised" {
		word = "cement-stabilised"
	}
	switch g.Membrane.Or("none") {
	case "one sheet":
		word = "one sheet polyethylene"
	case "two sheets":
		word = "two sheets polyethylene"
	}
	f, ok := ground.FrictionOf(word)
	if !ok {
		f, _ = ground.FrictionOf("crushed stone")
	}
	return f
}

func (d *diagnosis) support() float64 {
	return d.use(d.job.Ground.Support, ground.DefaultSupport().Modulus, "modulus of subgrade reaction", " MN/m³", "not measured; CBR about 6", "curl and wheel stress by about a tenth for a factor of two")
}

// unitWeight is the weight of the concrete, kN/m3.
func (d *diagnosis) unitWeight() float64 {
	for _, m := range d.job.Mixes {
		if m.Density != nil {
			return m.Density.Value * gravity / 1000
		}
	}
	return 24
}

const gravity = 9.81

func (d *diagnosis) clock(t time.Time) string { return t.In(d.zone).Format("Mon 2 Jan 15:04") }
