// What the replay expects, over the plan: told from what was seen by its dashes and
// square name plate, not by colour alone.

import { eventsBy, fieldShown, frameNow } from "./replay-state";
import { path, rough } from "./shape";
import type { Point } from "./content";
import { mm } from "./format";

export function Expected({ at }: { at: (p: Point) => Point }) {
  const events = eventsBy.value,
    wide = new Map((frameNow.value?.lines ?? []).map((l) => [l.line, l.mean_m]));
  const named = new Map<string, Point>();
  for (const e of events) {
    const p = e.path_m.map(at);
    const last = e.crack ? p[p.length - 1] : ([0.7 * p[0][0] + 0.3 * p[p.length - 1][0], 0.7 * p[0][1] + 0.3 * p[p.length - 1][1]] as Point);
    if (!named.has(e.line) || e.crack) named.set(e.line, last);
  }
  const crack = new Set(events.filter((e) => e.crack).map((e) => e.line));
  return (
    <g class="expected" role="img" aria-label={events.map((e) => `Expected: ${e.what} ${e.where}`).join(". ") || "Nothing expected to have opened"}>
      {events.map((e, i) => {
        const d = path(e.crack ? rough(e.path_m.map(at)) : e.path_m.map(at));
        return (
          <g key={i} class={e.crack ? "expected-crack" : "expected-joint"}>
            <path class="under" d={d} />
            <path class="line" d={d} />
          </g>
        );
      })}
      {[...named].map(([line, [x, y]]) => {
        const width = fieldShown.value === "opening" && wide.has(line) ? ` ${mm(wide.get(line)!)}` : "";
        if (!crack.has(line) && !width) return null;
        const text = line + width,
          half = text.length * 3.4 + 4;
        return (
          <g key={line} class="expected-name">
            <rect x={x - half} y={y - 9} width={2 * half} height={18} />
            <text x={x} y={y + 4.5} text-anchor="middle">
              {text}
            </text>
          </g>
        );
      })}
    </g>
  );
}
