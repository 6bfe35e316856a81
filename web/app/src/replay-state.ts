// The replay at the hour of the slider: what has opened by then, and the field.

import { computed, signal } from "@preact/signals";
import { clock, content, hour, place } from "./state";
import { moment } from "./format";
import type { Replay, ReplayEvent, ReplayFrame } from "./replay-content";
import type { FieldName } from "./replay-field";

const HOUR = 3600e3;

export const fieldShown = signal<FieldName>("share");
export const replay = computed<Replay | null>(() => content.value?.replay ?? null);
export const onReplay = computed(() => place.value.screen === "replay" && replay.value !== null);

const startOf = (r: Replay) => moment(r.start)!;
export const timeOf = (r: Replay, hours: number) => startOf(r) + hours * HOUR;

// hoursNow is the hour of the replay that is drawn; where none was chosen, that at which the
// last line opens, with all that is expected drawn.
export const hoursNow = computed(() => {
  const r = replay.value;
  if (!r) return 0;
  return hour.value === null ? (r.events[r.events.length - 1]?.hours ?? r.hours) : Math.min(r.hours, Math.max(0, (hour.value - startOf(r)) / HOUR));
});

export const replayTime = () => timeOf(replay.value!, hoursNow.value);

// stops are the hours that the slider goes through: each of the first three days, then
// ever farther apart, and every event and field.
export const stops = computed<number[]>(() => {
  const r = replay.value;
  if (!r) return [0];
  const all = new Set<number>([0, r.hours]);
  for (let h = 1; h < Math.min(72, r.hours); h++) all.add(h);
  for (let h = 72; h < r.hours; h += h < 336 ? 12 : h < 2160 ? 48 : 336) all.add(h);
  for (const e of r.events) all.add(e.hours);
  for (const f of r.field.frames ?? []) all.add(f.hours);
  return [...all].filter((h) => h <= r.hours).sort((a, b) => a - b);
});
export function stopAt(hours: number): number {
  const all = stops.value;
  let best = 0;
  for (let i = 0; i < all.length; i++) if (Math.abs(all[i] - hours) < Math.abs(all[best] - hours)) best = i;
  return best;
}

export const eventsBy = computed<ReplayEvent[]>(() => (replay.value?.events ?? []).filter((e) => e.hours <= hoursNow.value + 1e-6));

// frameNow is the last field kept by the hour drawn; null before the first.
export const frameNow = computed<ReplayFrame | null>(() => {
  const frames = replay.value?.field.frames ?? [];
  let now: ReplayFrame | null = null;
  for (const f of frames) if (f.hours <= hoursNow.value + 1e-6) now = f;
  return now;
});

// openedWords counts what has opened.
export function openedWords(events: ReplayEvent[]): string {
  const joints = new Set(events.filter((e) => !e.crack).map((e) => e.line)).size,
    cracks = new Set(events.filter((e) => e.crack).map((e) => e.line)).size;
  if (joints + cracks === 0) return "nothing has opened";
  const many = (n: number, what: string) => `${n} ${what}${n === 1 ? "" : "s"}`;
  return [joints > 0 && `${many(joints, "joint")} open`, cracks > 0 && many(cracks, "crack")].filter(Boolean).join(", ");
}

// when writes a clock time with its date.
export const when = (t: number) => `${clock.value.on(t)}, ${clock.value.hour(t)}`;

// since writes hours after the first truck as a person would.
export function since(hours: number): string {
  const thin = "\u202f";
  if (hours < 72) return `${hours.toFixed(hours % 1 && hours < 48 ? 1 : 0)}${thin}h after the first truck`;
  if (hours < 60 * 24) return `${Math.round(hours / 24)} days after the first truck`;
  if (hours < 700 * 24) return `${Math.round(hours / 24 / 30.4)} months after the first truck`;
  return `${(hours / 24 / 365).toFixed(1)} years after the first truck`;
}

// eventWhen says when an event came: to the minute, or between two steps.
export function eventWhen(r: Replay, e: ReplayEvent): string {
  if (e.since >= e.hours) return when(timeOf(r, e.hours));
  return `between ${clock.value.on(timeOf(r, e.since))} and ${clock.value.on(timeOf(r, e.hours))}`;
}
