// What the answers stand on: assumptions, what nobody knows, sources, cautions.

import { content, progress, clock } from "./state";
import { CauseList } from "./cause";
import { fixed, mm, withUnit } from "./format";
import { Hands, Options } from "./finding";
import { Table } from "./table";
import { WorkingFold } from "./working";
import { Facts } from "./facts";

export function Basis() {
  const c = content.value!;
  return (
    <>
      <h1>Basis</h1>
      <section>
        <h2>Assumptions</h2>
        {c.assumptions?.length ? (
          <Table
            caption="Put in without being measured or recorded"
            shape="wide-cells"
            head={["What", "Value", "Known", "Why", "If it is wrong"]}
            rows={c.assumptions.map((a) => [a.what, a.value, a.known, a.why, a.moves])}
          />
        ) : (
          <p>Nothing was assumed.</p>
        )}
      </section>
      <section>
        <h2>Nobody knows</h2>
        {c.missing?.length ? (
          <ul class="missing-list">
            {c.missing.map((m) => (
              <li key={m.field}>
                <strong>{m.what}</strong>, {m.so}. <span class="quiet small">{m.field}</span>
              </li>
            ))}
          </ul>
        ) : (
          <p>No fact is missing.</p>
        )}
      </section>
      <section>
        <h2>Cautions</h2>
        <ul>
          {(c.cautions ?? []).map((t) => (
            <li key={t}>{t}</li>
          ))}
        </ul>
      </section>
      <section>
        <h2>Sources</h2>
        <ul>
          {(c.sources ?? []).map((s) => (
            <li key={s.title}>
              {s.title} <span class="quiet">{s.how}</span>
            </li>
          ))}
        </ul>
      </section>
      <Title />
    </>
  );
}

function Title() {
  const c = content.value!,
    h = c.head;
  const rows: [string, string][] = [
    ["Job", [h.number, h.job].filter(Boolean).join(", ")],
    ["Client", h.client],
    ["Place", h.place],
    ["Slab", h.slab_name || h.slab],
    ["Area", withUnit(fixed(c.plan.area_m2, 0), "m2")],
    ["Looked at", `${clock.value.on(h.looked)}${h.looked_by ? `, ${h.looked_by}` : ""}`],
    ["Author", h.author],
    ["Revision", h.revision],
    ["Made by", `Slabwright ${h.version}`],
    ["Data", h.data_hash],
    ["Seed", String(h.seed)],
  ];
  const papers = progress.value?.papers ?? [];
  return (
    <section>
      <h2>Title block</h2>
      <Facts rows={rows} />
      {papers.length > 0 && (
        <>
          <h2>Papers</h2>
          <ul class="rows">
            {papers.map((p) => (
              <li key={p}>
                <a href={p}>
                  <span>{PAPER[p] ?? p}</span>
                </a>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
const PAPER: Record<string, string> = {
  "report.pdf": "Report, PDF",
  "report.html": "Report, as a page",
  "plan.svg": "Plan, drawing file",
  "api/content": "All of it as JSON",
};

export function SlabScreen() {
  const c = content.value!,
    m = c.movement;
  return (
    <>
      <h1>The slab as a whole</h1>
      <p class="lead">{c.slab.answer}</p>
      <CauseList title="Causes over the whole slab" rows={c.slab.causes ?? []} />
      {c.slab.together?.length ? (
        <section>
          <h2>How the findings explain each other</h2>
          <ul>
            {c.slab.together.map((t) => (
              <li key={t}>{t}</li>
            ))}
          </ul>
        </section>
      ) : null}
      <section>
        <h2>Movement still to come</h2>
        <p>{m.sentence}</p>
        <dl class="facts">
          <div>
            <dt>Shrinkage so far</dt>
            <dd>{withUnit(fixed(m.shrinkage_now * 1e3, 2), "mm/m")}</dd>
          </div>
          <div>
            <dt>Still to come</dt>
            <dd>{withUnit(fixed(m.shrinkage_later * 1e3, 2), "mm/m")}</dd>
          </div>
          <div>
            <dt>Season</dt>
            <dd>{withUnit(fixed(m.season_K, 0), "K")} swing of the slab's mean temperature</dd>
          </div>
          <div>
            <dt>Joint opening to come</dt>
            <dd>{mm(m.opening_later_m)}</dd>
          </div>
        </dl>
        <WorkingFold id={m.working} />
      </section>
      <Options rows={c.slab.options ?? []} />
      <Hands rows={c.hands ?? []} />
    </>
  );
}
