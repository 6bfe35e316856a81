// The next slab as the program gives it: report.Design and report.Layout.

import type { Assumption, Chance, DowelBar, Head, Missing, Panel, Point, Sheet, Slab, SourceRow } from "./content";

export interface Design {
  head: Head;
  spacing: Spacing;
  drawn: Layout;
  proposed: Layout[] | null;
  assumptions: Assumption[] | null;
  missing: Missing[] | null;
  cautions: string[] | null;
  workings: Sheet[] | null;
  sources: SourceRow[] | null;
}
export interface Spacing {
  limit_m: number;
  model_m?: number;
  rule_m: number;
  cap_m: number;
  why: string;
  workings: string[] | null;
}
export interface Layout {
  name: string;
  why: string;
  slab: Slab;
  panels: Panel[] | null;
  dowel_bars: DowelBar[] | null;
  warnings: Warning[] | null;
  quantities: QuantityRow[] | null;
  cost?: string;
  chance?: LayoutChance;
  strips?: Strip[];
  trimmers?: TrimmerBar[];
}
export interface Strip {
  id: string;
  panels: string[] | null;
  width_m: number;
  length_m: number;
  first: boolean;
}
export interface TrimmerBar {
  from_m: Point;
  to_m: Point;
  words: string;
  why: string;
}
export interface Warning {
  code: string;
  level: string; // must, should, note
  panel?: string;
  joint?: string;
  fixture?: string;
  at_m: Point;
  words: string;
  rule: string;
  source: string;
  mend?: Mend;
}
export interface Mend {
  words: string;
  slab: Slab;
}
export interface QuantityRow {
  what: string;
  amount: number;
  unit: string;
}
export interface LayoutChance {
  any: Chance;
  panels: PanelChance[] | null;
  members: number;
  until: string;
  note?: string;
}
export interface PanelChance {
  panel: string;
  p: number;
}

// An edit of the slab, as the program does it.
export type Edit =
  | { do: "move joint"; id: string; by_m: Point }
  | { do: "remove joint"; id: string }
  | { do: "add joint"; from_m: Point; to_m: Point; kind: string }
  | { do: "halve panel"; id: string; across: "long" | "short" }
  | { do: "add pit"; at_m: Point; size_m: Point }
  | { do: "add column"; at_m: Point; size_m: Point }
  | { do: "move fixture"; id: string; by_m: Point }
  | { do: "remove fixture"; id: string };
