// Findings as drawn: cracks, patches and edges, each with its number and width.

import { content, hour, layers, place, to } from "./state";
import { apart, beside, boxOf, centre, inside, path, project, rough, type Label, type View } from "./shape";
import type { Content, FindingSheet, Point } from "./content";
import { mm, moment } from "./format";

const CLUSTER = 120; // more findings than this are counted by panel until one comes closer

export function Findings({ c, view, size }: { c: Content; view: View; size: Point }) {
  const all = (c.findings ?? []).filter(
    (f) => hour.value === null || isChosen(f) || (moment(f.finding.first_seen) ?? Infinity) <= hour.value,
  );
  if (all.length > CLUSTER && view.scale < 60) return <Counts c={c} view={view} />;
  const seen = all.filter((f) => {
    const [x, y] = project(view, f.at_m);
    return all.length <= CLUSTER || (x > -40 && y > -40 && x < size[0] + 40 && y < size[1] + 40);
  });
  const small = view.scale < 20;
  const wanted: Label[] = seen.map((f) => ({
    at: project(view, f.at_m),
    left: 14,
    right: 16 + (small ? 0 : widthText(f).length * 6.2),
    height: 26,
  }));
  const spots = apart(wanted, small ? [] : namesOf(c, view));
  const order = seen.map((_, i) => i).sort((a, b) => Number(isChosen(seen[a])) - Number(isChosen(seen[b])));
  return (
    <>
      <g class="findings">
        {order.map((i) => (
          <FindingMark key={seen[i].finding.id} sheet={seen[i]} view={view} spot={spots[i].at} />
        ))}
      </g>
      <g class="finding-words" aria-hidden="true">
        {order.map((i) => (
          <g key={seen[i].finding.id} class={isChosen(seen[i]) ? "chosen" : ""}>
            <text class="badge-text" x={spots[i].at[0]} y={spots[i].at[1] + 4.5} text-anchor="middle">
              {seen[i].finding.id}
            </text>
            {!small && !spots[i].bare && <WidthText text={widthText(seen[i])} at={spots[i].at} left={spots[i].left} />}
          </g>
        ))}
      </g>
    </>
  );
}

// namesOf are the places of names that numbers keep off.
function namesOf(c: Content, view: View): Label[] {
  const fixtures = (c.plan.slab.fixtures ?? [])
    .filter((f) => f.kind === "pit" || f.kind === "drain" || f.kind === "column")
    .map((f): Label => {
      const box = boxOf(f.shape_m.map((p) => project(view, p))),
        half = (f.name || f.kind).length * 3.2;
      return { at: [(box.x0 + box.x1) / 2, box.y0 - 11], left: half, right: half, height: 12 };
    });
  const panels = layers.value.panels
    ? (c.plan.panels ?? []).map((p): Label => {
        const box = boxOf(p.ring_m.map((q) => project(view, q)));
        return { at: [box.x1 - 7, box.y1 - 14], left: p.id.length * 7, right: 0, height: 10 };
      })
    : [];
  return [...fixtures, ...panels];
}

const isChosen = (f: FindingSheet) => place.value.screen === "finding" && place.value.thing === f.finding.id;
const widthText = (f: FindingSheet) => (f.finding.width_m ? mm(f.finding.width_m.value) : "");

function WidthText({ text, at, left }: { text: string; at: Point; left: boolean }) {
  return (
    <text class="width" x={at[0] + (left ? -17 : 17)} y={at[1] + 4} text-anchor={left ? "end" : "start"}>
      {text}
    </text>
  );
}

// FindingMark is the line or patch with the ring of its number; the words are drawn over all of them.
function FindingMark({ sheet, view, spot }: { sheet: FindingSheet; view: View; spot: Point }) {
  const f = sheet.finding,
    chosen = isChosen(sheet);
  const at = (p: Point) => project(view, p);
  const home = at(sheet.at_m);
  const lines = (f.lines_m ?? []).map((l) => l.map(at));
  const joint =
    f.joint && !lines.length && !f.area_m ? content.value!.plan.slab.joints?.find((j) => j.id === f.joint) : undefined;
  const edge =
    f.kind === "joint not opened" ||
    f.kind === "joint spall" ||
    f.kind === "ravelled edge" ||
    f.kind === "step" ||
    f.kind === "curled edge";
  const d = lines.map((l) => path(edge ? l : rough(l))).join("");
  const area = f.area_m ? path(f.area_m.map(at), true) : "";
  const away = Math.hypot(spot[0] - home[0], spot[1] - home[1]) > 14;
  return (
    <a
      class={`finding ${chosen ? "chosen" : ""} ${edge ? "along-edge" : ""}`}
      href={to("finding", f.id)}
      aria-label={`Finding ${f.id}: ${sheet.title}. ${sheet.place}`}
      aria-current={chosen ? "true" : undefined}
    >
      {area && <path class="area" d={area} />}
      {joint && <path class="halo" d={path(beside(joint.path_m.map(at), 5))} />}
      {joint && <path class="line" d={path(beside(joint.path_m.map(at), 5))} />}
      {d && (
        <>
          <path class="hit" d={d} />
          <path class="halo" d={d} />
          <path class="line" d={d} />
        </>
      )}
      {away && <path class="leader" d={path([home, spot])} />}
      <circle class="badge-hit" cx={spot[0]} cy={spot[1]} r={24} />
      <circle class="badge" cx={spot[0]} cy={spot[1]} r={chosen ? 15 : 13} />
    </a>
  );
}

// Counts stands for very many findings: how many are in each panel.
function Counts({ c, view }: { c: Content; view: View }) {
  const groups = (c.plan.panels ?? [])
    .map((panel) => ({
      id: panel.id,
      at: project(view, centre(panel.ring_m)),
      many: (c.findings ?? []).filter((f) => inside(panel.ring_m, f.at_m)).length,
    }))
    .filter((g) => g.many > 0);
  return (
    <>
      <g class="findings">
        {groups.map((g) => (
          <a key={g.id} class="finding" href={to("findings", g.id)} aria-label={`Panel ${g.id}: ${g.many} findings`}>
            <circle class="badge-hit" cx={g.at[0]} cy={g.at[1]} r={24} />
            <circle class="badge" cx={g.at[0]} cy={g.at[1]} r={18} />
          </a>
        ))}
      </g>
      <g class="finding-words" aria-hidden="true">
        {groups.map((g) => (
          <text key={g.id} class="badge-text" x={g.at[0]} y={g.at[1] + 4.5} text-anchor="middle">
            {g.many}
          </text>
        ))}
      </g>
    </>
  );
}
