// The packed field unpacked: a mesh, its values at one hour, its colours and contours.

import type { Point } from "./content";
import type { ReplayField, ReplayFrame } from "./replay-content";

export interface Mesh {
  points: Point[];
  triangles: Uint16Array; // three numbers of points each
}

function bytes(text: string | null): DataView {
  const raw = atob(text ?? ""),
    out = new Uint8Array(raw.length);
  for (let i = 0; i < raw.length; i++) out[i] = raw.charCodeAt(i);
  return new DataView(out.buffer);
}

let unpacked: { from: ReplayField; mesh: Mesh } | null = null;
export function meshOf(field: ReplayField): Mesh {
  if (unpacked?.from === field) return unpacked.mesh;
  const p = bytes(field.points),
    t = bytes(field.triangles);
  const points: Point[] = [];
  for (let i = 0; i + 3 < p.byteLength; i += 4)
    points.push([field.low_m[0] + p.getUint16(i, true) / 100, field.low_m[1] + p.getUint16(i + 2, true) / 100]);
  const triangles = new Uint16Array(t.byteLength / 2);
  for (let i = 0; i < triangles.length; i++) triangles[i] = t.getUint16(2 * i, true);
  unpacked = { from: field, mesh: { points, triangles } };
  return unpacked.mesh;
}

export type FieldName = "share" | "stress" | "opening" | "none";

// valuesOf are the values of the triangles at one hour: a share, or MPa.
const kept = new WeakMap<ReplayFrame, Partial<Record<string, Float32Array>>>();
export function valuesOf(frame: ReplayFrame, of: "share" | "stress" | "lift"): Float32Array {
  const known = kept.get(frame) ?? {};
  kept.set(frame, known);
  if (!known[of]) {
    const b = bytes(frame[of]);
    known[of] =
      of === "lift"
        ? Float32Array.from({ length: b.byteLength / 2 }, (_, i) => b.getInt16(2 * i, true) / 100)
        : Float32Array.from({ length: b.byteLength }, (_, i) => (of === "share" ? b.getUint8(i) / 100 : b.getUint8(i) / 50));
  }
  return known[of]!;
}

// Cividis, which is even to the eye and survives print and colour blindness (Nuñez,
// Anderton and Renslow, PLoS ONE 13(7) 2018); ten of its hues, from memory.
const CIVIDIS = ["00204d", "00336f", "39486b", "575c6d", "707173", "8a8779", "a69d75", "c4b56c", "e4cf5b", "ffea46"].map((h) =>
  [0, 2, 4].map((i) => parseInt(h.slice(i, i + 2), 16)),
);
export function cividis(share: number): string {
  const x = Math.min(0.9999, Math.max(0, share)) * (CIVIDIS.length - 1),
    i = Math.floor(x);
  return `rgb(${CIVIDIS[i].map((c, k) => Math.round(c + (x - i) * (CIVIDIS[i + 1][k] - c))).join(",")})`;
}

// The scale of a field is the same at every hour.
export interface Scale {
  name: string;
  unit: string;
  most: number;
  levels: number[];
  decimals: number;
}
export function scaleOf(name: FieldName, field: ReplayField): Scale {
  if (name === "share") return { name: "Share of strength used", unit: "", most: 1.25, levels: [0.25, 0.5, 0.75, 1], decimals: 2 };
  if (name === "stress") {
    const most = Math.min(2.5, Math.max(0.5, Math.ceil(field.most_MPa * 2) / 2)); // peaks at corners would leave the rest dark
    return { name: "Tension in plan", unit: "MPa", most, levels: steps(most, 0.5), decimals: 1 };
  }
  const widest = Math.max(1e-4, ...(field.frames ?? []).flatMap((f) => f.lines.map((l) => l.mean_m)));
  const most = Math.max(0.5, Math.ceil(widest * 2000) / 2);
  return { name: "Opening, mean of each line", unit: "mm", most, levels: steps(most, most > 2.5 ? 1 : 0.5), decimals: 1 };
}
function steps(most: number, step: number): number[] {
  const out = [];
  for (let v = step; v < most - 1e-9; v += step) out.push(v);
  return out;
}

// contours are lines of one value, as pieces, from the means at the points.
export function contours(mesh: Mesh, values: Float32Array, levels: number[]): { level: number; pieces: [Point, Point][] }[] {
  const sum = new Float32Array(mesh.points.length),
    n = new Float32Array(mesh.points.length);
  for (let t = 0; t < values.length; t++)
    for (let i = 0; i < 3; i++) {
      sum[mesh.triangles[3 * t + i]] += values[t];
      n[mesh.triangles[3 * t + i]]++;
    }
  const at = sum.map((s, i) => s / Math.max(1, n[i]));
  return levels.map((level) => {
    const pieces: [Point, Point][] = [];
    for (let t = 0; t < values.length; t++) {
      const ends: Point[] = [];
      for (let i = 0; i < 3; i++) {
        const a = mesh.triangles[3 * t + i],
          b = mesh.triangles[3 * t + ((i + 1) % 3)];
        if (at[a] < level === at[b] < level) continue;
        const s = (level - at[a]) / (at[b] - at[a]);
        ends.push([
          mesh.points[a][0] + s * (mesh.points[b][0] - mesh.points[a][0]),
          mesh.points[a][1] + s * (mesh.points[b][1] - mesh.points[a][1]),
        ]);
      }
      if (ends.length === 2) pieces.push([ends[0], ends[1]]);
    }
    return { level, pieces };
  });
}

// spread chooses pieces to write a number at: far from each other.
export function spread(pieces: [Point, Point][], apart: number): Point[] {
  const out: Point[] = [];
  for (const [a, b] of pieces) {
    const m: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    if (out.every((p) => Math.hypot(p[0] - m[0], p[1] - m[1]) > apart)) out.push(m);
  }
  return out;
}
