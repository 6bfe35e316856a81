// Joints and dowels as drawn: the line tells the kind, and whether it was cut by the hour looked at.

import { clock, hour, place, to } from "./state";
import { beside, path, ticks } from "./shape";
import type { Content, DowelBar, Joint, Point } from "./content";
import { moment } from "./format";

// cutState says whether a joint exists at the hour looked at.
export function cutState(joint: Joint, c: Content): "made" | "waiting" | "unmade" {
  const now = hour.value;
  if (now === null || joint.kind !== "sawn") return "made";
  const cut = moment((c.plan.joints ?? []).find((s) => s.id === joint.id)?.cut_at);
  if (cut === undefined) return "unmade";
  return now >= cut ? "made" : "waiting";
}

export function JointLine({ joint, c, at }: { joint: Joint; c: Content; at: (p: Point) => Point }) {
  const points = joint.path_m.map(at);
  const d = path(points);
  const symbol = (c.plan.joints ?? []).find((s) => s.id === joint.id);
  const state = cutState(joint, c);
  const chosen = place.value.screen === "joint" && place.value.thing === joint.id;
  const words = [
    `Joint ${joint.name || joint.id}`,
    joint.kind,
    symbol?.state && `cut ${symbol.state}`,
    symbol?.opened && `opened: ${symbol.opened}`,
    state === "waiting" && "not yet cut at this hour",
    symbol?.cut_at && `sawn ${clock.value.at(symbol.cut_at)}`,
  ]
    .filter(Boolean)
    .join(", ");
  return (
    <a
      class={`joint joint-${joint.kind} ${state}${chosen ? " chosen" : ""}`}
      href={to("joint", joint.id)}
      aria-label={words}
      aria-current={chosen ? "true" : undefined}
    >
      <path class="hit" d={d} />
      <path class="halo" d={d} />
      {joint.kind === "isolation" ? (
        <>
          <path class="line" d={path(beside(points, 3.4))} />
          <path class="line" d={path(beside(points, -3.4))} />
        </>
      ) : (
        <path class="line" d={d} />
      )}
      {joint.kind === "formed" && <path class="line" d={ticks(points, 20, 6)} />}
    </a>
  );
}

const APART = 20; // px between dowels drawn: closer they would hide the line of the joint

// thinned leaves out dowels between, so many that the joint still reads.
export function thinned(bars: DowelBar[], scale: number): DowelBar[] {
  const kept: DowelBar[] = [];
  let last: DowelBar | undefined;
  for (const bar of bars) {
    const near =
      last &&
      last.joint === bar.joint &&
      Math.hypot(bar.from_m[0] - last.from_m[0], bar.from_m[1] - last.from_m[1]) * scale < APART;
    if (!near) kept.push((last = bar));
  }
  return kept;
}
