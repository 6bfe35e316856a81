// The slab through its depth at one hour: temperature, humidity in the pores, strength
// and the stress that the layers do to each other, the top of the slab uppermost.

import { clock, hour, ruler } from "./state";
import type { PourDay, Profile } from "./content";
import { after, fixed, moment } from "./format";
import { axis, decimalsOf } from "./chart";
import { Fold } from "./fold";
import { Table } from "./table";
import { useWidth } from "./width";

interface Quantity {
  name: string;
  unit: string;
  decimals: number;
  of: (p: Profile) => number[] | undefined | null;
  zero?: boolean;
}
const QUANTITIES: Quantity[] = [
  { name: "Temperature", unit: "°C", decimals: 1, of: (p) => p.temperature_C },
  { name: "Humidity in the pores", unit: "%", decimals: 0, of: (p) => p.humidity?.map((v) => 100 * v) },
  { name: "Strength", unit: "MPa", decimals: 1, of: (p) => p.strength_MPa },
  { name: "Stress between layers", unit: "MPa", decimals: 2, of: (p) => p.stress_MPa, zero: true },
];

export function Depth({ pour }: { pour: PourDay }) {
  const depths = pour.depths_m ?? [],
    profiles = pour.profiles ?? [];
  if (depths.length < 2 || profiles.length === 0) return null;
  const times = profiles.map((p) => moment(p.time)!);
  const now = hour.value;
  const index =
    now === null
      ? Math.floor((profiles.length - 1) / 2)
      : times.reduce((best, t, i) => (Math.abs(t - now) < Math.abs(times[best] - now) ? i : best), 0);
  const shown = profiles[index];
  const given = QUANTITIES.filter((q) => profiles.some((p) => q.of(p)?.length === depths.length));
  const go = (i: number) => {
    ruler.value = times[i] > moment(pour.start)! + 24 * 3600e3 ? "days" : ruler.value;
    hour.value = times[i];
  };
  return (
    <section class="through">
      <h2>Through the depth</h2>
      <p role="status">
        At <strong>{clock.value.at(shown.time)}</strong>, {after(shown.hours_after_placing)}
        {now === null ? "; set an hour on the ruler for another" : ""}. The band is from the lowest to the highest of the{" "}
        {profiles.length} hours kept; stress is positive in tension.
      </p>
      <div class="through-keys">
        <button disabled={index === 0} onClick={() => go(index - 1)}>
          Earlier hour
        </button>
        <button disabled={index === profiles.length - 1} onClick={() => go(index + 1)}>
          Later hour
        </button>
      </div>
      <div class="through-charts">
        {given.map((q) => (
          <DepthChart key={q.name} q={q} depths={depths} profiles={profiles} shown={shown} />
        ))}
      </div>
      <Fold
        line="Through the depth in numbers"
        inside={() => (
          <Table
            caption={`Through the depth, ${clock.value.at(shown.time)}`}
            shape="numbers"
            head={["Depth, mm", ...given.map((q) => `${q.name}, ${q.unit}`)]}
            rows={depths.map((d, i) => [
              fixed(1000 * d, 0),
              ...given.map((q) => {
                const v = q.of(shown)?.[i];
                return v === undefined ? "–" : fixed(v, q.decimals);
              }),
            ])}
          />
        )}
      />
    </section>
  );
}

function DepthChart({ q, depths, profiles, shown }: { q: Quantity; depths: number[]; profiles: Profile[]; shown: Profile }) {
  const { box, width } = useWidth();
  const all = profiles.map((p) => q.of(p)).filter((v): v is number[] => v?.length === depths.length);
  const own = q.of(shown);
  const ends = depths.map((_, i): [number, number] => [Math.min(...all.map((v) => v[i])), Math.max(...all.map((v) => v[i]))]);
  const low = Math.min(...ends.map((e) => e[0]), q.zero ? 0 : Infinity),
    high = Math.max(...ends.map((e) => e[1]), q.zero ? 0 : -Infinity);
  const steps = sparse(axis(low, high));
  const [a, b] = [steps[0], steps[steps.length - 1]];
  const height = 220,
    left = 34,
    right = 14,
    top = 8,
    bottom = 24,
    thick = depths[depths.length - 1];
  const x = (v: number) => left + ((v - a) / (b - a || 1)) * (width - left - right);
  const y = (d: number) => top + (d / thick) * (height - top - bottom);
  const line = (values: number[], from = "M") =>
    values.map((v, i) => `${i ? "L" : from}${x(v).toFixed(1)} ${y(depths[i]).toFixed(1)}`).join("");
  const band =
    line(ends.map((e) => e[0])) +
    [...depths.keys()]
      .reverse()
      .map((i) => `L${x(ends[i][1]).toFixed(1)} ${y(depths[i]).toFixed(1)}`)
      .join("") +
    "Z";
  const say = (i: number) => `${fixed(own![i], q.decimals)} at ${fixed(1000 * depths[i], 0)} mm`;
  const words = own
    ? `${q.name} through the depth, ${q.unit}: ${[0, Math.floor(depths.length / 2), depths.length - 1].map(say).join(", ")}. The table below holds the numbers.`
    : `${q.name} through the depth: not given at this hour.`;
  return (
    <div class="chart depth" ref={box}>
      <h3>
        {q.name}, {q.unit}
      </h3>
      {width > 0 && (
        <svg width={width} height={height} role="img" aria-label={words}>
          {steps.map((v) => (
            <g key={v}>
              <path class="grid" d={`M${x(v)} ${top}V${height - bottom}`} />
              <text class="axis" x={x(v)} y={height - 8} text-anchor="middle">
                {fixed(v, decimalsOf(steps))}
              </text>
            </g>
          ))}
          {depthMarks(thick).map((d) => (
            <g key={d}>
              <path class="grid" d={`M${left} ${y(d)}H${width - right}`} />
              <text class="axis" x={left - 5} y={y(d) + 4} text-anchor="end">
                {fixed(1000 * d, 0)}
              </text>
            </g>
          ))}
          <path class="band" d={band} />
          {q.zero && <path class="zero" d={`M${x(0)} ${top}V${height - bottom}`} />}
          {all.map((v, i) => v !== own && <path key={i} class="other" d={line(v)} />)}
          {own && <path class="series strong" d={line(own)} />}
          <path class="base" d={`M${left} ${top}H${width - right}M${left} ${height - bottom}H${width - right}`} />
          {!own && (
            <text class="unit" x={left + 6} y={top + 16}>
              not given at this hour
            </text>
          )}
        </svg>
      )}
    </div>
  );
}

// sparse keeps at most five of the round values, ends included.
function sparse(steps: number[]): number[] {
  if (steps.length <= 5) return steps;
  const kept = steps.filter((_, i) => i % 2 === 0);
  const step = kept[1] - kept[0];
  return kept[kept.length - 1] < steps[steps.length - 1] ? [...kept, kept[kept.length - 1] + step] : kept;
}

// depthMarks are round depths in metres for a slab so thick.
function depthMarks(thick: number): number[] {
  const step = thick > 0.25 ? 0.1 : 0.05;
  const out: number[] = [];
  for (let d = 0; d <= thick + 1e-9; d += step) out.push(d);
  return out;
}
