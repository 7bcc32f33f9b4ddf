/** The path of the part that says what the part at this path refers to. */
export function relationshipsPath(path: string): string {
  const slash = path.lastIndexOf("/") + 1;
  return `${path.slice(0, slash)}_rels/${path.slice(slash)}.rels`;
}
