// What one fact more would do to the causes of a finding.

import { useState } from "preact/hooks";
import { ChanceText } from "./chance";
import { Fold } from "./fold";
import { answers } from "./state";
import { askFacts, facts, NOT_SEEN, shift, suppose, supposed, weighWrong, type FindingFact } from "./weigh-state";

export function FactShift({ finding }: { finding: string }) {
  if (!answers("shift")) return null;
  return (
    <section>
      <h2>If a fact were otherwise</h2>
      <Fold
        key={finding}
        line="Change a fact and see what shifts"
        inside={() => <Facts finding={finding} />}
        opened={() => void askFacts(finding)}
      />
    </section>
  );
}

function Facts({ finding }: { finding: string }) {
  const [which, setWhich] = useState("");
  const all = facts.value?.finding === finding ? facts.value.rows : [];
  const fact = all.find((f) => f.variable === which);
  const known = all.filter((f) => f.now !== NOT_SEEN),
    open = all.filter((f) => f.now === NOT_SEEN);
  const options = (rows: FindingFact[]) => rows.map((f) => <option value={f.variable}>{f.question}</option>);
  return (
    <div class="weigh">
      <p class="small quiet">Nothing is written into the job. Everything else stays as it is, the replays among it.</p>
      <label>
        <span>Fact</span>
        <select value={which} onChange={(e) => setWhich(e.currentTarget.value)}>
          <option value="">{all.length ? "Choose one" : "Being fetched"}</option>
          {known.length > 0 && <optgroup label="Known of it">{options(known)}</optgroup>}
          {open.length > 0 && <optgroup label="Not known yet">{options(open)}</optgroup>}
        </select>
      </label>
      {fact && <States key={fact.variable} finding={finding} fact={fact} />}
      {weighWrong.value.length > 0 && (
        <div class="note" role="alert">
          {weighWrong.value.map((w) => (
            <p key={w}>{w}</p>
          ))}
        </div>
      )}
      <Shifted finding={finding} all={all} />
    </div>
  );
}

const upper = (s: string) => s.charAt(0).toUpperCase() + s.slice(1);
const sentence = (s: string) => upper(s) + (/[.!?]$/.test(s) ? "" : ".");

// States are what a fact can be; each is one tap, and shows at once what it does.
function States({ finding, fact }: { finding: string; fact: FindingFact }) {
  const [typed, setTyped] = useState("");
  const set = supposed.value.facts.find((f) => f.variable === fact.variable)?.value ?? fact.now;
  const choices = [...(fact.states ?? []), { state: NOT_SEEN, says: "could not see it, or nobody looked" }];
  return (
    <fieldset class="states">
      <legend>{sentence(fact.question)}</legend>
      <p class="quiet small">
        {fact.now === NOT_SEEN ? "Not known now." : `Now: ${fact.text || fact.now} (${[fact.from, fact.known].filter(Boolean).join(", ")}).`}
      </p>
      {choices.map((c) => (
        <label class="tick" key={c.state}>
          <input
            type="radio"
            name={`fact-${fact.variable}`}
            checked={set === c.state}
            onChange={() => void suppose(finding, fact.variable, c.state === fact.now ? undefined : c.state)}
          />
          <span>
            {upper(c.says)}
            {c.state === fact.now && <span class="quiet"> · as it stands</span>}
          </span>
        </label>
      ))}
      {fact.unit && (
        <form
          class="numbers"
          onSubmit={(e) => {
            e.preventDefault();
            if (typed.trim()) void suppose(finding, fact.variable, typed.trim().replace(",", "."));
          }}
        >
          <label>
            <span>Or a number, {fact.unit}</span>
            <input inputMode="decimal" autocomplete="off" value={typed} onInput={(e) => setTyped(e.currentTarget.value)} />
          </label>
          <button type="submit">See what shifts</button>
        </form>
      )}
    </fieldset>
  );
}

function Shifted({ finding, all }: { finding: string; all: FindingFact[] }) {
  const s = shift.value;
  if (!s || s.finding !== finding) return <p role="status" />;
  const name = (variable: string) => all.find((f) => f.variable === variable)?.question ?? variable;
  const says = (variable: string, value: string) =>
    value === NOT_SEEN ? "not known" : (all.find((f) => f.variable === variable)?.states?.find((c) => c.state === value)?.says ?? value);
  return (
    <div class="shifted">
      <div role="status">
        <p>
          <strong>As it stands.</strong> {sentence(s.before)}
        </p>
        <p>
          <strong>With that changed.</strong> {sentence(s.after)}
        </p>
      </div>
      <ul class="plain-list">
        {supposed.value.facts.map((f) => (
          <li key={f.variable}>
            {sentence(name(f.variable))} Supposed: {says(f.variable, f.value)}.{" "}
            <button onClick={() => void suppose(finding, f.variable)}>
              Put back<span class="unseen-word"> {name(f.variable)}</span>
            </button>
          </li>
        ))}
      </ul>
      <table class="before-after shift-table">
        <caption>Causes before and after, the largest shift first</caption>
        <thead>
          <tr>
            <th scope="col">Cause</th>
            <th scope="col">As it stands</th>
            <th scope="col">With that changed</th>
          </tr>
        </thead>
        <tbody>
          {(s.rows ?? []).map((r) => (
            <tr key={r.cause}>
              <th scope="row">{upper(r.name)}</th>
              <td data-head="As it stands">
                <ChanceText chance={r.before} />
              </td>
              <td data-head="With that changed">
                <ChanceText chance={r.after} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
