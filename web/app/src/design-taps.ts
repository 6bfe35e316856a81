// Where a tap on the plan is meant to be: on the line it nearly hits, else on a grid.

import type { Point, Slab } from "./content";

const GRID = 0.05; // m

// snapTap puts a tap on the outline, a joint or a thing in the slab that lies within reach,
// and sets the end of a joint level with its start where that is nearly so.
export function snapTap(slab: Slab, tap: Point, reach: number, from?: Point): Point {
  const round = (v: number) => Math.round(v / GRID) * GRID;
  let p: Point = [round(tap[0]), round(tap[1])];
  const along = from && (Math.abs(tap[0] - from[0]) < reach ? 0 : Math.abs(tap[1] - from[1]) < reach ? 1 : undefined);
  let best = reach;
  for (const [a, b] of lines(slab)) {
    const q = foot(a, b, tap),
      away = Math.hypot(q[0] - tap[0], q[1] - tap[1]);
    if (away < best) {
      best = away;
      p = q;
    }
  }
  if (from && along !== undefined) p = along === 0 ? [from[0], p[1]] : [p[0], from[1]];
  return [Math.round(p[0] * 1000) / 1000, Math.round(p[1] * 1000) / 1000];
}

function lines(slab: Slab): [Point, Point][] {
  const out: [Point, Point][] = [];
  const put = (points: Point[], closed: boolean) => {
    for (let i = closed ? 0 : 1; i < points.length; i++) out.push([points[(i + points.length - 1) % points.length], points[i]]);
  };
  put(slab.outline_m, true);
  for (const j of slab.joints ?? []) put(j.path_m, false);
  for (const f of slab.fixtures ?? []) if (f.opening) put(f.shape_m, true);
  return out;
}

// foot is the nearest point of a line to another, rounded along it to the grid.
function foot(a: Point, b: Point, p: Point): Point {
  const dx = b[0] - a[0],
    dy = b[1] - a[1],
    length = Math.hypot(dx, dy);
  if (length === 0) return a;
  const s = ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / length,
    t = Math.min(length, Math.max(0, Math.round(s / GRID) * GRID));
  return [a[0] + (dx * t) / length, a[1] + (dy * t) / length];
}
