// Pour strips as drawn, with what had been placed by the hour looked at.

import { content, hour } from "./state";
import { boxOf } from "./shape";
import type { Draw } from "./drawing";
import type { Point, PourArea } from "./content";
import { after, moment } from "./format";

export function Pour({ pour, index, line, at, scale }: Draw & { pour: PourArea; index: number }) {
  const start = moment(pour.start),
    now = hour.value;
  const end = moment((content.value!.pours ?? []).find((d) => d.id === pour.id)?.end);
  let state = "";
  const waiting = now !== null && start !== undefined && now < start;
  if (now !== null && start !== undefined) {
    state = waiting ? "not yet placed" : end !== undefined && now < end ? "being placed" : after((now - start) / 3600e3);
  }
  return (
    <g class={`pour tint-${index % 3}${waiting ? " waiting" : ""}`}>
      <path d={line(pour.area_m, true)} />
      <PourName pour={pour} state={state} at={at} scale={scale} />
    </g>
  );
}

// PourName stands outside the slab, at the end of the strip, where it covers nothing.
function PourName({ pour, state, at, scale }: { pour: PourArea; state: string; at: (p: Point) => Point; scale: number }) {
  const box = boxOf(pour.area_m ?? []),
    slab = boxOf(content.value!.plan.slab.outline_m);
  const name = pour.name || pour.id,
    across = (box.y1 - box.y0) * scale,
    along = (box.x1 - box.x0) * scale;
  const left = box.x0 <= slab.x0 + 0.01,
    [x, y] = left ? at([box.x0, (box.y0 + box.y1) / 2]) : at([(box.x0 + box.x1) / 2, box.y0]);
  const room = left ? across : along,
    short = state.replace(" after placing", "").replace(/ placed$/, "");
  const both = [name, state],
    one = [short ? `${name}, ${short}` : name];
  const lines = (state && (!left || x > 34) && state.length * 6.3 < room ? both : one).filter((text) => text.length * 5.6 < room);
  return (
    <>
      {lines.map((text, i) =>
        left ? (
          <text
            key={i}
            class="pour-name"
            text-anchor="middle"
            transform={`translate(${x - 9 - 15 * (lines.length - 1 - i)} ${y}) rotate(-90)`}
          >
            {text}
          </text>
        ) : (
          <text key={i} class="pour-name" text-anchor="middle" x={x} y={y + 18 + 15 * i}>
            {text}
          </text>
        ),
      )}
    </>
  );
}
