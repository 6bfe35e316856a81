// The plastic stage: from placing to final set, drying against bleeding, the film of
// water on the surface and the chances of cracks by the hour.

import { clock, type Span } from "./state";
import type { PourDay } from "./content";
import { fixed, moment, oneIn } from "./format";
import { Chart, type Limit, type Moment } from "./chart";
import { Fold } from "./fold";
import { Table } from "./table";

export function Plastic({ pour }: { pour: PourDay }) {
  const rows = pour.plastic ?? [];
  if (rows.length === 0) return null;
  const HOUR = 3600e3,
    at = (h: (typeof rows)[number]) => moment(h.time)!;
  const span: Span = {
    from: Math.floor(Math.min(at(rows[0]) - HOUR, moment(pour.start)!) / HOUR) * HOUR,
    to: Math.ceil(Math.max(at(rows[rows.length - 1]), moment(pour.final_set) ?? 0) / HOUR) * HOUR,
  };
  const pick = (get: (h: (typeof rows)[number]) => number): [number, number][] => rows.map((h) => [at(h), get(h)]);
  const marks = marksOf(pour);
  const last = rows[rows.length - 1];
  return (
    <section>
      <h2>While it was plastic</h2>
      <p>
        {`By final set the chance of plastic shrinkage cracks came to ${oneIn(last.chance_shrinkage)}, of cracks over bars to ${oneIn(last.chance_settlement)}.`}
      </p>
      <h3>Drying against bleeding</h3>
      <Chart
        title="Drying and bleeding by the hour"
        unit="kg/m²/h"
        span={span}
        from0
        decimals={2}
        height={190}
        series={[
          { name: "drying", strong: true, points: pick((h) => h.drying_kg_m2_h) },
          { name: "bleeding", dash: "7 4", points: pick((h) => h.bleeding_kg_m2_h) },
        ]}
        band={{
          name: "dries faster than it bleeds",
          points: rows.map((h) => [at(h), h.bleeding_kg_m2_h, Math.max(h.bleeding_kg_m2_h, h.drying_kg_m2_h)]),
        }}
        limits={plannedLimit(pour)}
        moments={marks}
      />
      <h3>Water on the surface, and drawn out of the concrete</h3>
      <Chart
        title="Film of water on the surface and water drawn out of the concrete"
        unit="kg/m²"
        span={span}
        from0
        decimals={2}
        height={160}
        series={[
          { name: "film on the surface", strong: true, points: pick((h) => h.film_kg_m2) },
          { name: "drawn out", dash: "7 4", points: pick((h) => h.deficit_kg_m2) },
        ]}
      />
      <h3>Chances of cracks</h3>
      <Chart
        title="Chance of plastic shrinkage cracks and of cracks over bars, by the hour"
        unit="chances in 10"
        span={span}
        from0
        upTo={10}
        height={170}
        series={[
          { name: "plastic shrinkage", strong: true, points: pick((h) => 10 * h.chance_shrinkage) },
          { name: "settlement over bars", dash: "7 4", points: pick((h) => 10 * h.chance_settlement) },
        ]}
      />
      <Fold
        line="The plastic stage in numbers"
        inside={() => (
          <Table
            caption={`Plastic stage, ${pour.name}`}
            shape="numbers"
            head={[
              "Time",
              "After placing, h",
              "Drying, kg/m²/h",
              "Bleeding, kg/m²/h",
              "Film, kg/m²",
              "Drawn out, kg/m²",
              "Plastic shrinkage",
              "Settlement",
            ]}
            rows={rows.map((h) => [
              clock.value.at(h.time),
              fixed(h.hours_after_placing, 1),
              fixed(h.drying_kg_m2_h, 2),
              fixed(h.bleeding_kg_m2_h, 2),
              fixed(h.film_kg_m2, 2),
              fixed(h.deficit_kg_m2, 2),
              oneIn(h.chance_shrinkage),
              oneIn(h.chance_settlement),
            ])}
          />
        )}
      />
    </section>
  );
}

// plannedLimit is the drying rate that the plan allowed, where it set one.
export function plannedLimit(pour: PourDay): Limit[] {
  const limit = pour.drying_limit_kg_m2_h;
  return limit === undefined ? [] : [{ value: limit, name: `${fixed(limit, 2)}: limit as planned` }];
}

// marksOf are the moments of the day that the fresh and the hardening slab answer to.
export function marksOf(pour: PourDay): Moment[] {
  const cuts = (pour.cuts ?? []).map((c) => c.at).sort();
  const named: [string | undefined, string][] = [
    [pour.film_gone, "bleed water gone"],
    [pour.initial_set, "initial set"],
    [pour.final_set, "final set"],
    [cuts[0], cuts.length > 1 ? "first cut" : "cut"],
    [cuts.length > 1 ? cuts[cuts.length - 1] : undefined, "last cut"],
  ];
  return named.flatMap(([time, name]) => (time ? [{ at: moment(time)!, name }] : []));
}
