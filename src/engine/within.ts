/** A timer knows no more milliseconds. */
const LONGEST_TIMER = 2 ** 31 - 1;

/** What work comes to, unless that takes longer than so many seconds, which is said then. */
export async function within<T>(
  seconds: number | undefined,
  work: Promise<T>,
  late = `it took longer than ${seconds} seconds`,
): Promise<T> {
  if (seconds === undefined) return work;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const ending = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(late)), Math.min(seconds * 1000, LONGEST_TIMER));
  });
  return Promise.race([work, ending]).finally(() => clearTimeout(timer));
}
