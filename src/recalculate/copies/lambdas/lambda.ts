/** A function of the copy: a name in the workbook that stands for a LAMBDA. */
export interface Lambda {
  readonly name: string;
  readonly parameters: readonly Parameter[];
  /** The formula; other functions of the copy are written as `{NAME}`. */
  readonly body: string;
}

/** A parameter, and what stands for it in a call that leaves it out. */
export interface Parameter {
  readonly name: string;
  readonly omitted?: string;
}

/** Names a LET gives to formulas, in their order; each may use those before it. */
export type Names = Readonly<Record<string, string>>;

/** A function by its parameters, `load reps reserve=0`, and its formula. */
export function lambda(name: string, parameters: string, body: string): Lambda {
  return { name, parameters: parametersOf(parameters), body };
}

function parametersOf(parameters: string): Parameter[] {
  return parameters.split(" ").map((parameter) => {
    const [name = "", omitted] = parameter.split("=");
    return { name, ...(omitted !== undefined && { omitted }) };
  });
}

/** A formula with names for parts of it. */
export function letting(names: Names, formula: string): string {
  const made = Object.entries(names).map(([name, meaning]) => `${name},${meaning},`);
  return made.length === 0 ? formula : `LET(${made.join("")}${formula})`;
}

/**
 * How many of these are missing; an error in any of them is the error of the whole, of several the first. An
 * optional one never counts.
 */
export const missing = (names: readonly string[], optional: readonly string[] = []) =>
  names
    .map((name) => (optional.includes(name) ? `0*LEN(${name})` : `1*(LEN(${name})=0)`))
    .join("+");

/** `""` while any of these is missing, and any error they hold passed on; else the formula. */
export const unless = (names: readonly string[], formula: string) =>
  `IF(${missing(names)}>0,"",${formula})`;

/** The first formula whose condition holds, or else the last. */
export function choose(
  cases: readonly (readonly [condition: string, formula: string])[],
  otherwise: string,
): string {
  return cases.reduceRight((rest, [when, formula]) => `IF(${when},${formula},${rest})`, otherwise);
}

/** Texts as an array down a column. */
export const texts = (words: readonly string[]) =>
  `{${words.map((word) => `"${word}"`).join(";")}}`;
