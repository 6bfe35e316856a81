// Words for what is done to the plan being designed.

import { fixed, withUnit } from "./format";
import { layout } from "./design-state";
import type { Point } from "./content";

export function jointName(id: string): string {
  const joint = layout.value?.slab.joints?.find((j) => j.id === id);
  return joint?.name && joint.name !== id ? `Joint ${id} (${joint.name})` : `Joint ${id}`;
}

// inWordsBy writes a move: "250 mm right and 40 mm down".
export function inWordsBy(by: Point): string {
  const part = (v: number, more: string, less: string) =>
    Math.abs(v) < 0.0005 ? "" : `${withUnit(fixed(Math.abs(v) * 1000, 0), "mm")} ${v > 0 ? more : less}`;
  return [part(by[0], "right", "left"), part(by[1], "up", "down")].filter(Boolean).join(" and ") || "nowhere";
}

export const at = (p: Point) => `${fixed(p[0], 2)}, ${fixed(p[1], 2)}`;
