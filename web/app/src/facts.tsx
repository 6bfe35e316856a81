// Facts lists names with their values; those not known are left out.
export function Facts({ rows }: { rows: [string, string | undefined][] }) {
  return (
    <dl class="facts">
      {rows
        .filter(([, v]) => v)
        .map(([k, v]) => (
          <div key={k}>
            <dt>{k}</dt>
            <dd>{v}</dd>
          </div>
        ))}
    </dl>
  );
}
