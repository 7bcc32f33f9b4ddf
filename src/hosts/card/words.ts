import type { Side } from "../../cards/loads";

/** A number as the phone's language writes it, with the digits that a sheet's cell would show. */
export function shown(value: number, digits = 4): string {
  return value.toLocaleString(undefined, { maximumFractionDigits: digits, useGrouping: false });
}

/** What goes on each side of the bar, in numbers. */
export function plateWords(side: Side | undefined): string {
  if (!side) return "lighter than the bar";
  const plates = side.plates.map((plate) => shown(plate)).join(" + ");
  const words = plates === "" ? "bar only" : `each side ${plates}`;
  return side.exact ? words : `${words}, the nearest below`;
}

/** "2026-01-05" as "5 Jan 2026", which no country reads as May. */
export function dayShown(day: string): string {
  const date = new Date(`${day}T12:00:00Z`);
  return Number.isNaN(date.getTime())
    ? day
    : date.toLocaleDateString("en-GB", {
        day: "numeric",
        month: "short",
        year: "numeric",
        timeZone: "UTC",
      });
}
