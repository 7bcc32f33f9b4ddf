/** Whether a text has a sign that stands for others: `*`, `?`, or `~` before one of the three. */
export const hasWildcards = (text: string): boolean => /[*?]|~[~*?]/.test(text);

/** The pattern of a text in which `*` is any text, `?` any sign, and `~` takes the next as it is. */
export function wildcardPattern(text: string, where: "whole" | "inside"): RegExp {
  const source = text.replace(/~[~*?]|[\s\S]/g, (sign) => {
    if (sign === "*") return "[\\s\\S]*";
    if (sign === "?") return "[\\s\\S]";
    return sign.slice(-1).replace(/[\\^$.*+?()[\]{}|]/g, "\\$&");
  });
  return new RegExp(where === "whole" ? `^${source}$` : source, "i");
}
