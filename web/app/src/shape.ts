// Small plane geometry of the drawing, in screen pixels unless said otherwise.

import type { Point } from "./content";

export interface View {
  scale: number;
  left: number;
  top: number;
} // px per metre; px of the plan's origin
export const project = (v: View, p: Point): Point => [v.left + p[0] * v.scale, v.top - p[1] * v.scale];
export const unproject = (v: View, p: Point): Point => [(p[0] - v.left) / v.scale, (v.top - p[1]) / v.scale];

export interface Box {
  x0: number;
  y0: number;
  x1: number;
  y1: number;
}
export function boxOf(points: Point[]): Box {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  for (const [x, y] of points) {
    box.x0 = Math.min(box.x0, x);
    box.x1 = Math.max(box.x1, x);
    box.y0 = Math.min(box.y0, y);
    box.y1 = Math.max(box.y1, y);
  }
  return box;
}

// fit returns the view that shows the box whole, with a margin in pixels for labels.
export function fit(box: Box, width: number, height: number, margin: { x: number; top: number; bottom: number }): View {
  const w = Math.max(box.x1 - box.x0, 0.5),
    h = Math.max(box.y1 - box.y0, 0.5);
  const scale = Math.max(1, Math.min((width - 2 * margin.x) / w, (height - margin.top - margin.bottom) / h));
  const left = (width - w * scale) / 2 - box.x0 * scale;
  const top = margin.top + (height - margin.top - margin.bottom - h * scale) / 2 + box.y1 * scale;
  return { scale, left, top };
}

// zoom keeps the pixel `at` over the same place of the plan.
export function zoom(v: View, factor: number, at: Point): View {
  const scale = Math.min(2000, Math.max(2, v.scale * factor));
  const f = scale / v.scale;
  return { scale, left: at[0] + (v.left - at[0]) * f, top: at[1] + (v.top - at[1]) * f };
}

const short = (n: number) => (Math.round(n * 10) / 10).toString();
export function path(points: Point[], closed = false): string {
  return points.map((p, i) => (i ? "L" : "M") + short(p[0]) + " " + short(p[1])).join("") + (closed ? "Z" : "");
}

// rough bends a line a little along its way, so that a crack reads as a crack in
// black and white too. The same line is always bent the same way, and its ends and
// the points that were measured stay where they are.
export function rough(points: Point[]): Point[] {
  const out: Point[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i], points[i + 1]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    const parts = Math.max(1, Math.round(length / 8));
    out.push(a);
    for (let k = 1; k < parts; k++) {
      const t = k / parts,
        noise = Math.sin((i + 1) * 12.9898 + k * 78.233) * 43758.5453;
      const away = (noise - Math.floor(noise) - 0.5) * 3.6;
      out.push([
        a[0] + (b[0] - a[0]) * t - ((b[1] - a[1]) / length) * away,
        a[1] + (b[1] - a[1]) * t + ((b[0] - a[0]) / length) * away,
      ]);
    }
  }
  if (points.length) out.push(points[points.length - 1]);
  return out;
}

// beside returns the line moved sideways by so many pixels (positive: to its left as drawn).
export function beside(points: Point[], away: number): Point[] {
  return points.map((p, i) => {
    const a = points[Math.max(0, i - 1)],
      b = points[Math.min(points.length - 1, i + 1)];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
    return [p[0] + ((b[1] - a[1]) / length) * away, p[1] - ((b[0] - a[0]) / length) * away];
  });
}

// ticks returns short strokes off a line, every so many pixels; to its left as drawn, or across it.
export function ticks(points: Point[], every: number, reach: number, across = false): string {
  let d = "",
    left = every / 2;
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i], points[i + 1]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (length === 0) continue;
    const nx = -(b[1] - a[1]) / length,
      ny = (b[0] - a[0]) / length;
    let at = left;
    for (; at <= length; at += every) {
      const x = a[0] + ((b[0] - a[0]) * at) / length,
        y = a[1] + ((b[1] - a[1]) * at) / length;
      const back = across ? reach : 0;
      d += path([
        [x - nx * back, y - ny * back],
        [x + nx * reach, y + ny * reach],
      ]);
    }
    left = at - length;
  }
  return d;
}

// middle returns the point half-way along a line.
export function middle(points: Point[]): Point {
  let total = 0;
  for (let i = 0; i + 1 < points.length; i++)
    total += Math.hypot(points[i + 1][0] - points[i][0], points[i + 1][1] - points[i][1]);
  let left = total / 2;
  for (let i = 0; i + 1 < points.length; i++) {
    const length = Math.hypot(points[i + 1][0] - points[i][0], points[i + 1][1] - points[i][1]);
    if (left <= length && length > 0) {
      const t = left / length;
      return [points[i][0] + (points[i + 1][0] - points[i][0]) * t, points[i][1] + (points[i + 1][1] - points[i][1]) * t];
    }
    left -= length;
  }
  return points[0] ?? [0, 0];
}

export function lengthOf(points: Point[]): number {
  let total = 0;
  for (let i = 0; i + 1 < points.length; i++)
    total += Math.hypot(points[i + 1][0] - points[i][0], points[i + 1][1] - points[i][1]);
  return total;
}

// centre is the area centroid of a ring.
export function centre(ring: Point[]): Point {
  let area = 0,
    x = 0,
    y = 0;
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i], ring[(i + 1) % ring.length]];
    const cross = a[0] * b[1] - b[0] * a[1];
    area += cross;
    x += (a[0] + b[0]) * cross;
    y += (a[1] + b[1]) * cross;
  }
  return Math.abs(area) < 1e-9 ? middle(ring) : [x / (3 * area), y / (3 * area)];
}

// inside reports whether a point lies in a ring.
export function inside(ring: Point[], p: Point): boolean {
  let odd = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [a, b] = [ring[i], ring[j]];
    if (a[1] > p[1] !== b[1] > p[1] && p[0] < ((b[0] - a[0]) * (p[1] - a[1])) / (b[1] - a[1]) + a[0]) odd = !odd;
  }
  return odd;
}

export interface Label {
  at: Point;
  left: number;
  right: number;
  height: number;
} // how far it reaches from its point
export interface Placed {
  at: Point;
  bare: boolean;
  left: boolean;
} // bare: no room for its words; left: they reach to its left

// apart moves labels off each other. A label takes its own point if that is free, then
// a place close by, then does without its words, and only then moves away. One that
// moved left reaches to its left, so that its leader does not run through its words.
export function apart(wanted: Label[], taken: Label[] = []): Placed[] {
  const placed = [...taken];
  const ring = (far: number) =>
    [0, 1, 2, 3, 4, 5, 6, 7].map((k): Point => [
      Math.cos(((k - 1) * Math.PI) / 4) * far * 22,
      -Math.sin(((k - 1) * Math.PI) / 4) * far * 22,
    ]);
  const near: Point[] = [[0, 0], ...ring(1)],
    away: Point[] = [...ring(1.7), ...ring(2.6), ...ring(3.6)];
  return wanted.map((label) => {
    const there = (step: Point, bare: boolean) => {
      const left = step[0] < -1,
        words = bare ? label.left : label.right;
      return {
        bare,
        toLeft: left,
        ...label,
        at: [label.at[0] + step[0], label.at[1] + step[1]] as Point,
        left: left ? words : label.left,
        right: left ? label.left : words,
      };
    };
    const tries = [...near.map((s) => there(s, false)), ...near.map((s) => there(s, true)), ...away.map((s) => there(s, true))];
    const chosen =
      tries.find((l) =>
        placed.every(
          (o) =>
            l.at[0] - l.left > o.at[0] + o.right ||
            l.at[0] + l.right < o.at[0] - o.left ||
            Math.abs(o.at[1] - l.at[1]) > (o.height + l.height) / 2,
        ),
      ) ?? there([0, 0], true);
    placed.push(chosen);
    return { at: chosen.at, bare: chosen.bare, left: chosen.toLeft };
  });
}
