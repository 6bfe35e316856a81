// Package site holds the facts of a commission that are not the slab's shape and
// not what was seen: where it is, who took part, the mix, the ground, and each
// pour with its clock (trucks, finishing, curing, sawing, departures).
//
// Facts go in and out as they stand in the job file. It holds no physics and
// draws no conclusion; a fact that nobody knows is absent.
package site

import (
	"time"

	"slabwright/plan"
	"slabwright/source"
)

// Place is where and how the slab lies.
type Place struct {
	Name      string         `json:"name"`
	Latitude  *source.Fact   `json:"latitude_deg,omitempty"`  // north positive
	Longitude *source.Fact   `json:"longitude_deg,omitempty"` // east positive
	Altitude  *source.Fact   `json:"altitude_m,omitempty"`
	Zone      string         `json:"zone"`                // IANA name of the site's time zone
	Exposure  *source.Choice `json:"exposure,omitempty"`  // external, indoor
	Frost     *source.Choice `json:"frost,omitempty"`     // none, frost, frost and salt
	Traffic   *source.Choice `json:"traffic,omitempty"`   // none, foot, cars, lorries, hard wheels
	Obstacles []Obstacle     `json:"obstacles,omitempty"` // what keeps sun, sky and wind off the slab
}

// Obstacle is something beside or over the slab: a building, wall, canopy, fence or
// row of trees, by its outline on the axes of the plan.
type Obstacle struct {
	Name    string       `json:"name"`
	Outline []plan.Point `json:"outline_m"`
	Height  *source.Fact `json:"height_m,omitempty"`   // of its top above the slab
	Under   *source.Fact `json:"clear_m,omitempty"`    // clear height below it; absent: it stands on the ground
	Through *source.Fact `json:"sun_share,omitempty"`  // of the direct sun let through; absent: none
	Porous  *source.Fact `json:"wind_share,omitempty"` // of it open to the wind; absent: none
}

// Role is the part a party played.
type Role string

// Roles, in the order of the work.
const (
	Designer   Role = "designer"
	Specifier  Role = "specifier"
	Supplier   Role = "supplier"
	Placer     Role = "placer"
	Finisher   Role = "finisher"
	SawCrew    Role = "saw crew"
	Curing     Role = "curing crew"
	Supervisor Role = "inspector"
	User       Role = "user"
)

// Roles lists every role in the order of the work.
var Roles = []Role{Designer, Specifier, Supplier, Placer, Finisher, SawCrew, Curing, Supervisor, User}

// Party is one hand in the chain.
type Party struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Does []Role `json:"does"`
}

// Mix is the concrete as ordered and as tested.
type Mix struct {
	ID            string         `json:"id"`
	Name          string         `json:"name,omitempty"`
	Strength      *source.Fact   `json:"strength_MPa,omitempty"` // characteristic cylinder strength, fck
	CementType    *source.Choice `json:"cement_type,omitempty"`  // CEM I, CEM II/A, type I ...
	CementClass   *source.Choice `json:"cement_class,omitempty"` // S, N, R
	Cement        *source.Fact   `json:"cement_kg_m3,omitempty"`
	Water         *source.Fact   `json:"water_kg_m3,omitempty"`
	WaterCement   *source.Fact   `json:"water_cement,omitempty"`
	Aggregate     *source.Fact   `json:"aggregate_kg_m3,omitempty"`
	AggregateKind *source.Choice `json:"aggregate_kind,omitempty"` // quartzite, limestone, basalt, sandstone
	FlyAsh        *source.Fact   `json:"fly_ash_share,omitempty"`  // of binder, 0-1
	Slag          *source.Fact   `json:"slag_share,omitempty"`
	SilicaFume    *source.Fact   `json:"silica_fume_share,omitempty"`
	SetShift      *source.Fact   `json:"set_shift_h,omitempty"` // admixture: later +, earlier -
	Slump         *source.Fact   `json:"slump_m,omitempty"`
	Air           *source.Fact   `json:"air_share,omitempty"`
	Expansion     *source.Fact   `json:"expansion_per_K,omitempty"`
	Density       *source.Fact   `json:"density_kg_m3,omitempty"`
	Cylinders     []Cylinder     `json:"cylinders,omitempty"`
}

// Cylinder is one strength test.
type Cylinder struct {
	AgeDays  float64     `json:"age_d"`
	Strength source.Fact `json:"strength_MPa"`
}

// Ground is what the slab lies on.
type Ground struct {
	Base       *source.Choice `json:"base,omitempty"` // crushed stone, sand, natural soil, stabilised ...
	BaseDepth  *source.Fact   `json:"base_m,omitempty"`
	Membrane   *source.Choice `json:"membrane,omitempty"` // none, one sheet, two sheets
	Friction   *source.Fact   `json:"friction,omitempty"`
	Support    *source.Fact   `json:"support_MN_m3,omitempty"` // modulus of subgrade reaction k
	CBR        *source.Fact   `json:"cbr_percent,omitempty"`   // bearing ratio of the subgrade
	Soil       *source.Choice `json:"soil,omitempty"`          // sand, gravel, clay, rock
	Condition  *source.Choice `json:"condition,omitempty"`     // uniform, fill or trench, expansive, frost susceptible
	GroundTemp *source.Fact   `json:"ground_C,omitempty"`      // at 1-2 m
}

// Planned is what the drawings and specification asked for.
type Planned struct {
	SawWithin    *source.Fact   `json:"saw_within_h,omitempty"` // after placing
	SawDepth     *source.Fact   `json:"saw_depth_m,omitempty"`
	MaxWater     *source.Fact   `json:"max_water_cement,omitempty"`
	WaterOnSite  *source.Choice `json:"water_on_site,omitempty"` // not allowed, by ... only
	Cure         *source.Choice `json:"cure,omitempty"`
	CureWithin   *source.Fact   `json:"cure_within_h,omitempty"` // of finishing
	Cover        *source.Fact   `json:"cover_m,omitempty"`
	Thickness    *source.Fact   `json:"thickness_m,omitempty"`
	MaxDrying    *source.Fact   `json:"max_drying_kg_m2_h,omitempty"`
	Isolation    *source.Choice `json:"isolation,omitempty"`     // at all fixtures, none drawn
	CornerJoints *source.Choice `json:"corner_joints,omitempty"` // at all inside corners, not drawn
	DowelClear   *source.Fact   `json:"dowels_clear_of_crossing_m,omitempty"`
	WheelLoad    *source.Fact   `json:"wheel_load_kN,omitempty"`
}

// Wheel is the heaviest single wheel in use.
type Wheel struct {
	Load     *source.Fact `json:"load_kN,omitempty"`
	Pressure *source.Fact `json:"pressure_MPa,omitempty"`
}

// Pour is one placement with its clock.
type Pour struct {
	ID           string        `json:"id"`
	Name         string        `json:"name"`
	Area         []plan.Point  `json:"area_m"`
	Mix          string        `json:"mix"`
	Start        *time.Time    `json:"start,omitempty"`
	End          *time.Time    `json:"end,omitempty"`
	FinishStart  *time.Time    `json:"finish_start,omitempty"`
	FinishEnd    *time.Time    `json:"finish_end,omitempty"`
	Concrete     *source.Fact  `json:"concrete_C,omitempty"` // at placing
	Weather      string        `json:"weather,omitempty"`    // file in weather/
	WindHeight   *source.Fact  `json:"wind_height_m,omitempty"`
	WeatherHours []WeatherHour `json:"weather_hours,omitempty"` // typed in, when there is no file
	WeatherDay   *WeatherDay   `json:"weather_day,omitempty"`   // least and greatest, when there is neither
	Bleed        *source.Fact  `json:"bleed_kg_m2,omitempty"`   // in all
	Trucks       []Truck       `json:"trucks,omitempty"`
	Saw          []Cut         `json:"saw,omitempty"`
	Cure         []Cover       `json:"cure,omitempty"`
	Temps        []Probe       `json:"concrete_temperatures,omitempty"`
	InitialSet   *time.Time    `json:"initial_set,omitempty"` // as measured at the slab
	FinalSet     *time.Time    `json:"final_set,omitempty"`
	TrialCuts    []TrialCut    `json:"trial_cuts,omitempty"`
	Departures   []Departure   `json:"departures,omitempty"`
}

// Truck is one load.
type Truck struct {
	Ticket     string       `json:"ticket"`
	Batched    *time.Time   `json:"batched,omitempty"`
	Arrived    *time.Time   `json:"arrived,omitempty"`
	Started    *time.Time   `json:"started,omitempty"`
	Finished   *time.Time   `json:"finished,omitempty"`
	Volume     *source.Fact `json:"volume_m3,omitempty"`
	Slump      *source.Fact `json:"slump_m,omitempty"`
	Concrete   *source.Fact `json:"concrete_C,omitempty"`
	WaterAdded *source.Fact `json:"water_added_L_m3,omitempty"` // 0 is an answer
	AskedBy    string       `json:"asked_by,omitempty"`         // party id
	Area       []plan.Point `json:"area_m,omitempty"`           // where it went
}

// Cut is one joint sawn.
type Cut struct {
	Joint string         `json:"joint"`
	Start *time.Time     `json:"start,omitempty"`
	End   *time.Time     `json:"end,omitempty"`
	Depth *source.Fact   `json:"depth_m,omitempty"`
	Saw   *source.Choice `json:"saw,omitempty"`  // wet, early-entry
	Edge  *source.Choice `json:"edge,omitempty"` // clean, ravelled
	By    string         `json:"by,omitempty"`
	Note  string         `json:"note,omitempty"`
}

// Cover is one curing measure going on and off.
type Cover struct {
	Kind string     `json:"kind"` // compound, plastic, hessian, fog
	On   *time.Time `json:"on,omitempty"`
	Off  *time.Time `json:"off,omitempty"`
	By   string     `json:"by,omitempty"`
	Note string     `json:"note,omitempty"`
}

// TrialCut is a short cut made to see whether the edge holds.
type TrialCut struct {
	At   *time.Time     `json:"at,omitempty"`
	Saw  *source.Choice `json:"saw,omitempty"`  // wet, early-entry
	Edge *source.Choice `json:"edge,omitempty"` // clean, ravelled
}

// WeatherHour is one line of weather typed in: read on site, or off a forecast.
type WeatherHour struct {
	At       time.Time    `json:"at"`
	Air      source.Fact  `json:"air_C"`
	Humidity source.Fact  `json:"humidity_share"`
	Wind     source.Fact  `json:"wind_m_s"` // at the wind height of the pour
	Cloud    *source.Fact `json:"cloud_share,omitempty"`
	Sun      *source.Fact `json:"sun_W_m2,omitempty"`
}

// WeatherDay is what a person knows of the weather without an hourly record; the days
// round the pour are taken alike.
type WeatherDay struct {
	Min       *source.Fact `json:"min_C,omitempty"` // at sunrise
	Max       *source.Fact `json:"max_C,omitempty"` // in the afternoon
	DewPoint  *source.Fact `json:"dew_point_C,omitempty"`
	WindCalm  *source.Fact `json:"wind_calm_m_s,omitempty"` // at sunrise, 10 m up
	WindBlown *source.Fact `json:"wind_m_s,omitempty"`      // in the afternoon
	Cloud     *source.Fact `json:"cloud_share,omitempty"`
}

// Probe is one concrete temperature read.
type Probe struct {
	At    time.Time   `json:"at"`
	Depth float64     `json:"depth_m"`
	Temp  source.Fact `json:"temperature_C"`
}

// Departure is something done other than planned. It is taken to reach the joints
// or the area named, or else the whole of its pour.
type Departure struct {
	ID     string       `json:"id"`
	At     *time.Time   `json:"at,omitempty"`
	What   string       `json:"what"`
	Party  string       `json:"party,omitempty"` // who held it
	Joints []string     `json:"joints,omitempty"`
	Area   []plan.Point `json:"area_m,omitempty"`
	Bears  []string     `json:"bears_on,omitempty"` // causes it may bear on
	Known  source.Known `json:"known"`
	By     string       `json:"by,omitempty"`
}
