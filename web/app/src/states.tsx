// What stands on the page before there is an answer: being worked out, wrong, empty.

import { useEffect, useRef } from "preact/hooks";
import { problems, progress } from "./state";
import { load } from "./load";

export function Loading() {
  const steps = progress.value?.steps ?? [];
  return (
    <main class="alone" id="main">
      <h1>Being worked out</h1>
      <p role="status">
        {progress.value?.job ? `${progress.value.job}. ` : ""}
        {steps.length ? `Now: ${steps[steps.length - 1].text}` : "Reading the job."}
      </p>
      {steps.length > 0 && <progress max={1} value={progress.value?.share} aria-label="Share worked out" />}
      <ol class="steps-done">
        {steps.map((s, i) => (
          <li key={i} class={s.done ? "done" : "doing"}>
            {s.text} <span class="quiet">{s.done ? "done" : "now"}</span>
          </li>
        ))}
      </ol>
    </main>
  );
}

export function WrongState() {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    head.current?.focus();
    document.title = "Error: Slabwright";
  }, []);
  return (
    <main class="alone" id="main">
      <h1 ref={head} tabIndex={-1}>
        There is a problem
      </h1>
      <p>The answers could not be worked out. Nothing was changed or lost.</p>
      <ul class="problems">
        {(problems.value ?? []).map((p, i) => (
          <li key={i}>{p}</li>
        ))}
      </ul>
      <p>
        <button onClick={() => void load()}>Try again</button>
      </p>
    </main>
  );
}

const DOORS: [string, string, string[]][] = [
  [
    "A slab has cracked",
    "Why, does it matter, what now.",
    [
      "its outline by tape",
      "where the joints are",
      "each crack: from where to where, how wide",
      "the day it was placed, and when it was sawn",
      "what could not be seen",
    ],
  ],
  [
    "We are going to pour",
    "When to saw, whether to hold.",
    ["outline and joints", "the mix", "first truck and rate", "the forecast by the hour", "who is there to saw"],
  ],
  [
    "Look again at one I know",
    "Same, wider, longer, new.",
    ["the job of last time", "today's widths at the same marks", "surface temperature"],
  ],
];

export function Empty() {
  return (
    <main class="alone" id="main">
      <h1>This job is empty</h1>
      {(problems.value ?? []).map((p) => (
        <p key={p}>{p}</p>
      ))}
      <p>Three ways to begin. Each asks for a few things; what nobody knows may stay open.</p>
      <div class="doors">
        {DOORS.map(([title, what, needs]) => (
          <section key={title}>
            <h2>{title}</h2>
            <p>{what}</p>
            <p class="small quiet">Have at hand:</p>
            <ul>
              {needs.map((n) => (
                <li key={n}>{n}</li>
              ))}
            </ul>
          </section>
        ))}
      </div>
      <p class="small quiet">Put them into the job file; this page reads it afresh when it is loaded again.</p>
    </main>
  );
}
