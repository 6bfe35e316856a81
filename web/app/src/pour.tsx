// One pour day, hour by hour: drying, temperature, strength used, cuts, trucks.

import { clock, content, spanOf, to, wholeSpan } from "./state";
import type { PourDay } from "./content";
import { after, fixed, inWords, mm, moment, percent } from "./format";
import { Chart, type Moment, type Series } from "./chart";
import { Depth } from "./depth";
import { Fold } from "./fold";
import { Measured, Moves } from "./moves";
import { PanelsPart } from "./panel";
import { marksOf, Plastic, plannedLimit } from "./plastic";
import { MARK_WORDS } from "./ruler";
import { Table } from "./table";
import { WhatIfs } from "./what-ifs";
import { windowSentence } from "./window-words";
import { WorkingFold, WorkingLinks } from "./working";

export function Pours() {
  const pours = content.value!.pours ?? [];
  return (
    <>
      <h1>Pour days</h1>
      {pours.length === 0 && (
        <p>No pour is written down. With the date, the first truck's time and the mix, the day can be replayed hour by hour.</p>
      )}
      <ul class="rows">
        {pours.map((p) => (
          <li key={p.id}>
            <a href={to("pour", p.id)}>
              <span>
                <strong>{p.name}</strong> {clock.value.on(p.start)}, from {clock.value.hour(p.start)}
              </span>
              <span class="quiet">{(p.sentences ?? [])[0]}</span>
            </a>
          </li>
        ))}
      </ul>
    </>
  );
}

export function PourScreen({ id }: { id: string }) {
  const pour = (content.value!.pours ?? []).find((p) => p.id === id);
  if (!pour)
    return (
      <>
        <h1>Pour day</h1>
        <p>
          There is no pour {id}. <a href={to("pours")}>See all pour days</a>
        </p>
      </>
    );
  return (
    <>
      <p>
        <a href={to("pours")}>All pour days</a>
      </p>
      <h1>{pour.name}</h1>
      <p class="quiet">
        {clock.value.on(pour.start)}, placed {clock.value.hour(pour.start)}
        {pour.end && ` to ${clock.value.hour(pour.end)}`}. Clock of {clock.value.zone.replace(/_/g, " ")}.
      </p>
      {(pour.sentences ?? []).map((s) => (
        <p key={s}>{s}</p>
      ))}
      {pour.not_given?.length ? (
        <div class="note">
          <h2>Not given</h2>
          <ul>
            {pour.not_given.map((n) => (
              <li key={n}>{n}</li>
            ))}
          </ul>
        </div>
      ) : null}
      <Parts id={pour.id} />
      <CutWindowPart pour={pour} />
      <PanelsPart pour={pour} />
      <WhatIfs pour={pour} />
      <Moves pour={pour} />
      {pour.measured && <Measured fit={pour.measured} besides={pour.window.working} />}
      <Drying pour={pour} />
      <Plastic pour={pour} />
      <Share pour={pour} />
      <Depth pour={pour} />
      <Temperature pour={pour} />
      <Trucks pour={pour} />
      <Events pour={pour} />
      {pour.workings?.length ? (
        <section>
          <h2>Workings of this day</h2>
          <WorkingLinks headed ids={pour.workings} />
        </section>
      ) : null}
    </>
  );
}

// Parts goes to a part of the day; the list is read off the headings when it is opened.
function Parts({ id }: { id: string }) {
  const go = (head: HTMLElement) => {
    head.tabIndex = -1;
    head.focus({ preventScroll: true });
    head.scrollIntoView({ block: "start" });
  };
  return (
    <Fold
      key={id}
      line="Parts of this day"
      inside={() => (
        <ul class="parts">
          {[...document.querySelectorAll<HTMLElement>("#said section > h2")].map((head) => (
            <li key={head.innerText}>
              <button class="plain" onClick={() => go(head)}>
                {head.innerText}
              </button>
            </li>
          ))}
        </ul>
      )}
    />
  );
}

function CutWindowPart({ pour }: { pour: PourDay }) {
  const cuts = pour.cuts ?? [];
  return (
    <section>
      <h2>Cut window</h2>
      <p>
        {windowSentence(pour.window)} {pour.window.why}
      </p>
      <WorkingFold id={pour.window.working} />
      {pour.early_entry_window && (
        <>
          <p>
            {windowSentence(pour.early_entry_window)} {pour.early_entry_window.why}
          </p>
          {pour.early_entry_window.working !== pour.window.working && <WorkingFold id={pour.early_entry_window.working} />}
        </>
      )}
      {cuts.length > 0 && (
        <Table
          caption="Joints as sawn"
          head={[
            "Joint",
            "Sawn",
            "After placing",
            "State",
            "Cracked before the cut",
            "Depth, mm",
            "Depth of slab",
            "Edge",
            "Opened",
          ]}
          shape="numbers"
          rows={cuts.map((c) => [
            <a href={to("joint", c.joint)}>{c.joint}</a>,
            clock.value.at(c.at),
            after(c.hours_after_placing).replace(" after placing", ""),
            c.state,
            c.chance_cracked_before
              ? inWords(c.chance_cracked_before)
              : "not given",
            c.depth_m === undefined ? "not known" : mm(c.depth_m).replace(/\s*mm$/, ""),
            c.depth_share === undefined ? "not known" : percent(c.depth_share),
            c.edge ?? "not known",
            c.opened ?? "not known",
          ])}
        />
      )}
    </section>
  );
}

const stretchesOf = (pour: PourDay, to: number) => {
  const opens = moment(pour.window.opens),
    closes = moment(pour.window.closes) ?? to;
  return opens === undefined ? [] : [{ from: opens, to: Math.min(closes, to), name: "cut window" }];
};

// curing is when covers went on and what they were.
function curing(pour: PourDay): Moment[] {
  return (pour.events ?? []).filter((e) => e.kind === "cure").map((e) => ({ at: moment(e.at)!, name: e.what.slice(0, 28) }));
}

// finishing is the stretch of the day in which the surface was being worked.
function finishing(pour: PourDay) {
  const times = (pour.events ?? []).filter((e) => e.kind === "finish").map((e) => moment(e.at)!);
  return times.length < 2 ? [] : [{ from: Math.min(...times), to: Math.max(...times), name: "finishing" }];
}

function Drying({ pour }: { pour: PourDay }) {
  const rows = pour.drying ?? [];
  if (rows.length === 0)
    return (
      <section>
        <h2>Drying</h2>
        <p>Drying is not given: no weather by the hour is known for this day.</p>
      </section>
    );
  const pick = (get: (h: (typeof rows)[number]) => number): [number, number][] => rows.map((h) => [moment(h.time)!, get(h)]);
  const series: Series[] = [
    { name: "Uno", strong: true, points: pick((h) => h.uno) },
    { name: "Uno, US form", dash: "7 4", points: pick((h) => h.uno_us) },
    { name: "Menzel", dash: "2 3", points: pick((h) => h.menzel) },
  ];
  return (
    <section>
      <h2>Drying of the fresh surface</h2>
      <p class="small quiet">{pour.weather}</p>
      <Chart
        title="Drying rate hour by hour in three published forms"
        unit="kg/m²/h"
        span={spanOf(pour)}
        series={series}
        from0
        decimals={2}
        stretches={finishing(pour)}
        moments={marksOf(pour).filter((m) => m.name === "bleed water gone")}
        limits={
          pour.drying_limit_kg_m2_h === undefined
            ? [
                { value: 1, name: "1.0: precautions" },
                { value: 0.5, name: "0.5: if it bleeds little" },
              ]
            : plannedLimit(pour)
        }
        band={{
          name: "least to most of the three",
          points: rows.map((h) => [moment(h.time)!, Math.min(h.uno, h.uno_us, h.menzel), Math.max(h.uno, h.uno_us, h.menzel)]),
        }}
      />
      <p>
        {pour.film_gone
          ? `The bleed water was used up at ${clock.value.at(pour.film_gone)}.`
          : "The bleed water lasted through the time looked at, or is not known."}
      </p>
      <Fold
        line="Drying in numbers"
        inside={() => (
          <Table
            caption={`Drying, ${pour.name}`}
            shape="numbers"
            head={[
              "Time",
              "Air, °C",
              "Humidity, %",
              "Wind, m/s",
              "Sun, W/m²",
              "Concrete, °C",
              "Uno, kg/m²/h",
              "Uno US",
              "Menzel",
            ]}
            rows={rows.map((h) => [
              clock.value.at(h.time),
              fixed(h.air_C, 1),
              fixed(h.humidity * 100, 0),
              fixed(h.wind_m_s, 1),
              fixed(h.sun_W_m2, 0),
              fixed(h.concrete_C, 1),
              fixed(h.uno, 2),
              fixed(h.uno_us, 2),
              fixed(h.menzel, 2),
            ])}
          />
        )}
      />
    </section>
  );
}

function Share({ pour }: { pour: PourDay }) {
  const rows = pour.column ?? [];
  if (rows.length === 0) return null;
  const span = wholeSpan(pour),
    at = (h: (typeof rows)[number]) => moment(h.time)!;
  return (
    <section>
      <h2>Share of tensile strength used, uncut</h2>
      <p>The line is the middle of the runs, the band their low and high. At 1.0 the slab cracks where nothing has been cut.</p>
      <Chart
        title="Share of tensile strength used by the uncut slab"
        unit="share"
        span={span}
        decimals={2}
        from0
        stretches={stretchesOf(pour, span.to)}
        moments={marksOf(pour).filter((m) => m.name !== "bleed water gone")}
        series={[{ name: "median", strong: true, points: rows.map((h) => [at(h), h.share]) }]}
        limits={[{ value: 1, name: "1.0: cracks" }]}
        band={{ name: "low to high", points: rows.map((h) => [at(h), h.share_low, h.share_high]) }}
      />
      <p class="small">
        Initial set {clock.value.at(pour.initial_set)}, final set {clock.value.at(pour.final_set)}.
      </p>
      <Fold
        line="Strength and share in numbers"
        inside={() => (
          <Table
            caption={`Strength, ${pour.name}`}
            shape="numbers"
            head={["Time", "After placing, h", "Strength, MPa", "Tensile, MPa", "Modulus, GPa", "Share", "Low", "High"]}
            rows={rows.map((h) => [
              clock.value.at(h.time),
              fixed(h.hours_after_placing, 1),
              fixed(h.strength_MPa, 1),
              fixed(h.tensile_MPa, 2),
              fixed(h.modulus_MPa / 1000, 1),
              fixed(h.share, 2),
              fixed(h.share_low, 2),
              fixed(h.share_high, 2),
            ])}
          />
        )}
      />
    </section>
  );
}

function Temperature({ pour }: { pour: PourDay }) {
  const rows = pour.column ?? [];
  if (rows.length === 0) return null;
  const pick = (get: (h: (typeof rows)[number]) => number): [number, number][] => rows.map((h) => [moment(h.time)!, get(h)]);
  return (
    <section>
      <h2>Temperature through the slab</h2>
      <Chart
        title="Temperature at the top, middle and bottom"
        unit="°C"
        span={wholeSpan(pour)}
        series={[
          { name: "top", strong: true, points: pick((h) => h.top_C) },
          { name: "middle", dash: "7 4", points: pick((h) => h.middle_C) },
          { name: "bottom", dash: "2 3", points: pick((h) => h.bottom_C) },
        ]}
        band={{
          name: "coldest to warmest",
          points: rows.map((h) => [
            moment(h.time)!,
            Math.min(h.top_C, h.middle_C, h.bottom_C),
            Math.max(h.top_C, h.middle_C, h.bottom_C),
          ]),
        }}
        moments={curing(pour)}
      />
      <Fold
        line="Temperature in numbers"
        inside={() => (
          <Table
            caption={`Temperature, ${pour.name}`}
            shape="numbers"
            head={["Time", "After placing, h", "Top, °C", "Middle, °C", "Bottom, °C", "Top less bottom, K"]}
            rows={rows.map((h) => [
              clock.value.at(h.time),
              fixed(h.hours_after_placing, 1),
              fixed(h.top_C, 1),
              fixed(h.middle_C, 1),
              fixed(h.bottom_C, 1),
              fixed(h.top_C - h.bottom_C, 1),
            ])}
          />
        )}
      />
    </section>
  );
}

const known = (value: number | undefined, text: (v: number) => string) => (value === undefined ? "not known" : text(value));

function Trucks({ pour }: { pour: PourDay }) {
  const rows = pour.trucks ?? [];
  if (rows.length === 0) return null;
  return (
    <section>
      <h2>Trucks</h2>
      <Table
        caption={`Trucks, ${pour.name}`}
        hideCaption
        shape="numbers"
        head={["Ticket", "Started", "Age, min", "Load, m³", "Slump, mm", "Concrete, °C", "Water added, L/m³", "Asked by", "Note"]}
        rows={rows.map((t) => [
          t.ticket,
          t.start ? clock.value.at(t.start) : "not known",
          known(t.age_min, (v) => fixed(v, 0)),
          known(t.volume_m3, (v) => fixed(v, 1)),
          known(t.slump_m, (v) => fixed(v * 1000, 0)),
          known(t.concrete_C, (v) => fixed(v, 1)),
          known(t.water_added_L_m3, (v) => fixed(v, 0)),
          t.asked_by || "",
          t.note || "",
        ])}
      />
    </section>
  );
}

function Events({ pour }: { pour: PourDay }) {
  const rows = pour.events ?? [];
  return (
    <section>
      <h2>Marks on the ruler</h2>
      <p class="small quiet">{MARK_WORDS.map(([mark, word]) => `${mark} ${word}`).join(" · ")}</p>
      <Table
        caption={`Events, ${pour.name}`}
        hideCaption
        shape="first-whole"
        head={["Time", "After placing", "What"]}
        rows={rows.map((e) => [clock.value.at(e.at), after((moment(e.at)! - moment(pour.start)!) / 3600e3).replace(" after placing", ""), e.what])}
      />
    </section>
  );
}
