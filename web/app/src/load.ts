// Fetching the content, the first answer at once and the whole one when it is there, and
// asking meanwhile what is being worked out.

import { ask } from "./ask";
import { asking, content, nothingYet, problems, progress, stage, type Stage } from "./state";
import type { Content, Progress, Wrong } from "./content";

let runs = 0;

export async function load() {
  const mine = ++runs,
    current = () => mine === runs;
  problems.value = null;
  asking.value = true;
  let waiting = true;
  const watch = async () => {
    while (waiting && current()) {
      await askProgress();
      await new Promise((r) => setTimeout(r, 250));
    }
  };
  void watch();
  try {
    if ((await take("api/content?stage=first", current)) === "first") await take("api/content", current);
  } catch {
    if (current()) problems.value = ["The program that works out the answers does not reply. Start it again, then try again here."];
  }
  waiting = false;
  if (current()) asking.value = false;
  if (current()) await askProgress();
}

// take shows what the program answers there; an answer that was stopped is already shown.
async function take(address: string, current: () => boolean): Promise<Stage | undefined> {
  const answer = await fetch(address);
  if (!current()) return;
  if (!answer.ok) {
    const wrong = (await answer.json().catch(() => null)) as Wrong | null;
    nothingYet.value = wrong?.empty === true;
    problems.value = wrong?.problems?.length ? wrong.problems : [`The program answered ${answer.status} and no reason.`];
    return;
  }
  const now = (answer.headers.get("Slabwright-Stage") ?? "whole") as Stage,
    c = (await answer.json()) as Content;
  if (!current()) return;
  if (!(now === "stopped" && stage.value === "first" && content.value)) content.value = c;
  stage.value = now;
  document.title = document.title.includes(" · ") ? document.title : `${c.head.number || c.head.job} ${c.head.title} · Slabwright`;
  return now;
}

async function askProgress() {
  try {
    progress.value = (await (await fetch("api/progress")).json()) as Progress;
  } catch {
    /* the wrong state says it */
  }
}

// stop keeps the first answer and ends the replays; goOn replays after all.
export async function stop() {
  await ask("stop", {}).catch(() => undefined);
}
export async function goOn() {
  await ask("go-on", {}).catch(() => undefined);
  await load();
}
