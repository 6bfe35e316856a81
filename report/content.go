package report

import (
	"time"

	"slabwright/plan"
	"slabwright/walk"
	"slabwright/working"
)

// Content is everything a report, the app and --json show of one slab. It is
// filled once, by job.Diagnose, and only ever read afterwards; its JSON names are
// stable and documented in docs/json.md.
type Content struct {
	Head        Head            `json:"head"`
	PageOne     PageOne         `json:"page_one"`
	Plan        PlanView        `json:"plan"`
	Pours       []PourDay       `json:"pours"`
	Findings    []FindingSheet  `json:"findings"`
	Slab        SlabAnswer      `json:"slab"`
	Hands       []HandRow       `json:"hands"` // who could have stopped it, the slab as a whole
	Movement    Movement        `json:"movement"`
	Replay      *Replay         `json:"replay,omitempty"` // the slab in plan through time
	Assumptions []Assumption    `json:"assumptions"`
	Missing     []Missing       `json:"missing"` // facts nobody knows, and what is not answered without them
	Cautions    []string        `json:"cautions"`
	Workings    []working.Sheet `json:"workings"`
	Sources     []SourceRow     `json:"sources"`
}

// Head is the title block.
type Head struct {
	Job      string    `json:"job"`    // short id
	Number   string    `json:"number"` // the practice's job number
	Title    string    `json:"title"`
	Client   string    `json:"client"`
	Place    string    `json:"place"`
	SlabID   string    `json:"slab"`
	SlabName string    `json:"slab_name"`
	Looked   time.Time `json:"looked"` // date of the last walk
	LookedBy string    `json:"looked_by"`
	Author   string    `json:"author"`
	Revision string    `json:"revision"` // "DRAFT" until issued
	Zone     string    `json:"zone"`
	Version  string    `json:"version"`   // of the program
	DataHash string    `json:"data_hash"` // SHA-256 of job.json and the weather files
	Seed     uint64    `json:"seed"`
}

// Chance is a weight with its range, never to more than two figures.
type Chance struct {
	P     float64 `json:"p"`
	Low   float64 `json:"low"`
	High  float64 `json:"high"`
	About string  `json:"about"` // "about 7 in 10"
}

// PageOne is the answers page: five questions, always the same five, in order.
type PageOne struct {
	Answers  []Answer `json:"answers"`
	Doubt    string   `json:"doubt"` // the most important one
	NotDone  string   `json:"not_done"`
	Reliance string   `json:"reliance"` // who may rely on this
}

// Answer is one of the five answers.
type Answer struct {
	Key      string   `json:"key"` // structural, worse, why, now, who
	Question string   `json:"question"`
	Plain    string   `json:"plain"` // a lay reader's sentence
	Exact    string   `json:"exact"` // the same said exactly, with the words defined
	Chance   *Chance  `json:"chance,omitempty"`
	Workings []string `json:"workings,omitempty"` // sheet ids
}

// PlanView is the drawing of the slab as data.
type PlanView struct {
	Slab      plan.Slab       `json:"slab"`
	Panels    []plan.Panel    `json:"panels"`
	Area      float64         `json:"area_m2"`
	Pours     []PourArea      `json:"pours"`
	Unseen    []walk.Unseen   `json:"could_not_see"`
	BarLines  [][2]plan.Point `json:"bar_lines"` // mesh and bars, clipped to the slab
	DowelBars []DowelBar      `json:"dowel_bars"`
	Symbols   []JointSymbol   `json:"joints"` // joint state for drawing: cut in time? opened?
}

// PourArea is one pour as drawn.
type PourArea struct {
	ID    string       `json:"id"`
	Name  string       `json:"name"`
	Area  []plan.Point `json:"area_m"`
	Start *time.Time   `json:"start,omitempty"`
}

// DowelBar is one dowel in plan.
type DowelBar struct {
	Joint string     `json:"joint"`
	From  plan.Point `json:"from_m"`
	To    plan.Point `json:"to_m"`
}

// JointSymbol is what is said beside a joint on the drawing.
type JointSymbol struct {
	ID         string     `json:"id"`
	CutAt      *time.Time `json:"cut_at,omitempty"`
	Hours      *float64   `json:"hours_after_placing,omitempty"`
	State      string     `json:"state,omitempty"` // too soon, in the window, late, missed, not sawn
	Opened     string     `json:"opened,omitempty"`
	DepthShare *float64   `json:"depth_share,omitempty"` // groove over thickness
}

// PourDay is one pour hour by hour.
type PourDay struct {
	ID         string       `json:"id"`
	Name       string       `json:"name"`
	Start      time.Time    `json:"start"`
	End        *time.Time   `json:"end,omitempty"`
	Weather    string       `json:"weather"` // sentence: whose record, how far away
	Drying     []DryingHour `json:"drying"`
	Column     []ColumnHour `json:"column"`
	InitialSet *time.Time   `json:"initial_set,omitempty"`
	FinalSet   *time.Time   `json:"final_set,omitempty"`
	FilmGone   *time.Time   `json:"film_gone,omitempty"` // when the bleed water was used up
	Window     Window       `json:"window"`
	Early      *Window      `json:"early_entry_window,omitempty"`
	Cuts       []CutRow     `json:"cuts"`
	Events     []Event      `json:"events"`
	Trucks     []TruckRow   `json:"trucks"`
	Sentences  []string     `json:"sentences"` // what the day shows, in plain words
	Workings   []string     `json:"workings"`
	NotGiven   []string     `json:"not_given,omitempty"` // answers left out, and why

	Doubts      []string         `json:"doubts,omitempty"`               // what about the weather is more likely a slip
	DryingLimit *float64         `json:"drying_limit_kg_m2_h,omitempty"` // as planned; nil: none was set
	Panels      []PanelWindow    `json:"panels,omitempty"`               // each on its own clock, in the order to cut
	Plastic     []PlasticHour    `json:"plastic,omitempty"`              // from placing to final set
	Depths      []float64        `json:"depths_m,omitempty"`             // of the profiles, from the top
	Profiles    []Profile        `json:"profiles,omitempty"`             // through the depth at chosen hours
	Moves       []SensitivityRow `json:"moves,omitempty"`                // which unknown moves the window most
	Measured    *MeasuredFit     `json:"measured,omitempty"`             // what site measurements did to the answer
	WhatIfs     []WhatIf         `json:"what_ifs,omitempty"`
}

// PanelWindow is the cut window of one panel, by the time concrete came to it.
type PanelWindow struct {
	Panel  string      `json:"panel"`
	Placed time.Time   `json:"placed"`
	Order  int         `json:"order"` // in which its far joint is best cut, from 1
	Wet    Window      `json:"wet"`
	Early  Window      `json:"early_entry"`
	Curve  []CutChance `json:"curve"` // for the wet saw
}

// CutChance is what is to be expected of a cut at one time.
type CutChance struct {
	At      time.Time `json:"at"`
	Hours   float64   `json:"hours_after_placing"`
	Ready   float64   `json:"ready"`   // chance that the edge is strong enough
	Cracked float64   `json:"cracked"` // chance that the slab has cracked elsewhere before
}

// PlasticHour is the fresh slab in one hour.
type PlasticHour struct {
	Time       time.Time `json:"time"`
	Hours      float64   `json:"hours_after_placing"`
	Drying     float64   `json:"drying_kg_m2_h"`
	Bleeding   float64   `json:"bleeding_kg_m2_h"`
	Film       float64   `json:"film_kg_m2"`        // water standing on the surface
	Deficit    float64   `json:"deficit_kg_m2"`     // drawn out of the concrete
	Shrinkage  float64   `json:"chance_shrinkage"`  // of plastic shrinkage cracks by then
	Settlement float64   `json:"chance_settlement"` // of cracks over bars that stand then; floating closes them
}

// Profile is the slab through its depth at one time; one value a depth.
type Profile struct {
	Time        time.Time `json:"time"`
	Hours       float64   `json:"hours_after_placing"`
	Temperature []float64 `json:"temperature_C"`
	Humidity    []float64 `json:"humidity,omitempty"` // in the pores, 0-1
	Strength    []float64 `json:"strength_MPa,omitempty"`
	Stress      []float64 `json:"stress_MPa,omitempty"` // that the layers do to each other
}

// SensitivityRow is one unknown and how far it moves the cut window.
type SensitivityRow struct {
	What   string  `json:"what"`
	Low    string  `json:"low"`
	High   string  `json:"high"`
	Known  string  `json:"known"`
	Opens  float64 `json:"opens_min"`  // minutes later over its range
	Closes float64 `json:"closes_min"` // the same of the closing
	Share  float64 `json:"share"`      // of the spread of the opening or the closing, the larger
}

// MeasuredFit is what logged temperatures, cylinders and set times did to the answer.
type MeasuredFit struct {
	Used     []string `json:"used"`    // what was measured
	Members  float64  `json:"members"` // effective number left
	Text     string   `json:"text"`    // how far it moved the answer
	Warnings []string `json:"warnings,omitempty"`
	Working  string   `json:"working,omitempty"`
}

// WhatIf is the same pour with one thing changed.
type WhatIf struct {
	Name    string  `json:"name"`
	Changed string  `json:"changed"`
	Window  Window  `json:"window"`
	Early   *Window `json:"early_entry_window,omitempty"`
	Peak    float64 `json:"peak_drying_kg_m2_h"`
	Plastic float64 `json:"chance_plastic"` // of plastic shrinkage cracks
	Cracked float64 `json:"chance_cracked"` // before a cut at the best time
	Night   bool    `json:"night"`          // the best time lies between 22:00 and 06:00
	Text    string  `json:"text"`
}

// DryingHour is the drying rate of one hour in the published forms, kg/m2/h.
type DryingHour struct {
	Time     time.Time `json:"time"`
	Air      float64   `json:"air_C"`
	Humidity float64   `json:"humidity"` // 0-1
	Wind     float64   `json:"wind_m_s"` // at slab height
	Sun      float64   `json:"sun_W_m2"`
	Concrete float64   `json:"concrete_C"`
	Uno      float64   `json:"uno"`
	UnoUS    float64   `json:"uno_us"`
	Menzel   float64   `json:"menzel"`
}

// ColumnHour is the slab through its depth at one time.
type ColumnHour struct {
	Time      time.Time `json:"time"`
	Hours     float64   `json:"hours_after_placing"`
	Top       float64   `json:"top_C"`
	Middle    float64   `json:"middle_C"`
	Bottom    float64   `json:"bottom_C"`
	Strength  float64   `json:"strength_MPa"`
	Tensile   float64   `json:"tensile_MPa"`
	Modulus   float64   `json:"modulus_MPa"`
	Share     float64   `json:"share"` // of tensile strength used, uncut slab
	ShareLow  float64   `json:"share_low"`
	ShareHigh float64   `json:"share_high"`
}

// Window is from the first time a saw leaves a clean edge to the last before the
// slab cracks elsewhere.
type Window struct {
	Saw        string     `json:"saw"` // wet, early-entry
	Opens      *time.Time `json:"opens,omitempty"`
	OpensLow   *time.Time `json:"opens_low,omitempty"`
	OpensHigh  *time.Time `json:"opens_high,omitempty"`
	Best       *time.Time `json:"best,omitempty"`
	Closes     *time.Time `json:"closes,omitempty"` // absent: does not close in the time looked at
	ClosesLow  *time.Time `json:"closes_low,omitempty"`
	ClosesHigh *time.Time `json:"closes_high,omitempty"`
	Why        string     `json:"why"`
	Working    string     `json:"working"`
}

// CutRow is one joint as sawn against its window.
type CutRow struct {
	Joint      string    `json:"joint"`
	At         time.Time `json:"at"`
	Hours      float64   `json:"hours_after_placing"`
	State      string    `json:"state"` // too soon, in the window, late, missed
	Chance     *Chance   `json:"chance_cracked_before,omitempty"`
	Depth      *float64  `json:"depth_m,omitempty"`
	DepthShare *float64  `json:"depth_share,omitempty"`
	Edge       string    `json:"edge,omitempty"`
	Opened     string    `json:"opened,omitempty"`
	By         string    `json:"by,omitempty"`
}

// Event is a mark on the hour ruler.
type Event struct {
	At   time.Time `json:"at"`
	Kind string    `json:"kind"` // truck, finish, cure, set, cut, departure, window
	What string    `json:"what"`
}

// TruckRow is one load.
type TruckRow struct {
	Ticket     string     `json:"ticket"`
	Start      *time.Time `json:"start,omitempty"`
	AgeMin     *float64   `json:"age_min,omitempty"` // batching to end of discharge
	Volume     *float64   `json:"volume_m3,omitempty"`
	Slump      *float64   `json:"slump_m,omitempty"`
	Concrete   *float64   `json:"concrete_C,omitempty"`
	WaterAdded *float64   `json:"water_added_L_m3,omitempty"`
	AskedBy    string     `json:"asked_by,omitempty"`
	Note       string     `json:"note,omitempty"` // "w/c rose from 0.50 to 0.55"
}

// FindingSheet is one finding with all that is said of it.
type FindingSheet struct {
	Finding     walk.Finding  `json:"finding"`
	Walk        string        `json:"walk"`
	Title       string        `json:"title"` // "Crack, 2.1 m, panel P4"
	Place       string        `json:"place"` // where, from the plan, in words
	At          plan.Point    `json:"at_m"`  // where its number stands on the plan
	Relations   []RelationRow `json:"relations"`
	Answer      string        `json:"answer"`
	Decided     bool          `json:"decided"`
	Causes      []CauseRow    `json:"causes"` // likeliest first; the answer rests on the first
	Mechanism   []CauseRow    `json:"mechanisms"`
	Triggers    []CauseRow    `json:"triggers"`
	RuledOut    []CauseRow    `json:"ruled_out"`
	Unexplained []string      `json:"unexplained,omitempty"`
	NextTests   []TestRow     `json:"next_tests"`
	Prevented   []Prevented   `json:"prevented,omitempty"` // the same slab with one thing done otherwise
	Overrides   []OverrideRow `json:"overrides,omitempty"` // chances set by the engineer
	Structural  Answer        `json:"structural"`
	Worse       Answer        `json:"worse"`
	Matters     Answer        `json:"matters"`
	Options     []OptionRow   `json:"options"`
	Hands       []HandRow     `json:"hands"`
	Workings    []string      `json:"workings"`
}

// RelationRow is one relation worked out from the plan.
type RelationRow struct {
	What    string `json:"what"` // "starts at inside corner of"
	Text    string `json:"text"` // "40 mm from the pit corner at (9.0, 6.0)"
	Working string `json:"working"`
}

// CauseRow is one candidate cause.
type CauseRow struct {
	ID       string        `json:"id"`
	Name     string        `json:"name"`
	Layer    string        `json:"layer"` // mechanism, trigger
	Plain    string        `json:"plain"`
	Exact    string        `json:"exact"`
	Chance   Chance        `json:"chance"`
	State    string        `json:"state"` // leading, possible, unlikely, ruled out
	For      []ArgumentRow `json:"for"`
	Against  []ArgumentRow `json:"against"`
	Missing  []string      `json:"missing"`
	RuledOut string        `json:"ruled_out,omitempty"` // considered and ruled out because
	Sources  []string      `json:"sources"`
	Working  string        `json:"working"`
}

// ArgumentRow is one piece of evidence for or against.
type ArgumentRow struct {
	Text    string  `json:"text"`
	From    string  `json:"from"`  // seen, measured, plan, pour, weather
	Known   string  `json:"known"` // measured, recorded, assumed, default
	Shift   float64 `json:"shift"` // decibans: 10·log10 of the factor on the odds
	Working string  `json:"working,omitempty"`
}

// TestRow is one look or test still worth doing.
type TestRow struct {
	Name      string   `json:"name"`
	Splits    []string `json:"splits"` // the causes it would tell apart
	Gain      float64  `json:"gain_bits"`
	CostClass int      `json:"cost_class"` // 0 hand tool ... 4 closure and plant
	Time      string   `json:"time"`
	Outcomes  []string `json:"outcomes"` // what each result would do
	Caution   string   `json:"caution,omitempty"`
}

// OptionRow is one remedy.
type OptionRow struct {
	Remedy     string   `json:"remedy"`
	Verdict    string   `json:"verdict"` // recommended, fits, not now, refused
	Why        string   `json:"why"`
	WhyNot     string   `json:"why_not,omitempty"`
	Quantity   string   `json:"quantity"`
	Life       string   `json:"life"`
	Disruption string   `json:"disruption"`
	Cost       string   `json:"cost"` // from the user's own rates, or "no rate given"
	When       string   `json:"when"`
	Sources    []string `json:"sources"`
}

// HandRow is one party against one cause, in three separate columns.
type HandRow struct {
	Party    string `json:"party"`
	Role     string `json:"role"`
	Cause    string `json:"cause"`
	Departed string `json:"departed"` // departed from plan?
	Caused   string `json:"caused"`   // did that cause this?
	Control  string `json:"control"`  // had control?
	Action   string `json:"action"`   // what could have stopped it
	Moment   string `json:"moment"`   // and when
}

// SlabAnswer is the slab as a whole.
type SlabAnswer struct {
	Answer   string      `json:"answer"`
	Causes   []CauseRow  `json:"causes"`
	Together []string    `json:"together"` // how findings explain each other
	Options  []OptionRow `json:"options"`
}

// Movement is what the slab has still to do.
type Movement struct {
	ShrinkageNow   float64 `json:"shrinkage_now"`   // strain so far
	ShrinkageLater float64 `json:"shrinkage_later"` // strain still to come
	Season         float64 `json:"season_K"`        // yearly swing of the slab's mean temperature
	OpeningLater   float64 `json:"opening_later_m"` // of a joint at the mean panel length
	Sentence       string  `json:"sentence"`
	Working        string  `json:"working"`
}

// Assumption is one thing put in that was not measured or recorded.
type Assumption struct {
	What  string `json:"what"`
	Value string `json:"value"`
	Known string `json:"known"` // given, measured, assumed, default
	Why   string `json:"why"`
	Moves string `json:"moves"` // what changes if it is wrong
}

// Missing is a fact nobody knows.
type Missing struct {
	Field string `json:"field"` // slabs[0].thickness_m
	What  string `json:"what"`
	So    string `json:"so"` // "so the wheel stress is not given"
}

// SourceRow is one published work used.
type SourceRow struct {
	Title string `json:"title"`
	How   string `json:"how"`
}
