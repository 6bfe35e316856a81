package unit

import "time"

// The named types. Each is a float64 in the unit beside it; float64(x) is the way
// into a formula.
type (
	Length                float64 // m
	Stress                float64 // MPa
	Temperature           float64 // °C
	TemperatureDifference float64 // K
	Speed                 float64 // m/s
	Density               float64 // kg/m3
	DryingRate            float64 // kg/m2/h
	Force                 float64 // kN
	Pressure              float64 // kPa
	Duration              float64 // h
	Angle                 float64 // degrees
	WaterDose             float64 // L/m3
	Support               float64 // MN/m3, modulus of subgrade reaction
	Share                 float64 // 0 to 1
	Volume                float64 // m3
	Expansion             float64 // 1/K
)

func parsed[T ~float64](q Quantity, text string) (T, error) {
	v, err := Parse(q, text)
	return T(v), err
}

// ParseLength reads "6 mm", "150mm", `1/4"`, `3'-6 1/2"`, "12.5 ft".
func ParseLength(text string) (Length, error) { return parsed[Length](LengthOf, text) }

// ParseStress reads "27.6 MPa", "4000 psi".
func ParseStress(text string) (Stress, error) { return parsed[Stress](StressOf, text) }

// ParseTemperature reads "25C", "77 °F".
func ParseTemperature(text string) (Temperature, error) {
	return parsed[Temperature](TemperatureOf, text)
}

// ParseTemperatureDifference reads "15 K", "27 °F" as differences.
func ParseTemperatureDifference(text string) (TemperatureDifference, error) {
	return parsed[TemperatureDifference](DifferenceOf, text)
}

// ParseSpeed reads "20 km/h", "12 mph", "5 m/s".
func ParseSpeed(text string) (Speed, error) { return parsed[Speed](SpeedOf, text) }

// ParseDensity reads "2400 kg/m3", "564 lb/yd3".
func ParseDensity(text string) (Density, error) { return parsed[Density](DensityOf, text) }

// ParseDryingRate reads "1.0 kg/m2/h", "0.2 lb/ft2/h".
func ParseDryingRate(text string) (DryingRate, error) { return parsed[DryingRate](DryingOf, text) }

// ParseForce reads "40 kN", "9 kip", "9000 lbf".
func ParseForce(text string) (Force, error) { return parsed[Force](ForceOf, text) }

// ParsePressure reads "700 kPa", "100 psi", "7 bar".
func ParsePressure(text string) (Pressure, error) { return parsed[Pressure](PressureOf, text) }

// ParseDuration reads "9h30m", "90 min", "2 d 4 h".
func ParseDuration(text string) (Duration, error) { return parsed[Duration](DurationOf, text) }

// ParseAngle reads "30°", "12° 30'", "0.5 rad".
func ParseAngle(text string) (Angle, error) { return parsed[Angle](AngleOf, text) }

// ParseWaterDose reads "10 L/m3", "2 gal/yd3".
func ParseWaterDose(text string) (WaterDose, error) { return parsed[WaterDose](WaterOf, text) }

// ParseSupport reads "54 MN/m3", "200 pci".
func ParseSupport(text string) (Support, error) { return parsed[Support](SupportOf, text) }

// ParseShare reads "55 %" and "0.55".
func ParseShare(text string) (Share, error) { return parsed[Share](ShareOf, text) }

// ParseVolume reads "6 m3", "8 yd3".
func ParseVolume(text string) (Volume, error) { return parsed[Volume](VolumeOf, text) }

// ParseExpansion reads "10 µε/K", "5.5e-6 /°F".
func ParseExpansion(text string) (Expansion, error) { return parsed[Expansion](ExpansionOf, text) }

// Format writes the value in a system of units, see [Format].
func (x Length) Format(s System) string                { return Format(LengthOf, float64(x), s) }
func (x Stress) Format(s System) string                { return Format(StressOf, float64(x), s) }
func (x Temperature) Format(s System) string           { return Format(TemperatureOf, float64(x), s) }
func (x TemperatureDifference) Format(s System) string { return Format(DifferenceOf, float64(x), s) }
func (x Speed) Format(s System) string                 { return Format(SpeedOf, float64(x), s) }
func (x Density) Format(s System) string               { return Format(DensityOf, float64(x), s) }
func (x DryingRate) Format(s System) string            { return Format(DryingOf, float64(x), s) }
func (x Force) Format(s System) string                 { return Format(ForceOf, float64(x), s) }
func (x Pressure) Format(s System) string              { return Format(PressureOf, float64(x), s) }
func (x Angle) Format(s System) string                 { return Format(AngleOf, float64(x), s) }
func (x WaterDose) Format(s System) string             { return Format(WaterOf, float64(x), s) }
func (x Support) Format(s System) string               { return Format(SupportOf, float64(x), s) }
func (x Share) Format(s System) string                 { return Format(ShareOf, float64(x), s) }
func (x Volume) Format(s System) string                { return Format(VolumeOf, float64(x), s) }
func (x Expansion) Format(s System) string             { return Format(ExpansionOf, float64(x), s) }

// Format writes hours and minutes: "9 h 30 min"; the system makes no difference.
func (x Duration) Format(System) string { return hoursMinutes(x.Time()) }

// Time returns the duration as the standard library's type.
func (x Duration) Time() time.Duration { return time.Duration(float64(x) * float64(time.Hour)) }
