// A chance the engineer sets in place of the one worked out, with the reason.

import { useState } from "preact/hooks";
import { asking, clock, content } from "./state";
import { ChanceText } from "./chance";
import { inWords } from "./format";
import { setChance, setDone, setWrong, undoSet } from "./weigh-state";
import type { Cause, OverrideRow } from "./content";

export function OverrideForm({ finding, row, set }: { finding: string; row: Cause; set?: OverrideRow }) {
  const [tenths, setTenths] = useState((10 * (set?.set.p ?? row.chance.p)).toFixed(1));
  const [reason, setReason] = useState(set?.reason ?? "");
  const [by, setBy] = useState(set?.by ?? (content.value!.head.author || content.value!.head.looked_by || ""));
  const [bad, setBad] = useState<string[]>([]);
  const wrong = bad.length ? bad : setWrong.value?.cause === row.id ? setWrong.value.problems : [];
  const go = (e: Event) => {
    e.preventDefault();
    const value = Number(tenths.trim().replace(",", "."));
    const faults = [
      !(value > 0 && value < 10) && `“${tenths}” is not a chance out of ten; write a number above 0 and below 10, such as 7.5.`,
      reason.trim() === "" && "The reason is missing: say what was seen or known that the weights do not hold.",
      by.trim() === "" && "The name of who sets it is missing.",
    ].filter((f): f is string => typeof f === "string");
    setBad(faults);
    if (faults.length === 0) void setChance(finding, row.id, { chance: value / 10, reason, by }, `chance of ${row.name} set`);
  };
  return (
    <form class="override" onSubmit={go}>
      <p class="small quiet">Kept in the job with your name. The report shows both chances and the reason.</p>
      <label>
        <span>Chance, out of 10</span>
        <input inputMode="decimal" autocomplete="off" value={tenths} aria-invalid={wrong.length > 0} onInput={(e) => setTenths(e.currentTarget.value)} />
      </label>
      <label>
        <span>Because</span>
        <textarea rows={3} value={reason} onInput={(e) => setReason(e.currentTarget.value)} />
      </label>
      <label>
        <span>Set by</span>
        <input autocomplete="name" value={by} onInput={(e) => setBy(e.currentTarget.value)} />
      </label>
      {wrong.length > 0 && (
        <div class="note" role="alert">
          {wrong.map((w) => (
            <p key={w}>{w}</p>
          ))}
        </div>
      )}
      <button type="submit">Set this chance</button>
    </form>
  );
}

// Overrides lists the chances set by hand at a finding, each to be taken back, and undoes
// what was done last.
export function Overrides({ finding, rows }: { finding: string; rows: OverrideRow[] }) {
  const done = setDone.value?.finding === finding ? setDone.value : null;
  return (
    <>
      <div class={done ? "note set-done" : "stage-none"}>
        <p role="status">
          {done && `Saved: ${done.words}.`}
          {done && asking.value && " The answers are being worked out again."}
        </p>
        {done && <button onClick={() => void undoSet()}>Undo</button>}
      </div>
      {rows.length > 0 && (
        <section>
          <h2>Chances set by hand</h2>
          <ul class="plain-list">
            {rows.map((o) => (
              <li key={o.cause}>
                <strong>{o.name.charAt(0).toUpperCase() + o.name.slice(1)}</strong>: {inWords(o.set)}, set by {o.by}
                {o.at && ` on ${clock.value.on(o.at)}`}, because {o.reason}. Worked out: <ChanceText chance={o.was} />
                <button onClick={() => void setChance(finding, o.cause, null, `chance of ${o.name} taken back`)}>
                  Take back<span class="unseen-word"> the chance of {o.name}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
