// The key: what each line of the plan means.

const panelMark = (state: string) => (
  <g class={`panel is-${state}`}>
    <path class="panel-shape" d="M4 2H60V18H4Z" />
    <path class="panel-pattern" d="M4 2H60V18H4Z" />
  </g>
);

const ROWS: [string, preact.JSX.Element][] = [
  ["Slab edge", <path class="outline" d="M2 10H62" />],
  [
    "Sawn joint",
    <g class="joint joint-sawn made">
      <path class="line" d="M2 10H62" />
    </g>,
  ],
  [
    "Sawn joint, not cut yet at this hour",
    <g class="joint joint-sawn waiting">
      <path class="line" d="M2 10H62" />
    </g>,
  ],
  ["Panel not yet placed", panelMark("not-yet-placed")],
  ["Panel placed, not set", panelMark("placed")],
  ["Panel set, not to be cut yet", panelMark("set")],
  ["Panel to be cut now", panelMark("cut-now")],
  ["Panel late: its window has closed uncut", panelMark("late")],
  ["Panel sawn at all its sawn joints", panelMark("sawn")],
  [
    "Formed joint",
    <g class="joint joint-formed made">
      <path class="line" d="M2 10H62M10 10V4M30 10V4M50 10V4" />
    </g>,
  ],
  [
    "Isolation joint",
    <g class="joint joint-isolation made">
      <path class="line" d="M2 8H62M2 12H62" />
    </g>,
  ],
  [
    "Dowels across a joint; close up, each one",
    <g>
      <g class="joint joint-formed made">
        <path class="line" d="M2 10H62" />
      </g>
      <path class="dowels" d="M14 4V16M34 4V16M54 4V16" />
    </g>,
  ],
  ["Bars and mesh", <path class="bars" d="M2 4H62M2 10H62M2 16H62M12 0V20M30 0V20M48 0V20" />],
  [
    "Crack, its number and width",
    <g class="finding">
      <path class="line" d="M2 12L9 9L15 13L22 8L28 12L34 9L40 12L46 9L52 11L62 8" />
    </g>,
  ],
  [
    "Finding along a joint or edge",
    <g class="finding along-edge">
      <path class="line" d="M2 10H62" />
    </g>,
  ],
  [
    "Patch: map cracks, dusting, scaling",
    <g class="finding">
      <path class="area" d="M4 2H60V18H4Z" />
    </g>,
  ],
  ["Could not see: not known, not sound", <path class="unseen" d="M4 2H60V18H4Z" />],
  [
    "Opening in the slab",
    <g class="fixture">
      <path class="shape" d="M16 2H48V18H16Z" />
      <path class="void" d="M16 2L48 18M48 2L16 18" />
    </g>,
  ],
];

export function Key() {
  return (
    <div class="key">
      <h2>Key to the plan</h2>
      <ul>
        {ROWS.map(([name, mark]) => (
          <li key={name}>
            <svg width="64" height="20" aria-hidden="true">
              {mark}
            </svg>{" "}
            <span>{name}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
