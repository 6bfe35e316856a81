// The shape of /api/content: the same JSON that --json writes and the report is
// printed from. A field that nobody knows is absent, never zero.

import type { Replay } from "./replay-content";

export type Point = [number, number]; // metres, x along the baseline, y to its left
export type Time = string; // RFC 3339, UTC

export interface Fact {
  value: number;
  low?: number;
  high?: number;
  known: string;
  by?: string;
  note?: string;
}
export interface Choice {
  value: string;
  known: string;
  by?: string;
  note?: string;
}

export interface Content {
  head: Head;
  page_one: PageOne;
  plan: PlanView;
  pours: PourDay[] | null;
  findings: FindingSheet[] | null;
  slab: SlabAnswer;
  hands: HandRow[] | null;
  movement: Movement;
  replay?: Replay; // the slab in plan through time
  assumptions: Assumption[] | null;
  missing: Missing[] | null;
  cautions: string[] | null;
  workings: Sheet[] | null;
  sources: SourceRow[] | null;
}

export interface Head {
  job: string;
  number: string;
  title: string;
  client: string;
  place: string;
  slab: string;
  slab_name: string;
  looked: Time;
  looked_by: string;
  author: string;
  revision: string;
  zone: string;
  version: string;
  data_hash: string;
  seed: number;
}

export interface Chance {
  p: number;
  low: number;
  high: number;
  about: string;
}
export interface PageOne {
  answers: Answer[] | null;
  doubt: string;
  not_done: string;
  reliance: string;
}
export interface Answer {
  key: string;
  question: string;
  plain: string;
  exact: string;
  chance?: Chance;
  workings?: string[];
}

export interface PlanView {
  slab: Slab;
  panels: Panel[] | null;
  area_m2: number;
  pours: PourArea[] | null;
  could_not_see: Unseen[] | null;
  bar_lines: [Point, Point][] | null;
  dowel_bars: DowelBar[] | null;
  joints: JointSymbol[] | null;
}
export interface Slab {
  id: string;
  name: string;
  outline_m: Point[];
  thickness_m?: Fact;
  bearing_deg?: Fact;
  fixtures?: Fixture[];
  joints?: Joint[];
  wheel_paths?: WheelPath[];
}
export interface Panel {
  id: string;
  ring_m: Point[];
  openings_m?: Point[][];
  area_m2: number;
  length_m: number;
  width_m: number;
  aspect: number;
}
export interface Fixture {
  id: string;
  name: string;
  kind: string;
  shape_m: Point[];
  opening?: boolean;
  isolated?: Choice;
  trimmers?: Choice;
}
export interface Joint {
  id: string;
  name?: string;
  kind: string;
  path_m: Point[];
  transfer?: Choice;
  groove_m?: Fact;
  opened?: Choice;
  opening_m?: Fact;
  dowels?: Dowels;
}
export interface Dowels {
  diameter_m?: Fact;
  length_m?: Fact;
  spacing_m?: Fact;
  clear_of_crossing_m?: Fact;
  skew?: Fact;
  free_along?: Choice;
  free_sideways?: Choice;
}
export interface WheelPath {
  id: string;
  path_m: Point[];
  width_m: number;
}
export interface PourArea {
  id: string;
  name: string;
  area_m: Point[];
  start?: Time;
}
export interface DowelBar {
  joint: string;
  from_m: Point;
  to_m: Point;
}
export interface JointSymbol {
  id: string;
  cut_at?: Time;
  hours_after_placing?: number;
  state?: string;
  opened?: string;
  depth_share?: number;
}
export interface Unseen {
  id: string;
  area_m: Point[];
  why: string;
}

export interface PourDay {
  id: string;
  name: string;
  start: Time;
  end?: Time;
  weather: string;
  drying: DryingHour[] | null;
  column: ColumnHour[] | null;
  initial_set?: Time;
  final_set?: Time;
  film_gone?: Time;
  window: CutWindow;
  early_entry_window?: CutWindow;
  cuts: CutRow[] | null;
  events: Mark[] | null;
  trucks: TruckRow[] | null;
  sentences: string[] | null;
  workings: string[] | null;
  not_given?: string[];
  drying_limit_kg_m2_h?: number;
  panels?: PanelWindow[];
  plastic?: PlasticHour[];
  depths_m?: number[];
  profiles?: Profile[];
  moves?: SensitivityRow[];
  measured?: MeasuredFit;
  what_ifs?: WhatIf[];
}
export interface PanelWindow {
  panel: string;
  placed: Time;
  order: number;
  wet: CutWindow;
  early_entry: CutWindow;
  curve: CutChance[] | null;
}
export interface CutChance {
  at: Time;
  hours_after_placing: number;
  ready: number;
  cracked: number;
}
export interface PlasticHour {
  time: Time;
  hours_after_placing: number;
  drying_kg_m2_h: number;
  bleeding_kg_m2_h: number;
  film_kg_m2: number;
  deficit_kg_m2: number;
  chance_shrinkage: number;
  chance_settlement: number;
}
export interface Profile {
  time: Time;
  hours_after_placing: number;
  temperature_C: number[] | null;
  humidity?: number[];
  strength_MPa?: number[];
  stress_MPa?: number[];
}
export interface SensitivityRow {
  what: string;
  low: string;
  high: string;
  known: string;
  opens_min: number;
  closes_min: number;
  share: number;
}
export interface MeasuredFit {
  used: string[] | null;
  members: number;
  text: string;
  warnings?: string[];
  working?: string;
}
export interface WhatIf {
  name: string;
  changed: string;
  window: CutWindow;
  early_entry_window?: CutWindow;
  peak_drying_kg_m2_h: number;
  chance_plastic: number;
  chance_cracked: number;
  night: boolean;
  text: string;
}
export interface DryingHour {
  time: Time;
  air_C: number;
  humidity: number;
  wind_m_s: number;
  sun_W_m2: number;
  concrete_C: number;
  uno: number;
  uno_us: number;
  menzel: number;
}
export interface ColumnHour {
  time: Time;
  hours_after_placing: number;
  top_C: number;
  middle_C: number;
  bottom_C: number;
  strength_MPa: number;
  tensile_MPa: number;
  modulus_MPa: number;
  share: number;
  share_low: number;
  share_high: number;
}
export interface CutWindow {
  saw: string;
  opens?: Time;
  opens_low?: Time;
  opens_high?: Time;
  best?: Time;
  closes?: Time;
  closes_low?: Time;
  closes_high?: Time;
  why: string;
  working: string;
}
export interface CutRow {
  joint: string;
  at: Time;
  hours_after_placing: number;
  state: string;
  chance_cracked_before?: Chance;
  depth_m?: number;
  depth_share?: number;
  edge?: string;
  opened?: string;
  by?: string;
}
export interface Mark {
  at: Time;
  kind: string;
  what: string;
}
export interface TruckRow {
  ticket: string;
  start?: Time;
  age_min?: number;
  volume_m3?: number;
  slump_m?: number;
  concrete_C?: number;
  water_added_L_m3?: number;
  asked_by?: string;
  note?: string;
}

export interface Finding {
  id: string;
  kind: string;
  lines_m?: Point[][];
  area_m?: Point[];
  joint?: string;
  first_seen?: Time;
  first_seen_by?: string;
  width_m?: Fact;
  step_m?: Fact;
  depth_m?: Fact;
  cell_m?: Fact;
  lift_m?: Fact;
  rebound_ratio?: Fact;
  seen?: Record<string, Choice>;
  photos?: string[];
  note?: string;
}
export interface FindingSheet {
  finding: Finding;
  walk: string;
  title: string;
  place: string;
  at_m: Point;
  relations: Relation[] | null;
  answer: string;
  decided: boolean;
  mechanisms: Cause[] | null;
  triggers: Cause[] | null;
  ruled_out: Cause[] | null;
  unexplained?: string[];
  next_tests: TestRow[] | null;
  structural: Answer;
  worse: Answer;
  matters: Answer;
  options: OptionRow[] | null;
  hands: HandRow[] | null;
  workings: string[] | null;
  prevented?: Prevented[];
  overrides?: OverrideRow[];
}
// Prevented is the same slab with one thing done otherwise.
export interface Prevented {
  cause: string;
  name: string;
  what: string;
  before: Chance;
  after: Chance;
  text: string;
  from: string;
  by: string;
  working?: string;
}
// OverrideRow is a chance set by the engineer.
export interface OverrideRow {
  cause: string;
  name: string;
  was: Chance;
  set: Chance;
  reason: string;
  by: string;
  at?: Time;
}
export interface Relation {
  what: string;
  text: string;
  working: string;
}
export interface Cause {
  id: string;
  name: string;
  layer: string;
  plain: string;
  exact: string;
  chance: Chance;
  state: string;
  for: Argument[] | null;
  against: Argument[] | null;
  missing: string[] | null;
  ruled_out?: string;
  sources: string[] | null;
  working: string;
}
export interface Argument {
  text: string;
  from: string;
  known: string;
  shift: number;
  working?: string;
}
export interface TestRow {
  name: string;
  splits: string[] | null;
  gain_bits: number;
  cost_class: number;
  time: string;
  outcomes: string[] | null;
  caution?: string;
}
export interface OptionRow {
  remedy: string;
  verdict: string;
  why: string;
  why_not?: string;
  quantity: string;
  life: string;
  disruption: string;
  cost: string;
  when: string;
  sources: string[] | null;
}
export interface HandRow {
  party: string;
  role: string;
  cause: string;
  departed: string;
  caused: string;
  control: string;
  action: string;
  moment: string;
}
export interface SlabAnswer {
  answer: string;
  causes: Cause[] | null;
  together: string[] | null;
  options: OptionRow[] | null;
}
export interface Movement {
  shrinkage_now: number;
  shrinkage_later: number;
  season_K: number;
  opening_later_m: number;
  sentence: string;
  working: string;
}
export interface Assumption {
  what: string;
  value: string;
  known: string;
  why: string;
  moves: string;
}
export interface Missing {
  field: string;
  what: string;
  so: string;
}
export interface SourceRow {
  title: string;
  how: string;
}

export interface Sheet {
  id: string;
  title: string;
  basis?: string[];
  lines: Line[] | null;
}
export interface Line {
  symbol: string;
  what: string;
  formula: string;
  numbers: string;
  value: number;
  unit: string;
  text: string;
  source: Citation;
  inputs?: Input[];
  check?: Check;
  verdict?: string;
}
export interface Input {
  symbol: string;
  value: number;
  unit?: string;
  what?: string;
  known?: string;
}
export interface Check {
  what: string;
  value: number;
  unit: string;
  source: Citation;
  apart: number;
  flag: boolean;
  reason?: string;
}
export interface Citation {
  work: string;
  title: string;
  place?: string;
  how: string;
}

// progress is what /api/progress tells while the answer is being worked out.
export interface Progress {
  state: "working" | "ready" | "stopped" | "wrong" | "empty";
  first: boolean;
  steps: { text: string; done: boolean }[];
  share: number;
  job?: string;
  papers: string[];
  asks: string[] | null; // questions that are answered
}
// wrong is what /api/content answers when the job could not be worked out.
export interface Wrong {
  empty?: boolean;
  problems: string[];
}
