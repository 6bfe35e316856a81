// The replay: what opened and cracked where and when, and how likely, metre by metre.

import { hour, stage, to } from "./state";
import { eventsBy, eventWhen, frameNow, hoursNow, replay, since, timeOf, when } from "./replay-state";
import type { Replay, ReplayChances, ReplayEvent } from "./replay-content";
import { BentShape } from "./replay-bent";
import { fixed, metres, oneIn, percent, withUnit } from "./format";
import { Table } from "./table";
import { Fold } from "./fold";

export function ReplayScreen() {
  const r = replay.value;
  if (!r && stage.value !== "whole")
    return (
      <>
        <h1>Replay</h1>
        <p>{stage.value === "first" ? "The slab is still being replayed; it is shown here when that is done." : "The replay was stopped."}</p>
      </>
    );
  if (!r)
    return (
      <>
        <h1>Replay</h1>
        <p>
          The slab is not replayed: the clock, the mix, the thickness or the weather of a pour is not known.{" "}
          <a href={to("basis")}>What is missing</a>
        </p>
      </>
    );
  return (
    <>
      <h1>Replay, from the first truck</h1>
      {r.partial && <p class="note">{r.partial}</p>}
      <ul class="plain-list">
        {r.summary.map((s) => (
          <li key={s}>{s}</li>
        ))}
      </ul>
      <Events r={r} />
      <Unmet r={r} />
      <Numbers r={r} />
      <BentShape />
      {r.chances && <Chances c={r.chances} />}
      <p>
        {r.workings.map((w) => (
          <a key={w} href={to("working", w)}>
            Working: what the replay stands on, and its hand checks
          </a>
        ))}
      </p>
    </>
  );
}

function Events({ r }: { r: Replay }) {
  const now = new Set(eventsBy.value);
  return (
    <section>
      <h2>What opens and cracks, in the expected course</h2>
      <ol class="replay-events">
        {r.events.map((e, i) => (
          <li key={i} class={now.has(e) ? "" : "later"}>
            <button class="plain" onClick={() => (hour.value = timeOf(r, e.hours))}>
              {eventWhen(r, e)}
            </button>
            {!now.has(e) && <span class="quiet"> · later than the hour drawn</span>}
            <p>
              <strong>{e.what}</strong> {e.where}. <Seen e={e} />
            </p>
            <Fold line="Why there" inside={() => <Why e={e} />} />
          </li>
        ))}
      </ol>
      {r.events.length === 0 && <p>Nothing opens.</p>}
    </section>
  );
}

function Seen({ e }: { e: ReplayEvent }) {
  const text = e.seen.charAt(0).toUpperCase() + e.seen.slice(1) + ".";
  return e.finding ? <a href={to("finding", e.finding)}>{text}</a> : <span class="quiet">{text}</span>;
}

function Why({ e }: { e: ReplayEvent }) {
  return (
    <p class="small">
      {e.why.charAt(0).toUpperCase() + e.why.slice(1)}. The concrete was {since(e.placed).replace("the first truck", "placing")}. By
      hand, the base alone brings {withUnit(fixed(e.hand_MPa, 2), "MPa")} there{e.hand_why ? `; ${e.hand_why}` : ""}. Opening sets
      free {withUnit(fixed(e.freed_J, 1), "J")} in plan, and tearing takes {withUnit(fixed(e.needed_J, 1), "J")} at once,
      less what curl gives.
    </p>
  );
}

function Unmet({ r }: { r: Replay }) {
  if (!r.unmet.length) return null;
  return (
    <section>
      <h2>Seen, and not in the expected course</h2>
      <ul class="plain-list">
        {r.unmet.map((u) => (
          <li key={u.finding}>
            <a href={to("finding", u.finding)}>{u.finding}</a>: {u.text}
          </li>
        ))}
      </ul>
    </section>
  );
}

// Numbers are what the colours show, as tables.
function Numbers({ r }: { r: Replay }) {
  const frame = frameNow.value;
  if (!frame) return <p class="quiet">At {since(hoursNow.value)} no concrete has set yet.</p>;
  return (
    <section>
      <h2>In numbers, {when(timeOf(r, frame.hours))}</h2>
      <Fold
        line="The most of each panel"
        inside={() => (
          <Table
            caption="The most of each panel at that hour"
            hideCaption
            shape="numbers"
            head={["Panel", "Share of strength", "Tension, MPa", "Lift of edges, mm"]}
            rows={frame.panels.map((p) => [<a href={to("panel", p.panel)}>{p.panel}</a>, percent(p.share), fixed(p.stress_MPa, 2), fixed(p.lift_mm, 1)])}
          />
        )}
      />
      <Fold
        line="How wide each line stands"
        inside={() => (
          <Table
            caption="How wide each line stands at that hour"
            hideCaption
            shape="numbers"
            head={["Line", "Open, m", "Mean, mm", "Widest, mm"]}
            rows={frame.lines.map((l) => [
              l.crack ? `Crack ${l.line}` : <a href={to("joint", l.line)}>{l.line}</a>,
              `${fixed(l.open_m, 1)} of ${fixed(l.length_m, 1)}`,
              fixed(1000 * l.mean_m, 2),
              fixed(1000 * l.widest_m, 2),
            ])}
          />
        )}
      />
    </section>
  );
}

function Chances({ c }: { c: ReplayChances }) {
  return (
    <section>
      <h2>How likely, from {c.members} replays</h2>
      <p>
        A crack outside the joints: {c.cracked === 1 ? "in all of them" : c.cracked === 0 ? "in none of them" : oneIn(c.cracked)}.
        {c.cracked > 0 && ` The first comes ${since(c.first_h[1])} in the middle of them, ${since(c.first_h[0])} to ${since(c.first_h[2])} in 8 of 10.`}
      </p>
      <ChanceJoints c={c} />
      <Fold
        line="Panels: cracks outside the joints"
        inside={() => (
          <Table
            caption="Cracks outside the joints, by panel"
            hideCaption
            head={["Panel", "Likeliest square metre", "Where", "Metres of crack expected", "Cracks seen"]}
            rows={c.panels.map((p) => [
              <a href={to("panel", p.panel)}>{p.panel}</a>,
              percent(p.worst),
              p.where || "–",
              metres(p.metres),
              p.found.length ? p.found.join(", ") : "none",
            ])}
          />
        )}
      />
    </section>
  );
}

// ChanceJoints draws each joint as a row of squares, a metre each, with its numbers.
function ChanceJoints({ c }: { c: ReplayChances }) {
  return (
    <Fold
      line="Joints: chance to have opened, metre by metre"
      open
      inside={() => (
        <Table
          caption="Chance that a joint has opened, per cent, metre by metre from its start"
          hideCaption
          head={["Joint", "Metre by metre, %", "Mean", "Found"]}
          rows={c.joints.map((j) => [
            <a href={to("joint", j.joint)}>{j.joint}</a>,
            perMetre(j.opened, j.step_m)
              .map((v) => fixed(100 * v, 0))
              .join("  "),
            percent(j.mean),
            j.found ?? "",
          ])}
        />
      )}
    />
  );
}

function perMetre(opened: number[], step: number): number[] {
  const n = Math.max(1, Math.round(1 / step)),
    out: number[] = [];
  for (let i = 0; i < opened.length; i += n) {
    const part = opened.slice(i, i + n);
    out.push(part.reduce((a, b) => a + b, 0) / part.length);
  }
  return out;
}
