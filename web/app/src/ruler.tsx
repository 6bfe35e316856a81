// The hour ruler under the plan: event marks, the cut window as a band, and a
// slider that sets the hour the plan is drawn at.

import { clock, content, hour, pourShown, ruler, rulerSpan, to } from "./state";
import type { Mark, PourDay } from "./content";
import { after, moment } from "./format";
import { Hours } from "./chart";
import { AsLookedAt } from "./plan";
import { useWide } from "./wide";
import { jointsCut, stateSentence } from "./panel-state";
import { useWidth } from "./width";

const SHORT: Record<string, string> = { truck: "T", finish: "F", cure: "C", set: "S", cut: "✕", departure: "D", window: "W" };

export function Ruler() {
  const wide = useWide();
  const pour = pourShown.value;
  if (!pour) return null;
  const span = rulerSpan(pour),
    start = moment(pour.start)!;
  const at = hour.value !== null && hour.value >= span.from && hour.value <= span.to ? hour.value : null;
  const step = 10 * 60e3;
  const set = (value: number) => (hour.value = span.from + value * step);
  const words =
    at === null
      ? hour.value === null
        ? "not set: the plan is drawn as looked at"
        : `not on this day: the plan is drawn at ${clock.value.at(hour.value)}`
      : `${clock.value.at(at)}, ${after((at - start) / 3600e3)}`;
  const spoken = at === null ? words : [words, stateSentence(at, pour.id), cutWords(at)].filter(Boolean).join("; ");
  const events = [...(pour.events ?? [])].sort((a, b) => moment(a.at)! - moment(b.at)!);
  const jump = (forward: boolean) => {
    const times = events.map((e) => moment(e.at)!).filter((t) => t >= span.from && t <= span.to);
    const now = at ?? (forward ? span.from - 1 : span.to + 1);
    const next = forward ? times.find((t) => t > now + step / 2) : [...times].reverse().find((t) => t < now - step / 2);
    if (next !== undefined) hour.value = next;
  };
  const passing = at === null ? [] : events.filter((e) => Math.abs(moment(e.at)! - at) <= step);
  return (
    <section class="ruler" aria-label={`Hours of ${pour.name}`}>
      <div class="ruler-head">
        <p>
          <label for="hour">
            Hour of <strong>{pour.name}</strong>
          </label>
          : <output for="hour">{hour.value === null ? "as looked at" : <strong>{words}</strong>}</output>
        </p>
        <div class="ruler-keys">
          <button onClick={() => jump(false)}>Earlier event</button>
          <button onClick={() => jump(true)}>Later event</button>
          <button aria-pressed={ruler.value === "days"} onClick={() => (ruler.value = ruler.value === "day" ? "days" : "day")}>
            Three days
          </button>
          <Pours now={pour} />
          {wide && <AsLookedAt />}
        </div>
      </div>
      <Marks pour={pour} events={events} />
      <input
        id="hour"
        type="range"
        class={at === null ? "" : "set"}
        min={0}
        max={(span.to - span.from) / step}
        step={1}
        value={at === null ? (start - span.from) / step : (at - span.from) / step}
        aria-valuetext={spoken}
        onInput={(e) => set(Number((e.currentTarget as HTMLInputElement).value))}
      />
      <p class="ruler-said" role="status">
        {passing.length ? passing.map((e) => e.what).join(" · ") : ""}
      </p>
    </section>
  );
}

function cutWords(at: number): string {
  const { cut, of } = jointsCut(at);
  return of > 0 ? `${cut} of ${of} joints cut` : "";
}

function Pours({ now }: { now: PourDay }) {
  const pours = content.value!.pours ?? [];
  if (pours.length < 2)
    return (
      <a class="button" href={to("pour", now.id)}>
        See the day
      </a>
    );
  const next = pours[(pours.findIndex((p) => p.id === now.id) + 1) % pours.length];
  return (
    <a class="button" href={to("pour", next.id)}>
      To {next.name}
    </a>
  );
}

function Marks({ pour, events }: { pour: PourDay; events: Mark[] }) {
  const { box, width } = useWidth();
  const span = rulerSpan(pour),
    side = 12,
    height = 82;
  const x = (t: number) => side + ((t - span.from) / (span.to - span.from)) * (width - 2 * side);
  const opens = moment(pour.window.opens),
    closes = moment(pour.window.closes);
  const base = height - 24;
  return (
    <div class="ruler-marks" ref={box}>
      {width > 0 && (
        <svg
          width={width}
          height={height}
          role="img"
          aria-label={`Events of the day: ${events.map((e) => `${clock.value.at(e.at)} ${e.what}`).join("; ")}`}
        >
          {opens !== undefined && (
            <rect
              class="stretch"
              x={x(opens)}
              y={4}
              width={Math.max(3, Math.min(x(closes ?? span.to), width - side) - x(opens))}
              height={base - 4}
            />
          )}
          {hour.value !== null && hour.value >= span.from && hour.value <= span.to && (
            <path class="now" d={`M${x(hour.value)} 0V${base}`} />
          )}
          {opens !== undefined && (
            <text class="stretch-name" x={Math.min(x(opens) + 4, width - 92)} y={16}>
              cut window{closes === undefined && ", stays open"}
            </text>
          )}
          <path class="base" d={`M${side} ${base}H${width - side}`} />
          <Hours span={span} x={x} y={base} width={width - 2 * side} top={4} />
          {lanes(
            events.filter((e) => e.kind !== "window" && moment(e.at)! >= span.from && moment(e.at)! <= span.to),
            x,
          ).map(({ e, at, lane }, i) => (
            <g key={i} class={`mark mark-${e.kind}`}>
              <path d={`M${at} ${base}V${base - 5 - lane * 12}`} />
              <text x={at} y={base - 7 - lane * 12} text-anchor="middle">
                {SHORT[e.kind] ?? "•"}
              </text>
            </g>
          ))}
        </svg>
      )}
    </div>
  );
}

// lanes raises a mark's letter until it stands clear of the letters before it.
function lanes(events: Mark[], x: (t: number) => number): { e: Mark; at: number; lane: number }[] {
  const last: number[] = [];
  return events.map((e) => {
    const at = x(moment(e.at)!);
    let lane = last.findIndex((before) => before === undefined || at - before > 12);
    if (lane < 0) lane = last.length < 4 ? last.length : 3;
    last[lane] = at;
    return { e, at, lane };
  });
}

export const MARK_WORDS: [string, string][] = [
  ["T", "truck"],
  ["F", "finishing"],
  ["C", "curing"],
  ["S", "set"],
  ["✕", "saw cut"],
  ["D", "departure from plan"],
];
