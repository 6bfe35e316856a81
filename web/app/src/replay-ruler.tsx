// The hour ruler of the replay: a slider over two years that goes by the hour at first
// and ever faster after, with a mark for each event, and the scale of the field.

import { hour } from "./state";
import { useWidth } from "./width";
import { eventsBy, eventWhen, fieldShown, frameNow, hoursNow, openedWords, replay, since, stopAt, stops, timeOf, when } from "./replay-state";
import { cividis, scaleOf, type FieldName } from "./replay-field";
import type { Replay } from "./replay-content";
import { fixed, metres, percent, withUnit } from "./format";

const FIELDS: [FieldName, string][] = [
  ["share", "Share"],
  ["stress", "Tension"],
  ["opening", "Opening"],
  ["none", "Lines only"],
];

export function ReplayRuler() {
  const r = replay.value;
  if (!r) return null;
  const now = hoursNow.value,
    all = stops.value,
    i = stopAt(now);
  const set = (k: number) => (hour.value = timeOf(r, all[Math.min(all.length - 1, Math.max(0, k))]));
  const jump = (forward: boolean) => {
    const times = [...new Set(r.events.map((e) => e.hours))];
    const next = forward ? times.find((t) => t > now + 1e-6) : times.reverse().find((t) => t < now - 1e-6);
    if (next !== undefined) hour.value = timeOf(r, next);
  };
  const keys = (e: KeyboardEvent) => {
    const act: Record<string, () => void> = { PageUp: () => jump(true), PageDown: () => jump(false) };
    if (!act[e.key]) return;
    act[e.key]();
    e.preventDefault();
  };
  const words = `${when(timeOf(r, now))}, ${since(now)}`;
  const passing = r.events.filter((e) => Math.abs(e.hours - now) < 0.01);
  return (
    <section class="ruler replay-ruler" aria-label="Hours of the replay">
      <div class="ruler-head">
        <p>
          <label for="replay-hour">Hour</label>: <output for="replay-hour"><strong>{words}</strong></output>
        </p>
        <div class="ruler-keys">
          <button onClick={() => jump(false)}>Earlier event</button>
          <button onClick={() => jump(true)}>Later event</button>
        </div>
      </div>
      <EventMarks r={r} />
      <input
        id="replay-hour"
        type="range"
        class="set"
        min={0}
        max={all.length - 1}
        step={1}
        value={i}
        aria-valuetext={`${words}; ${openedWords(eventsBy.value)}`}
        onKeyDown={keys}
        onInput={(e) => set(Number((e.currentTarget as HTMLInputElement).value))}
      />
      <p class="ruler-said" role="status">
        {passing.length ? passing.map((e) => `${e.what} ${e.where}`).join(" · ") : `${openedWords(eventsBy.value)} by then`}
      </p>
      <Fields r={r} />
    </section>
  );
}

function EventMarks({ r }: { r: Replay }) {
  const { box, width } = useWidth();
  const all = stops.value,
    side = 12;
  const x = (hours: number) => side + (stopAt(hours) / Math.max(1, all.length - 1)) * (width - 2 * side);
  const named = ([
    [24, "1 day"],
    [72, "3 days"],
    [672, "4 weeks"],
    [4380, "6 months"],
    [8760, "1 year"],
    [17520, "2 years"],
  ] as [number, string][]).filter(([h]) => h <= r.hours);
  return (
    <div class="ruler-marks" ref={box}>
      {width > 0 && (
        <svg
          width={width}
          height={40}
          role="img"
          aria-label={`Events: ${r.events.map((e) => `${eventWhen(r, e)} ${e.what}`).join("; ") || "none"}`}
        >
          <path class="now" d={`M${x(hoursNow.value)} 0V20`} />
          {r.events.map((e, k) => (
            <path key={k} class={e.crack ? "mark-crack" : "mark-joint"} d={e.crack ? `M${x(e.hours)} 4l5 7l-5 7l-5 -7Z` : `M${x(e.hours)} 4V18`} />
          ))}
          {named.map(([h, name], k) => (
            <g key={h}>
              <path class="tick-mark" d={`M${x(h)} 18V24`} />
              <text x={x(h)} y={37} text-anchor={k === named.length - 1 ? "end" : "middle"}>
                {width < 500 && ["3 days", "6 months", "1 year"].includes(name) ? "" : name}
              </text>
            </g>
          ))}
        </svg>
      )}
    </div>
  );
}

function Fields({ r }: { r: Replay }) {
  return (
    <div class="replay-fields">
      <div class="ruler-keys" role="group" aria-label="What the colours show">
        {FIELDS.map(([id, name]) => (
          <button key={id} aria-pressed={fieldShown.value === id} onClick={() => (fieldShown.value = id)}>
            {name}
          </button>
        ))}
      </div>
      <Legend r={r} />
    </div>
  );
}

function Legend({ r }: { r: Replay }) {
  const name = fieldShown.value,
    frame = frameNow.value;
  if (name === "none") return <p class="quiet small">Dashes: expected by the replay. Whole lines: seen on the walk.</p>;
  const scale = scaleOf(name, r.field),
    parts = 20;
  return (
    <div class="legend">
      <p>
        {scale.name}
        {scale.unit && `, ${scale.unit}`}; the same scale at every hour
      </p>
      <svg viewBox="0 0 300 30" aria-hidden="true">
        {Array.from({ length: parts }, (_, k) => (
          <rect key={k} x={10 + (k * 280) / parts} y={0} width={280 / parts + 0.5} height={12} fill={cividis((k + 0.5) / parts)} />
        ))}
        {[0, ...scale.levels, scale.most].map((v) => (
          <g key={v}>
            <path class="tick-mark" d={`M${10 + (280 * v) / scale.most} 12V16`} />
            <text x={10 + (280 * v) / scale.most} y={28} text-anchor="middle">
              {v === scale.most ? "≥\u202f" : ""}
              {fixed(v, scale.decimals)}
            </text>
          </g>
        ))}
      </svg>
      <p class="quiet small">{frame ? most(name, r) : "The slab has not set yet."}</p>
    </div>
  );
}

// most says where the greatest value of the field drawn is.
function most(name: FieldName, r: Replay): string {
  const frame = frameNow.value!,
    at = `Field as of ${when(timeOf(r, frame.hours))}`;
  if (name === "opening") {
    const widest = [...frame.lines].sort((a, b) => b.widest_m - a.widest_m)[0];
    return widest ? `${at}. Widest: ${widest.line}, ${withUnit(fixed(1000 * widest.widest_m, 2), "mm")}.` : `${at}. Nothing is open.`;
  }
  const top = [...frame.panels].sort((a, b) => (name === "share" ? b.share - a.share : b.stress_MPa - a.stress_MPa))[0];
  if (!top) return `${at}.`;
  const value = name === "share" ? percent(top.share) : withUnit(fixed(top.stress_MPa, 2), "MPa");
  const hand =
    name === "stress"
      ? ` By hand, a strip on its base: ${withUnit(fixed(frame.peak_hand_MPa, 2), "MPa")} at (${metres(frame.peak_at_m[0])}, ${metres(frame.peak_at_m[1])})${frame.peak_hand_why ? `; ${frame.peak_hand_why}` : ""}.`
      : "";
  const past = name === "share" && top.share > 1 ? " Above 1 the strength is passed, and the work to tear it is not there yet." : "";
  return `${at}. Most: ${value}, in panel ${top.panel}.${past}${hand}`;
}
