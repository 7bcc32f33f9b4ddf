/** `name`, or the next of "name 2", "name 3" … that nothing here is called yet. */
export function freeName(name: string, taken: readonly { readonly name: string }[]): string {
  const names = new Set(taken.map((each) => each.name));
  if (!names.has(name)) return name;
  let number = 2;
  while (names.has(`${name} ${number}`)) number++;
  return `${name} ${number}`;
}
