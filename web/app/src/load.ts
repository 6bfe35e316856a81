// Fetching the content, and asking meanwhile what is being worked out.

import { content, nothingYet, problems, progress } from "./state";
import type { Content, Progress, Wrong } from "./content";

export async function load() {
  problems.value = null;
  let waiting = true;
  const ask = async () => {
    while (waiting) {
      await askProgress();
      await new Promise((r) => setTimeout(r, 250));
    }
  };
  void ask();
  try {
    const answer = await fetch("api/content");
    if (!answer.ok) {
      const wrong = (await answer.json().catch(() => null)) as Wrong | null;
      nothingYet.value = wrong?.empty === true;
      problems.value = wrong?.problems?.length ? wrong.problems : [`The program answered ${answer.status} and no reason.`];
    } else {
      const c = (await answer.json()) as Content;
      content.value = c;
      document.title = `${c.head.number || c.head.job} ${c.head.title} · Slabwright`;
    }
  } catch {
    problems.value = ["The program that works out the answers does not reply. Start it again, then try again here."];
  }
  waiting = false;
  await askProgress();
}

async function askProgress() {
  try {
    progress.value = (await (await fetch("api/progress")).json()) as Progress;
  } catch {
    /* the wrong state says it */
  }
}
