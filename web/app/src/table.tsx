// A plain table that scrolls sideways on its own when the page is narrow.

import type { ComponentChildren } from "preact";

interface Props {
  caption: string;
  hideCaption?: boolean;
  head: ComponentChildren[];
  rows: ComponentChildren[][];
  shape?: "numbers" | "first-whole" | "wide-cells";
}

export function Table({ caption, hideCaption, head, rows, shape }: Props) {
  return (
    <div class="table" role="group" aria-label={caption} tabIndex={0}>
      <table class={shape}>
        <caption class={hideCaption ? "unseen-word" : ""}>{caption}</caption>
        <thead>
          <tr>
            {head.map((h, i) => (
              <th scope="col" key={i}>
                {h}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, r) => (
            <tr key={r}>
              {row.map((cell, i) =>
                i === 0 ? (
                  <th scope="row" key={i}>
                    {cell}
                  </th>
                ) : (
                  <td key={i}>{cell}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
