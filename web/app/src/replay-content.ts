// The replay as the program writes it. Long rows of numbers are base64 of
// little-endian values.

import type { Point, Time } from "./content";

export interface Replay {
  start: Time;
  hours: number;
  partial: string;
  summary: string[];
  events: ReplayEvent[];
  openings: ReplayOpening[];
  unmet: { finding: string; chance: number; text: string }[];
  chances?: ReplayChances;
  field: ReplayField;
  workings: string[];
}
export interface ReplayEvent {
  at: Time;
  hours: number;
  since: number;
  placed: number;
  line: string;
  crack: boolean;
  further: boolean;
  path_m: Point[];
  length_m: number;
  panel?: string;
  what: string;
  where: string;
  why: string;
  share: number;
  stress_MPa: number;
  hand_MPa: number;
  hand_why: string;
  freed_J: number;
  needed_J: number;
  seen: string;
  finding?: string;
}
export interface ReplayOpening {
  line: string;
  crack: boolean;
  open_m: number;
  length_m: number;
  mean_m: number;
  widest_m: number;
}
export interface ReplayChances {
  members: number;
  cracked: number;
  first_h: [number, number, number];
  joints: { joint: string; step_m: number; opened: number[]; mean: number; found?: string }[];
  panels: { panel: string; worst: number; at_m: Point; metres: number; per_m2: number; found: string[]; where: string }[];
  low_m: Point;
  cell_m: number;
  across: number;
  cells: string;
}
export interface ReplayField {
  points: string | null; // x, y as 16-bit centimetres from low_m
  low_m: Point;
  triangles: string | null; // three 16-bit numbers of points each
  frames: ReplayFrame[] | null;
  most_MPa: number;
  most_lift_mm: number;
  lift_from: string;
}
export interface ReplayFrame {
  at: Time;
  hours: number;
  share: string; // per cent of the strength, 8-bit, of each triangle
  stress: string; // 0.02 MPa, 8-bit, of each triangle
  lift: string; // 0.01 mm, 16-bit signed, of each point
  lines: ReplayOpening[];
  panels: { panel: string; share: number; stress_MPa: number; lift_mm: number }[];
  difference_K: number;
  peak_MPa: number;
  peak_hand_MPa: number;
  peak_hand_why?: string;
  peak_at_m: Point;
}
