// Cut windows as bars on one clock: the window, the range of its two ends hatched, the
// best time and the cuts. The same numbers always stand in a table beneath.

import { clock, hour, type Span } from "./state";
import type { CutWindow } from "./content";
import { moment } from "./format";
import { betweenHours } from "./window-words";
import { Hours } from "./chart";
import { useWidth } from "./width";

export interface WindowRow {
  name: string;
  window: CutWindow;
  placed?: number;
  cuts?: number[];
}

export function Windows({ title, span, rows }: { title: string; span: Span; rows: WindowRow[] }) {
  const { box, width } = useWidth();
  const above = rows.some((r) => r.name.length > 6); // long names stand over their bar
  const left = above ? 12 : 44,
    right = 14,
    top = 6,
    tall = above ? 42 : 28,
    height = top + rows.length * tall + 26;
  const x = (t: number) => left + ((t - span.from) / (span.to - span.from)) * (width - left - right);
  const now = hour.value;
  const base = height - 26;
  return (
    <div class="chart" ref={box}>
      {width > 0 && (
        <svg width={width} height={height} role="img" aria-label={`${title}. ${rows.map(spoken).join("; ")}. The table below holds the numbers.`}>
          <Hours span={span} x={x} y={base} width={width - left - right} top={top} />
          <path class="base" d={`M${left} ${base}H${width - right}`} />
          {rows.map((r, i) => {
            const y = top + i * tall + (above ? 18 : 4);
            return (
              <g key={i} class="window-row">
                <text x={above ? left : left - 8} y={above ? y - 5 : y + 14} text-anchor={above ? "start" : "end"}>
                  {r.name}
                </text>
                <Bar row={r} x={x} y={y} span={span} />
              </g>
            );
          })}
          {now !== null && now >= span.from && now <= span.to && <path class="now" d={`M${x(now)} ${top}V${base}`} />}
        </svg>
      )}
      <ul class="chart-key" aria-hidden="true">
        <li>
          <svg width="34" height="14">
            <rect class="window-bar" x="1" y="2" width="32" height="10" />
          </svg>{" "}
          window
        </li>
        <li>
          <svg width="34" height="14">
            <rect class="stretch soft" x="1" y="2" width="32" height="10" />
          </svg>{" "}
          range of an end
        </li>
        <li>
          <svg width="12" height="14">
            <path class="best" d="M6 0V14" />
          </svg>{" "}
          best
        </li>
        {rows.some((r) => r.window.opens && !r.window.closes) && (
          <li>
            <svg width="14" height="14">
              <path class="stays" d="M2 0L12 7L2 14Z" />
            </svg>{" "}
            stays open
          </li>
        )}
        {rows.some((r) => r.placed !== undefined) && (
          <li>
            <svg width="14" height="14">
              <circle class="placed-dot" cx="7" cy="7" r="3.5" />
            </svg>{" "}
            placed
          </li>
        )}
        {rows.some((r) => r.cuts?.length) && (
          <li>
            <svg width="14" height="14">
              <path class="cut-cross" d="M3 3L11 11M11 3L3 11" />
            </svg>{" "}
            cut at its edges
          </li>
        )}
      </ul>
    </div>
  );
}

function Bar({ row, x, y, span }: { row: WindowRow; x: (t: number) => number; y: number; span: Span }) {
  const w = row.window,
    at = (t: string | undefined) => moment(t);
  const clip = (t: number) => Math.min(Math.max(t, span.from), span.to);
  const piece = (from: number | undefined, to: number | undefined, kind: string, h: number) =>
    from === undefined || to === undefined || to <= span.from || from >= span.to ? null : (
      <rect class={kind} x={x(clip(from))} y={y + (18 - h) / 2} width={Math.max(2, x(clip(to)) - x(clip(from)))} height={h} />
    );
  const opens = at(w.opens),
    closes = at(w.closes),
    best = at(w.best);
  return (
    <>
      <path class="rail" d={`M${x(span.from)} ${y + 9}H${x(span.to)}`} />
      {piece(opens, closes ?? span.to, "window-bar", 14)}
      {piece(at(w.opens_low), at(w.opens_high), "stretch soft", 18)}
      {piece(at(w.closes_low), at(w.closes_high) ?? span.to, "stretch soft", 18)}
      {opens !== undefined && closes === undefined && opens < span.to && (
        <path class="stays" d={`M${x(span.to) - 1} ${y}L${x(span.to) + 9} ${y + 9}L${x(span.to) - 1} ${y + 18}Z`} />
      )}
      {best !== undefined && best >= span.from && best <= span.to && <path class="best" d={`M${x(best)} ${y - 1}V${y + 19}`} />}
      {row.placed !== undefined && row.placed >= span.from && <circle class="placed-dot" cx={x(row.placed)} cy={y + 9} r={3.5} />}
      {(row.cuts ?? [])
        .filter((t) => t >= span.from && t <= span.to)
        .map((t, i) => (
          <path key={i} class="cut-cross" d={`M${x(t) - 4} ${y + 5}L${x(t) + 4} ${y + 13}M${x(t) + 4} ${y + 5}L${x(t) - 4} ${y + 13}`} />
        ))}
    </>
  );
}

function spoken(r: WindowRow): string {
  const w = r.window,
    c = clock.value;
  if (!w.opens) return `${r.name}: does not open`;
  return `${r.name}: ${c.at(w.opens)} ${w.closes ? `to ${c.at(w.closes)}` : "on, stays open"}${w.best ? `, best ${c.at(w.best)}` : ""}`;
}

// spanAround is the whole hours around every time of the rows.
export function spanAround(rows: WindowRow[]): Span {
  const HOUR = 3600e3;
  const later = (w: CutWindow) => (w.opens && !w.closes ? moment(w.best ?? w.opens)! + 3 * HOUR : undefined);
  const times = rows
    .flatMap(({ window: w, placed, cuts }) => [
      placed,
      later(w),
      ...(cuts ?? []),
      ...[w.opens, w.opens_low, w.opens_high, w.best, w.closes, w.closes_low, w.closes_high].map(moment),
    ])
    .filter((t): t is number => t !== undefined);
  const from = Math.floor(Math.min(...times) / HOUR) * HOUR;
  const to = Math.min(Math.ceil(Math.max(...times) / HOUR) * HOUR, from + 72 * HOUR);
  return times.length ? { from, to: Math.max(to, from + HOUR) } : { from: 0, to: HOUR };
}

// Ranged writes a time with its range under it; a range may have one known end only.
export function Ranged({ at, low, high, none }: { at?: string; low?: string; high?: string; none: string }) {
  const c = clock.value;
  if (!at) return <>{none}</>;
  const between = betweenHours(low, high);
  return (
    <>
      {c.at(at)}
      {between && <span class="between">{between}</span>}
    </>
  );
}
