/** A result of another context as this one's own. */
export const inThisRealm = (value: unknown): unknown =>
  typeof value === "string" ? value : (JSON.parse(JSON.stringify(value)) as unknown);
