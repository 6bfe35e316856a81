package climate

import (
	"errors"
	"fmt"
	"math"
	"time"
)

// Exposure is a slab in its weather: the record, the place, and what stands between
// the slab and the sky.
type Exposure struct {
	Series    Series
	Place     Place
	Roughness float64   // of the ground around [m]; 0 is read as RoughnessOpenGround
	Turbidity float64   // Linke turbidity; 0 is read as TypicalTurbidity
	Sky       SkyForm   // zero value: the first of SkyForms
	CloudElse float64   // share of cloud where the record knows neither cloud nor sun
	Shelters  []Shelter // in any order; where two overlap their shares multiply
}

// Shelter is something that keeps sun, sky or wind from the slab for a while: a
// roof, a wall's shadow in the afternoon, a tent, a windbreak. Shares are of what
// arrives without it, 1 for no effect.
type Shelter struct {
	From, To time.Time // To is not included; zero times: always
	Beam     float64   // share of the direct sun let through
	Sky      float64   // share of the sky in view
	Wind     float64   // share of the wind felt
	Note     string
}

// Roof returns a shelter over the slab at all times that lets no beam through and
// leaves a share of the sky in view at its sides.
func Roof(skyInView, wind float64) Shelter {
	return Shelter{Beam: 0, Sky: skyInView, Wind: wind, Note: "under a roof"}
}

// Feel is what the surface of the slab feels at an instant.
type Feel struct {
	Time       time.Time
	Air        float64 // °C
	Humidity   float64 // 0..1
	DewPoint   float64 // °C
	Vapour     float64 // kPa
	WindAtSlab float64 // m/s, SlabWindHeight above the slab
	SolarDown  float64 // sun on the slab, direct and from the sky, W/m2
	SkyDown    float64 // heat radiated on the slab by sky and shelter, W/m2
	Rain       float64 // mm/h, NaN when not known
	Cloud      float64 // share of cloud used
	Zenith     float64 // sun from overhead, degrees
	Azimuth    float64 // bearing of the sun clockwise from north, degrees
	SunFrom    Basis   // where the sun came from
	CloudFrom  Basis   // where the cloud came from
}

// Basis says where a value came from.
type Basis string

// Where the sun and the cloud of a [Feel] came from.
const (
	FromRecord   Basis = "measured"
	FromClearSky Basis = "clear sky and cloud"
	FromSun      Basis = "judged from the sun measured"
	FromDusk     Basis = "judged from the sun measured before dusk"
	FromElse     Basis = "assumed, the record does not know it"
)

// Check returns everything that keeps the exposure from being used.
func (e Exposure) Check() error {
	errs := []error{e.Place.Check()}
	if !(e.Series.WindHeight >= SlabWindHeight/5 && e.Series.WindHeight <= 200) {
		errs = append(errs, fmt.Errorf("wind height %g m is outside 0.1 to 200 m: give the height of the instrument, 10 m for a weather station", e.Series.WindHeight))
	}
	if z := e.roughness(); !(z > 0 && z < 0.1) {
		errs = append(errs, fmt.Errorf("roughness %g m is outside 0 to 0.1 m: 0.03 is open ground, 0.005 a bare slab; behind buildings give a shelter", z))
	}
	if !(e.CloudElse >= 0 && e.CloudElse <= 1) {
		errs = append(errs, fmt.Errorf("cloud %g is outside 0–1", e.CloudElse))
	}
	if tl := e.turbidity(); !(tl >= 1 && tl <= 10) {
		errs = append(errs, fmt.Errorf("turbidity %g is outside 1 to 10: 3 is clean air", tl))
	}
	for _, s := range e.Shelters {
		if !(s.Beam >= 0 && s.Beam <= 1 && s.Sky >= 0 && s.Sky <= 1 && s.Wind >= 0 && s.Wind <= 3) {
			errs = append(errs, fmt.Errorf("shelter %q: shares of beam %g and sky %g must be 0 to 1, of wind %g from 0 to 3", s.Note, s.Beam, s.Sky, s.Wind))
		}
	}
	for _, d := range e.Series.Doubtful() {
		if d.Impossible {
			errs = append(errs, errors.New(d.String()))
		}
	}
	return errors.Join(errs...)
}

// At returns what the slab feels at an instant within the record. Sun measured is
// used where there is any; else the clear sky of the place weakened by cloud. A sky
// radiation measured is used likewise; else the chosen form with cloud.
func (e Exposure) At(t time.Time) (Feel, error) {
	h, err := e.Series.At(t)
	if err != nil {
		return Feel{}, err
	}
	beam, sky, wind := e.shares(t)
	f := Feel{Time: h.Time, Air: h.Air, Humidity: math.Min(1, h.Humidity), Rain: h.Rain}
	f.Vapour, f.DewPoint = VapourPressure(f.Air, f.Humidity), DewPoint(f.Air, f.Humidity)
	f.WindAtSlab = h.Wind * wind * WindReduction(SlabWindHeight, e.Series.WindHeight, e.roughness())
	f.Zenith, f.Azimuth = SunPosition(t, e.Place.Latitude, e.Place.Longitude)

	f.Cloud, f.CloudFrom = e.cloud(h)
	var sun Irradiance
	sun, f.SunFrom = e.sun(h, f.Zenith, f.Cloud)
	f.SolarDown = sun.Direct*math.Max(0, math.Cos(radians(f.Zenith)))*beam + sun.Diffuse*sky

	open := h.Sky
	if !(open > 0) {
		open = SkyRadiation(CloudedEmissivity(e.sky().Emissivity(f.Air, f.Humidity), f.Cloud), f.Air)
	}
	// what hides the sky is about as warm as the air and radiates like a black body
	f.SkyDown = sky*open + (1-sky)*SkyRadiation(1, f.Air)
	return f, nil
}

// Between returns what the slab feels at every step from one instant to another,
// both included where the step meets them. Work it once and interpolate when many
// runs share one weather.
func (e Exposure) Between(from, to time.Time, step time.Duration) ([]Feel, error) {
	if step <= 0 {
		panic("climate: Between needs a step above zero")
	}
	if to.Before(from) {
		return nil, fmt.Errorf("exposure from %s to %s: the end is before the start", stamp(from), stamp(to))
	}
	feels := make([]Feel, 0, to.Sub(from)/step+1)
	for t := from; !t.After(to); t = t.Add(step) {
		f, err := e.At(t)
		if err != nil {
			return nil, err
		}
		feels = append(feels, f)
	}
	return feels, nil
}

// lowSun is the zenith in degrees beyond which the sun is too low to judge cloud
// from it.
const lowSun = 80

// longestNight is how far back a night looks for the cloud of the last daylight.
const longestNight = 18

// cloud returns the share of cloud and how it is known.
func (e Exposure) cloud(h Hour) (float64, Basis) {
	if !math.IsNaN(h.Cloud) {
		return h.Cloud, FromRecord
	}
	for back := 0; back <= longestNight; back++ {
		t := h.Time.Add(-time.Duration(back) * time.Hour)
		zenith, _ := SunPosition(t, e.Place.Latitude, e.Place.Longitude)
		if zenith >= lowSun {
			continue
		}
		past, err := e.Series.At(t)
		if err != nil || math.IsNaN(past.Sun) {
			break
		}
		from := FromSun
		if back > 0 {
			from = FromDusk
		}
		return CloudFromSun(past.Sun, e.clearSky(t, zenith).Global), from
	}
	return e.CloudElse, FromElse
}

// clearSky returns the sun over the place under a clear sky.
func (e Exposure) clearSky(t time.Time, zenith float64) Irradiance {
	return ClearSkyIneichen(zenith, e.Place.Altitude, AirPressure(e.Place.Altitude), e.turbidity(), outsideSun(t))
}

// outsideSun returns the sun outside the air, square to its beam, in W/m2.
func outsideSun(t time.Time) float64 { return SolarConstant * SunDistanceFactor(DayOfYear(t)) }

// sun returns the sun over the open slab, measured or made, cut into beam and sky.
func (e Exposure) sun(h Hour, zenith, cloud float64) (Irradiance, Basis) {
	clear, from := e.clearSky(h.Time, zenith), FromRecord
	global := math.Max(0, h.Sun)
	if math.IsNaN(h.Sun) {
		global, from = clear.Global*CloudedSun(cloud), FromClearSky
		if cloud == 0 { // the clear sky's own split is better than a mean one
			return clear, from
		}
	}
	cosZenith := math.Cos(radians(zenith))
	if cosZenith < 0.05 { // near the horizon a beam cannot be told from an hourly mean
		return Irradiance{Global: global, Diffuse: global}, from
	}
	diffuse := global * DiffuseShare(global/(outsideSun(h.Time)*cosZenith))
	return Irradiance{Global: global, Diffuse: diffuse, Direct: (global - diffuse) / cosZenith}, from
}

// shares returns what the shelters leave of beam, sky and wind at an instant.
func (e Exposure) shares(t time.Time) (beam, sky, wind float64) {
	beam, sky, wind = 1, 1, 1
	for _, s := range e.Shelters {
		if (s.From.IsZero() || !t.Before(s.From)) && (s.To.IsZero() || t.Before(s.To)) {
			beam, sky, wind = beam*s.Beam, sky*s.Sky, wind*s.Wind
		}
	}
	return beam, sky, wind
}

func (e Exposure) roughness() float64 {
	if e.Roughness == 0 {
		return RoughnessOpenGround
	}
	return e.Roughness
}

func (e Exposure) turbidity() float64 {
	if e.Turbidity == 0 {
		return TypicalTurbidity
	}
	return e.Turbidity
}

func (e Exposure) sky() SkyForm {
	if e.Sky.emissivity == nil {
		return SkyForms()[0]
	}
	return e.Sky
}
