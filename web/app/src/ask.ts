// Questions that carry something: JSON there and back.

export class Refused extends Error {
  constructor(readonly problems: string[]) {
    super(problems.join(" "));
  }
}

export async function ask<T>(name: string, question: unknown, stop?: AbortSignal): Promise<T> {
  const answer = await fetch("api/ask/" + name, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(question),
    signal: stop,
  });
  if (answer.ok) return (await answer.json()) as T;
  const said = (await answer.json().catch(() => null)) as { problems?: string[] } | null;
  throw new Refused(said?.problems ?? [`The program answered ${answer.status} and no reason.`]);
}

export const reasons = (e: unknown) =>
  e instanceof Refused ? e.problems : ["The program that works out the answers does not reply."];
