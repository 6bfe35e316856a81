// The bent shape of the slab, exaggerated, drawn without any graphics card: the mesh
// turned, tilted and painted from back to front.

import { useEffect, useRef, useState } from "preact/hooks";
import { content } from "./state";
import { eventsBy, frameNow, replay, timeOf, when } from "./replay-state";
import { cividis, meshOf, valuesOf, type Mesh } from "./replay-field";
import { useWidth } from "./width";
import { boxOf } from "./shape";
import type { Point } from "./content";
import { fixed, withUnit } from "./format";

interface Eye {
  turn: number; // degrees
  tilt: number; // degrees over the ground
  times: number; // how much heights are exaggerated
}
// begin looks from the front left, with heights drawn so that the highest stands a metre and a half.
const begin = (mostLift: number): Eye => ({ turn: -30, tilt: 32, times: Math.round(Math.min(1000, Math.max(50, 1500 / Math.max(0.5, mostLift))) / 50) * 50 });

export function BentShape() {
  const { box, width } = useWidth();
  const canvas = useRef<HTMLCanvasElement>(null);
  const [eye, setEye] = useState<Eye>(() => begin(replay.value!.field.most_lift_mm));
  const r = replay.value!,
    frame = frameNow.value,
    events = eventsBy.value;
  const height = Math.round(Math.min(360, Math.max(220, width * 0.6)));
  useEffect(() => {
    if (canvas.current && width > 0) paint(canvas.current, width, height, eye);
  }, [width, height, eye, frame, events, document.documentElement.dataset.theme]);
  const turn = (by: number) => setEye({ ...eye, turn: (eye.turn + by + 540) % 360 - 180 });
  const tilt = (by: number) => setEye({ ...eye, tilt: Math.min(85, Math.max(5, eye.tilt + by)) });
  const more = (by: number) => setEye({ ...eye, times: Math.min(2000, Math.max(25, Math.round(eye.times * by))) });
  const keys = (e: KeyboardEvent) => {
    const act: Record<string, () => void> = {
      ArrowLeft: () => turn(-10),
      ArrowRight: () => turn(10),
      ArrowUp: () => tilt(5),
      ArrowDown: () => tilt(-5),
      "+": () => more(1.5),
      "=": () => more(1.5),
      "-": () => more(1 / 1.5),
      "0": () => setEye(begin(r.field.most_lift_mm)),
    };
    if (!act[e.key] || e.ctrlKey || e.metaKey || e.altKey) return;
    act[e.key]();
    e.preventDefault();
  };
  const most = Math.max(0, ...(frame?.panels ?? []).map((p) => p.lift_mm));
  const top = frame?.panels.find((p) => p.lift_mm === most);
  const said = frame
    ? `At ${when(timeOf(r, frame.hours))} the top has shortened as if it were ${withUnit(fixed(Math.abs(frame.difference_K), 0), "K")} ${frame.difference_K < 0 ? "colder" : "warmer"} than the underside. Edges and corners stand up to ${withUnit(fixed(most, 1), "mm")}${top && most > 0 ? `, in panel ${top.panel}` : ""}. Heights are drawn ${eye.times} times.`
    : "The slab has not set yet: it lies flat.";
  return (
    <section class="bent">
      <h2>Bent shape</h2>
      <p>{said}</p>
      <div ref={box} class="bent-box" role="group" tabIndex={0} onKeyDown={keys} aria-label={`Bent shape, exaggerated. ${said} Arrow keys turn and tilt it, plus and minus change the heights, 0 starts again.`}>
        <canvas ref={canvas} style={{ width: `${width}px`, height: `${height}px` }} aria-hidden="true" />
      </div>
      <div class="ruler-keys" role="group" aria-label="Turn the bent shape">
        <button onClick={() => turn(-15)}>Turn left</button>
        <button onClick={() => turn(15)}>Turn right</button>
        <button onClick={() => tilt(10)}>From above</button>
        <button onClick={() => tilt(-10)}>From the side</button>
        <button onClick={() => more(1.5)}>Higher</button>
        <button onClick={() => more(1 / 1.5)}>Lower</button>
      </div>
      <p class="quiet small">{r.field.lift_from}</p>
    </section>
  );
}

type Seen = [number, number, number]; // across, down, depth

function paint(node: HTMLCanvasElement, width: number, height: number, eye: Eye) {
  const r = replay.value!,
    frame = frameNow.value,
    mesh = meshOf(r.field);
  const dense = Math.min(2, window.devicePixelRatio || 1);
  node.width = Math.round(width * dense);
  node.height = Math.round(height * dense);
  const g = node.getContext("2d");
  if (!g || mesh.points.length === 0) return;
  g.scale(dense, dense);
  const lift = frame ? valuesOf(frame, "lift") : new Float32Array(mesh.points.length);
  const see = lookFrom(mesh, eye, width, height);
  const at = mesh.points.map((p, i) => see(p, lift[i]));
  const most = Math.max(0.5, r.field.most_lift_mm);
  const count = mesh.triangles.length / 3;
  const corner = (t: number, k: number) => mesh.triangles[3 * t + k];
  const depth = (t: number) => at[corner(t, 0)][2] + at[corner(t, 1)][2] + at[corner(t, 2)][2];
  const order = Array.from({ length: count }, (_, t) => t).sort((a, b) => depth(a) - depth(b));
  g.lineWidth = 0.7;
  for (const t of order) {
    const mean = (lift[corner(t, 0)] + lift[corner(t, 1)] + lift[corner(t, 2)]) / 3;
    g.fillStyle = g.strokeStyle = cividis(Math.max(0, mean) / most);
    g.beginPath();
    for (let k = 0; k < 3; k++) {
      const [x, y] = at[corner(t, k)];
      if (k) g.lineTo(x, y);
      else g.moveTo(x, y);
    }
    g.closePath();
    g.fill();
    g.stroke();
  }
  const css = getComputedStyle(document.documentElement);
  const nearest = nearestTo(mesh);
  const draw = (points: Point[], colour: string, thick: number, dash: number[]) => {
    g.strokeStyle = colour;
    g.lineWidth = thick;
    g.setLineDash(dash);
    g.beginPath();
    along(points).forEach((p, i) => {
      const [x, y] = see(p, lift[nearest(p)] + 0.02 * most);
      if (i) g.lineTo(x, y);
      else g.moveTo(x, y);
    });
    g.stroke();
  };
  const slab = content.value!.plan.slab;
  for (const j of slab.joints ?? []) draw(j.path_m, "#fbfaf7", 1, []);
  for (const e of eventsBy.value) draw(e.path_m, e.crack ? css.getPropertyValue("--crack") : "#fbfaf7", 2.4, e.crack ? [5, 3] : []);
  draw([...slab.outline_m, slab.outline_m[0]], css.getPropertyValue("--ink"), 1.5, []);
}

// along puts points along a line every quarter of a metre, so that it bends with the slab.
function along(points: Point[]): Point[] {
  const out: Point[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [points[i], points[i + 1]],
      n = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / 0.25));
    for (let k = 0; k < n; k++) out.push([a[0] + ((b[0] - a[0]) * k) / n, a[1] + ((b[1] - a[1]) * k) / n]);
  }
  out.push(points[points.length - 1]);
  return out;
}

// nearestTo finds the point of the mesh nearest to a place, by a grid of half metres.
function nearestTo(mesh: Mesh): (p: Point) => number {
  const cells = new Map<string, number[]>();
  const key = (x: number, y: number) => `${x},${y}`;
  mesh.points.forEach((p, i) => {
    const k = key(Math.floor(p[0] * 2), Math.floor(p[1] * 2));
    cells.set(k, [...(cells.get(k) ?? []), i]);
  });
  return (p) => {
    let best = 0,
      least = Infinity;
    for (let reach = 1; reach < 8 && least === Infinity; reach++)
      for (let dx = -reach; dx <= reach; dx++)
        for (let dy = -reach; dy <= reach; dy++)
          for (const i of cells.get(key(Math.floor(p[0] * 2) + dx, Math.floor(p[1] * 2) + dy)) ?? []) {
            const d = Math.hypot(mesh.points[i][0] - p[0], mesh.points[i][1] - p[1]);
            if (d < least) [best, least] = [i, d];
          }
    return best;
  };
}

// lookFrom projects a place and its lift in mm as seen from an eye, to fit the canvas.
function lookFrom(mesh: Mesh, eye: Eye, width: number, height: number): (p: Point, lift: number) => Seen {
  const box = boxOf(mesh.points),
    [cx, cy] = [(box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2];
  const turn = (eye.turn * Math.PI) / 180,
    tilt = (eye.tilt * Math.PI) / 180;
  const turned = (p: Point): Point => [
    (p[0] - cx) * Math.cos(turn) - (p[1] - cy) * Math.sin(turn),
    (p[0] - cx) * Math.sin(turn) + (p[1] - cy) * Math.cos(turn),
  ];
  const seen = boxOf(mesh.points.map(turned)),
    margin = 14;
  const high = ((replay.value!.field.most_lift_mm / 1000) * eye.times * Math.cos(tilt)) / 2;
  const scale = Math.min((width - 2 * margin) / (seen.x1 - seen.x0), (height - 2 * margin) / ((seen.y1 - seen.y0) * Math.sin(tilt) + high));
  const [mx, my] = [(seen.x0 + seen.x1) / 2, (seen.y0 + seen.y1) / 2];
  return (p, lift) => {
    const [x, y] = turned(p),
      z = (lift / 1000) * eye.times;
    return [
      width / 2 + (x - mx) * scale,
      height / 2 - ((y - my) * Math.sin(tilt) + z * Math.cos(tilt) - high / 2) * scale,
      -y * Math.cos(tilt) + z * Math.sin(tilt),
    ];
  };
}
