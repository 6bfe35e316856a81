// Numbers and clock times as they are printed: a true minus, a thin space before
// the unit, weekday and 24-hour clock in the zone of the site.

import type { Chance } from "./content";

const THIN = "\u202f";
const MINUS = "\u2212";

export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text.replace("-", MINUS);
}

export function figure(value: number, digits = 3): string {
  if (!Number.isFinite(value)) return "not known";
  if (value === 0) return "0";
  const size = Math.abs(value);
  if (size < 1e-4 || size >= 1e7) return scientific(value, digits);
  return fixed(value, Math.max(0, digits - 1 - Math.floor(Math.log10(size))));
}

// scientific writes 2.4e-5 as "2.40·10⁻⁵".
function scientific(value: number, digits: number): string {
  const [mantissa, exponent] = value.toExponential(digits - 1).split("e");
  const raised = [...String(Number(exponent))].map((c) => (c === "-" ? "⁻" : "⁰¹²³⁴⁵⁶⁷⁸⁹"[Number(c)])).join("");
  return `${mantissa.replace("-", MINUS)}·10${raised}`;
}

export function withUnit(text: string, unit?: string): string {
  if (!unit || unit === "-" || unit === "–") return text;
  return unit === "°"
    ? text + unit
    : text + THIN + unit.replace(/\bC\b/, "°C").replace(/°°/, "°").replace(/m2/g, "m²").replace(/m3/g, "m³");
}

// mm writes a length in millimetres, no finer than a crack card can tell.
export function mm(metres: number, decimals?: number): string {
  const value = metres * 1000;
  return withUnit(fixed(value, decimals ?? (Math.abs(value) < 2 ? 2 : Math.abs(value) < 10 ? 1 : 0)), "mm");
}

export function metres(value: number, decimals = 1): string {
  return withUnit(fixed(value, decimals), "m");
}

export function percent(share: number): string {
  return withUnit(fixed(share * 100, 0), "%");
}

// range writes the low and high of a chance as the report does: in tens, in hundreds
// near nothing and near certain, never none or all of a chance that is not certain, and
// nothing where both ends round to the same.
export function range(p: number, low: number, high: number): string {
  const of = p < 0.095 || p > 0.905 ? 100 : 10;
  const l = Math.round(of * low),
    h = Math.round(of * high);
  if (l === h) return "";
  const lower = l === 0 && low > 0 ? "under 1" : l,
    upper = h === of && high < 1 ? `over ${of - 1}` : h;
  return `${lower} to ${upper} in ${of}`;
}

// inWords is a whole chance as the report says it: "about 7 in 10 (5 to 8 in 10)".
export function inWords(chance: Chance): string {
  const about = chance.about || `about ${Math.round(chance.p * 10)} in 10`,
    between = range(chance.p, chance.low, chance.high);
  return between && !about.includes("(") ? `${about} (${between})` : about;
}

// oneIn writes a bare chance, one without a range, out of ten or, near nothing and near
// certain, out of a hundred.
export function oneIn(p: number): string {
  if (p < 0.005) return "less than 1 in 100";
  if (p > 0.995) return "more than 99 in 100";
  const of = p < 0.095 || p > 0.905 ? 100 : 10;
  return `${Math.round(of * p)} in ${of}`;
}

// signed writes minutes later or earlier with their sign.
export function signed(value: number): string {
  const text = fixed(value, 0);
  return Number(value.toFixed(0)) > 0 ? `+${text}` : text;
}

// minus puts a true minus before the numbers of a sentence that were written with a hyphen.
export function minus(text: string): string {
  return text.replace(/(^|[\s(])-(?=\d)/g, `$1${MINUS}`);
}

export class Clock {
  private time: Intl.DateTimeFormat;
  private date: Intl.DateTimeFormat;
  private parts: Intl.DateTimeFormat;
  readonly zone: string;
  constructor(zone: string) {
    this.zone = usableZone(zone);
    this.time = new Intl.DateTimeFormat("en-GB", {
      timeZone: this.zone,
      weekday: "short",
      hour: "2-digit",
      minute: "2-digit",
      hourCycle: "h23",
    });
    this.date = new Intl.DateTimeFormat("en-GB", {
      timeZone: this.zone,
      weekday: "short",
      day: "numeric",
      month: "long",
      year: "numeric",
    });
    this.parts = new Intl.DateTimeFormat("en-GB", { timeZone: this.zone, hour: "2-digit", minute: "2-digit", hourCycle: "h23" });
  }
  // at writes "Thu 18:40".
  at(time: string | number | undefined): string {
    const when = moment(time);
    return when === undefined ? "not known" : this.time.format(when).replace(",", "");
  }
  // on writes "Thu 4 June 2026".
  on(time: string | number | undefined): string {
    const when = moment(time);
    return when === undefined ? "not known" : this.date.format(when).replace(",", "");
  }
  // hour writes "18:40".
  hour(time: string | number): string {
    const when = moment(time);
    return when === undefined ? "" : this.parts.format(when);
  }
  // midnight reports whether the clock stands at the start of a day.
  midnight(time: number): boolean {
    return this.hour(time) === "00:00";
  }
}

function usableZone(zone: string): string {
  try {
    new Intl.DateTimeFormat("en-GB", { timeZone: zone });
    return zone || "UTC";
  } catch {
    return "UTC";
  }
}

// moment reads a time; Go's zero time (year 1) means nobody knows it.
export function moment(time: string | number | undefined | null): number | undefined {
  if (time === undefined || time === null) return undefined;
  const when = typeof time === "number" ? time : Date.parse(time);
  return Number.isFinite(when) && when > -3e13 ? when : undefined;
}

// after writes "9 h after placing".
export function after(hours: number): string {
  if (Math.abs(hours) < 0.05) return "as placing starts";
  const size = Math.abs(hours);
  const text = size < 10 ? fixed(size, size % 1 < 0.05 || size % 1 > 0.95 ? 0 : 1) : fixed(size, 0);
  return `${text}${THIN}h ${hours < 0 ? "before" : "after"} placing`;
}

// odds says what one argument does to the odds, from its decibans.
export function odds(shift: number): string {
  const factor = Math.pow(10, Math.abs(shift) / 10);
  const text = factor < 9.5 ? fixed(factor, factor < 1.95 ? 1 : 0) : String(Number(factor.toPrecision(1)));
  return `odds ${shift < 0 ? "÷" : "×"}${THIN}${text}`;
}
