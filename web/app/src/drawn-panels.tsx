// Panels as drawn: each is a link to its window, with its state at the hour looked at
// by word and by pattern.

import { hour, layers, place, to } from "./state";
import { boxOf } from "./shape";
import type { Draw } from "./drawing";
import { panelFacts, windowOf, wordAt, type PanelFacts, type PanelWord } from "./panel-state";
import { clock } from "./state";
import { onReplay } from "./replay-state";

const slug = (word: string) => word.replace(/\s/g, "-");

export function Panels({ line }: Pick<Draw, "line">) {
  const now = hour.value;
  return (
    <g class="panels">
      {panelFacts.value.map((f) => {
        const { panel } = f;
        const word = now === null || onReplay.value || !layers.value.panels ? "" : wordAt(f, now);
        const chosen = place.value.screen === "panel" && place.value.thing === panel.id;
        const shape = [panel.ring_m, ...(panel.openings_m ?? [])].map((ring) => line(ring, true)).join("");
        return (
          <a
            key={panel.id}
            class={`panel ${word ? `is-${slug(word)}` : ""}${chosen ? " chosen" : ""}`}
            href={to("panel", panel.id)}
            aria-label={words(f, word)}
            aria-current={chosen ? "true" : undefined}
          >
            <path class="panel-shape" d={shape} />
            {word && <path class="panel-pattern" d={shape} />}
          </a>
        );
      })}
    </g>
  );
}

function words(f: PanelFacts, word: PanelWord): string {
  const w = windowOf(f),
    c = clock.value;
  const window = w?.opens && `best cut from ${c.at(w.opens)}${w.closes ? ` to ${c.at(w.closes)}` : ""}`;
  return [`Panel ${f.panel.id}`, word, window].filter(Boolean).join(", ");
}

// SHORT are the words for panels that are drawn small.
const SHORT: Partial<Record<PanelWord, string>> = { "not yet placed": "to come", "being placed": "placing" };

// PanelNames stand in the lower right corner of each panel, the state above the name.
export function PanelNames({ at, scale }: Pick<Draw, "at" | "scale">) {
  const now = hour.value;
  return (
    <g class="panel-names" aria-hidden="true">
      {panelFacts.value.map((f) => {
        const box = boxOf(f.panel.ring_m),
          [x, y] = at([box.x1, box.y0]),
          wide = (box.x1 - box.x0) * scale;
        if (wide < 44) return null;
        const word = now === null ? "" : wordAt(f, now),
          short = SHORT[word] ?? word;
        const fits = word.length * 6.2 + 14 < wide ? word : short.length * 6.2 + 10 < wide ? short : "";
        const tall = (box.y1 - box.y0) * scale > 40;
        return (
          <g key={f.panel.id} class={word ? `is-${slug(word)}` : ""}>
            <text x={x - 7} y={y - 10} text-anchor="end">
              {f.panel.id}
            </text>
            {fits && tall && (
              <text class="panel-word" x={x - 7} y={y - 24} text-anchor="end">
                {fits}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}
