// A cut window as a sentence.

import { clock } from "./state";
import type { CutWindow } from "./content";

// betweenHours is a range by the clock, "18:50 to 20:50"; with one end known "20:50 or later".
export function betweenHours(low?: string, high?: string): string {
  const c = clock.value;
  if (low && high) return `${c.hour(low)} to ${c.hour(high)}`;
  return low ? `${c.hour(low)} or later` : high ? `${c.hour(high)} or sooner` : "";
}

export function windowSentence(w: CutWindow): string {
  const c = clock.value;
  const end = (did: string, time?: string, low?: string, high?: string) => {
    if (!time) return `did not ${did === "opened" ? "open" : "close"} in the time looked at`;
    const between = betweenHours(low, high);
    return `${did} ${c.at(time)}${between && ` (${between})`}`;
  };
  const opens = end("opened", w.opens, w.opens_low, w.opens_high),
    closes = end("closed", w.closes, w.closes_low, w.closes_high);
  return `With ${/^[aeiou]/.test(w.saw) ? "an" : "a"} ${w.saw} saw the window ${opens} and ${closes}.${w.best ? ` Best time ${c.at(w.best)}.` : ""}`;
}
