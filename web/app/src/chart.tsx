// A line chart over clock time, drawn as a drawing is: thin lines told apart by
// their dashes, limits across, a band for a range, and the
// hour looked at. The same numbers always stand in a table beneath.

import { clock, hour, type Span } from "./state";
import { fixed } from "./format";
import { useWidth } from "./width";

export interface Series {
  name: string;
  dash?: string;
  strong?: boolean;
  points: [number, number][];
}
export interface Limit {
  value: number;
  name: string;
}
export interface Band {
  name: string;
  points: [number, number, number][];
}
export interface Stretch {
  from: number;
  to: number;
  name: string;
  soft?: boolean; // the range of an end, hatched
}
export interface Moment {
  at: number;
  name: string;
}
interface Props {
  title: string;
  unit: string;
  span: Span;
  series: Series[];
  limits?: Limit[];
  band?: Band;
  stretches?: Stretch[];
  decimals?: number;
  from0?: boolean;
  upTo?: number; // the axis ends here, whatever the values
  height?: number;
  moments?: Moment[];
}

export function Chart({
  title,
  unit,
  span,
  series: given,
  limits = [],
  band: wide,
  stretches: parts = [],
  decimals = 1,
  from0,
  upTo,
  height = 210,
  moments = [],
}: Props) {
  const stretches = parts
    .map((s) => ({ ...s, from: Math.max(s.from, span.from), to: Math.min(s.to, span.to) }))
    .filter((s) => s.to > s.from);
  const inside = (t: number) => t >= span.from && t <= span.to;
  const series = given.map((s) => ({ ...s, points: s.points.filter((p) => inside(p[0])) }));
  const band = wide && { ...wide, points: wide.points.filter((p) => inside(p[0])) };
  const { box, width } = useWidth();
  const left = 38,
    right = 12,
    bottom = 26;
  const values = [
    ...series.flatMap((s) => s.points.map((p) => p[1])),
    ...(band?.points.flatMap((p) => [p[1], p[2]]) ?? []),
    ...limits.map((l) => l.value),
    ...(upTo === undefined ? [] : [upTo]),
  ];
  const steps = upTo === 10 ? [0, 2, 4, 6, 8, 10] : axis(from0 ? 0 : Math.min(...values), Math.max(...values));
  const [low, high] = [steps[0], steps[steps.length - 1]];
  const x = (t: number) => left + ((t - span.from) / (span.to - span.from)) * (width - left - right);
  const named = lanes(moments.filter((m) => inside(m.at)), x, width - right);
  const top = 26 + 13 * Math.max(0, ...named.map((m) => m.lane + 1));
  const y = (v: number) => top + (1 - (v - low) / (high - low || 1)) * (height - top - bottom);
  const line = (points: [number, number][]) =>
    points.map(([t, v], i) => `${i ? "L" : "M"}${x(t).toFixed(1)} ${y(v).toFixed(1)}`).join("");
  const now = hour.value;
  return (
    <div class="chart" ref={box}>
      {width > 0 && (
        <svg
          width={width}
          height={height}
          role="img"
          aria-label={`${title}, ${unit}. ${spoken(series, limits, moments)} The table below holds the numbers.`}
        >
          <text class="unit" x={2} y={12}>
            {unit}
          </text>
          {steps.map((v) => (
            <g key={v}>
              <path class="grid" d={`M${left} ${y(v)}H${width - right}`} />
              <text class="axis" x={left - 5} y={y(v) + 4} text-anchor="end">
                {fixed(v, decimalsOf(steps))}
              </text>
            </g>
          ))}
          {stretches.map((s) => (
            <rect
              key={s.name}
              class={s.soft ? "stretch soft" : "stretch"}
              x={x(s.from)}
              y={top}
              width={Math.max(1, x(s.to) - x(s.from))}
              height={height - top - bottom}
            />
          ))}
          <Hours span={span} x={x} y={height - bottom} width={width - left - right} top={top} />
          {band && (
            <path
              class="band"
              d={
                line(band.points.map((p) => [p[0], p[2]])) +
                line([...band.points].reverse().map((p) => [p[0], p[1]])).replace("M", "L") +
                "Z"
              }
            />
          )}
          {now !== null && now >= span.from && now <= span.to && (
            <path class="now" d={`M${x(now)} ${top - 6}V${height - bottom}`} />
          )}
          {limits.map((l) => (
            <g key={l.name}>
              <path class="limit" d={`M${left} ${y(l.value)}H${width - right}`} />
            </g>
          ))}
          {stretches
            .filter((s) => !s.soft)
            .map((s) => (
              <text key={s.name} class="stretch-name" x={Math.min(x(s.from) + 3, width - 80)} y={top + 12}>
                {s.name}
              </text>
            ))}
          {series.map((s) => (
            <path key={s.name} class={s.strong ? "series strong" : "series"} d={line(s.points)} stroke-dasharray={s.dash} />
          ))}
          {limits.map((l) => (
            <text key={l.name} class="limit-name" x={width - right - 3} y={y(l.value) - top < 14 && moments.length ? y(l.value) + 13 : y(l.value) - 4} text-anchor="end">
              {l.name}
            </text>
          ))}
          {named.map((m, i) => (
            <path key={i} class="moment" d={`M${m.x} ${top - 9 - 13 * m.lane}V${height - bottom}`} />
          ))}
          {named.map((m, i) => (
            <text
              key={i}
              class="moment-name"
              x={m.left ? m.x - 4 : m.x + 4}
              y={top - 6 - 13 * m.lane}
              text-anchor={m.left ? "end" : "start"}
            >
              {m.name}
            </text>
          ))}
        </svg>
      )}
      <ul class="chart-key" aria-hidden="true">
        {series.map((s) => (
          <li key={s.name}>
            <svg width="34" height="8">
              <path class={s.strong ? "series strong" : "series"} d="M1 4H33" stroke-dasharray={s.dash} />
            </svg>{" "}
            {s.name}
            {now !== null && reading(s, now, decimals)}
          </li>
        ))}
        {stretches.some((s) => s.soft) && (
          <li>
            <svg width="34" height="12">
              <rect class="stretch soft" x="1" y="1" width="32" height="10" />
            </svg>{" "}
            {stretches.find((s) => s.soft)!.name}
          </li>
        )}
        {band && (
          <li>
            <svg width="34" height="12">
              <path class="band" d="M1 1H33V11H1Z" />
            </svg>{" "}
            {band.name}
          </li>
        )}
      </ul>
    </div>
  );
}

// lanes places the names of upright marks over the chart; one that would run into
// another goes a line higher, one near the right side reads to the left.
function lanes(moments: Moment[], x: (t: number) => number, right: number) {
  const taken: [number, number][][] = [];
  return [...moments]
    .sort((a, b) => a.at - b.at)
    .map((m) => {
      const at = x(m.at),
        wide = m.name.length * 6.2 + 8,
        left = at + wide > right,
        from = left ? at - wide : at;
      const free = (lane: [number, number][]) => lane.every(([a, b]) => from > b || from + wide < a);
      let lane = taken.findIndex(free);
      if (lane < 0) lane = taken.push([]) - 1;
      taken[lane].push([from, from + wide]);
      return { ...m, x: at, lane, left };
    });
}

// Hours are the clock hours under a chart and under the ruler.
export function Hours({
  span,
  x,
  y,
  width,
  top,
}: {
  span: Span;
  x: (t: number) => number;
  y: number;
  width: number;
  top: number;
}) {
  const hours = (span.to - span.from) / 3600e3;
  const every = [1, 2, 3, 6, 12, 24].find((h) => width / (hours / h) >= 44) ?? 24;
  const marks: number[] = [];
  for (let t = span.from; t <= span.to; t += 3600e3) if (Number(clock.value.hour(t).slice(0, 2)) % every === 0) marks.push(t);
  return (
    <g class="hours">
      {marks.map((t) => (
        <g key={t}>
          <path
            class={clock.value.midnight(t) ? "midnight" : "tick-mark"}
            d={`M${x(t)} ${clock.value.midnight(t) ? top : y}V${y + 5}`}
          />
          <text x={x(t)} y={y + 17} text-anchor={x(t) > x(span.to) - 14 ? "end" : x(t) < x(span.from) + 14 ? "start" : "middle"}>
            {clock.value.midnight(t) ? clock.value.at(t).slice(0, 3) : clock.value.hour(t)}
          </text>
        </g>
      ))}
    </g>
  );
}

function reading(s: Series, now: number, decimals: number): string {
  const point = nearest(s.points, now);
  return point ? ` ${fixed(point[1], decimals)}` : "";
}

export function nearest(points: [number, number][], time: number): [number, number] | undefined {
  const best = points.reduce<[number, number] | undefined>(
    (a, b) => (!a || Math.abs(b[0] - time) < Math.abs(a[0] - time) ? b : a),
    undefined,
  );
  return best && Math.abs(best[0] - time) <= 3600e3 ? best : undefined;
}

function spoken(series: Series[], limits: Limit[], moments: Moment[]): string {
  const parts = series
    .filter((s) => s.points.length)
    .map((s) => {
      const top = s.points.reduce((a, b) => (b[1] > a[1] ? b : a));
      return `${s.name} is highest, ${fixed(top[1], 2)}, at ${clock.value.at(top[0])}.`;
    });
  const marked = moments.map((m) => `${m.name} at ${clock.value.at(m.at)}`).join(", ");
  return parts.join(" ") + (limits.length ? ` Limits: ${limits.map((l) => l.name).join(", ")}.` : "") + (marked && ` Marked: ${marked}.`);
}

// axis returns round values from below the least to above the greatest.
export function axis(low: number, high: number): number[] {
  if (!Number.isFinite(low) || !Number.isFinite(high)) return [0, 1];
  const raw = Math.max(high - low, 1e-6) / 4,
    size = Math.pow(10, Math.floor(Math.log10(raw)));
  const step = [1, 2, 2.5, 5, 10].map((m) => m * size).find((s) => s >= raw)!;
  const out: number[] = [];
  for (let v = Math.floor(low / step + 1e-9) * step; v < high + step - 1e-9; v += step) out.push(Number(v.toPrecision(6)));
  return out.length > 1 ? out : [low, low + step];
}
export function decimalsOf(steps: number[]): number {
  return Math.max(...steps.map((s) => (String(s).split(".")[1] ?? "").length));
}
