// The plan being designed: joints and fixtures that can be moved by drag, by keys or by
// the numbers beside it; panels with their chance of cracking; warnings at their places.

import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import { boxOf, beside, fit, middle, path, project, ticks, unproject, zoom, type View } from "./shape";
import { oneIn } from "./format";
import { NorthArrow, ScaleBar } from "./scale";
import { thinned } from "./drawn-joints";
import { chosen, edit, grouped, layout, panelChance, settle, stripsOf, tapped, tapping, trial } from "./design-state";
import { snapTap } from "./design-taps";
import { inWordsBy, jointName } from "./design-words";
import { Patterns } from "./drawing";
import type { Fixture, Joint, Point } from "./content";
import type { Edit, Layout } from "./design-content";

const STEP = 0.05; // m, an arrow key; ten times that with shift
const GRID = 0.01; // m, what a drag snaps to

type Thing = { kind: "joint" | "fixture"; id: string };
type Drag = { thing: Thing; from: Point; by: Point } | { pan: Point; view: View };

export function DesignPlan() {
  const l = layout.value!;
  const frame = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState<Point>([0, 0]);
  const [own, setOwn] = useState<View | null>(null);
  useLayoutEffect(() => {
    const watch = new ResizeObserver(() => setSize([frame.current!.clientWidth, frame.current!.clientHeight]));
    watch.observe(frame.current!);
    return () => watch.disconnect();
  }, []);
  const outline = JSON.stringify(l.slab.outline_m);
  const whole = useMemo(() => wholeOf(l, size), [outline, size]);
  const view = own ?? whole;
  const drag = useDrag(frame, view, setOwn);
  const near = (factor: number) => setOwn(zoom(view, factor, [size[0] / 2, size[1] / 2]));
  useWheel(frame, view, setOwn);
  return (
    <section class="plan design-plan" aria-label="Plan of the joints being designed">
      <div class="plan-frame" ref={frame} {...drag}>
        {size[0] > 0 && <DesignDrawing l={l} view={view} size={size} />}
      </div>
      <div class="plan-foot">
        <div class="plan-keys" role="group" aria-label="Plan view">
          <button onClick={() => near(1.4)}>Closer</button>
          <button onClick={() => near(1 / 1.4)}>Farther</button>
          <button onClick={() => setOwn(null)}>Whole</button>
        </div>
        {tapping.value && <button onClick={() => (tapping.value = null)}>Stop adding</button>}
        {stripsOf.value && <button onClick={() => (stripsOf.value = null)}>Take strips off</button>}
        <p class={tapping.value || stripsOf.value ? "plan-said" : "plan-said idle"} aria-live="polite">
          <PlanSaid />
        </p>
      </div>
    </section>
  );
}

// PlanSaid says what a tap or drag on the plan does now.
function PlanSaid() {
  const t = tapping.value;
  if (t) return <>{t.add !== "joint" ? `Tap the middle of the ${t.add}.` : t.from ? "Now tap where the joint ends." : "Tap where the joint begins."}</>;
  if (stripsOf.value) return <>Pour strips of “{stripsOf.value.name}”; each tells whether it is placed first.</>;
  return <>Drag a joint, or choose it and press the arrow keys: {STEP * 1000} mm a step, ten times that with shift.</>;
}

function wholeOf(l: Layout, size: Point): View {
  const points = [...l.slab.outline_m, ...(l.slab.fixtures ?? []).flatMap((f) => f.shape_m ?? [])];
  return fit(boxOf(points), size[0], size[1], { x: 40, top: 30, bottom: 36 });
}

function useWheel(frame: { current: HTMLDivElement | null }, view: View, set: (v: View) => void) {
  const latest = useRef(view);
  latest.current = view;
  useEffect(() => {
    const node = frame.current!;
    const wheel = (e: WheelEvent) => {
      e.preventDefault();
      const box = node.getBoundingClientRect();
      set(zoom(latest.current, Math.pow(1.0016, -e.deltaY), [e.clientX - box.left, e.clientY - box.top]));
    };
    node.addEventListener("wheel", wheel, { passive: false });
    return () => node.removeEventListener("wheel", wheel);
  }, []);
}

// useDrag moves the thing under the finger, or the plan when there is none.
function useDrag(frame: { current: HTMLDivElement | null }, view: View, set: (v: View) => void) {
  const now = useRef<Drag | null>(null);
  const local = (e: PointerEvent): Point => {
    const box = frame.current!.getBoundingClientRect();
    return [e.clientX - box.left, e.clientY - box.top];
  };
  const down = useRef<Point | null>(null);
  // a tap while something is added says where; a drag moves the plan as ever
  const tap = (e: MouseEvent) => {
    if (!tapping.value) return;
    e.preventDefault();
    e.stopPropagation();
    const box = frame.current!.getBoundingClientRect(),
      at: Point = [e.clientX - box.left, e.clientY - box.top];
    if (down.current && Math.hypot(at[0] - down.current[0], at[1] - down.current[1]) > 6) return;
    const from = "from" in tapping.value ? tapping.value.from : undefined;
    tapped(snapTap(layout.value!.slab, unproject(view, at), 14 / view.scale, from));
  };
  const end = (e: PointerEvent) => {
    const d = now.current;
    now.current = null;
    if (!d || !("thing" in d) || (d.by[0] === 0 && d.by[1] === 0)) return;
    e.preventDefault();
    void settle(movedWords(d.thing, d.by), moveOf(d.thing, d.by));
  };
  return {
    onPointerDown: (e: PointerEvent) => {
      const at = local(e);
      down.current = at;
      const thing = tapping.value ? undefined : thingUnder(e.target as Element);
      now.current = thing ? { thing, from: unproject(view, at), by: [0, 0] } : { pan: at, view };
      if (thing) {
        chosen.value = thing;
        frame.current!.setPointerCapture(e.pointerId);
      }
    },
    onPointerMove: (e: PointerEvent) => {
      const d = now.current,
        at = local(e);
      if (!d) return;
      if ("pan" in d) {
        if (Math.hypot(at[0] - d.pan[0], at[1] - d.pan[1]) > 6)
          set({ ...d.view, left: d.view.left + at[0] - d.pan[0], top: d.view.top + at[1] - d.pan[1] });
        return;
      }
      const by = snapped(d.thing, d.from, unproject(view, at));
      if (by[0] === d.by[0] && by[1] === d.by[1]) return;
      d.by = by;
      void trial(moveOf(d.thing, by));
    },
    onPointerUp: end,
    onPointerCancel: () => (now.current = null),
    onClickCapture: tap,
  };
}

function thingUnder(e: Element): Thing | undefined {
  const node = e.closest<SVGElement>("[data-kind]");
  return node ? { kind: node.dataset.kind as Thing["kind"], id: node.dataset.id! } : undefined;
}

// snapped keeps a move on the grid, and a joint moving square to itself.
function snapped(thing: Thing, from: Point, to: Point): Point {
  const round = (v: number) => Math.round(v / GRID) * GRID;
  const by: Point = [to[0] - from[0], to[1] - from[1]];
  const joint = thing.kind === "joint" && layout.value!.slab.joints?.find((j) => j.id === thing.id);
  if (!joint) return [round(by[0]), round(by[1])];
  const n = acrossOf(joint),
    away = round(by[0] * n[0] + by[1] * n[1]);
  return [n[0] * away, n[1] * away];
}

// acrossOf is the direction square to a joint.
export function acrossOf(joint: Joint): Point {
  const a = joint.path_m[0],
    b = joint.path_m[joint.path_m.length - 1];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
}

export const moveOf = (thing: Thing, by: Point): Edit =>
  thing.kind === "joint" ? { do: "move joint", id: thing.id, by_m: by } : { do: "move fixture", id: thing.id, by_m: by };

export const movedWords = (thing: Thing, by: Point) =>
  `${thing.kind === "joint" ? jointName(thing.id) : thing.id} moved ${inWordsBy(by)}`;

function DesignDrawing({ l, view, size }: { l: Layout; view: View; size: Point }) {
  const at = (p: Point) => project(view, p);
  const line = (points: Point[] | null | undefined, closed = false) => path((points ?? []).map(at), closed);
  return (
    <svg
      class="drawing"
      width={size[0]}
      height={size[1]}
      role="group"
      aria-label={`Plan of ${l.slab.name || "the slab"} with the joints being designed. Tab goes through panels, fixtures and joints.`}
    >
      <Patterns />
      <path class="slab" d={line(l.slab.outline_m, true)} />
      {stripsOf.value && <Strips l={stripsOf.value} line={line} at={at} />}
      <DesignPanels l={l} line={line} at={at} scale={view.scale} />
      {(l.slab.fixtures ?? []).map((f) => (
        <DesignFixture key={f.id} f={f} line={line} />
      ))}
      <path class="outline" d={line(l.slab.outline_m, true)} />
      <path class="trimmers" d={(l.trimmers ?? []).map((t) => line([t.from_m, t.to_m])).join("")} />
      <path
        class="dowels"
        d={thinned(l.dowel_bars ?? [], view.scale)
          .map((d) => line([d.from_m, d.to_m]))
          .join("")}
      />
      {(l.slab.joints ?? []).map((j) => (
        <DesignJoint key={j.id} joint={j} points={j.path_m.map(at)} />
      ))}
      <Warnings l={l} at={at} />
      <TapBegun at={at} />
      <ScaleBar scale={view.scale} height={size[1]} />
      <NorthArrow bearing={l.slab.bearing_deg} width={size[0]} />
    </svg>
  );
}

interface Lines {
  line: (points: Point[] | null | undefined, closed?: boolean) => string;
}

const choose = (kind: "joint" | "panel" | "fixture", id: string) => () => (chosen.value = { kind, id });
const isChosen = (kind: string, id: string) => chosen.value?.kind === kind && chosen.value.id === id;

// pressed lets a thing on the plan be chosen by Enter and moved by the arrows.
function pressed(kind: "joint" | "panel" | "fixture", id: string) {
  return (e: KeyboardEvent) => {
    if (e.key === "Enter" || e.key === " ") {
      choose(kind, id)();
      e.preventDefault();
      return;
    }
    const arrows: Record<string, Point> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
    const way = arrows[e.key];
    if (!way || kind === "panel") {
      if (kind === "joint" && e.key === "Delete") void edit(`${jointName(id)} removed`, { do: "remove joint", id });
      return;
    }
    e.preventDefault();
    e.stopPropagation();
    choose(kind, id)();
    const far = e.shiftKey ? 10 * STEP : STEP;
    let by: Point = [way[0] * far, way[1] * far];
    const joint = kind === "joint" ? layout.value!.slab.joints?.find((j) => j.id === id) : undefined;
    if (joint) {
      const n = acrossOf(joint),
        along = way[0] * n[0] + way[1] * n[1];
      if (Math.abs(along) < 0.3) return; // an arrow along the joint does not move it
      by = [Math.sign(along) * n[0] * far, Math.sign(along) * n[1] * far];
    }
    void edit(movedWords({ kind, id } as Thing, by), moveOf({ kind, id } as Thing, by));
  };
}

function DesignPanels({ l, line, at, scale }: Lines & { l: Layout; at: (p: Point) => Point; scale: number }) {
  return (
    <g class="panels">
      {(l.panels ?? []).map((p) => {
        const chance = panelChance(p.id),
          box = boxOf(p.ring_m),
          [x, y] = at([box.x1, box.y0]),
          roomy = (box.x1 - box.x0) * scale > 70 && (box.y1 - box.y0) * scale > 34;
        const words = `Panel ${p.id}, ${p.length_m.toFixed(1)} by ${p.width_m.toFixed(1)} metres${chance === undefined ? "" : `, cracks in ${oneIn(chance)}`}`;
        return (
          <g
            key={p.id}
            class={`panel${isChosen("panel", p.id) ? " chosen" : ""}`}
            role="button"
            tabindex={0}
            aria-label={words}
            aria-pressed={isChosen("panel", p.id)}
            onClick={choose("panel", p.id)}
            onKeyDown={pressed("panel", p.id)}
          >
            <path class="panel-shape" d={[p.ring_m, ...(p.openings_m ?? [])].map((ring) => line(ring, true)).join("")} />
            <g class="panel-names" aria-hidden="true">
              <text x={x - 7} y={y - 10} text-anchor="end">
                {p.id}
              </text>
              {roomy && chance !== undefined && (
                <text x={x - 7} y={y - 24} text-anchor="end" class={chance >= 0.1 ? "risky" : ""}>
                  {oneIn(chance)}
                </text>
              )}
            </g>
          </g>
        );
      })}
    </g>
  );
}

// Strips are the pours of a proposal: those placed first darker, each with its name.
function Strips({ l, line, at }: Lines & { l: Layout; at: (p: Point) => Point }) {
  return (
    <g class="strips" role="img" aria-label={(l.strips ?? []).map((s) => `Strip ${s.id}, placed ${s.first ? "first" : "later"}`).join("; ")}>
      {(l.strips ?? []).map((s) => {
        const rings = (s.panels ?? []).map((id) => l.panels?.find((p) => p.id === id)?.ring_m ?? []);
        const box = boxOf(rings.flat()),
          [x, y] = at([box.x0, (box.y0 + box.y1) / 2]);
        return (
          <g key={s.id} class={s.first ? "strip first" : "strip"}>
            <path d={rings.map((r) => line(r, true)).join("")} />
            <text transform={`translate(${x - 10} ${y}) rotate(-90)`} text-anchor="middle">
              {s.id}, {s.first ? "first" : "later"}
            </text>
          </g>
        );
      })}
    </g>
  );
}

// TapBegun marks where a joint put in by taps begins.
function TapBegun({ at }: { at: (p: Point) => Point }) {
  const t = tapping.value;
  if (t?.add !== "joint" || !t.from) return null;
  const [x, y] = at(t.from);
  return <circle class="grip" cx={x} cy={y} r="7" />;
}

function DesignFixture({ f, line }: Lines & { f: Fixture }) {
  const closed = f.kind !== "wall" && f.kind !== "building" && f.kind !== "duct" && f.shape_m.length > 2;
  const movable = f.opening === true;
  return (
    <g
      class={`fixture fixture-${f.kind.replace(/\s/g, "-")}${isChosen("fixture", f.id) ? " chosen" : ""}`}
      data-kind={movable ? "fixture" : undefined}
      data-id={f.id}
      role={movable ? "button" : "img"}
      tabindex={movable ? 0 : undefined}
      aria-label={`${f.name || f.id}, ${f.kind}${f.isolated ? `, isolated: ${f.isolated.value}` : ""}`}
      aria-pressed={movable ? isChosen("fixture", f.id) : undefined}
      onClick={movable ? choose("fixture", f.id) : undefined}
      onKeyDown={movable ? pressed("fixture", f.id) : undefined}
    >
      <path class="halo" d={line(f.shape_m, closed)} />
      <path class="shape" d={line(f.shape_m, closed)} />
    </g>
  );
}

function DesignJoint({ joint, points }: { joint: Joint; points: Point[] }) {
  const d = path(points),
    on = isChosen("joint", joint.id);
  return (
    <g
      class={`joint joint-${joint.kind} made movable${on ? " chosen" : ""}`}
      data-kind="joint"
      data-id={joint.id}
      role="button"
      tabindex={0}
      aria-label={`${jointName(joint.id)}, ${joint.kind}${joint.transfer ? `, ${joint.transfer.value}` : ""}`}
      aria-pressed={on}
      onClick={choose("joint", joint.id)}
      onKeyDown={pressed("joint", joint.id)}
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
      {on && <circle class="grip" cx={middle(points)[0]} cy={middle(points)[1]} r="9" />}
    </g>
  );
}

const CLOSE = 36; // px between flags of one rule

// Warnings stand as flags where they are, numbered as the rules are in the list beside.
// Those of a whole panel stand in its corner, clear of its name.
function Warnings({ l, at }: { l: Layout; at: (p: Point) => Point }) {
  const used = new Map<string, number>(),
    flags: { n: number; x: number; y: number; key: string }[] = [];
  return (
    <g class="warnings" aria-hidden="true">
      {grouped(l.warnings).flatMap((g, n) =>
        g.all.map((w, i) => {
          const panel = !w.joint && !w.fixture && w.code !== "corner" && l.panels?.find((p) => p.id === w.panel);
          const box = panel ? boxOf(panel.ring_m) : undefined;
          const [x, y] = box ? at([box.x0, box.y1]) : at(w.at_m);
          if (flags.some((f) => f.n === n && Math.hypot(f.x - x, f.y - y) < CLOSE)) return null; // one flag tells of all places close by
          const near = flags.find((f) => Math.hypot(f.x - x, f.y - y) < 12);
          const key = near?.key ?? `${x} ${y}`;
          flags.push({ n, x, y, key });
          const beside = used.get(key) ?? 0;
          used.set(key, beside + 1);
          return (
            <g key={`${n} ${i}`} class={`warning ${w.level}`} transform={`translate(${x + (box ? 20 : 0) + beside * 21} ${y + (box ? 44 : 0)})`}>
              {!box && <path d="M0 0V-18" />}
              <rect x="-9" y="-34" width="18" height="17" />
              <text y="-21" text-anchor="middle">
                {n + 1}
              </text>
            </g>
          );
        }),
      )}
    </g>
  );
}
