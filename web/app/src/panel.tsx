// Panels: the table of a pour's panels, and one panel with its window, chances and cuts.

import { clock, content, hour, to } from "./state";
import type { CutChance, PanelWindow, PourDay } from "./content";
import { after, fixed, inWords, metres, moment, oneIn, withUnit } from "./format";
import { inside } from "./shape";
import { Chart, type Moment } from "./chart";
import { factsOf, stateSentence, windowOf, wordAt, type PanelFacts } from "./panel-state";
import { Fold } from "./fold";
import { Table } from "./table";
import { Ranged, spanAround, Windows } from "./windows";
import { windowSentence } from "./window-words";
import { WorkingFold } from "./working";

const cutsOf = (f: PanelFacts | undefined) => (f?.joints ?? []).filter((j) => j.cut !== undefined);

// PanelsPart is the pour's panels, each on its own clock, in the order to cut.
export function PanelsPart({ pour }: { pour: PourDay }) {
  const rows = pour.panels ?? [];
  if (rows.length === 0) return null;
  const bars = rows.map((w) => ({
    name: w.panel,
    window: w.wet,
    placed: moment(w.placed),
    cuts: cutsOf(factsOf(w.panel)).map((j) => j.cut!),
  }));
  return (
    <section>
      <h2>Panel by panel</h2>
      <p>Each panel has its own clock, from the time concrete came to it. They stand in the order in which they are best cut.</p>
      {hour.value !== null && (
        <p>
          At {clock.value.at(hour.value)}: {stateSentence(hour.value, pour.id)}.
        </p>
      )}
      <Windows title={`Cut windows of the panels of ${pour.name}, wet saw`} span={spanAround(bars)} rows={bars} />
      <PanelTable pour={pour} rows={rows} />
      {rows.some((w) => w.early_entry?.opens) && (
        <Fold
          line="The same with an early-entry saw"
          inside={() => (
            <Table
              caption={`Early-entry saw, ${pour.name}`}
              hideCaption
              shape="numbers"
              head={["Panel", "Opens", "Best", "Closes"]}
              rows={rows.map((w) => [<PanelLink id={w.panel} />, ...windowCells(w.early_entry)])}
            />
          )}
        />
      )}
    </section>
  );
}

const PanelLink = ({ id }: { id: string }) => <a href={to("panel", id)}>{id}</a>;

const windowCells = (w: PanelWindow["wet"]) => [
  <Ranged at={w.opens} low={w.opens_low} high={w.opens_high} none="does not open" />,
  w.best ? clock.value.at(w.best) : "none",
  <Ranged at={w.closes} low={w.closes_low} high={w.closes_high} none={w.opens ? "stays open" : "–"} />,
];

function PanelTable({ pour, rows }: { pour: PourDay; rows: PanelWindow[] }) {
  const now = hour.value;
  return (
    <Table
      caption={`Panels of ${pour.name}, wet saw`}
      shape="numbers"
      head={["Panel", ...(now === null ? [] : ["State then"]), "Order", "Opens", "Best", "Closes", "Cut at", "Cracked by then", "Placed"]}
      rows={rows.map((w) => {
        const f = factsOf(w.panel),
          cuts = cutsOf(f);
        return [
          <PanelLink id={w.panel} />,
          ...(now === null ? [] : [f ? wordAt(f, now) || "not known" : "not known"]),
          w.order,
          ...windowCells(w.wet),
          <Lines of={cuts.length ? cuts.map((j) => `${j.joint.id} ${clock.value.at(j.cut)}`) : ["not known"]} />,
          <Lines of={cuts.length ? cuts.map((j) => chanceThen(w.curve, j.cut!, "cracked")) : ["–"]} />,
          clock.value.at(w.placed),
        ];
      })}
    />
  );
}

const Lines = ({ of }: { of: string[] }) => (
  <>
    {of.map((text, i) => (
      <span key={i} class="cell-line">
        {text}
      </span>
    ))}
  </>
);

// chanceThen reads a chance off the curve at a time, between its points; beyond its ends it is not known.
function chanceThen(curve: CutChance[] | null, time: number, which: "ready" | "cracked"): string {
  const points = curve ?? [];
  for (let i = 0; i + 1 < points.length; i++) {
    const a = moment(points[i].at)!,
      b = moment(points[i + 1].at)!;
    if (time >= a && time <= b) {
      const t = (time - a) / (b - a || 1);
      return oneIn(points[i][which] + t * (points[i + 1][which] - points[i][which]));
    }
  }
  return "not looked at";
}

export function PanelScreen({ id }: { id: string }) {
  const f = factsOf(id);
  if (!f)
    return (
      <>
        <h1>Panel</h1>
        <p>
          There is no panel {id}. <a href={to("pours")}>See all pour days</a>
        </p>
      </>
    );
  const { panel, pour, own } = f;
  const list = [...(pour?.panels ?? [])].sort((a, b) => a.order - b.order),
    index = list.findIndex((w) => w.panel === id);
  const before = index > 0 ? list[index - 1] : undefined,
    next = index >= 0 ? list[index + 1] : undefined;
  const findings = (content.value!.findings ?? []).filter((s) => inside(panel.ring_m, s.at_m));
  const word = hour.value === null ? "" : wordAt(f, hour.value);
  const window = windowOf(f);
  return (
    <>
      {list.length > 1 && (
        <nav class="steps" aria-label="Panels in the order to cut">
          {before ? <a href={to("panel", before.panel)}>Panel {before.panel} before</a> : <span />}
          {next && <a href={to("panel", next.panel)}>Panel {next.panel} next</a>}
        </nav>
      )}
      <h1>
        Panel {panel.id} {word && <span class="state">{word}</span>}
      </h1>
      <p class="quiet">
        {metres(panel.length_m)} by {metres(panel.width_m)}, {withUnit(fixed(panel.area_m2, 1), "m2")}
        {pour && (
          <>
            {" "}
            of <a href={to("pour", pour.id)}>{pour.name}</a>
          </>
        )}
        .
      </p>
      {own && (
        <p>
          Placed {clock.value.at(own.placed)}; number {own.order} of {list.length} in the order to cut.
        </p>
      )}
      {window && (
        <section>
          <h2>Cut window</h2>
          {!own && <p class="quiet">No window of its own was worked out; this is the window of {pour!.name}.</p>}
          <p>
            {windowSentence(window)} {window.why}
          </p>
          {own?.early_entry?.saw && <p>{windowSentence(own.early_entry)}</p>}
          {own && <Chances f={f} own={own} />}
          <WorkingFold id={window.working} />
        </section>
      )}
      <CutsHere f={f} />
      {findings.length > 0 && (
        <p>
          <a class="onward" href={to("findings", panel.id)}>
            {findings.length} {findings.length === 1 ? "finding" : "findings"} in this panel
          </a>
        </p>
      )}
    </>
  );
}

// Chances sets the edge being ready against a crack elsewhere, by the time of the cut.
function Chances({ f, own }: { f: PanelFacts; own: PanelWindow }) {
  const w = own.wet,
    curve = own.curve ?? [];
  if (curve.length < 2) return null;
  const cuts = cutsOf(f);
  const bar = spanAround([{ name: "", window: w, placed: moment(own.placed), cuts: cuts.map((j) => j.cut!) }]);
  const first = moment(curve[0].at)!,
    last = moment(curve[curve.length - 1].at)!;
  const span = { from: Math.min(bar.from, first), to: Math.min(Math.max(bar.to + 2 * 3600e3, first + 12 * 3600e3), Math.max(last, bar.to)) };
  const opens = moment(w.opens),
    closes = moment(w.closes),
    range = (low?: string, high?: string) => {
      const from = moment(low),
        to = moment(high);
      return from === undefined || to === undefined ? [] : [{ from, to, name: "range of an end", soft: true }];
    };
  const moments: Moment[] = [
    ...(w.best ? [{ at: moment(w.best)!, name: "best" }] : []),
    ...cuts.map((j) => ({ at: j.cut!, name: `cut ${j.joint.id}` })),
  ];
  const points = (which: "ready" | "cracked"): [number, number][] => curve.map((p) => [moment(p.at)!, 10 * p[which]]);
  return (
    <>
      <h3>What to expect of a cut, by its time</h3>
      <Chart
        title={`Chance that the edge of panel ${own.panel} is ready, and that the slab has cracked elsewhere before`}
        unit="chances in 10"
        span={span}
        from0
        upTo={10}
        series={[
          { name: "edge ready", strong: true, points: points("ready") },
          { name: "cracked elsewhere", dash: "7 4", points: points("cracked") },
        ]}
        stretches={[
          ...(opens === undefined ? [] : [{ from: opens, to: closes ?? span.to, name: "cut window" }]),
          ...range(w.opens_low, w.opens_high),
          ...range(w.closes_low, w.closes_high),
        ]}
        moments={moments}
      />
      <Fold
        line="Chances in numbers"
        inside={() => (
          <Table
            caption={`Chances by the time of the cut, panel ${own.panel}`}
            shape="numbers"
            head={["Time", "After placing, h", "Edge ready", "Cracked elsewhere"]}
            rows={curve.map((p) => [clock.value.at(p.at), fixed(p.hours_after_placing, 1), oneIn(p.ready), oneIn(p.cracked)])}
          />
        )}
      />
    </>
  );
}

function CutsHere({ f }: { f: PanelFacts }) {
  if (f.joints.length === 0) return <p>No sawn joint runs along its edges.</p>;
  const rows = (f.pour?.cuts ?? []).concat((content.value!.pours ?? []).filter((p) => p !== f.pour).flatMap((p) => p.cuts ?? []));
  return (
    <section>
      <h2>Sawn joints at its edges</h2>
      <Table
        caption={`Joints of panel ${f.panel.id}`}
        hideCaption
        shape="numbers"
        head={["Joint", "Sawn", "After placing", "State", "Edge ready then", "Cracked before the cut"]}
        rows={f.joints.map(({ joint, cut }) => {
          const row = rows.find((r) => r.joint === joint.id);
          return [
            <a href={to("joint", joint.id)}>{joint.id}</a>,
            cut === undefined ? "not known" : clock.value.at(cut),
            cut === undefined || !f.own ? "not known" : after((cut - moment(f.own.placed)!) / 3600e3).replace(" after placing", ""),
            row?.state ?? "not known",
            cut === undefined || !f.own ? "not known" : chanceThen(f.own.curve, cut, "ready"),
            row?.chance_cracked_before
              ? inWords(row.chance_cracked_before)
              : cut === undefined || !f.own
                ? "not known"
                : chanceThen(f.own.curve, cut, "cracked"),
          ];
        })}
      />
    </section>
  );
}
