// One finding: where it is, why, what to look at next, what can be done, who could have stopped it.

import { clock, content, to } from "./state";
import type { FindingSheet, HandRow, OptionRow, Relation, TestRow } from "./content";
import { mm, moment, withUnit, fixed } from "./format";
import { inside } from "./shape";
import { CauseList } from "./cause";
import { Fold } from "./fold";
import { FactShift } from "./weigh";
import { Overrides } from "./override";
import { PreventedRows } from "./prevented";
import { AnswerBody } from "./answers";
import { WorkingLinks } from "./working";
import { Facts } from "./facts";

const MOST = 300; // findings in one list

export function Findings({ panel }: { panel: string }) {
  const all = content.value!.findings ?? [];
  const ring = (content.value!.plan.panels ?? []).find((p) => p.id === panel)?.ring_m;
  const shown = (ring ? all.filter((f) => inside(ring, f.at_m)) : all).slice(0, MOST);
  return (
    <>
      <h1>Findings{ring && ` in panel ${panel}`}</h1>
      {all.length === 0 && (
        <p>
          No finding is on this slab. Walk the slab, write down what is seen, what is not there and what could not be seen, and
          run the diagnosis again.
        </p>
      )}
      {ring && (
        <p>
          <a href={to("findings")}>Show all {all.length}</a>
        </p>
      )}
      <ul class="rows">
        {shown.map((f) => (
          <li key={f.finding.id}>
            <a href={to("finding", f.finding.id)}>
              <span>
                <strong>{f.finding.id}</strong> {f.title}
              </span>
              <span class="quiet">
                {f.answer}
                {!f.decided && !/^cannot tell/i.test(f.answer) && " (cannot tell yet)"}
              </span>
            </a>
          </li>
        ))}
      </ul>
      {shown.length === MOST && <p class="quiet">The first {MOST} are listed. Choose a panel on the plan for the others.</p>}
    </>
  );
}

export function FindingScreen({ id }: { id: string }) {
  const all = content.value!.findings ?? [];
  const index = all.findIndex((f) => f.finding.id === id);
  if (index < 0)
    return (
      <>
        <h1>Finding</h1>
        <p>
          There is no finding {id}. <a href={to("findings")}>See all findings</a>
        </p>
      </>
    );
  const f = all[index],
    before = all[index - 1],
    next = all[index + 1],
    at = { finding: id, set: f.overrides ?? [] };
  return (
    <>
      <nav class="steps" aria-label="Findings one by one">
        {before ? <a href={to("finding", before.finding.id)}>Finding {before.finding.id} before</a> : <span />}
        {next && <a href={to("finding", next.finding.id)}>Finding {next.finding.id} next</a>}
      </nav>
      <h1>
        {f.finding.id} · {f.title}
      </h1>
      <p class="lead">{f.answer}</p>
      {!f.decided && <p class="note">The evidence does not decide this yet. See the next tests below.</p>}
      <Where f={f} />
      <Overrides finding={id} rows={f.overrides ?? []} />
      <CauseList title="What pulled it apart" rows={f.mechanisms ?? []} />
      <CauseList title="Why here and then" rows={f.triggers ?? []} at={at} />
      <CauseList title="Considered and ruled out" rows={f.ruled_out ?? []} at={at} />
      {f.unexplained?.length ? (
        <section>
          <h2>Not explained</h2>
          <ul>
            {f.unexplained.map((u) => (
              <li key={u}>{u}</li>
            ))}
          </ul>
        </section>
      ) : null}
      <NextTests rows={f.next_tests ?? []} />
      <FactShift finding={id} />
      <PreventedRows rows={f.prevented ?? []} />
      <section>
        <h2>{f.structural.question || "Is it structural?"}</h2>
        <AnswerBody answer={f.structural} />
      </section>
      <section>
        <h2>{f.worse.question || "Will it get worse?"}</h2>
        <AnswerBody answer={f.worse} />
      </section>
      <section>
        <h2>{f.matters.question || "Does it matter?"}</h2>
        <AnswerBody answer={f.matters} />
      </section>
      <Options rows={f.options ?? []} />
      <Hands rows={f.hands ?? []} />
      {f.workings?.length ? (
        <section>
          <h2>Workings of this finding</h2>
          <WorkingLinks headed ids={f.workings} />
        </section>
      ) : null}
    </>
  );
}

function Where({ f }: { f: FindingSheet }) {
  const g = f.finding;
  const facts: [string, string | undefined][] = [
    ["Kind", g.kind],
    ["Width", g.width_m && `${mm(g.width_m.value)}${between(g.width_m.low, g.width_m.high)}, ${g.width_m.known}`],
    ["Step", g.step_m && `${mm(g.step_m.value)}, ${g.step_m.known}`],
    ["Depth", g.depth_m && `${mm(g.depth_m.value)}, ${g.depth_m.known}`],
    ["Cell size", g.cell_m && `${mm(g.cell_m.value)}, ${g.cell_m.known}`],
    ["Edge lift", g.lift_m && `${mm(g.lift_m.value)}, ${g.lift_m.known}`],
    ["Rebound", g.rebound_ratio && `${fixed(g.rebound_ratio.value, 2)} of sound concrete, ${g.rebound_ratio.known}`],
    [
      "First seen",
      moment(g.first_seen) !== undefined
        ? `${clock.value.at(g.first_seen)}, ${clock.value.on(g.first_seen)}${g.first_seen_by ? `, by ${g.first_seen_by}` : ""}`
        : undefined,
    ],
    ...Object.entries(g.seen ?? {})
      .sort()
      .map(([k, v]): [string, string] => [k.replace(/_/g, " "), `${v.value}, ${v.known}`]),
    ["Photos", g.photos?.join(", ")],
    ["Note", g.note],
  ];
  return (
    <section>
      <h2>Where it is</h2>
      <p>{sentence(f.place)}</p>
      <RelationList rows={f.relations ?? []} />
      <Fold line="As seen and measured" inside={() => <Facts rows={facts} />} />
    </section>
  );
}

const FIRST = 5; // relations shown before the rest is folded

function RelationList({ rows }: { rows: Relation[] }) {
  const list = (some: Relation[]) => (
    <ul class="relations">
      {some.map((r, i) => (
        <li key={i}>
          <span class="quiet">{r.what}:</span> {r.text.replace(/\s[–-]$/, "")}
        </li>
      ))}
    </ul>
  );
  return (
    <>
      {rows.length > 0 && list(rows.slice(0, FIRST))}
      {rows.length > FIRST && <Fold line={`${rows.length - FIRST} more from the plan`} inside={() => list(rows.slice(FIRST))} />}
      <WorkingLinks ids={rows.map((r) => r.working).filter(Boolean)} />
    </>
  );
}

function between(low?: number, high?: number): string {
  return low !== undefined && high !== undefined ? ` (${mm(low).replace(/\s*mm$/, "")} to ${mm(high)})` : "";
}

const COST = ["hand tool", "short visit", "day of testing", "coring or scanning", "closure and plant"];

function NextTests({ rows }: { rows: TestRow[] }) {
  return (
    <section>
      <h2>Next tests</h2>
      {rows.length === 0 && <p>No further look would change the answer.</p>}
      <ol class="tests">
        {rows.map((t) => (
          <li key={t.name}>
            <h3>{t.name}</h3>
            <p class="quiet">
              {COST[t.cost_class] ?? "cost not given"} · {t.time} · tells {withUnit(fixed(t.gain_bits, 2), "bit")}
            </p>
            {t.splits?.length ? <p>Splits: {t.splits.join(" from ")}</p> : null}
            {t.outcomes?.length ? (
              <ul>
                {t.outcomes.map((o) => (
                  <li key={o}>{o}</li>
                ))}
              </ul>
            ) : null}
            {t.caution && <p class="note">{t.caution}</p>}
          </li>
        ))}
      </ol>
    </section>
  );
}

// Options shows what is to be done in full, and what was considered and set aside folded.
export function Options({ rows }: { rows: OptionRow[] }) {
  const chosen = rows.filter((o) => o.verdict === "recommended" || o.verdict === "also needed");
  const aside = rows.filter((o) => !chosen.includes(o));
  return (
    <section>
      <h2>What can be done</h2>
      {rows.length === 0 && <p>No option was worked out.</p>}
      <ul class="options">
        {[...chosen, ...aside].map((o) => {
          const name = (
            <h3>
              {o.remedy} <span class="state">{o.verdict}</span>
            </h3>
          );
          const kind = `option option-${o.verdict.replace(/\s/g, "-")}`;
          return chosen.includes(o) ? (
            <li key={o.remedy} class={kind}>
              {name}
              <OptionBody o={o} />
            </li>
          ) : (
            <li key={o.remedy} class={kind + " set-aside"}>
              <Fold line={name} inside={() => <OptionBody o={o} />} />
            </li>
          );
        })}
      </ul>
    </section>
  );
}

function OptionBody({ o }: { o: OptionRow }) {
  const facts = (
    [
      ["When", o.when],
      ["Quantity", o.quantity],
      ["Life", o.life],
      ["Disruption", o.disruption],
      ["Cost", o.cost],
      ["Sources", (o.sources ?? []).join("; ")],
    ] as const
  ).filter(([, v]) => v);
  return (
    <>
      {o.why && <p>{sentence(o.why)}</p>}
      {o.why_not && (
        <p>
          {o.verdict === "refused" ? "Refused because " : o.why ? "But " : "Not, because "}
          {o.why_not}
          {/[.!?]$/.test(o.why_not) ? "" : "."}
        </p>
      )}
      <dl class="facts">
        {facts.map(([k, v]) => (
          <div key={k}>
            <dt>{k}</dt>
            <dd>{v}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}

const sentence = (text: string) => text.charAt(0).toUpperCase() + text.slice(1) + (/[.!?]$/.test(text) ? "" : ".");

// Hands keeps three questions apart: one departed, one caused, one had control.
export function Hands({ rows }: { rows: HandRow[] }) {
  if (rows.length === 0) return null;
  return (
    <section>
      <h2>Who could have stopped it</h2>
      <p class="small quiet">Three separate questions; a yes to one is no yes to another.</p>
      <table class="hands">
        <caption class="unseen-word">Who could have stopped it</caption>
        <thead>
          <tr>
            <th scope="col">Party</th>
            <th scope="col">Departed from plan?</th>
            <th scope="col">Did that cause this?</th>
            <th scope="col">Had control?</th>
          </tr>
        </thead>
        {rows.map((h, i) => (
          <tbody key={i}>
            <tr class="answers-row">
              <th scope="row">
                <strong>{h.party}</strong>
                <br />
                <span class="quiet small">{h.role}</span>
              </th>
              <td>{h.departed}</td>
              <td>{h.caused}</td>
              <td>{h.control}</td>
            </tr>
            <tr class="action">
              <td colSpan={4}>
                {h.cause && (
                  <>
                    <span class="quiet">Of {h.cause}:</span>{" "}
                  </>
                )}
                {h.action}
                {h.moment && <span class="quiet">, {h.moment}</span>}
              </td>
            </tr>
          </tbody>
        ))}
      </table>
    </section>
  );
}
