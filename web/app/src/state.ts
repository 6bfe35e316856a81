// What the page knows: the content, the place in it (kept in the address, so the
// browser's back works), the hour looked at and the layers drawn.

import { computed, effect, signal } from "@preact/signals";
import { Clock, moment } from "./format";
import { centre, inside } from "./shape";
import type { Content, PourDay, Progress } from "./content";

export const content = signal<Content | null>(null);
export const progress = signal<Progress | null>(null);
export const problems = signal<string[] | null>(null);
export const nothingYet = signal(false); // the problem is only that the job has no first facts


// stage is how far the content is worked out: the first answer stands while the slab is
// replayed, or for good where that was stopped.
export type Stage = "first" | "stopped" | "whole";
export const stage = signal<Stage>("whole");
export const asking = signal(false); // an answer is being waited for

// answers reports whether the program answers a question of that name.
export const answers = (name: string) => (progress.value?.asks ?? []).includes(name);

export const clock = computed(() => new Clock(content.value?.head.zone ?? "UTC"));

// A screen is the first word of the address after "#/"; thing is what is chosen there.
export interface Place {
  screen: string;
  thing: string;
}
export const place = signal<Place>(readPlace());

function readPlace(): Place {
  const [screen = "", ...rest] = location.hash.replace(/^#\/?/, "").split("/");
  return { screen: decode(screen) || "findings", thing: decode(rest.join("/")) };
}
function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
export function to(screen: string, thing = ""): string {
  return "#/" + screen + (thing ? "/" + encodeURIComponent(thing) : "");
}
export const came = signal(0); // how often the place changed; focus follows it
window.addEventListener("hashchange", () => {
  const next = readPlace(),
    now = place.value;
  if (next.screen !== now.screen || next.thing !== now.thing) {
    place.value = next;
    came.value++;
  }
});

// ruler is how much of the first days the hour ruler shows.
export const ruler = signal<"day" | "days">("day");

// hour is the moment the plan is drawn at; null draws it as it was looked at.
export const hour = signal<number | null>(null);

export type Layer = "joints" | "findings" | "unseen" | "pours" | "dowels" | "bars" | "panels" | "wheels";
export const layers = signal<Record<Layer, boolean>>({
  joints: true,
  findings: true,
  unseen: true,
  pours: true,
  dowels: true,
  bars: false,
  panels: true,
  wheels: false,
});
export function toggle(layer: Layer) {
  layers.value = { ...layers.value, [layer]: !layers.value[layer] };
}

export type Theme = "day" | "sun" | "night";
export const theme = signal<Theme>(
  remembered("theme", matchMedia("(prefers-color-scheme: dark)").matches ? "night" : "day", ["day", "sun", "night"]),
);
export const letterKeys = signal(remembered("letter-keys", "on", ["on", "off"]) === "on");
effect(() => {
  document.documentElement.dataset.theme = theme.value;
  remember("theme", theme.value);
});
effect(() => remember("letter-keys", letterKeys.value ? "on" : "off"));

function remembered<T extends string>(key: string, otherwise: T, allowed: readonly T[]): T {
  try {
    const kept = localStorage.getItem("slabwright-" + key) as T | null;
    return kept && allowed.includes(kept) ? kept : otherwise;
  } catch {
    return otherwise;
  }
}
function remember(key: string, value: string) {
  try {
    localStorage.setItem("slabwright-" + key, value);
  } catch {
    /* a browser may keep nothing */
  }
}

// pourShown is the pour whose hours stand on the ruler: the one in the address, else the first.
export const pourShown = computed<PourDay | null>(() => {
  const pours = content.value?.pours ?? [];
  const asked = place.value.screen === "pour" ? pours.find((p) => p.id === place.value.thing) : undefined;
  return asked ?? pours.find((p) => p.id === lastPour.value) ?? pours[0] ?? null;
});
const lastPour = signal("");
effect(() => {
  const { screen, thing } = place.value;
  if (screen === "pour" && thing) lastPour.value = thing;
  const of = screen === "panel" && pourOfPanel(thing);
  if (of) lastPour.value = of;
});
// pourOfPanel is the pour that a panel belongs to: the one that gives its window, else the one it lies in.
function pourOfPanel(id: string): string | undefined {
  const c = content.value;
  const own = (c?.pours ?? []).find((p) => p.panels?.some((w) => w.panel === id));
  const ring = (c?.plan.panels ?? []).find((p) => p.id === id)?.ring_m;
  return own?.id ?? (ring && (c!.plan.pours ?? []).find((p) => inside(p.area_m ?? [], centre(ring)))?.id);
}

export interface Span {
  from: number;
  to: number;
}
const HOUR = 3600e3;
// spanOf is the stretch of time on a pour's ruler, in whole hours: a day from the
// first truck, and longer if it was sawn later.
export function spanOf(pour: PourDay): Span {
  const start = moment(pour.start) ?? 0;
  const happened = [pour.end, pour.window.closes, ...(pour.events ?? []).map((e) => e.at), ...(pour.cuts ?? []).map((c) => c.at)]
    .map(moment)
    .filter((t): t is number => t !== undefined);
  return within(start, [start - HOUR, start + 24 * HOUR, ...happened.map((t) => t + HOUR)]);
}
// wholeSpan is the stretch of time that the replay of a pour covers, up to three days.
export function wholeSpan(pour: PourDay): Span {
  const start = moment(pour.start) ?? 0;
  return within(start, [start, ...(pour.column ?? []).map((h) => moment(h.time)!)]);
}
function within(start: number, times: number[]): Span {
  const from = Math.max(Math.min(...times), start - 12 * HOUR),
    to = Math.min(Math.max(...times), start + 72 * HOUR);
  return { from: Math.floor(from / HOUR) * HOUR, to: Math.ceil(Math.max(to, start + 6 * HOUR) / HOUR) * HOUR };
}

// rulerSpan is the stretch of time that the hour ruler shows.
export function rulerSpan(pour: PourDay): Span {
  const day = spanOf(pour);
  if (ruler.value === "day") return day;
  const kept = (pour.profiles ?? []).map((p) => moment(p.time)!);
  const whole = within(moment(pour.start)!, [day.from, day.to, wholeSpan(pour).to, ...kept]);
  return whole.to > day.to ? whole : day;
}

export function sheetOf(id: string) {
  return (content.value?.workings ?? []).find((s) => s.id === id);
}
