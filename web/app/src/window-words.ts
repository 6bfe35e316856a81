// A cut window as a sentence.

import { clock } from "./state";
import type { CutWindow } from "./content";

export function windowSentence(w: CutWindow): string {
  const c = clock.value;
  const opens = w.opens
    ? `opened ${c.at(w.opens)}${w.opens_low && w.opens_high ? ` (${c.at(w.opens_low)} to ${c.at(w.opens_high)})` : ""}`
    : "did not open in the time looked at";
  const closes = w.closes
    ? `closed ${c.at(w.closes)}${w.closes_low && w.closes_high ? ` (${c.at(w.closes_low)} to ${c.at(w.closes_high)})` : ""}`
    : "did not close in the time looked at";
  return `With ${/^[aeiou]/.test(w.saw) ? "an" : "a"} ${w.saw} saw the window ${opens} and ${closes}.${w.best ? ` Best time ${c.at(w.best)}.` : ""}`;
}
