// What moves the cut window: which unknown most, and what was measured.

import type { MeasuredFit, PourDay, SensitivityRow } from "./content";
import { fixed, minus, percent, signed, withUnit } from "./format";
import { WorkingFold } from "./working";

export function Moves({ pour }: { pour: PourDay }) {
  const rows = pour.moves ?? [];
  if (rows.length === 0) return null;
  const most = Math.max(1, ...rows.flatMap((r) => [Math.abs(r.opens_min), Math.abs(r.closes_min)]));
  return (
    <section>
      <h2>What moves the window most</h2>
      <p class="small quiet">
        Minutes later (+) or earlier (−) as each unknown goes from its low to its high; the share is its part of the spread of the
        opening or of the closing, whichever is more.
      </p>
      <ul class="moves">
        {rows.map((r) => (
          <li key={r.what}>
            <p class="moves-what">
              <span>
                <strong>{r.what}</strong>, {r.low} to {r.high} <span class="quiet">{r.known}</span>
              </span>{" "}
              <span class="moves-share">{percent(r.share)} of the spread</span>
            </p>
            <Minutes name="opens" value={r.opens_min} most={most} />
            <Minutes name="closes" value={r.closes_min} most={most} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Minutes({ name, value, most }: { name: string; value: SensitivityRow["opens_min"]; most: number }) {
  const from = 50 + Math.min(0, (value / most) * 49),
    wide = Math.abs(value / most) * 49;
  return (
    <div class="moves-bar">
      <span class="quiet">{name}</span>
      <svg viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true">
        <path class="rail" d="M1 6H99" />
        <rect class={`moves-${name}`} x={from} y="1.5" width={Math.max(wide, 0.4)} height="9" />
        <path class="mid" d="M50 0V12" />
      </svg>
      <span class="moves-number">{withUnit(signed(value), "min")}</span>
    </div>
  );
}

export function Measured({ fit, besides }: { fit: MeasuredFit; besides: string }) {
  return (
    <section>
      <h2>What the measurements did</h2>
      <p>{minus(fit.text)}</p>
      {fit.used?.length ? (
        <>
          <p class="quiet">Used:</p>
          <ul>
            {fit.used.map((u) => (
              <li key={u}>{u}</li>
            ))}
          </ul>
        </>
      ) : null}
      {!fit.text.includes(fixed(fit.members, 0)) && (
        <p class="small quiet">After them, the runs count as much as {fixed(fit.members, 0)} equal ones.</p>
      )}
      {(fit.warnings ?? []).map((w) => (
        <p class="note" key={w}>
          {w}
        </p>
      ))}
      {fit.working !== besides && <WorkingFold id={fit.working} />}
    </section>
  );
}
