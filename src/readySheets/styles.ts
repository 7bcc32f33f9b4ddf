import type { Look, Style } from "./format";

/** One look out of named ones, each adding to those before it, with its colours written out. */
export function styleOf(names: readonly string[], { styles, colors }: Look): Style {
  const merged = Object.assign({}, ...names.map((name) => lookUp(name, styles))) as Style;
  const { color, fill, top, bottom } = merged;
  const painted = Object.entries({ color, fill, top, bottom }).flatMap(([part, name]) =>
    name ? [[part, colorOf(name, colors)]] : [],
  );
  return { ...merged, ...(Object.fromEntries(painted) as Partial<Style>) };
}

/** A colour by its name, or as it is when it is written out. */
export function colorOf(color: string, colors: Look["colors"]): string {
  return color.startsWith("#") ? color : lookUp(color, colors);
}

function lookUp<T>(name: string, record: Readonly<Record<string, T>>): T {
  const found = record[name];
  if (found === undefined) throw new Error(`the look does not define "${name}"`);
  return found;
}
