// The drawing itself: what is drawn, in which line, in which order.

import { clock, content, hour, layers, place, to } from "./state";
import { apart, beside, boxOf, centre, inside, lengthOf, middle, path, project, rough, ticks, type Label, type View } from "./shape";
import type { Content, DowelBar, FindingSheet, Fixture, Joint, Panel, Point, PourArea } from "./content";
import { mm, moment, after } from "./format";
import { NorthArrow, ScaleBar } from "./scale";

interface Props { view: View; size: Point }

export function Drawing({ view, size }: Props) {
  const c = content.value!;
  const on = layers.value;
  const p = (point: Point) => project(view, point);
  const line = (points: Point[] | null | undefined, closed = false) => path((points ?? []).map(p), closed);
  const slab = c.plan.slab;
  return (
    <svg class="drawing" width={size[0]} height={size[1]} role="group" tabIndex={0}
      aria-label={`Plan of ${slab.name || "the slab"}. Arrow keys move it, plus and minus bring it closer or farther, 0 shows it whole. Tab goes through joints and findings.`}>
      <Patterns />
      <path class="slab" d={line(slab.outline_m, true)} />
      {on.pours && (c.plan.pours ?? []).map((pour, i) => <Pour key={pour.id} pour={pour} index={i} line={line} at={p} scale={view.scale} />)}
      {on.bars && <path class="bars" d={(c.plan.bar_lines ?? []).map((b) => line(b)).join("")} />}
      {on.wheels && (slab.wheel_paths ?? []).map((w) => (
        <path key={w.id} class="wheels" d={line(w.path_m)} stroke-width={Math.max(6, w.width_m * view.scale)} />
      ))}
      {on.unseen && (c.plan.could_not_see ?? []).map((u) => <path key={u.id} class="unseen" d={line(u.area_m, true)}><title>Could not see: {u.why}</title></path>)}
      {(slab.fixtures ?? []).map((f) => <FixtureShape key={f.id} fixture={f} line={line} at={p} scale={view.scale} />)}
      {on.panels && <PanelNames panels={c.plan.panels ?? []} at={p} scale={view.scale} />}
      <path class="outline" d={line(slab.outline_m, true)} />
      {on.dowels && <path class="dowels" d={thinned(c.plan.dowel_bars ?? [], view.scale).map((d) => line([d.from_m, d.to_m])).join("")} />}
      {on.joints && (slab.joints ?? []).map((j) => <JointLine key={j.id} joint={j} c={c} at={p} />)}
      {on.findings && <Findings c={c} view={view} size={size} />}
      <ScaleBar scale={view.scale} height={size[1]} />
      <NorthArrow bearing={slab.bearing_deg} width={size[0]} />
    </svg>
  );
}

const APART = 20; // px between dowels drawn: closer they would hide the line of the joint

// thinned leaves out dowels between, so many that the joint still reads.
function thinned(bars: DowelBar[], scale: number): DowelBar[] {
  const kept: DowelBar[] = [];
  let last: DowelBar | undefined;
  for (const bar of bars) {
    const near = last && last.joint === bar.joint && Math.hypot(bar.from_m[0] - last.from_m[0], bar.from_m[1] - last.from_m[1]) * scale < APART;
    if (!near) kept.push((last = bar));
  }
  return kept;
}

type Draw = { line: (points: Point[] | null | undefined, closed?: boolean) => string; at: (p: Point) => Point; scale: number };

function Patterns() {
  return (
    <defs>
      <pattern id="hatch" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path class="hatch" d="M0 0V9" /></pattern>
      <pattern id="ground" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><path class="hatch" d="M0 0V6" /></pattern>
      <pattern id="dots" width="8" height="8" patternUnits="userSpaceOnUse"><circle class="stipple" cx="2" cy="2" r="1.1" /><circle class="stipple" cx="6" cy="6" r="1.1" /></pattern>
    </defs>
  );
}

function Pour({ pour, index, line, at, scale }: Draw & { pour: PourArea; index: number }) {
  const start = moment(pour.start), now = hour.value;
  const end = moment((content.value!.pours ?? []).find((d) => d.id === pour.id)?.end);
  let state = "";
  const waiting = now !== null && start !== undefined && now < start;
  if (now !== null && start !== undefined) {
    state = waiting ? "not yet placed" : end !== undefined && now < end ? "being placed" : after((now - start) / 3600e3);
  }
  return (
    <g class={`pour tint-${index % 3}${waiting ? " waiting" : ""}`}>
      <path d={line(pour.area_m, true)} />
      <PourName pour={pour} state={state} at={at} scale={scale} />
    </g>
  );
}

// PourName stands outside the slab, at the end of the strip, where it covers nothing.
function PourName({ pour, state, at, scale }: { pour: PourArea; state: string; at: (p: Point) => Point; scale: number }) {
  const box = boxOf(pour.area_m ?? []), slab = boxOf(content.value!.plan.slab.outline_m);
  const name = pour.name || pour.id, across = (box.y1 - box.y0) * scale, along = (box.x1 - box.x0) * scale;
  const left = box.x0 <= slab.x0 + 0.01, [x, y] = left ? at([box.x0, (box.y0 + box.y1) / 2]) : at([(box.x0 + box.x1) / 2, box.y0]);
  const room = left ? across : along, short = state.replace(" after placing", "").replace(/ placed$/, "");
  const both = [name, state], one = [short ? `${name}, ${short}` : name];
  const lines = (state && (!left || x > 34) && state.length * 6.3 < room ? both : one).filter((text) => text.length * 5.6 < room);
  return (
    <>
      {lines.map((text, i) => left
        ? <text key={i} class="pour-name" text-anchor="middle" transform={`translate(${x - 9 - 15 * (lines.length - 1 - i)} ${y}) rotate(-90)`}>{text}</text>
        : <text key={i} class="pour-name" text-anchor="middle" x={x} y={y + 18 + 15 * i}>{text}</text>)}
    </>
  );
}

function FixtureShape({ fixture: f, line, at }: Draw & { fixture: Fixture }) {
  const closed = f.kind !== "wall" && f.kind !== "building" && f.kind !== "duct" && f.shape_m.length > 2;
  const points = f.shape_m.map(at);
  const d = line(f.shape_m, closed);
  const box = boxOf(points);
  const name = f.name || f.kind, wide = name.length * 6.4 + 6;
  const thin = closed && (box.x1 - box.x0) / Math.max(1, box.y1 - box.y0) > 4;
  return (
    <g class={`fixture fixture-${f.kind.replace(/\s/g, "-")}`}>
      <title>{`${f.name || f.id}: ${f.kind}, isolated ${f.isolated?.value ?? "not known"}`}</title>
      {!closed && f.kind !== "duct" && <path class="ground" d={path([...points, ...beside(points, outward(points, at)).reverse()], true)} />}
      <path class="shape" d={d} />
      {f.opening && closed && points.length === 4 && !thin && <path class="void" d={path([points[0], points[2]]) + path([points[1], points[3]])} />}
      <FixtureName f={f} name={name} wide={wide} points={points} closed={closed} />
    </g>
  );
}

// FixtureName stands above a shape, along a wall, or at the foot of a duct; small shapes far away have none.
function FixtureName({ f, name, wide, points, closed }: { f: Fixture; name: string; wide: number; points: Point[]; closed: boolean }) {
  const box = boxOf(points), [mx] = middle(points);
  if (f.kind === "duct") {
    const foot = points.reduce((a, b) => (b[1] > a[1] ? b : a));
    const head = points.reduce((a, b) => (b[1] < a[1] ? b : a));
    const turn = (Math.atan2(head[1] - foot[1], head[0] - foot[0]) * 180) / Math.PI;
    return lengthOf(points) > 90 ? <text class="fixture-name" transform={`translate(${foot[0]} ${foot[1]}) rotate(${turn}) translate(14 -5)`}>{name}</text> : null;
  }
  if (closed && f.kind === "old slab") {
    const [x, y] = centre(points), upright = box.y1 - box.y0 > box.x1 - box.x0;
    return Math.max(box.y1 - box.y0, box.x1 - box.x0) > wide ? <text class="fixture-name" x={x} y={y} text-anchor="middle" dominant-baseline="central" transform={upright ? `rotate(-90 ${x} ${y})` : undefined}>{name}</text> : null;
  }
  const room = closed ? box.x1 - box.x0 > wide * 0.55 || wide < 60 : box.x1 - box.x0 > wide;
  if (!room || (closed && box.x1 - box.x0 < 12)) return null;
  return <text class="fixture-name" x={closed ? (box.x0 + box.x1) / 2 : mx} y={box.y0 - (closed ? 6 : 15)} text-anchor="middle">{name}</text>;
}

// outward is how far the hatch of a wall stands off, on the side where the slab is not.
function outward(points: Point[], at: (p: Point) => Point): number {
  const ring = content.value!.plan.slab.outline_m.map(at);
  const m = middle(points), off = beside(points, 8), n = middle(off);
  return inside(ring, [m[0] + (n[0] - m[0]), m[1] + (n[1] - m[1])]) ? -10 : 10;
}

function PanelNames({ panels, at, scale }: { panels: Panel[]; at: (p: Point) => Point; scale: number }) {
  return (
    <g class="panel-names">
      {panels.map((panel) => {
        const box = boxOf(panel.ring_m), [x, y] = at([box.x1, box.y0]);
        if ((box.x1 - box.x0) * scale < 44) return null;
        return <text key={panel.id} x={x - 7} y={y - 10} text-anchor="end">{panel.id}</text>;
      })}
    </g>
  );
}

// cutState says whether a joint exists at the hour looked at.
export function cutState(joint: Joint, c: Content): "made" | "waiting" | "unmade" {
  const now = hour.value;
  if (now === null || joint.kind !== "sawn") return "made";
  const cut = moment((c.plan.joints ?? []).find((s) => s.id === joint.id)?.cut_at);
  if (cut === undefined) return "unmade";
  return now >= cut ? "made" : "waiting";
}

function JointLine({ joint, c, at }: { joint: Joint; c: Content; at: (p: Point) => Point }) {
  const points = joint.path_m.map(at);
  const d = path(points);
  const symbol = (c.plan.joints ?? []).find((s) => s.id === joint.id);
  const state = cutState(joint, c);
  const chosen = place.value.screen === "joint" && place.value.thing === joint.id;
  const words = [`Joint ${joint.name || joint.id}`, joint.kind, symbol?.state && `cut ${symbol.state}`, symbol?.opened && `opened: ${symbol.opened}`,
    state === "waiting" && "not yet cut at this hour", symbol?.cut_at && `sawn ${clock.value.at(symbol.cut_at)}`].filter(Boolean).join(", ");
  return (
    <a class={`joint joint-${joint.kind} ${state}${chosen ? " chosen" : ""}`} href={to("joint", joint.id)} aria-label={words} aria-current={chosen ? "true" : undefined}>
      <path class="hit" d={d} />
      <path class="halo" d={d} />
      {joint.kind === "isolation"
        ? <><path class="line" d={path(beside(points, 3.4))} /><path class="line" d={path(beside(points, -3.4))} /></>
        : <path class="line" d={d} />}
      {joint.kind === "formed" && <path class="line" d={ticks(points, 20, 6)} />}
    </a>
  );
}

const CLUSTER = 120; // more findings than this are counted by panel until one comes closer

function Findings({ c, view, size }: { c: Content; view: View; size: Point }) {
  const all = (c.findings ?? []).filter((f) => hour.value === null || isChosen(f) || (moment(f.finding.first_seen) ?? Infinity) <= hour.value);
  if (all.length > CLUSTER && view.scale < 60) return <Counts c={c} view={view} />;
  const seen = all.filter((f) => {
    const [x, y] = project(view, f.at_m);
    return all.length <= CLUSTER || (x > -40 && y > -40 && x < size[0] + 40 && y < size[1] + 40);
  });
  const small = view.scale < 20;
  const wanted: Label[] = seen.map((f) => ({ at: project(view, f.at_m), left: 13, right: 15 + (small ? 0 : widthText(f).length * 6.2), height: 26 }));
  const spots = apart(wanted, small ? [] : namesOf(c, view));
  const order = seen.map((_, i) => i).sort((a, b) => Number(isChosen(seen[a])) - Number(isChosen(seen[b])));
  return (
    <>
      <g class="findings">{order.map((i) => <FindingMark key={seen[i].finding.id} sheet={seen[i]} view={view} spot={spots[i].at} />)}</g>
      <g class="finding-words" aria-hidden="true">
        {order.map((i) => (
          <g key={seen[i].finding.id} class={isChosen(seen[i]) ? "chosen" : ""}>
            <text class="badge-text" x={spots[i].at[0]} y={spots[i].at[1] + 4.5} text-anchor="middle">{numberOf(seen[i].finding.id)}</text>
            {!small && !spots[i].bare && <WidthText text={widthText(seen[i])} at={spots[i].at} left={spots[i].left} />}
          </g>))}
      </g>
    </>
  );
}

// namesOf are the places of names that numbers keep off.
function namesOf(c: Content, view: View): Label[] {
  const fixtures = (c.plan.slab.fixtures ?? []).filter((f) => f.kind === "pit" || f.kind === "drain" || f.kind === "column").map((f): Label => {
    const box = boxOf(f.shape_m.map((p) => project(view, p))), half = (f.name || f.kind).length * 3.2;
    return { at: [(box.x0 + box.x1) / 2, box.y0 - 11], left: half, right: half, height: 12 };
  });
  const panels = layers.value.panels ? (c.plan.panels ?? []).map((p): Label => {
    const box = boxOf(p.ring_m.map((q) => project(view, q)));
    return { at: [box.x1 - 7, box.y1 - 14], left: p.id.length * 7, right: 0, height: 10 };
  }) : [];
  return [...fixtures, ...panels];
}

const isChosen = (f: FindingSheet) => place.value.screen === "finding" && place.value.thing === f.finding.id;
const numberOf = (id: string) => id.replace(/^[A-Za-z]+[- ]?/, "") || id;
const widthText = (f: FindingSheet) => (f.finding.width_m ? mm(f.finding.width_m.value) : "");

function WidthText({ text, at, left }: { text: string; at: Point; left: boolean }) {
  return <text class="width" x={at[0] + (left ? -16 : 16)} y={at[1] + 4} text-anchor={left ? "end" : "start"}>{text}</text>;
}

// FindingMark is the line or patch with the ring of its number; the words are drawn over all of them.
function FindingMark({ sheet, view, spot }: { sheet: FindingSheet; view: View; spot: Point }) {
  const f = sheet.finding, chosen = isChosen(sheet);
  const at = (p: Point) => project(view, p);
  const home = at(sheet.at_m);
  const lines = (f.lines_m ?? []).map((l) => l.map(at));
  const joint = f.joint && !lines.length && !f.area_m ? content.value!.plan.slab.joints?.find((j) => j.id === f.joint) : undefined;
  const edge = f.kind === "joint not opened" || f.kind === "joint spall" || f.kind === "ravelled edge" || f.kind === "step" || f.kind === "curled edge";
  const d = lines.map((l) => path(edge ? l : rough(l))).join("");
  const area = f.area_m ? path(f.area_m.map(at), true) : "";
  const away = Math.hypot(spot[0] - home[0], spot[1] - home[1]) > 14;
  return (
    <a class={`finding ${chosen ? "chosen" : ""} ${edge ? "along-edge" : ""}`} href={to("finding", f.id)}
      aria-label={`Finding ${f.id}: ${sheet.title}. ${sheet.place}`} aria-current={chosen ? "true" : undefined}>
      {area && <path class="area" d={area} />}
      {joint && <path class="halo" d={path(beside(joint.path_m.map(at), 5))} />}
      {joint && <path class="line" d={path(beside(joint.path_m.map(at), 5))} />}
      {d && <><path class="hit" d={d} /><path class="halo" d={d} /><path class="line" d={d} /></>}
      {away && <path class="leader" d={path([home, spot])} />}
      <circle class="badge-hit" cx={spot[0]} cy={spot[1]} r={24} />
      <circle class="badge" cx={spot[0]} cy={spot[1]} r={chosen ? 14 : 11.5} />
    </a>
  );
}

// Counts stands for very many findings: how many are in each panel.
function Counts({ c, view }: { c: Content; view: View }) {
  const groups = (c.plan.panels ?? []).map((panel) => ({
    id: panel.id, at: project(view, centre(panel.ring_m)), many: (c.findings ?? []).filter((f) => inside(panel.ring_m, f.at_m)).length,
  })).filter((g) => g.many > 0);
  return (
    <>
      <g class="findings">
        {groups.map((g) => (
          <a key={g.id} class="finding" href={to("findings", g.id)} aria-label={`Panel ${g.id}: ${g.many} findings`}>
            <circle class="badge-hit" cx={g.at[0]} cy={g.at[1]} r={24} /><circle class="badge" cx={g.at[0]} cy={g.at[1]} r={18} />
          </a>))}
      </g>
      <g class="finding-words" aria-hidden="true">
        {groups.map((g) => <text key={g.id} class="badge-text" x={g.at[0]} y={g.at[1] + 4.5} text-anchor="middle">{g.many}</text>)}
      </g>
    </>
  );
}
