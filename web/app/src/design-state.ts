// The slab being designed: its steps, what the program says of it, and what is chosen on it.

import { computed, signal } from "@preact/signals";
import { content } from "./state";
import { ask, reasons } from "./ask";
import { History } from "./history";
import type { Point, Slab } from "./content";
import type { Design, Edit, Layout, LayoutChance, Warning } from "./design-content";

export const design = signal<Design | null>(null); // the proposals, once asked for
export const layout = signal<Layout | null>(null); // what the program says of the slab now
export const chance = signal<LayoutChance | null>(null); // of the slab now; null while it is worked out
export const chosen = signal<{ kind: "joint" | "panel" | "fixture"; id: string } | null>(null);
export const busy = signal(""); // what is being worked out
export const wrong = signal<string[]>([]); // why the last edit was not done
export const stripsOf = signal<Layout | null>(null); // the proposal whose pour strips are drawn
export const tapping = signal<Tapping | null>(null); // what is being put in by taps on the plan
export const said = signal(""); // what was done, read out

// Tapping is a thing to be added: a joint from tap to tap, or a pit or column at one tap.
export type Tapping = { add: "joint"; kind: string; from?: Point } | { add: "pit" | "column"; size: Point };

// tapped takes a tap, in metres.
export function tapped(p: Point) {
  const t = tapping.value;
  if (!t) return;
  if (t.add !== "joint") {
    tapping.value = null;
    void edit(`A ${t.add} added at ${p[0].toFixed(2)}, ${p[1].toFixed(2)}`, { do: t.add === "pit" ? "add pit" : "add column", at_m: p, size_m: t.size });
    return;
  }
  if (!t.from) {
    tapping.value = { ...t, from: p };
    said.value = "Now tap where it ends.";
    return;
  }
  tapping.value = null;
  const from = t.from;
  void edit(`Joint added from ${from[0].toFixed(2)}, ${from[1].toFixed(2)} to ${p[0].toFixed(2)}, ${p[1].toFixed(2)}`, { do: "add joint", from_m: from, to_m: p, kind: t.kind });
}

let steps: History<Slab> | null = null;
const changed = signal(0);
export const undoes = computed(() => (changed.value, steps?.undoes));
export const redoes = computed(() => (changed.value, steps?.redoes));
export const stepsBack = computed(() => (changed.value, steps?.length ?? 0));

const keptUnder = () => `slabwright-design-${content.value!.head.job}-${content.value!.head.slab}`;

// begin takes up the steps kept from before, or starts from the slab of the job.
export function begin() {
  if (steps) return;
  let kept: string | null = null;
  try {
    kept = localStorage.getItem(keptUnder());
  } catch {
    /* a browser may keep nothing */
  }
  steps = History.read<Slab>(kept) ?? new History<Slab>(content.value!.plan.slab);
  changed.value++;
  void look(steps.now);
}

function keep() {
  try {
    localStorage.setItem(keptUnder(), steps!.text());
  } catch {
    said.value = "This browser has no room to keep the steps: they are gone after a reload.";
  }
  changed.value++;
}

let looking: AbortController | null = null;
let counting: AbortController | null = null;

// look asks which rules the slab keeps, and then how likely it is to crack.
async function look(slab: Slab) {
  looking?.abort();
  looking = new AbortController();
  try {
    take(await ask<Layout>("look", { slab }, looking.signal));
    void count(slab);
  } catch (e) {
    if (!looking.signal.aborted) wrong.value = reasons(e);
  }
}

function take(said: Layout) {
  layout.value = said;
  if (chosen.value && !exists(said, chosen.value)) chosen.value = null;
}

function exists(l: Layout, c: { kind: string; id: string }): boolean {
  const among = c.kind === "joint" ? l.slab.joints : c.kind === "fixture" ? l.slab.fixtures : l.panels;
  return (among ?? []).some((x) => x.id === c.id);
}

async function count(slab: Slab) {
  counting?.abort();
  counting = new AbortController();
  const mine = counting;
  chance.value = null;
  try {
    const got = await ask<LayoutChance>("chance", { slab }, mine.signal);
    if (mine.signal.aborted) return;
    chance.value = got;
  } catch (e) {
    if (!mine.signal.aborted) wrong.value = reasons(e);
  }
}

// edit does one thing to the slab, or says why it cannot be done and leaves it.
export async function edit(what: string, e: Edit) {
  counting?.abort();
  looking?.abort();
  looking = new AbortController();
  const mine = looking;
  try {
    const got = await ask<Layout>("edit", { slab: steps!.now, edit: e }, mine.signal);
    if (mine.signal.aborted) return;
    wrong.value = [];
    done(what, got.slab);
    take(got);
    void count(got.slab);
  } catch (problem) {
    if (mine.signal.aborted) return;
    wrong.value = reasons(problem);
    said.value = "Not done. " + wrong.value.join(" ");
    await look(steps!.now);
  }
}

// trial shows what a move would do while it is still being dragged; nothing is kept.
let trying = false;
let tryNext: Edit | null = null;
export async function trial(e: Edit) {
  tryNext = e;
  if (trying) return;
  trying = true;
  counting?.abort();
  while (tryNext) {
    const now: Edit = tryNext;
    tryNext = null;
    try {
      take(await ask<Layout>("edit", { slab: steps!.now, edit: now }));
      wrong.value = [];
    } catch (problem) {
      wrong.value = reasons(problem);
    }
  }
  trying = false;
}
// settle ends a trial: the last move is done for good.
export async function settle(what: string, e: Edit) {
  tryNext = null;
  await edit(what, e);
}

function done(what: string, slab: Slab) {
  steps!.push(what, slab);
  said.value = what + ".";
  keep();
}

// put takes a whole slab: a mend, or a proposal.
export function put(what: string, slab: Slab) {
  wrong.value = [];
  done(what, slab);
  void look(slab);
}

export function undo() {
  const what = steps?.undoes;
  if (!what) return;
  steps!.undo();
  again(`Undone: ${what}.`);
}
export function redo() {
  const what = steps?.redoes;
  if (!what) return;
  steps!.redo();
  again(`Done again: ${what}.`);
}
function again(words: string) {
  said.value = words;
  wrong.value = [];
  keep();
  void look(steps!.now);
}

export const startAgain = () => put("joints as in the job", content.value!.plan.slab);

export async function propose() {
  busy.value = "Working out joint plans and what each promises";
  try {
    design.value = await ask<Design>("propose", { slab: steps!.now });
    wrong.value = [];
    said.value = `${design.value.proposed?.length ?? 0} joint plans proposed.`;
  } catch (e) {
    wrong.value = reasons(e);
  }
  busy.value = "";
}

export async function save() {
  busy.value = "Saving";
  try {
    const { where } = await ask<{ where: string }>("save", { slab: steps!.now });
    wrong.value = [];
    said.value = `Saved in ${where}. The answers are worked out again when the page is loaded again.`;
  } catch (e) {
    wrong.value = reasons(e);
  }
  busy.value = "";
}

// Group is one rule and every place where it is not kept.
export interface Group {
  code: string;
  level: string;
  rule: string;
  source: string;
  all: Warning[];
}
export function grouped(all: Warning[] | null | undefined): Group[] {
  const groups: Group[] = [];
  for (const w of all ?? []) {
    const known = groups.find((g) => g.code === w.code);
    if (known) known.all.push(w);
    else groups.push({ code: w.code, level: w.level, rule: w.rule, source: w.source, all: [w] });
  }
  return groups;
}
export const panelChance = (id: string) => chance.value?.panels?.find((p) => p.panel === id)?.p;
