/** The keys that a record is known to have. */
export const keysOf = <T extends object>(record: T): (keyof T & string)[] =>
  Object.keys(record) as (keyof T & string)[];

/** The entries of a record, by those keys. */
export const entriesOf = <K extends string, V>(record: Readonly<Record<K, V>>): [K, V][] =>
  Object.entries(record) as [K, V][];
