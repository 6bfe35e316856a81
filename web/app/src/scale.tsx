// Scale bar and north arrow.

import type { Fact } from "./content";
import { withUnit } from "./format";

export function ScaleBar({ scale, height }: { scale: number; height: number }) {
  const length = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100].find((m) => m * scale >= 60) ?? 200;
  const px = length * scale,
    y = height - 14;
  return (
    <g class="scale-bar" role="img" aria-label={`Scale bar of ${length} metres`}>
      <rect class="scale-back" x="6" y={y - 17} width={px + 58} height="26" />
      <path d={`M12 ${y - 5}V${y}H${12 + px}V${y - 5}M${12 + px / 2} ${y - 3}V${y}`} />
      <text x={18 + px} y={y + 1}>
        {withUnit(String(length), "m")}
      </text>
    </g>
  );
}

// NorthArrow turns with the slab: bearing is that of the +y axis, clockwise from north.
export function NorthArrow({ bearing, width }: { bearing?: Fact; width: number }) {
  if (!bearing)
    return (
      <text class="north-unknown" x={width - 10} y="20" text-anchor="end">
        north not given
      </text>
    );
  return (
    <g
      class="north"
      transform={`translate(${width - 26} 30)`}
      role="img"
      aria-label={`North; the y axis of the plan bears ${bearing.value} degrees`}
    >
      <circle class="north-back" r="22" />
      <g transform={`rotate(${-bearing.value})`}>
        <path d="M0 -16V15M0 -16L-5 -4H5Z" />
        <text class="north-letter" y="-17" text-anchor="middle" transform={`rotate(${bearing.value} 0 -21)`}>
          N
        </text>
      </g>
    </g>
  );
}
