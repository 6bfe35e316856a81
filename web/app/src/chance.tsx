// A chance in words with its range, and the thin bar that draws the same.

import type { Chance } from "./content";
import { inWords } from "./format";

export function ChanceText({ chance }: { chance: Chance }) {
  const words = inWords(chance),
    at = words.indexOf(" (");
  return (
    <span class="chance">
      <ChanceBar chance={chance} />
      <span>
        <strong>{at < 0 ? words : words.slice(0, at)}</strong>
        {at >= 0 && <span class="quiet">{words.slice(at)}</span>}
      </span>
    </span>
  );
}

export function ChanceBar({ chance }: { chance: Chance }) {
  const x = (p: number) => 1 + Math.min(1, Math.max(0, p)) * 98;
  return (
    <svg class="chance-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
      <path class="rail" d="M1 5H99M1 2V8M99 2V8M50 3.5V6.5" />
      <path class="band" d={`M${x(chance.low)} 5H${Math.max(x(chance.high), x(chance.low) + 1)}`} />
      <path class="mid" d={`M${x(chance.p)} 0V10`} />
    </svg>
  );
}
