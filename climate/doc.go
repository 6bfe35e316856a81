// Package climate turns a record of weather into what the surface of a slab
// feels, hour by hour: air, humidity, wind at the slab, sun, sky and drying rate.
//
// In goes a [Series] of hours, read by [ReadCSV], [ReadEPW] or [ReadTMY3], or made
// by [MakeDays] from the least and greatest temperature of a day. An [Exposure]
// lays the series on a place with its shade, shelter and roughness, and
// [Exposure.At] gives the [Feel] at any instant; [Surroundings] turns walls, buildings
// and roofs on the plan into its shelters by the hour. [DryingDay] lists the drying rate
// of a day by every published form, with the hours above a limit; [FilmHistory] sets
// it against the bleeding. [Repeat] lays a year end to end for runs over years, and
// [Series.Gaps], [Series.Doubtful] and [Origin.Cautions] say what not to trust.
//
// The formulas stand on their own as functions of plain arguments, one equation
// each: vapour ([SaturationPressure], [DewPoint], [WetBulb]), sun ([SunPosition],
// [ClearSkyIneichen]), sky ([SkyForms], [SkyRadiation]), wind
// ([WindReduction]), surface film ([FilmBentz], [FilmASTMC680]), soil
// ([GroundTemperature]), drying ([Uno], [UnoUS], [Menzel], [MenzelUS]).
//
// Temperatures are in °C, humidity is a fraction from 0 to 1, wind is in m/s,
// radiation in W/m2, drying in kg/m2/h. What nobody knows is NaN in a record and
// is never taken for zero. Times are UTC instants.
//
// Left out: the temperature the concrete itself takes, which needs the heat of the
// slab and stands with the early-age model; and any fetching of weather.
package climate
