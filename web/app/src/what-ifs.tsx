// The same pour with one thing changed, side by side, the pour as it was first.

import { clock } from "./state";
import type { PourDay, WhatIf } from "./content";
import { fixed, minus, moment, oneIn } from "./format";
import { useWide } from "./wide";
import { Ranged, spanAround, Windows } from "./windows";

// apart reports whether the first row opens or closes at another time than the day's own window.
function apart(base: WhatIf, pour: PourDay): boolean {
  const off = (a?: string, b?: string) => a && b && Math.abs(moment(a)! - moment(b)!) > 3 * 60e3;
  return Boolean(off(base.window.opens, pour.window.opens) || off(base.window.closes, pour.window.closes));
}

// beside is what a row says beyond its figures: nothing where it only repeats when the window opens.
function beside(r: WhatIf): string {
  const opens = r.window.opens;
  return minus(opens && r.text.includes(clock.value.hour(opens)) ? "" : r.text);
}

const isBase = (r: WhatIf) => r.name === "as it was" || r.changed === "as it was";

export function WhatIfs({ pour }: { pour: PourDay }) {
  const wide = useWide();
  const given = pour.what_ifs ?? [];
  if (given.length === 0) return null;
  const rows = [...given.filter(isBase), ...given.filter((r) => !isBase(r))];
  const run = rows.filter((r) => r.window.opens || r.window.saw);
  return (
    <section>
      <h2>What if</h2>
      <p>
        The same pour with one thing changed; the first row is the pour as it was.
        {apart(rows[0], pour) && " It was run anew, and its window is not that of the day above: compare the rows with it."}
      </p>
      <Windows
        title="Cut windows with one thing changed"
        span={spanAround(run)}
        rows={run.map((r) => ({ name: r.name, window: r.window }))}
      />
      {wide ? <SideBySide rows={rows} /> : rows.map((r, i) => <Card key={i} r={r} />)}
    </section>
  );
}

// SideBySide gives each what-if a row of figures and, under it, what is changed and what comes of it.
function SideBySide({ rows }: { rows: WhatIf[] }) {
  return (
    <div class="table" role="group" aria-label="What if, side by side" tabIndex={0}>
      <table class="what-ifs">
        <caption class="unseen-word">What if, side by side</caption>
        <thead>
          <tr>
            {["What if", ...NAMES].map((h) => (
              <th scope="col" key={h}>
                {h}
              </th>
            ))}
          </tr>
        </thead>
        {rows.map((r, i) => {
          const said = [r.changed !== r.name && minus(r.changed), beside(r)].filter(Boolean).join(". ");
          return (
            <tbody key={i}>
              <tr class={said ? "what-if-row" : ""}>
                <th scope="row">
                  <strong>{r.name}</strong>
                </th>
                {cells(r).map((cell, k) => (
                  <td key={k}>{cell}</td>
                ))}
              </tr>
              {said && (
                <tr class="what-if-said">
                  <td colSpan={NAMES.length + 1}>{said}</td>
                </tr>
              )}
            </tbody>
          );
        })}
      </table>
    </div>
  );
}

// cells are the facts of a row; a run that could not be made has none.
function cells(r: WhatIf) {
  const w = r.window;
  if (!w.saw && !w.opens) return ["not run", "–", "–", "–", "–", "–", "–"];
  return [
    <Ranged at={w.opens} low={w.opens_low} high={w.opens_high} none="does not open" />,
    w.best ? clock.value.at(w.best) : "none",
    <Ranged at={w.closes} low={w.closes_low} high={w.closes_high} none={w.opens ? "stays open" : "–"} />,
    r.night ? "yes" : "no",
    fixed(r.peak_drying_kg_m2_h, 2),
    oneIn(r.chance_plastic),
    w.best ? oneIn(r.chance_cracked) : "–",
  ];
}

const NAMES = ["Opens", "Best", "Closes", "At night", "Peak drying, kg/m²/h", "Plastic cracks", "Cracked before the cut"];

function Card({ r }: { r: WhatIf }) {
  const list = cells(r);
  return (
    <div class="what-if">
      <h3>{r.name}</h3>
      {r.changed && r.changed !== r.name && <p class="quiet">{minus(r.changed)}</p>}
      {list[0] === "not run" ? (
        <p>Not run. {minus(r.text)}</p>
      ) : (
        <>
          <dl class="facts">
            {NAMES.map((name, i) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{list[i]}</dd>
              </div>
            ))}
          </dl>
          {beside(r) && <p>{beside(r)}</p>}
        </>
      )}
    </div>
  );
}
