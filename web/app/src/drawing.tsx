// The drawing itself: what is drawn, in which line, in which order.

import { content, layers } from "./state";
import { path, project, type View } from "./shape";
import type { Point } from "./content";
import { FixtureShape } from "./drawn-fixtures";
import { Findings } from "./drawn-findings";
import { JointLine, thinned } from "./drawn-joints";
import { PanelNames, Panels } from "./drawn-panels";
import { Pour } from "./drawn-pours";
import { Expected } from "./replay-drawn";
import { fieldShown, onReplay } from "./replay-state";
import { NorthArrow, ScaleBar } from "./scale";

interface Props {
  view: View;
  size: Point;
}

export function Drawing({ view, size }: Props) {
  const c = content.value!;
  const on = layers.value;
  const p = (point: Point) => project(view, point);
  const line = (points: Point[] | null | undefined, closed = false) => path((points ?? []).map(p), closed);
  const slab = c.plan.slab;
  return (
    <svg
      class={onReplay.value && fieldShown.value !== "none" ? "drawing over-field" : "drawing"}
      width={size[0]}
      height={size[1]}
      role="group"
      tabIndex={0}
      aria-label={`Plan of ${slab.name || "the slab"}. Arrow keys move it, plus and minus bring it closer or farther, 0 shows it whole. Tab goes through panels, joints and findings.`}
    >
      <Patterns />
      <path class="slab" d={line(slab.outline_m, true)} />
      {on.pours &&
        (c.plan.pours ?? []).map((pour, i) => <Pour key={pour.id} pour={pour} index={i} line={line} at={p} scale={view.scale} />)}
      <Panels line={line} />
      {on.bars && <path class="bars" d={(c.plan.bar_lines ?? []).map((b) => line(b)).join("")} />}
      {on.wheels &&
        (slab.wheel_paths ?? []).map((w) => (
          <path key={w.id} class="wheels" d={line(w.path_m)} stroke-width={Math.max(6, w.width_m * view.scale)} />
        ))}
      {on.unseen &&
        (c.plan.could_not_see ?? []).map((u) => (
          <path key={u.id} class="unseen" d={line(u.area_m, true)}>
            <title>Could not see: {u.why}</title>
          </path>
        ))}
      {(slab.fixtures ?? []).map((f) => (
        <FixtureShape key={f.id} fixture={f} line={line} at={p} scale={view.scale} />
      ))}
      {on.panels && <PanelNames at={p} scale={view.scale} />}
      <path class="outline" d={line(slab.outline_m, true)} />
      {on.dowels && (
        <path
          class="dowels"
          d={thinned(c.plan.dowel_bars ?? [], view.scale)
            .map((d) => line([d.from_m, d.to_m]))
            .join("")}
        />
      )}
      {on.joints && (slab.joints ?? []).map((j) => <JointLine key={j.id} joint={j} c={c} at={p} />)}
      {onReplay.value && <Expected at={p} />}
      {on.findings && <Findings c={c} view={view} size={size} />}
      <ScaleBar scale={view.scale} height={size[1]} />
      <NorthArrow bearing={slab.bearing_deg} width={size[0]} />
    </svg>
  );
}

export type Draw = {
  line: (points: Point[] | null | undefined, closed?: boolean) => string;
  at: (p: Point) => Point;
  scale: number;
};

// Patterns fill what must be told apart without colour.
export function Patterns() {
  return (
    <defs>
      <pattern id="fresh" width="14" height="9" patternUnits="userSpaceOnUse">
        <path class="fresh" d="M1 2H7M8 6.5H14" />
      </pattern>
      <pattern id="now" width="11" height="11" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path class="now-stripe" d="M2 0V11" />
      </pattern>
      <pattern id="late" width="10" height="10" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path class="late-cross" d="M0 0V10M0 0H10" />
      </pattern>
      <pattern id="hatch" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path class="hatch" d="M0 0V9" />
      </pattern>
      <pattern id="ground" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">
        <path class="hatch" d="M0 0V6" />
      </pattern>
      <pattern id="dots" width="8" height="8" patternUnits="userSpaceOnUse">
        <circle class="stipple" cx="2" cy="2" r="1.1" />
        <circle class="stipple" cx="6" cy="6" r="1.1" />
      </pattern>
    </defs>
  );
}
