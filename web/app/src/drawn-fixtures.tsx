// What is in or beside the slab: pits, drains, columns, walls, ducts, old slabs.

import { content } from "./state";
import { beside, boxOf, centre, inside, lengthOf, middle, path } from "./shape";
import type { Draw } from "./drawing";
import type { Fixture, Point } from "./content";

export function FixtureShape({ fixture: f, line, at }: Draw & { fixture: Fixture }) {
  const closed = f.kind !== "wall" && f.kind !== "building" && f.kind !== "duct" && f.shape_m.length > 2;
  const points = f.shape_m.map(at);
  const d = line(f.shape_m, closed);
  const box = boxOf(points);
  const name = f.name || f.kind,
    wide = name.length * 6.4 + 6;
  const thin = closed && (box.x1 - box.x0) / Math.max(1, box.y1 - box.y0) > 4;
  return (
    <g class={`fixture fixture-${f.kind.replace(/\s/g, "-")}`}>
      <title>{`${f.name || f.id}: ${f.kind}, isolated ${f.isolated?.value ?? "not known"}`}</title>
      {!closed && f.kind !== "duct" && (
        <path class="ground" d={path([...points, ...beside(points, outward(points, at)).reverse()], true)} />
      )}
      <path class="shape" d={d} />
      {f.opening && closed && points.length === 4 && !thin && (
        <path class="void" d={path([points[0], points[2]]) + path([points[1], points[3]])} />
      )}
      <FixtureName f={f} name={name} wide={wide} points={points} closed={closed} />
    </g>
  );
}

// FixtureName stands above a shape, along a wall, or at the foot of a duct; small shapes far away have none.
function FixtureName({
  f,
  name,
  wide,
  points,
  closed,
}: {
  f: Fixture;
  name: string;
  wide: number;
  points: Point[];
  closed: boolean;
}) {
  const box = boxOf(points),
    [mx] = middle(points);
  if (f.kind === "duct") {
    const foot = points.reduce((a, b) => (b[1] > a[1] ? b : a));
    const head = points.reduce((a, b) => (b[1] < a[1] ? b : a));
    const turn = (Math.atan2(head[1] - foot[1], head[0] - foot[0]) * 180) / Math.PI;
    return lengthOf(points) > 90 ? (
      <text class="fixture-name" transform={`translate(${foot[0]} ${foot[1]}) rotate(${turn}) translate(14 -5)`}>
        {name}
      </text>
    ) : null;
  }
  if (closed && f.kind === "old slab") {
    const [x, y] = centre(points),
      upright = box.y1 - box.y0 > box.x1 - box.x0;
    return Math.max(box.y1 - box.y0, box.x1 - box.x0) > wide ? (
      <text
        class="fixture-name"
        x={x}
        y={y}
        text-anchor="middle"
        dominant-baseline="central"
        transform={upright ? `rotate(-90 ${x} ${y})` : undefined}
      >
        {name}
      </text>
    ) : null;
  }
  const room = closed ? box.x1 - box.x0 > wide * 0.55 || wide < 60 : box.x1 - box.x0 > wide;
  if (!room || (closed && box.x1 - box.x0 < 12)) return null;
  return (
    <text class="fixture-name" x={closed ? (box.x0 + box.x1) / 2 : mx} y={box.y0 - (closed ? 6 : 15)} text-anchor="middle">
      {name}
    </text>
  );
}

// outward is how far the hatch of a wall stands off, on the side where the slab is not.
function outward(points: Point[], at: (p: Point) => Point): number {
  const ring = content.value!.plan.slab.outline_m.map(at);
  const m = middle(points),
    off = beside(points, 8),
    n = middle(off);
  return inside(ring, [m[0] + (n[0] - m[0]), m[1] + (n[1] - m[1])]) ? -10 : 10;
}
