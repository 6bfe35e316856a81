// What would have prevented a finding: the same slab with one thing done otherwise.

import { ChanceText } from "./chance";
import { WorkingFold } from "./working";
import type { Prevented } from "./content";

export function PreventedRows({ rows }: { rows: Prevented[] }) {
  if (rows.length === 0) return null;
  return (
    <section>
      <h2>What would have prevented it</h2>
      <p class="small quiet">The same slab with one thing done otherwise, and the chance of this finding then.</p>
      <table class="before-after">
        <caption class="unseen-word">The chance as it was and with one thing done otherwise</caption>
        <thead>
          <tr>
            <th scope="col">Done otherwise</th>
            <th scope="col">As it was</th>
            <th scope="col">And then</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((p, i) => (
            <tr key={i}>
              <th scope="row">
                {p.what.charAt(0).toUpperCase() + p.what.slice(1)}
                <span class="quiet small">
                  {" "}
                  Against {p.name}. In the hands of {p.by}. From the {p.from}.
                </span>
                <WorkingFold id={p.working} />
              </th>
              <td data-head="As it was">
                <ChanceText chance={p.before} />
              </td>
              <td data-head="And then">
                <ChanceText chance={p.after} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
