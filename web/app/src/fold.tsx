// A fold: a line that opens. What is inside is made only once it is opened, so that
// a slab with thousands of lines of working stays quick.

import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";

interface Props {
  line: ComponentChildren;
  kind?: string;
  open?: boolean;
  inside: () => ComponentChildren;
  opened?: () => void;
}

export function Fold({ line, kind = "fold", open = false, inside, opened }: Props) {
  const [shown, setShown] = useState(open);
  return (
    <details
      class={kind}
      open={open}
      onToggle={(e) => {
        if ((e.currentTarget as HTMLDetailsElement).open) {
          setShown(true);
          opened?.();
        }
      }}
    >
      <summary>{line}</summary>
      {shown && inside()}
    </details>
  );
}
