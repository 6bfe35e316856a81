// Page one: five questions, always the same five, each answered in a sentence.

import { content, to } from "./state";
import type { Answer } from "./content";
import { ChanceText } from "./chance";
import { Fold } from "./fold";
import { WorkingLinks } from "./working";

// AnswerStrip stands above the plan on every screen but page one; on a phone it is folded.
export function AnswerStrip({ wide }: { wide: boolean }) {
  const answers = content.value!.page_one.answers ?? [];
  if (!answers.length) return null;
  const strip = (
    <dl class="answer-strip">
      {answers.map((a) => (
        <div key={a.key}>
          <dt>
            <a href={to("page-one")}>{a.question}</a>
          </dt>
          <dd>
            <p class="answer-plain">{a.plain}</p>
            {a.chance && <ChanceText chance={a.chance} />}
          </dd>
        </div>
      ))}
    </dl>
  );
  return (
    <section class="answers" aria-label="Page one in short">
      {wide ? (
        strip
      ) : (
        <details>
          <summary>
            <span class="answers-name">{answers.length === 5 ? "Five answers" : "Answers"}</span>{" "}
            <span class="quiet">{answers[0].plain}</span>
          </summary>
          {strip}
        </details>
      )}
    </section>
  );
}

export function PageOne() {
  const one = content.value!.page_one;
  return (
    <>
      <h1>Page one</h1>
      {(one.answers ?? []).map((a, i) => (
        <section class="question" key={a.key}>
          <h2>
            <span class="quiet">{i + 1}</span> {a.question}
          </h2>
          <AnswerBody answer={a} />
        </section>
      ))}
      {one.doubt && (
        <>
          <h2>The most important doubt</h2>
          <p>{one.doubt}</p>
        </>
      )}
      {one.not_done && (
        <>
          <h2>What was not done</h2>
          <p>{one.not_done}</p>
        </>
      )}
      {one.reliance && (
        <>
          <h2>Who may rely on this</h2>
          <p>{one.reliance}</p>
        </>
      )}
      <p>
        <a class="onward" href={to("findings")}>
          Go through the findings
        </a>
      </p>
    </>
  );
}

// AnswerBody is the plain sentence first, the exact wording one tap below.
export function AnswerBody({ answer }: { answer: Answer }) {
  return (
    <>
      <p class="lead">{answer.plain || "Not given."}</p>
      {answer.chance && (
        <p>
          <ChanceText chance={answer.chance} />
        </p>
      )}
      {answer.exact && <Fold line="Said exactly" inside={() => <p>{answer.exact}</p>} />}
      <WorkingLinks ids={answer.workings} />
    </>
  );
}
