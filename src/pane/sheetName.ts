/** The name itself, or with the first number that makes it one nobody has: "Log", "Log 2", "Log 3". */
export function freeName(name: string, taken: readonly string[]): string {
  const lower = new Set(taken.map((each) => each.toLowerCase()));
  let free = name;
  for (let number = 2; lower.has(free.toLowerCase()); number++) free = `${name} ${number}`;
  return free;
}
