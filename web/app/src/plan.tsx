// The plan: the drawing that fills the page, with the keys to move about in it.

import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import { clock, content, hour, layers, place, pourShown, toggle, type Layer } from "./state";
import { boxOf, centre, fit, project, unproject, zoom, type View } from "./shape";
import type { Content, Point } from "./content";
import { Drawing } from "./drawing";
import { Key } from "./key";
import { jointsCut, stateSentence } from "./panel-state";
import { FieldLayer } from "./replay-canvas";
import { onReplay, replayTime, when } from "./replay-state";
import { useWide } from "./wide";

const LAYERS: [Layer, string][] = [
  ["findings", "Findings, numbered"],
  ["joints", "Joints"],
  ["dowels", "Dowels"],
  ["bars", "Bars and mesh"],
  ["pours", "Pour strips"],
  ["panels", "Panels: name and state"],
  ["unseen", "Could not see"],
  ["wheels", "Wheel paths"],
];

type Sheet = "" | "layers" | "key" | "move";

export function Plan() {
  const c = content.value!;
  const frame = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState<Point>([0, 0]);
  const [own, setOwn] = useState<View | null>(null);
  const [sheet, setSheet] = useState<Sheet>("");
  const wide = useWide();

  useLayoutEffect(() => {
    const watch = new ResizeObserver(() => setSize([frame.current!.clientWidth, frame.current!.clientHeight]));
    watch.observe(frame.current!);
    return () => watch.disconnect();
  }, []);

  const whole = useMemo(() => wholeView(c, size), [c, size]);
  const view = own ?? whole;
  const moves = useMoves(frame, view, setOwn, size);
  useKeepInView(view, size, setOwn);

  const near = (factor: number) => setOwn(zoom(view, factor, [size[0] / 2, size[1] / 2]));
  const shift = (dx: number, dy: number) =>
    setOwn({ ...view, left: view.left + dx * size[0] * 0.25, top: view.top + dy * size[1] * 0.25 });

  const onKeyDown = (e: KeyboardEvent) => {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    const act: Record<string, () => void> = {
      "+": () => near(1.4),
      "=": () => near(1.4),
      "-": () => near(1 / 1.4),
      "0": () => setOwn(null),
      ArrowLeft: () => shift(1, 0),
      ArrowRight: () => shift(-1, 0),
      ArrowUp: () => shift(0, 1),
      ArrowDown: () => shift(0, -1),
    };
    if (act[e.key]) {
      act[e.key]();
      e.preventDefault();
    }
    if (e.key === "Escape" && sheet) {
      setSheet("");
      e.stopPropagation();
    }
  };
  const open = (which: Sheet) => setSheet(sheet === which ? "" : which);

  return (
    <section class="plan" aria-label="Plan of the slab" onKeyDown={onKeyDown}>
      <div class="plan-frame" ref={frame} {...moves}>
        {size[0] > 0 && onReplay.value && <FieldLayer view={view} size={size} />}
        {size[0] > 0 && <Drawing view={view} size={size} />}
        {sheet === "layers" && (
          <fieldset class="plan-sheet" tabIndex={0}>
            <legend>Drawn on the plan</legend>
            {LAYERS.map(([id, name]) => (
              <label class="tick" key={id}>
                <input type="checkbox" checked={layers.value[id]} onChange={() => toggle(id)} /> <span>{name}</span>
              </label>
            ))}
          </fieldset>
        )}
        {sheet === "key" && (
          <div class="plan-sheet" tabIndex={0} role="region" aria-label="Key to the plan">
            <Key />
          </div>
        )}
        {sheet === "move" && (
          <div class="plan-sheet plan-move" role="group" aria-label="Move the plan">
            <button onClick={() => shift(1, 0)}>← Left</button>
            <button onClick={() => shift(0, 1)}>↑ Up</button>
            <button onClick={() => shift(0, -1)}>↓ Down</button>
            <button onClick={() => shift(-1, 0)}>→ Right</button>
          </div>
        )}
      </div>
      <div class="plan-foot">
        <div class="plan-keys" role="group" aria-label="Plan view">
          <button onClick={() => near(1.4)}>Closer</button>
          <button onClick={() => near(1 / 1.4)}>Farther</button>
          <button onClick={() => setOwn(null)}>Whole</button>
          <button aria-expanded={sheet === "move"} onClick={() => open("move")}>
            Move
          </button>
          <button aria-expanded={sheet === "layers"} onClick={() => open("layers")}>
            Layers
          </button>
          <button aria-expanded={sheet === "key"} onClick={() => open("key")}>
            Key
          </button>
        </div>
        <p class={hour.value === null ? "plan-said idle" : "plan-said"}>{said(c)}</p>
        {!wide && <AsLookedAt />}
      </div>
    </section>
  );
}

// AsLookedAt gives up the hour: the plan is drawn as it was found.
export function AsLookedAt() {
  return hour.value === null ? null : <button onClick={() => (hour.value = null)}>Draw as looked at</button>;
}

// said tells in words at which moment the plan is drawn.
function said(c: Content) {
  const at = hour.value;
  if (onReplay.value) return <>Colours and dashes: the replay at {when(replayTime())}. Whole lines: seen{at === null ? "" : " by then"}.</>;
  if (at === null) return <>Drawn as looked at on {clock.value.on(c.head.looked)}.</>;
  const { cut, of } = jointsCut(at),
    onDay = ["pour", "panel"].includes(place.value.screen),
    states = stateSentence(at, onDay ? pourShown.value?.id : undefined);
  return (
    <>
      Drawn at <strong>{clock.value.at(at)}</strong>.{of > 0 && ` ${cut} of ${of} sawn joints cut.`}
      {states && ` ${states.charAt(0).toUpperCase()}${states.slice(1)}.`}
    </>
  );
}

function wholeView(c: Content, size: Point): View {
  const slab = c.plan.slab;
  const points = [...(slab.outline_m ?? []), ...(slab.fixtures ?? []).flatMap((f) => f.shape_m ?? [])];
  const tight = size[0] < 560;
  return fit(
    boxOf(
      points.length
        ? points
        : [
            [0, 0],
            [1, 1],
          ],
    ),
    size[0],
    size[1],
    tight ? { x: 26, top: 24, bottom: 34 } : { x: 48, top: 34, bottom: 34 },
  );
}

// useMoves pans with one finger or the mouse and zooms with two fingers or the wheel.
function useMoves(frame: { current: HTMLDivElement | null }, view: View, set: (v: View) => void, size: Point) {
  const fingers = useRef(new Map<number, Point>());
  const moved = useRef(false);
  const latest = useRef(view);
  latest.current = view;
  const local = (e: PointerEvent | WheelEvent): Point => {
    const box = frame.current!.getBoundingClientRect();
    return [e.clientX - box.left, e.clientY - box.top];
  };
  useEffect(() => {
    const wheel = (e: WheelEvent) => {
      if ((e.target as Element).closest(".plan-sheet")) return;
      e.preventDefault();
      set(zoom(latest.current, Math.pow(1.0016, -e.deltaY), local(e)));
    };
    const node = frame.current!;
    node.addEventListener("wheel", wheel, { passive: false });
    return () => node.removeEventListener("wheel", wheel);
  }, []);
  return {
    onPointerDown: (e: PointerEvent) => {
      if ((e.target as Element).closest(".plan-sheet")) return;
      fingers.current.set(e.pointerId, local(e));
      moved.current = false;
    },
    onPointerMove: (e: PointerEvent) => {
      const before = fingers.current.get(e.pointerId);
      if (!before) return;
      const now = local(e);
      if (!moved.current && Math.hypot(now[0] - before[0], now[1] - before[1]) < 6) return; // a tap that trembled
      if (!moved.current) frame.current!.setPointerCapture(e.pointerId);
      moved.current = true;
      const v = latest.current,
        all = [...fingers.current.entries()];
      fingers.current.set(e.pointerId, now);
      if (all.length < 2) return set({ ...v, left: v.left + now[0] - before[0], top: v.top + now[1] - before[1] });
      const other = all.find(([id]) => id !== e.pointerId)![1];
      const span = (p: Point) => Math.max(10, Math.hypot(p[0] - other[0], p[1] - other[1]));
      set(zoom(v, span(now) / span(before), [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2]));
    },
    onPointerUp: (e: PointerEvent) => {
      fingers.current.delete(e.pointerId);
    },
    onPointerCancel: (e: PointerEvent) => {
      fingers.current.delete(e.pointerId);
    },
    onClickCapture: (e: MouseEvent) => {
      // a drag that ends on a finding does not choose it
      if (moved.current) {
        e.preventDefault();
        e.stopPropagation();
        moved.current = false;
      }
    },
  };
}

// useKeepInView moves the plan only as far as needed to show what was chosen.
function useKeepInView(view: View, size: Point, set: (v: View) => void) {
  const { screen, thing } = place.value;
  useEffect(() => {
    const at = chosenPoint(screen, thing);
    if (!at || size[0] === 0) return;
    const [x, y] = project(view, at),
      margin = 30;
    if (x > margin && x < size[0] - margin && y > margin && y < size[1] - margin) return;
    const middle = unproject(view, [size[0] / 2, size[1] / 2]);
    set({ ...view, left: view.left + (middle[0] - at[0]) * view.scale, top: view.top - (middle[1] - at[1]) * view.scale });
  }, [screen, thing]);
}

function chosenPoint(screen: string, thing: string): Point | undefined {
  const c = content.value!;
  if (screen === "finding") return (c.findings ?? []).find((f) => f.finding.id === thing)?.at_m;
  if (screen === "panel") {
    const ring = (c.plan.panels ?? []).find((p) => p.id === thing)?.ring_m;
    return ring && centre(ring);
  }
  if (screen === "joint") return c.plan.slab.joints?.find((j) => j.id === thing)?.path_m[0];
  return undefined;
}
