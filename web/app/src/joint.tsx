// One joint: how it was made, when it was cut, whether it opened.

import { clock, content, to } from "./state";
import { lengthOf } from "./shape";
import { after, inWords, metres, mm, percent } from "./format";
import type { Fact } from "./content";
import { Facts } from "./facts";

export function JointScreen({ id }: { id: string }) {
  const c = content.value!;
  const joint = (c.plan.slab.joints ?? []).find((j) => j.id === id);
  if (!joint)
    return (
      <>
        <h1>Joint</h1>
        <p>
          There is no joint {id}. <a href={to("findings")}>See the findings</a>
        </p>
      </>
    );
  const symbol = (c.plan.joints ?? []).find((s) => s.id === id);
  const cut = (c.pours ?? []).flatMap((p) => (p.cuts ?? []).filter((r) => r.joint === id).map((r) => ({ ...r, pour: p })))[0];
  const fact = (f: Fact | undefined, text: (v: number) => string) => f && `${text(f.value)}, ${f.known}`;
  const d = joint.dowels;
  const rows: [string, string | undefined][] = [
    ["Kind", joint.kind],
    ["Length", metres(lengthOf(joint.path_m))],
    ["Load transfer", joint.transfer ? `${joint.transfer.value}, ${joint.transfer.known}` : "not known"],
    [
      "Sawn",
      symbol?.cut_at &&
        `${clock.value.at(symbol.cut_at)}${symbol.hours_after_placing !== undefined ? `, ${after(symbol.hours_after_placing)}` : ""}`,
    ],
    ["State", symbol?.state],
    ["Groove", fact(joint.groove_m, (v) => mm(v))],
    ["Depth of slab", symbol?.depth_share !== undefined ? percent(symbol.depth_share) : undefined],
    ["Opened below the groove", joint.opened ? `${joint.opened.value}, ${joint.opened.known}` : symbol?.opened || "not known"],
    ["Opening", fact(joint.opening_m, (v) => mm(v))],
    [
      "Dowels",
      d && [fact(d.diameter_m, (v) => `${mm(v)} bars`), fact(d.spacing_m, (v) => `every ${mm(v)}`)].filter(Boolean).join("; "),
    ],
    ["First bar to the crossing", d && (fact(d.clear_of_crossing_m, (v) => mm(v)) ?? "not known")],
    ["Free along", d && (d.free_along?.value ?? "not known")],
    ["Free sideways", d && (d.free_sideways?.value ?? "not known")],
    ["Cracked before the cut", cut?.chance_cracked_before && inWords(cut.chance_cracked_before)],
    ["Edge", cut?.edge],
  ];
  const findings = (c.findings ?? []).filter((f) => f.finding.joint === id);
  return (
    <>
      <h1>Joint {joint.name || joint.id}</h1>
      <Facts rows={rows} />
      {cut && (
        <p>
          <a href={to("pour", cut.pour.id)}>See the day of {cut.pour.name}</a>
        </p>
      )}
      {findings.length > 0 && (
        <>
          <h2>Findings at this joint</h2>
          <ul class="rows">
            {findings.map((f) => (
              <li key={f.finding.id}>
                <a href={to("finding", f.finding.id)}>
                  <span>
                    <strong>{f.finding.id}</strong> {f.title}
                  </span>
                </a>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
