package climate

import "math"

// CloudedSun returns the share of the clear-sky sun that reaches level ground
// through cloud: a quarter under full cover.
//
//	cloud  share of the sky covered [0..1]
//
// A mean over many days; one cloud before the sun does more, one beside it less.
// With the total cover of three typical years in the United States it gave 5 to
// 14 % less sun in the year than the files, so a measured sun always goes first.
//
// Source: Kasten and Czeplak, Solar Energy 24 (1980). From memory.
func CloudedSun(cloud float64) float64 { return 1 - 0.75*math.Pow(cloud, 3.4) }

// CloudFromSun returns the share of sky covered, judged from the sun measured and
// the sun a clear sky would give, as the correction of sky radiation wants it.
//
//	measured, clear  sun on level ground [W/m2]; clear above 0
//
// Source: Crawford and Duchon, Journal of Applied Meteorology 38 (1999). From
// memory.
func CloudFromSun(measured, clear float64) float64 {
	return math.Max(0, math.Min(1, 1-measured/clear))
}

// DiffuseShare returns the share of the sun on level ground that comes from the
// sky rather than straight from the sun.
//
//	clearness  sun on level ground over the sun outside the air on level [0..1]
//
// Source: Erbs, Klein and Duffie, Solar Energy 28 (1982). From memory.
func DiffuseShare(clearness float64) float64 {
	k := math.Max(0, clearness)
	switch {
	case k <= 0.22:
		return 1 - 0.09*k
	case k <= 0.80:
		return 0.9511 - 0.1604*k + 4.388*k*k - 16.638*k*k*k + 12.336*k*k*k*k
	}
	return 0.165
}
