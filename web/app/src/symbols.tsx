// Symbols and formulas with lowered and raised letters: t_e, f_ct, L^2. The marks _ and
// ^ stay in the text, at no size, so that it reads and copies as it was written. All of
// it is text; nothing is taken as markup.

import type { ComponentChildren } from "preact";

const LOWERED = /(^|[^\p{L}_])(\p{L}{1,2})((?:_[\p{L}\p{N}∞]+)+(?:,\p{L}{2,})*)/u;

export function Symbols({ text }: { text: string }) {
  return <>{pieces(text)}</>;
}

const Mark = ({ text }: { text: string }) => <span class="no-size">{text}</span>;

function pieces(text: string): ComponentChildren[] {
  const raised = text.indexOf("^");
  const low = LOWERED.exec(text);
  if (low && (raised < 0 || low.index < raised)) {
    const before = text.slice(0, low.index) + low[1] + low[2];
    return [before, <Lowered text={low[3]} />, ...pieces(text.slice(low.index + low[0].length))];
  }
  if (raised < 0) return text ? [text] : [];
  const end = endOfPower(text, raised + 1);
  if (end === raised + 1) return [text.slice(0, end), ...pieces(text.slice(end))];
  return [text.slice(0, raised), <Raised text={text.slice(raised + 1, end)} />, ...pieces(text.slice(end))];
}

// Lowered writes _j_m as j,m lowered.
function Lowered({ text }: { text: string }) {
  const parts = text.slice(1).split("_");
  return (
    <sub>
      {parts.map((p, i) => (
        <>
          <Mark text="_" />
          {i > 0 && <span aria-hidden="true" class="thin-gap" />}
          {p}
        </>
      ))}
    </sub>
  );
}

function Raised({ text }: { text: string }) {
  const bracketed = text.startsWith("(");
  return (
    <sup>
      <Mark text={bracketed ? "^(" : "^"} />
      {pieces(bracketed ? text.slice(1, -1) : text)}
      {bracketed && <Mark text=")" />}
    </sup>
  );
}

// endOfPower is where what follows a ^ ends: a bracket that closes, a number, or one symbol.
function endOfPower(text: string, from: number): number {
  if (text[from] === "(") {
    let open = 0;
    for (let i = from; i < text.length; i++) {
      if (text[i] === "(") open++;
      if (text[i] === ")" && --open === 0) return i + 1;
    }
    return from;
  }
  const found = /^[−-]?(?:\d+(?:\.\d+)?|\p{L}(?:_[\p{L}\p{N}]+)?)/u.exec(text.slice(from));
  return from + (found ? found[0].length : 0);
}
