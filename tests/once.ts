/** The same function, which finds a thing once for all the tests of a process and keeps it. They only read it. */
export function once<Key = void, Found = unknown>(find: (key: Key) => Found): (key: Key) => Found {
  const found = new Map<Key, Found>();
  return (key) => {
    if (!found.has(key)) found.set(key, find(key));
    return found.get(key)!;
  };
}
