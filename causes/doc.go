// Package causes ranks why a slab cracked, says what speaks for and against each
// cause, what is missing, which test would tell most, and who could have
// prevented it.
//
// In go [Observation]s of one finding: what was seen and measured on the walk
// ([FromSeen]), what follows from its place on the plan ([FromPlan]), what the
// record of the pour and the weather says ([FromPour]). Out comes a [Ranking]
// from [Rank]: a chance with its range for every cause of the catalogue, in two
// layers (mechanism: what pulled it apart; trigger: why here and then), or the
// plain answer that it cannot be told yet, with the tests that would.
// [RankSlab] lets the findings of one slab explain each other, [Hands] sets the
// parties' departures beside the ranking.
//
// The catalogue is data (tables/*.csv); how often each sign is met under each
// cause is in tables/bands.txt and is our own judgement, ordered to agree with
// published rules. A sign nobody looked for is left out, never taken as absent.
//
// It leaves out the physics (chances computed elsewhere enter through
// [Evidence.Physics]), remedies, and any word on liability.
package causes
