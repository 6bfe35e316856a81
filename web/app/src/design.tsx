// The next slab: joints drawn, moved, judged and proposed.

import { useEffect, useState } from "preact/hooks";
import { lengthOf } from "./shape";
import { figure, fixed, metres, oneIn, withUnit } from "./format";
import { ChanceText } from "./chance";
import { Fold } from "./fold";
import { Table } from "./table";
import {
  begin,
  busy,
  chance,
  chosen,
  design,
  edit,
  layout,
  grouped,
  panelChance,
  propose,
  put,
  redo,
  redoes,
  said,
  save,
  startAgain,
  stepsBack,
  stripsOf,
  tapping,
  undo,
  undoes,
  wrong,
} from "./design-state";
import { acrossOf, moveOf, movedWords } from "./design-plan";
import { at, jointName } from "./design-words";
import type { Fixture, Joint, Panel, Point } from "./content";
import type { Layout, QuantityRow, Warning } from "./design-content";
import type { Group, Tapping } from "./design-state";

export function DesignScreen() {
  useEffect(begin, []);
  useUndoKeys();
  const l = layout.value;
  return (
    <>
      <h1>Joints for the next slab</h1>
      <p class="unseen-word" role="status">
        {said.value}
      </p>
      {wrong.value.length > 0 && (
        <div class="note" role="alert">
          <h2>There is a problem</h2>
          {wrong.value.map((w) => (
            <p key={w}>{w}</p>
          ))}
        </div>
      )}
      {l ? <Designed l={l} /> : <p>The rules are being looked at.</p>}
    </>
  );
}

function Designed({ l }: { l: Layout }) {
  return (
    <>
      <Summary l={l} />
      <Steps />
      <Chosen l={l} />
      <WarningList groups={grouped(l.warnings)} />
      <Fold line="Add a joint, a pit or a column" inside={() => <Add />} />
      <Proposals />
      <Quantities rows={l.quantities ?? []} cost={l.cost} />
    </>
  );
}

function Summary({ l }: { l: Layout }) {
  const sawn = (l.slab.joints ?? []).filter((j) => j.kind === "sawn").reduce((sum, j) => sum + lengthOf(j.path_m), 0);
  const count = (level: string) => (l.warnings ?? []).filter((w) => w.level === level).length,
    must = count("must"),
    should = count("should");
  const places = (n: number) => `in ${n} place${n === 1 ? "" : "s"}`;
  const rules =
    must + should === 0
      ? "Every rule is kept"
      : [must && `Rules that must be kept are not ${places(must)}`, should && `${must ? "those" : "Rules"} that should be are not ${places(should)}`]
          .filter(Boolean)
          .join(", ");
  return (
    <div class="design-sum">
      <p class="lead">
        {(l.panels ?? []).length} panels, {metres(sawn)} to saw. {rules}.
      </p>
      <p aria-live="polite">
        A crack away from the joints:{" "}
        {chance.value ? <ChanceText chance={chance.value.any} /> : <span class="quiet">being worked out</span>}
        {chance.value && <span class="quiet"> by {chance.value.until}</span>}
      </p>
      {chance.value?.note && <p class="quiet small">{chance.value.note}</p>}
    </div>
  );
}

function Steps() {
  return (
    <div class="design-keys" role="group" aria-label="Steps">
      <button onClick={undo} disabled={!undoes.value}>
        Undo{undoes.value && <span class="unseen-word">: {undoes.value}</span>}
      </button>
      <button onClick={redo} disabled={!redoes.value}>
        Do again{redoes.value && <span class="unseen-word">: {redoes.value}</span>}
      </button>
      <button onClick={startAgain}>Back to the job's joints</button>
      <button onClick={() => void save()} disabled={busy.value !== ""}>
        Save to the job
      </button>
      <p class="quiet small">
        {stepsBack.value === 0 ? "Nothing changed yet." : `${stepsBack.value} step${stepsBack.value === 1 ? "" : "s"} can be undone, also after a reload.`}
      </p>
    </div>
  );
}

// useUndoKeys: control or command with z undoes, with shift it does again.
function useUndoKeys() {
  useEffect(() => {
    const key = (e: KeyboardEvent) => {
      if (!(e.ctrlKey || e.metaKey) || e.key.toLowerCase() !== "z") return;
      if ((e.target as Element).closest("input")) return;
      e.preventDefault();
      if (e.shiftKey) redo();
      else undo();
    };
    document.addEventListener("keydown", key);
    return () => document.removeEventListener("keydown", key);
  }, []);
}

// WarningList says each rule once, with every place where it is not kept.
function WarningList({ groups }: { groups: Group[] }) {
  if (groups.length === 0) return null;
  return (
    <section>
      <h2>Rules not kept</h2>
      <ol class="warning-list">
        {groups.map((g) => (
          <li key={g.code}>
            <p>
              <strong>{LEVELS[g.level] ?? g.level}:</strong> {placesIn(g)}
            </p>
            <p class="quiet small">
              {sentence(g.rule)} {g.source}.
            </p>
            <Places all={alike(g.all)} />
          </li>
        ))}
      </ol>
    </section>
  );
}

type Alike = { w: Warning; times: number };

// alike puts together places that the same words are said of.
function alike(all: Warning[]): Alike[] {
  const out: Alike[] = [];
  for (const w of all) {
    const same = out.find((a) => a.w.words === w.words);
    if (same) same.times++;
    else out.push({ w, times: 1 });
  }
  return out;
}

function Places({ all }: { all: Alike[] }) {
  const list = (some: Alike[]) => (
    <ul class="places">
      {some.map((a) => (
        <Place key={a.w.words} {...a} />
      ))}
    </ul>
  );
  return (
    <>
      {list(all.slice(0, SHOWN))}
      {all.length > SHOWN && <Fold line={`${all.length - SHOWN} more`} inside={() => list(all.slice(SHOWN))} />}
    </>
  );
}

const SHOWN = 3; // places of one rule shown before the rest is folded
const LEVELS: Record<string, string> = { must: "Must", should: "Should", note: "To know" };

const placesIn = (g: Group) => `${g.all.length} place${g.all.length === 1 ? "" : "s"}.`;
const sentence = (s: string) => s.charAt(0).toUpperCase() + s.slice(1) + (s.endsWith(".") ? "" : ".");

function Place({ w, times }: Alike) {
  const thing = thingOf(w);
  return (
    <li>
      <span>
        {w.words}
        {times > 1 && ` (${times} places)`}
      </span>
      <span class="design-keys">
        {w.mend && <button onClick={() => put(`Mended: ${w.mend!.words}`, w.mend!.slab)}>{w.mend.words}</button>}
        {!w.mend && w.level !== "note" && <span class="quiet small">No one change mends this: move a joint, or take a plan proposed below.</span>}
        {thing && (
          <button onClick={() => (chosen.value = thing)}>
            Choose {thing.id}
          </button>
        )}
      </span>
    </li>
  );
}

function thingOf(w: Warning): { kind: "joint" | "panel" | "fixture"; id: string } | undefined {
  if (w.joint) return { kind: "joint", id: w.joint };
  if (w.fixture) return { kind: "fixture", id: w.fixture };
  return w.panel ? { kind: "panel", id: w.panel } : undefined;
}

// Chosen is what can be done to the thing chosen on the plan.
function Chosen({ l }: { l: Layout }) {
  const c = chosen.value;
  const joint = c?.kind === "joint" ? l.slab.joints?.find((j) => j.id === c.id) : undefined;
  const fixture = c?.kind === "fixture" ? l.slab.fixtures?.find((f) => f.id === c.id) : undefined;
  const panel = c?.kind === "panel" ? l.panels?.find((p) => p.id === c.id) : undefined;
  return (
    <section class="design-chosen">
      {joint ? (
        <JointKeys joint={joint} />
      ) : fixture ? (
        <FixtureKeys f={fixture} />
      ) : panel ? (
        <PanelKeys p={panel} />
      ) : (
        <>
          <label for="choose-joint">Choose a joint</label>
          <Chooser l={l} />
        </>
      )}
      {c && <button onClick={() => (chosen.value = null)}>Choose nothing</button>}
    </section>
  );
}

function Chooser({ l }: { l: Layout }) {
  return (
    <select
      id="choose-joint"
      value=""
      onChange={(e) => {
        const [kind, id] = e.currentTarget.value.split(/:(.*)/s);
        chosen.value = id ? ({ kind, id } as NonNullable<typeof chosen.value>) : null;
      }}
    >
      <option value="">On the plan, or here</option>
      {(l.slab.joints ?? []).map((j) => (
        <option value={`joint:${j.id}`}>{`${jointName(j.id)}, ${j.kind}`}</option>
      ))}
      {(l.slab.fixtures ?? [])
        .filter((f) => f.opening)
        .map((f) => (
          <option value={`fixture:${f.id}`}>{f.name || f.id}</option>
        ))}
      {(l.panels ?? []).map((p) => (
        <option value={`panel:${p.id}`}>Panel {p.id}</option>
      ))}
    </select>
  );
}

// place is where a straight joint stands: its distance from the origin, square to itself.
function place(joint: Joint): number {
  const n = acrossOf(joint),
    a = joint.path_m[0];
  const d = a[0] * n[0] + a[1] * n[1];
  return n[0] + n[1] < 0 ? -d : d;
}

function JointKeys({ joint }: { joint: Joint }) {
  const thing = { kind: "joint" as const, id: joint.id };
  let n = acrossOf(joint);
  if (n[0] + n[1] < 0) n = [-n[0], -n[1]];
  const here = place(joint);
  const move = (away: number) => {
    const by: Point = [n[0] * away, n[1] * away];
    void edit(movedWords(thing, by), moveOf(thing, by));
  };
  const more = Math.abs(n[0]) > Math.abs(n[1]) ? "Right" : "Up",
    less = more === "Right" ? "Left" : "Down";
  return (
    <>
      <h2>{jointName(joint.id)}</h2>
      <p>
        {joint.kind}
        {joint.transfer && `, ${joint.transfer.value}`}, {metres(lengthOf(joint.path_m))} long, from {at(joint.path_m[0])} to{" "}
        {at(joint.path_m[joint.path_m.length - 1])}.
      </p>
      <div class="design-keys">
        <button onClick={() => move(-0.5)}>{less} 500</button>
        <button onClick={() => move(-0.05)}>{less} 50</button>
        <button onClick={() => move(0.05)}>{more} 50</button>
        <button onClick={() => move(0.5)}>{more} 500</button>
        <button onClick={() => void edit(`${jointName(joint.id)} removed`, { do: "remove joint", id: joint.id })}>Remove</button>
      </div>
      <NumberForm
        key={joint.id + here}
        label="Distance from the setting-out point, m"
        fields={[["place", fixed(here, 3).replace("\u2212", "-")]]}
        button="Move it there"
        done={([d]) => move(d - here)}
      />
    </>
  );
}

function FixtureKeys({ f }: { f: Fixture }) {
  const thing = { kind: "fixture" as const, id: f.id };
  return (
    <>
      <h2>{f.name || f.id}</h2>
      <p>
        {f.kind}, isolated: {f.isolated?.value ?? "not known"}.
      </p>
      <NumberForm
        key={f.id}
        label="Move by, m (right, up)"
        fields={[
          ["right", "0"],
          ["up", "0"],
        ]}
        button="Move it"
        done={([x, y]) => void edit(movedWords(thing, [x, y]), moveOf(thing, [x, y]))}
      />
      <button onClick={() => void edit(`${f.name || f.id} removed`, { do: "remove fixture", id: f.id })}>Remove</button>
    </>
  );
}

function PanelKeys({ p }: { p: Panel }) {
  const chance = panelChance(p.id);
  return (
    <>
      <h2>Panel {p.id}</h2>
      <p>
        {metres(p.length_m)} by {metres(p.width_m)}, {withUnit(figure(p.area_m2), "m2")}, sides {fixed(p.aspect, 2)} to 1.
        {chance !== undefined && ` It cracks away from its joints in ${oneIn(chance)}.`}
      </p>
      <div class="design-keys">
        <button onClick={() => void edit(`Panel ${p.id} halved`, { do: "halve panel", id: p.id, across: "long" })}>
          Saw across the long side
        </button>
        <button onClick={() => void edit(`Panel ${p.id} halved`, { do: "halve panel", id: p.id, across: "short" })}>
          Saw across the short side
        </button>
      </div>
    </>
  );
}

type Field = [name: string, first: string];

// NumberForm takes numbers typed with a point or a comma; what is no number is said, and kept.
function NumberForm(props: { label: string; fields: Field[]; button: string; done: (values: number[]) => void }) {
  const { label, fields, button, done } = props;
  const [typed, setTyped] = useState(fields.map((f) => f[1]));
  const [bad, setBad] = useState("");
  const go = (e: Event) => {
    e.preventDefault();
    const values = typed.map((t) => (t.trim() === "" ? NaN : Number(t.trim().replace(",", ".").replace("\u2212", "-"))));
    const wrong = values.findIndex((v) => !Number.isFinite(v));
    setBad(wrong < 0 ? "" : `“${typed[wrong]}” is not a number of metres; write it as 4.5`);
    if (wrong < 0) done(values);
  };
  return (
    <form class="numbers" onSubmit={go}>
      <fieldset>
        <legend>{label}</legend>
        {fields.map(([name], i) => (
          <label key={name}>
            <span class={fields.length === 1 ? "unseen-word" : ""}>{name}</span>
            <input
              inputMode="decimal"
              autocomplete="off"
              value={typed[i]}
              aria-invalid={bad !== ""}
              onInput={(e) => setTyped(typed.map((t, k) => (k === i ? e.currentTarget.value : t)))}
            />
          </label>
        ))}
        <button type="submit">{button}</button>
      </fieldset>
      {bad && (
        <p class="note" role="alert">
          {bad}
        </p>
      )}
    </form>
  );
}

function Add() {
  const [kind, setKind] = useState("sawn");
  return (
    <>
      <label class="choice-of">
        <span>Kind of joint</span>
        <select value={kind} onChange={(e) => setKind(e.currentTarget.value)}>
          <option>sawn</option>
          <option>formed</option>
          <option>isolation</option>
        </select>
      </label>
      <TapKey words="Tap both ends on the plan" what={{ add: "joint", kind }} />
      <NumberForm
        label="A joint from a point to a point, m"
        fields={[
          ["from x", ""],
          ["from y", ""],
          ["to x", ""],
          ["to y", ""],
        ]}
        button="Add the joint"
        done={([x0, y0, x1, y1]) =>
          void edit(`Joint added from ${at([x0, y0])} to ${at([x1, y1])}`, { do: "add joint", from_m: [x0, y0], to_m: [x1, y1], kind })
        }
      />
      {(["pit", "column"] as const).map((what) => (
        <TapKey key={"tap " + what} words={`Tap the middle of a ${what}`} what={{ add: what, size: what === "pit" ? [1.2, 1.2] : [0.4, 0.4] }} />
      ))}
      {(["pit", "column"] as const).map((what) => (
        <NumberForm
          key={what}
          label={`A ${what}: its middle and its sides, m`}
          fields={[
            ["middle x", ""],
            ["middle y", ""],
            ["wide", what === "pit" ? "1.2" : "0.4"],
            ["deep", what === "pit" ? "1.2" : "0.4"],
          ]}
          button={`Add the ${what}`}
          done={([x, y, w, h]) =>
            void edit(`A ${what} added at ${at([x, y])}`, {
              do: what === "pit" ? "add pit" : "add column",
              at_m: [x, y],
              size_m: [w, h],
            })
          }
        />
      ))}
    </>
  );
}

function TapKey({ words, what }: { words: string; what: Tapping }) {
  return <button onClick={() => onPlan(() => (tapping.value = what))}>{words}</button>;
}

const amountOf = (l: Layout, what: string) => {
  const row = (l.quantities ?? []).find((q) => q.what.startsWith(what));
  return row ? withUnit(figure(row.amount), row.unit) : "none";
};

function Proposals() {
  const d = design.value;
  return (
    <section>
      <h2>Joint plans proposed</h2>
      <div class="design-keys">
        <button onClick={() => void propose()} disabled={busy.value !== ""}>
          Propose joint plans
        </button>
      </div>
      <p role="status">{busy.value && `${busy.value} …`}</p>
      {d && (
        <>
          <p>
            Joints at most {metres(d.spacing.limit_m)} apart: {d.spacing.why} Curl and base friction allow{" "}
            {d.spacing.model_m === undefined ? "any length" : metres(d.spacing.model_m)}; rule of thumb {metres(d.spacing.rule_m)}; usual cap{" "}
            {metres(d.spacing.cap_m)}.
          </p>
          <Table
            caption="Joint plans side by side"
            hideCaption
            head={["Plan", "Panels", "Sawn", "Dowels", "Rules not kept", "Cracks off the joints", "Cost", "Take it"]}
            rows={[d.drawn, ...(d.proposed ?? [])].map((l) => [
              l.name,
              (l.panels ?? []).length,
              amountOf(l, "sawn"),
              amountOf(l, "dowel"),
              (l.warnings ?? []).filter((w) => w.level !== "note").length,
              l.chance ? <ChanceText chance={l.chance.any} /> : "not worked out",
              l.cost ?? "no rates given",
              <button onClick={() => put(`Taken: ${l.name}`, l.slab)}>
                Take<span class="unseen-word"> {l.name}</span>
              </button>,
            ])}
          />
          {(d.proposed ?? []).map((l) => (
            <Fold key={l.name} line={`More of “${l.name}”`} inside={() => <Proposal l={l} />} />
          ))}
        </>
      )}
    </section>
  );
}

// Proposal is why a plan is as it is, what it does not keep, and its pours.
function Proposal({ l }: { l: Layout }) {
  const groups = grouped(l.warnings);
  return (
    <>
      <p>{l.why}</p>
      {groups.length === 0 && <p>Every rule is kept.</p>}
      {groups.length > 0 && (
        <ul class="plain-list">
          {groups.map((g) => (
            <li key={g.code}>
              <strong>{LEVELS[g.level] ?? g.level}:</strong> {alike(g.all)
                .map((a) => a.w.words)
                .join(" ")}{" "}
              <span class="quiet small">
                {sentence(g.rule)} {g.source}.
              </span>
            </li>
          ))}
        </ul>
      )}
      <p>{l.cost ? `Cost: ${l.cost}.` : "No rates are given in the job, so no cost is."}</p>
      {l.strips?.length ? (
        <>
          <ul class="plain-list">
            {l.strips.map((s) => (
              <li key={s.id}>
                Strip {s.id}, placed {s.first ? "first" : "later"}: {(s.panels ?? []).length} panels, {metres(s.length_m)} by {metres(s.width_m)}.
              </li>
            ))}
          </ul>
          <button onClick={() => onPlan(() => (stripsOf.value = l))}>
            Draw its pour strips<span class="unseen-word"> ({l.name})</span>
          </button>
        </>
      ) : null}
    </>
  );
}

// onPlan does something to the plan and brings it into view, which on a phone lies above.
function onPlan(what: () => void) {
  what();
  document.querySelector(".design-plan")?.scrollIntoView({ block: "start" });
}

function Quantities({ rows, cost }: { rows: QuantityRow[]; cost?: string }) {
  if (rows.length === 0) return null;
  return (
    <Fold
      line="Quantities"
      inside={() => (
        <>
          <Table
            caption="Quantities of the joints as drawn now"
            hideCaption
            shape="numbers"
            head={["What", "Amount"]}
            rows={rows.map((q) => [q.what, withUnit(figure(q.amount), q.unit)])}
          />
          <p>{cost ?? "No rates are given in the job, so no cost is."}</p>
        </>
      )}
    />
  );
}
