// The state of a panel at an hour: not yet placed, placed, set, cut now, late, sawn.
// The word comes from the panel's own cut window where it has one, else from its pour's.

import { computed } from "@preact/signals";
import { content } from "./state";
import { centre, inside } from "./shape";
import type { CutWindow, Joint, Panel, PanelWindow, Point, PourDay } from "./content";
import { moment } from "./format";

export type PanelWord = "not yet placed" | "being placed" | "placed" | "set" | "cut now" | "late" | "sawn" | "";
export const PANEL_WORDS: PanelWord[] = ["late", "cut now", "set", "placed", "being placed", "not yet placed", "sawn"];

export interface PanelFacts {
  panel: Panel;
  pour?: PourDay;
  own?: PanelWindow;
  joints: { joint: Joint; cut?: number }[]; // sawn joints at its edges
}

// panelFacts ties each panel to its pour, its window and the sawn joints round it.
export const panelFacts = computed<PanelFacts[]>(() => {
  const c = content.value;
  if (!c) return [];
  const pours = c.pours ?? [];
  const cuts = new Map<string, number | undefined>();
  for (const s of c.plan.joints ?? []) cuts.set(s.id, moment(s.cut_at));
  for (const p of pours) for (const r of p.cuts ?? []) if (!cuts.get(r.joint)) cuts.set(r.joint, moment(r.at));
  const sawn = (c.plan.slab.joints ?? []).filter((j) => j.kind === "sawn");
  return (c.plan.panels ?? []).map((panel) => {
    const byWindow = pours.find((p) => p.panels?.some((w) => w.panel === panel.id));
    const middle = centre(panel.ring_m);
    const byPlace = (c.plan.pours ?? []).find((a) => inside(a.area_m ?? [], middle));
    const pour = byWindow ?? pours.find((p) => p.id === byPlace?.id);
    return {
      panel,
      pour,
      own: byWindow?.panels?.find((w) => w.panel === panel.id),
      joints: sawn.filter((j) => borders(j.path_m, panel.ring_m)).map((joint) => ({ joint, cut: cuts.get(joint.id) })),
    };
  });
});

export function factsOf(id: string): PanelFacts | undefined {
  return panelFacts.value.find((f) => f.panel.id === id);
}

// windowOf is the wet saw's window of the panel, by the time concrete came to it.
export function windowOf(f: PanelFacts): CutWindow | undefined {
  return f.own?.wet ?? f.pour?.window;
}

export function wordAt(f: PanelFacts, now: number): PanelWord {
  const { pour } = f;
  const start = moment(f.own?.placed ?? pour?.start);
  if (!pour || start === undefined) return "";
  if (now < start) return "not yet placed";
  if (f.joints.length > 0 && f.joints.every((j) => j.cut !== undefined && j.cut <= now)) return "sawn";
  if (!f.own && now < (moment(pour.end) ?? start)) return "being placed";
  const window = windowOf(f)!;
  const opens = moment(window.opens),
    closes = moment(window.closes);
  if (f.joints.length > 0 && closes !== undefined && now >= closes) return "late";
  if (f.joints.length > 0 && opens !== undefined && now >= opens && now < (closes ?? lookedTo(pour))) return "cut now";
  const set = moment(pour.final_set);
  return set !== undefined && now >= set + (f.own ? start - clockZero(pour) : 0) ? "set" : "placed";
}

// clockZero is the placing time that the hours of the replay count from.
export function clockZero(pour: PourDay): number {
  const first = (pour.column ?? [])[0];
  return first ? moment(first.time)! - first.hours_after_placing * 3600e3 : moment(pour.start)!;
}

// lookedTo is how far the replay went: beyond it a window that stays open says nothing.
function lookedTo(pour: PourDay): number {
  const column = pour.column ?? [];
  return column.length ? moment(column[column.length - 1].time)! : Infinity;
}

// jointsCut counts the sawn joints that were cut by an hour.
export function jointsCut(now: number): { cut: number; of: number } {
  const all = new Map(panelFacts.value.flatMap((f) => f.joints.map((j) => [j.joint.id, j.cut] as const)));
  return { cut: [...all.values()].filter((t) => t !== undefined && t <= now).length, of: all.size };
}

// statesAt groups the panels by their word, the most urgent first.
export function statesAt(now: number, pour?: string): [PanelWord, string[]][] {
  const shown = panelFacts.value.filter((f) => pour === undefined || f.pour?.id === pour);
  const words = shown.map((f) => [wordAt(f, now), f.panel.id] as const);
  return PANEL_WORDS.map((w): [PanelWord, string[]] => [w, words.filter(([word]) => word === w).map(([, id]) => id)]).filter(
    ([, ids]) => ids.length > 0,
  );
}

const MOST = 6; // panels named before they are only counted

export function stateSentence(now: number, pour?: string): string {
  const said = statesAt(now, pour).map(([word, ids]) => `${word}: ${ids.length > MOST ? `${ids.length} panels` : ids.join(", ")}`);
  return said.join("; ");
}

// borders reports whether a joint runs along an edge of a panel, for half a metre or half its length.
function borders(line: Point[], ring: Point[]): boolean {
  const every = 0.25,
    near = 0.03;
  let along = 0,
    total = 0;
  for (let i = 0; i + 1 < line.length; i++) {
    const [a, b] = [line[i], line[i + 1]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const parts = Math.max(2, Math.ceil(length / every));
    total += length;
    for (let k = 0; k < parts; k++) {
      const t = (k + 0.5) / parts;
      if (offRing(ring, [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]) < near) along += length / parts;
    }
  }
  return along > Math.min(0.5, total / 2);
}

function offRing(ring: Point[], p: Point): number {
  let least = Infinity;
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i],
      b = ring[(i + 1) % ring.length];
    const dx = b[0] - a[0],
      dy = b[1] - a[1];
    const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy));
  }
  return least;
}
