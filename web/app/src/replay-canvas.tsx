// The field under the lines of the plan, on a canvas of its own.

import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { replay, fieldShown, frameNow, eventsBy } from "./replay-state";
import { cividis, contours, meshOf, scaleOf, spread, valuesOf } from "./replay-field";
import { project, type View } from "./shape";
import type { Point } from "./content";
import { fixed } from "./format";

export function FieldLayer({ view, size }: { view: View; size: Point }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const r = replay.value,
    frame = frameNow.value,
    name = fieldShown.value,
    events = eventsBy.value,
    dense = useDense();
  // drawn before the page is painted, so that it never stands at another place or size
  // than the lines over it
  useLayoutEffect(() => {
    const node = canvas.current!;
    node.width = Math.round(size[0] * dense);
    node.height = Math.round(size[1] * dense);
    const g = node.getContext("2d");
    if (!g || !r || name === "none") return;
    g.scale(dense, dense);
    const scale = scaleOf(name, r.field);
    const mesh = meshOf(r.field),
      at = mesh.points.map((p) => project(view, p));
    if (name === "opening") {
      const wide = new Map((frame?.lines ?? []).map((l) => [l.line, l.mean_m * 1000]));
      g.lineCap = "butt";
      for (const e of events) {
        const mm = wide.get(e.line) ?? 0;
        g.strokeStyle = cividis(mm / scale.most);
        g.lineWidth = 5 + 9 * Math.min(1, mm / scale.most);
        g.beginPath();
        e.path_m.map((p) => project(view, p)).forEach(([x, y], i) => (i ? g.lineTo(x, y) : g.moveTo(x, y)));
        g.stroke();
      }
      return;
    }
    const values = frame ? valuesOf(frame, name) : new Float32Array(mesh.triangles.length / 3);
    g.lineWidth = 0.7;
    for (let t = 0; t < values.length; t++) {
      const [a, b, c] = [0, 1, 2].map((i) => at[mesh.triangles[3 * t + i]]);
      g.fillStyle = g.strokeStyle = cividis(values[t] / scale.most);
      g.beginPath();
      g.moveTo(a[0], a[1]);
      g.lineTo(b[0], b[1]);
      g.lineTo(c[0], c[1]);
      g.closePath();
      g.fill();
      g.stroke(); // no hair lines of paper between neighbours
    }
    g.font = '11px "Source Sans 3", "Noto Sans", sans-serif';
    g.textAlign = "center";
    g.textBaseline = "middle";
    for (const { level, pieces } of contours(mesh, values, scale.levels)) {
      const dark = level / scale.most > 0.55;
      g.strokeStyle = dark ? "#20262b" : "#fbfaf7";
      g.lineWidth = level === 1 && name === "share" ? 1.8 : 0.9;
      g.beginPath();
      for (const [p, q] of pieces) {
        const [a, b] = [project(view, p), project(view, q)];
        g.moveTo(a[0], a[1]);
        g.lineTo(b[0], b[1]);
      }
      g.stroke();
      for (const p of spread(pieces, 170 / view.scale).slice(0, 12)) {
        const [x, y] = project(view, p),
          text = fixed(level, scale.decimals),
          half = g.measureText(text).width / 2 + 2;
        g.fillStyle = "#fbfaf7";
        g.fillRect(x - half, y - 7, 2 * half, 14);
        g.fillStyle = "#20262b";
        g.fillText(text, x, y + 0.5);
      }
    }
  }, [view.left, view.top, view.scale, size[0], size[1], dense, r, frame, name, events]);
  return <canvas ref={canvas} class="field" style={{ width: `${size[0]}px`, height: `${size[1]}px` }} aria-hidden="true" />;
}

// useDense is how many pixels of the screen go to one of the page; it changes with the
// browser's own zoom and from screen to screen.
function useDense(): number {
  const read = () => Math.min(2, window.devicePixelRatio || 1);
  const [dense, setDense] = useState(read);
  useLayoutEffect(() => {
    const query = matchMedia(`(resolution: ${window.devicePixelRatio || 1}dppx)`),
      change = () => setDense(read());
    query.addEventListener("change", change);
    return () => query.removeEventListener("change", change);
  }, [dense]);
  return dense;
}
