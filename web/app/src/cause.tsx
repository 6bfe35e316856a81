// Candidate causes: what speaks for each, what against, what is missing.

import type { Argument, Cause, OverrideRow } from "./content";
import { ChanceText } from "./chance";
import { Fold } from "./fold";
import { odds } from "./format";
import { answers, sheetOf } from "./state";
import { OverrideForm } from "./override";
import { SheetInPlace, WorkingFold } from "./working";

// At a finding a chance can be set by hand.
interface At {
  finding: string;
  set: OverrideRow[];
}

export function CauseList({ title, rows, at }: { title: string; rows: Cause[]; at?: At }) {
  if (rows.length === 0) return null;
  return (
    <section class="causes">
      <h2>{title}</h2>
      {rows.map((row, i) => (
        <CauseRow key={row.id} row={row} open={i === 0 && row.state !== "ruled out"} at={at} />
      ))}
    </section>
  );
}

function CauseRow({ row, open, at }: { row: Cause; open: boolean; at?: At }) {
  return (
    <Fold
      kind={`cause state-${row.state.replace(/\s/g, "-")}`}
      open={open}
      line={
        <>
          <h3>
            {row.name} {row.state && <span class="state">{row.state}</span>}
          </h3>
          <ChanceText chance={row.chance} />
        </>
      }
      inside={() => (
        <div class="cause-body">
          {row.ruled_out && (
            <p>
              <strong>Ruled out because:</strong> {row.ruled_out}
            </p>
          )}
          {row.plain && <p>{row.plain}</p>}
          {row.exact && <Fold line="Said exactly" inside={() => <p>{row.exact}</p>} />}
          <Arguments row={row} />
          <WorkingFold id={row.working} label="" />
          {at && answers("override") && (
            <Fold
              line="Set this chance by hand"
              inside={() => <OverrideForm key={at.finding} finding={at.finding} row={row} set={at.set.find((o) => o.cause === row.id)} />}
            />
          )}
          {row.sources?.length ? <p class="small quiet">Sources: {row.sources.join("; ")}</p> : null}
        </div>
      )}
    />
  );
}

// Arguments are left out where a cause is weighed through others: a mechanism
// through its triggers, the slab through its findings.
function Arguments({ row }: { row: Cause }) {
  const any = row.for?.length || row.against?.length || row.missing?.length;
  if (!any && row.layer === "mechanism" && !row.ruled_out)
    return <p class="quiet">Weighed through what could have set it off, below.</p>;
  if (!any) return null;
  return (
    <>
      <Evidence title="For" rows={row.for ?? []} none="Nothing seen speaks for it." />
      <Evidence title="Against" rows={row.against ?? []} none="Nothing seen speaks against it." />
      <h4>Missing</h4>
      {row.missing?.length ? (
        <ul class="evidence missing">
          {row.missing.map((m) => (
            <li key={m}>{m}</li>
          ))}
        </ul>
      ) : (
        <p class="quiet">Nothing that would matter is missing.</p>
      )}
    </>
  );
}

function Evidence({ title, rows, none }: { title: string; rows: Argument[]; none: string }) {
  return (
    <>
      <h4>{title}</h4>
      {rows.length === 0 && <p class="quiet">{none}</p>}
      {rows.length > 0 && (
        <ul class={`evidence ${title.toLowerCase()}`}>
          {rows.map((a, i) => (
            <li key={i}>
              <OneArgument a={a} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

// OneArgument opens its working when it has one.
function OneArgument({ a }: { a: Argument }) {
  const sheet = a.working ? sheetOf(a.working) : undefined;
  const how = [a.from, a.known === a.from ? "" : a.known].filter(Boolean).join(", ");
  const words = (
    <span>
      {a.text}{" "}
      <span class="quiet small">
        {how}; {odds(a.shift)}
      </span>
    </span>
  );
  if (!sheet) return <p>{words}</p>;
  return (
    <Fold
      kind="fold working argument"
      line={
        <span>
          {words} <span class="to-working">working</span>
        </span>
      }
      inside={() => <SheetInPlace sheet={sheet} />}
    />
  );
}
