// The line that says how far the answers on the page are worked out.

import { goOn, stop } from "./load";
import { asking, progress, stage } from "./state";

export function StageLine() {
  const first = stage.value === "first",
    again = stage.value === "whole" && asking.value,
    steps = progress.value?.steps ?? [];
  return (
    <section aria-label="How far it is worked out" class={stage.value === "whole" && !again ? "stage-none" : "stage"}>
      <p role="status">
        {first && "First answer; the slab is still being replayed."}
        {again && "Being worked out again; what stands here is the answer before."}
        {stage.value === "stopped" && "First answer; the replay was stopped, so causes are not set against it."}
      </p>
      {first && (
        <>
          <progress max={1} value={progress.value?.share ?? 0} aria-label="Share worked out" />
          <span class="quiet stage-now">{steps.length ? steps[steps.length - 1].text : ""}</span>
          <button onClick={() => void stop()}>Stop</button>
        </>
      )}
      {stage.value === "stopped" && <button onClick={() => void goOn()}>Replay after all</button>}
    </section>
  );
}
