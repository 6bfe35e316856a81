// Steps that can be undone, kept in the browser so that a reload loses none.
// Only what changed from one step to the next is stored: a plan of a thousand
// joints still leaves room for hundreds of steps.

export interface Step<T> {
  what: string; // what was done, in words
  state: T;
}

export const KEPT = 200; // steps that can be undone; the oldest is let go beyond that

// difference keeps of `next` what lies between the start and the end it shares with `before`.
export interface Difference {
  head: number;
  tail: number;
  middle: string;
}
export function difference(before: string, next: string): Difference {
  const most = Math.min(before.length, next.length);
  let head = 0;
  while (head < most && before[head] === next[head]) head++;
  let tail = 0;
  while (tail < most - head && before[before.length - 1 - tail] === next[next.length - 1 - tail]) tail++;
  return { head, tail, middle: next.slice(head, next.length - tail) };
}
export function apply(before: string, d: Difference): string {
  return before.slice(0, d.head) + d.middle + before.slice(before.length - d.tail);
}

export class History<T> {
  private steps: Step<T>[];
  private at: number;
  constructor(first: T, what = "as in the job") {
    this.steps = [{ what, state: first }];
    this.at = 0;
  }
  get now(): T {
    return this.steps[this.at].state;
  }
  get undoes(): string | undefined {
    return this.at > 0 ? this.steps[this.at].what : undefined;
  }
  get redoes(): string | undefined {
    return this.steps[this.at + 1]?.what;
  }
  get length(): number {
    return this.at;
  }
  push(what: string, state: T) {
    this.steps = [...this.steps.slice(0, this.at + 1), { what, state }].slice(-KEPT - 1);
    this.at = this.steps.length - 1;
  }
  undo() {
    if (this.at > 0) this.at--;
  }
  redo() {
    if (this.at + 1 < this.steps.length) this.at++;
  }
  // text is the whole history, for keeping.
  text(): string {
    const states = this.steps.map((s) => JSON.stringify(s.state));
    return JSON.stringify({
      at: this.at,
      first: states[0],
      whats: this.steps.map((s) => s.what),
      then: states.slice(1).map((s, i) => difference(states[i], s)),
    });
  }
  // read is the history that text wrote; nothing if it cannot be read.
  static read<T>(text: string | null): History<T> | undefined {
    if (!text) return undefined;
    try {
      const kept = JSON.parse(text) as { at: number; first: string; whats: string[]; then: Difference[] };
      const h = new History<T>(JSON.parse(kept.first) as T, kept.whats[0]);
      let before = kept.first;
      for (const [i, d] of kept.then.entries()) {
        before = apply(before, d);
        h.steps.push({ what: kept.whats[i + 1], state: JSON.parse(before) as T });
      }
      h.at = Math.min(Math.max(0, kept.at), h.steps.length - 1);
      return h;
    } catch {
      return undefined;
    }
  }
}
