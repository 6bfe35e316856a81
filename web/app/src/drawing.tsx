// The drawing itself: what is drawn, in which line, in which order.

import { content, layers } from "./state";
import { boxOf, path, project, type View } from "./shape";
import type { Panel, Point } from "./content";
import { FixtureShape } from "./drawn-fixtures";
import { Findings } from "./drawn-findings";
import { JointLine, thinned } from "./drawn-joints";
import { Pour } from "./drawn-pours";
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
      class="drawing"
      width={size[0]}
      height={size[1]}
      role="group"
      tabIndex={0}
      aria-label={`Plan of ${slab.name || "the slab"}. Arrow keys move it, plus and minus bring it closer or farther, 0 shows it whole. Tab goes through joints and findings.`}
    >
      <Patterns />
      <path class="slab" d={line(slab.outline_m, true)} />
      {on.pours &&
        (c.plan.pours ?? []).map((pour, i) => <Pour key={pour.id} pour={pour} index={i} line={line} at={p} scale={view.scale} />)}
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
      {on.panels && <PanelNames panels={c.plan.panels ?? []} at={p} scale={view.scale} />}
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

function Patterns() {
  return (
    <defs>
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

function PanelNames({ panels, at, scale }: { panels: Panel[]; at: (p: Point) => Point; scale: number }) {
  return (
    <g class="panel-names">
      {panels.map((panel) => {
        const box = boxOf(panel.ring_m),
          [x, y] = at([box.x1, box.y0]);
        if ((box.x1 - box.x0) * scale < 44) return null;
        return (
          <text key={panel.id} x={x - 7} y={y - 10} text-anchor="end">
            {panel.id}
          </text>
        );
      })}
    </g>
  );
}
