// Facts of a finding supposed otherwise, and chances of causes set by hand.

import { signal } from "@preact/signals";
import { ask, reasons } from "./ask";
import { load } from "./load";
import type { Chance } from "./content";

export interface FindingFact {
  variable: string;
  question: string;
  unit?: string;
  states: { state: string; says: string }[] | null;
  now: string;
  text?: string;
  from?: string;
  known?: string;
}
export interface Shift {
  finding: string;
  changed: string[] | null;
  before: string;
  after: string;
  rows: { cause: string; name: string; before: Chance; after: Chance }[] | null;
}
export interface Override {
  finding: string;
  cause: string;
  chance: number;
  reason: string;
  by: string;
  at?: string;
}

export const NOT_SEEN = "unknown";

// Supposed is what is changed at one finding: a fact and its new state or number.
export interface Supposed {
  finding: string;
  facts: { variable: string; value: string }[];
}
export const facts = signal<{ finding: string; rows: FindingFact[] } | null>(null);
export const supposed = signal<Supposed>({ finding: "", facts: [] });
export const shift = signal<Shift | null>(null);
export const weighWrong = signal<string[]>([]);

export async function askFacts(finding: string) {
  weighWrong.value = [];
  try {
    const rows = (await ask<FindingFact[] | null>("facts", { finding })) ?? [];
    facts.value = { finding, rows };
    if (supposed.value.finding !== finding) {
      supposed.value = { finding, facts: [] };
      shift.value = null;
    }
  } catch (e) {
    weighWrong.value = reasons(e);
  }
}

// suppose changes one fact more, or back to what it is where the value is missing.
export async function suppose(finding: string, variable: string, value?: string) {
  const others = supposed.value.facts.filter((f) => f.variable !== variable),
    all = value === undefined ? others : [...others, { variable, value }];
  weighWrong.value = [];
  if (all.length === 0) {
    supposed.value = { finding, facts: [] };
    shift.value = null;
    return;
  }
  try {
    const got = await ask<Shift>("shift", { finding, facts: all });
    supposed.value = { finding, facts: all };
    shift.value = got;
  } catch (e) {
    weighWrong.value = reasons(e);
  }
}

// A chance set by hand, and how to undo that.
interface Done {
  finding: string;
  cause: string;
  words: string;
  before: Override | null;
}
export const setDone = signal<Done | null>(null);
export const setWrong = signal<{ cause: string; problems: string[] } | null>(null);

export async function setChance(finding: string, cause: string, set: Omit<Override, "finding" | "cause"> | null, words: string): Promise<boolean> {
  try {
    const { before } = await ask<{ before: Override | null }>("override", { finding, cause, set });
    setWrong.value = null;
    setDone.value = { finding, cause, words, before };
    void load();
    return true;
  } catch (e) {
    setWrong.value = { cause, problems: reasons(e) };
    return false;
  }
}
export async function undoSet() {
  const d = setDone.value;
  if (d && (await setChance(d.finding, d.cause, d.before, `Undone: ${d.words}`))) setDone.value = { ...setDone.value!, words: `Undone: ${d.words}` };
}
