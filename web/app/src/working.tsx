// Workings: every figure down to its formula, the numbers put in and the source.

import { content, sheetOf, to } from "./state";
import type { Citation, Line, Sheet } from "./content";
import { figure, percent, withUnit } from "./format";
import { Fold } from "./fold";
import { Symbols } from "./symbols";
import { Table } from "./table";

export function Source({ source }: { source: Citation }) {
  if (!source?.title) return <span>{source?.how || "no source given"}</span>;
  const how = source.how && source.how !== "read on the page" ? ` (${source.how})` : "";
  return (
    <span class="source">
      {source.title}
      {source.place ? `, ${source.place}` : ""}
      {how}
    </span>
  );
}

export function Lines({ sheet }: { sheet: Sheet }) {
  return (
    <>
      {sheet.basis?.length ? (
        <>
          <p class="quiet">Stands on:</p>
          {sheet.basis.map((b) => (
            <p class="basis" key={b}>
              {b}
            </p>
          ))}
        </>
      ) : null}
      {sheet.lines?.length ? (
        <ol class="lines">
          {sheet.lines.map((line, i) => (
            <li key={i}>
              <LineRow line={line} />
            </li>
          ))}
        </ol>
      ) : (
        <p class="quiet">This sheet has no lines.</p>
      )}
    </>
  );
}

const Sym = ({ text }: { text: string }) => (
  <var>
    <Symbols text={text} />
  </var>
);

function LineRow({ line }: { line: Line }) {
  const formula = line.formula === line.symbol ? "" : line.formula; // taken as it is: one line says it
  const known = (line.inputs ?? []).some((n) => n.known);
  return (
    <div class="line-row">
      <p class="line-what">
        <Symbols text={line.what} />
      </p>
      <div class="line-steps">
        {formula && (
          <p>
            <Sym text={line.symbol} /> = <span class="formula"><Symbols text={formula} /></span>
          </p>
        )}
        {formula && line.numbers && line.numbers !== line.formula && (
          <p>
            <span class="unseen-word">with numbers, {line.symbol}</span>
            <span class="lead-in" aria-hidden="true" /> = <span class="formula"><Symbols text={line.numbers} /></span>
          </p>
        )}
        <p class="line-result">
          {formula ? <span class="lead-in" aria-hidden="true" /> : <Sym text={line.symbol} />} ={" "}
          <strong>{withUnit(line.text || figure(line.value), line.unit)}</strong>
          {line.verdict && <span class={`verdict verdict-${line.verdict}`}> {line.verdict}</span>}
        </p>
      </div>
      {line.inputs?.length ? (
        <Fold
          kind="fold inputs"
          line="Numbers put in"
          inside={() => (
            <Table
              caption={`Numbers put in for ${line.symbol}`}
              hideCaption
              head={["Symbol", "Meaning", "Value", ...(known ? ["Known"] : [])]}
              rows={line.inputs!.map((n) => [
                <Sym text={n.symbol} />,
                <Symbols text={n.what ?? ""} />,
                withUnit(figure(n.value, 4), n.unit),
                ...(known ? [n.known] : []),
              ])}
            />
          )}
        />
      ) : null}
      <p class="line-source">
        Source: <Source source={line.source} />
      </p>
      {line.check && (
        <p class={line.check.flag ? "line-check flagged" : "line-check"}>
          Check beside: {line.check.what} gives <strong>{withUnit(figure(line.check.value), line.check.unit)}</strong>,{" "}
          {percent(line.check.apart)} apart
          {line.check.flag && <strong> (flagged: more than 20 % apart)</strong>}. <Source source={line.check.source} />.{" "}
          {line.check.reason && line.check.reason.charAt(0).toUpperCase() + line.check.reason.slice(1)}
        </p>
      )}
    </div>
  );
}

// WorkingFold opens a working in place, under what it stands behind.
export function WorkingFold({ id, label = "Working" }: { id?: string; label?: string }) {
  if (!id) return null;
  const sheet = sheetOf(id);
  if (!sheet) return <p class="quiet small">Working {id} is not in this report.</p>;
  return (
    <Fold
      kind="fold working"
      line={
        <>
          {label && `${label}: `}
          {sheet.title}
        </>
      }
      inside={() => <SheetInPlace sheet={sheet} />}
    />
  );
}

export function SheetInPlace({ sheet }: { sheet: Sheet }) {
  return (
    <>
      <p class="small">
        <a class="onward" href={to("working", sheet.id)}>Open on its own: {sheet.title}</a>
      </p>
      <Lines sheet={sheet} />
    </>
  );
}

// WorkingLinks is one fold for one working and one fold over them all where there are
// more; under a heading that already says "workings" they stand one by one.
export function WorkingLinks({ ids, headed }: { ids?: string[] | null; headed?: boolean }) {
  const all = [...new Set(ids ?? [])];
  const each = () => all.map((id) => <WorkingFold key={id} id={id} label="" />);
  if (headed) return <>{each()}</>;
  if (all.length < 2) return <WorkingFold id={all[0]} />;
  return <Fold kind="fold workings" line={`${all.length} workings`} inside={each} />;
}

export function WorkingScreen({ id }: { id: string }) {
  const sheet = sheetOf(id);
  if (!sheet)
    return (
      <>
        <h1>Working</h1>
        <p>
          There is no working called {id}. <a href={to("workings")}>See all workings</a>
        </p>
      </>
    );
  return (
    <>
      <p>
        <a href={to("workings")}>All workings</a>
      </p>
      <h1>{sheet.title}</h1>
      <Lines sheet={sheet} />
    </>
  );
}

export function Workings() {
  const sheets = content.value!.workings ?? [];
  return (
    <>
      <h1>Workings</h1>
      <p>
        Every figure comes from one of these sheets. Each line gives the formula, the numbers put in, the answer, its source and,
        where there is one, an independent check.
      </p>
      {sheets.length === 0 && <p>No working was made yet.</p>}
      <ul class="rows">
        {sheets.map((s) => {
          const flagged = (s.lines ?? []).filter((l) => l.check?.flag).length;
          return (
            <li key={s.id}>
              <a href={to("working", s.id)}>
                <span>{s.title}</span>
                <span class="quiet">
                  {(s.lines ?? []).length} {(s.lines ?? []).length === 1 ? "line" : "lines"}
                  {flagged > 0 && `, ${flagged} flagged`}
                </span>
              </a>
            </li>
          );
        })}
      </ul>
    </>
  );
}
