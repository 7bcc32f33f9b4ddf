/** A timer knows no more milliseconds. */
const LONGEST_TIMER = 2 ** 31 - 1;

/** What work comes to, unless that takes longer than so many seconds. */
export async function within<T>(seconds: number | undefined, work: Promise<T>): Promise<T> {
  if (seconds === undefined) return work;
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    const reason = new Error(`it took longer than ${seconds} seconds`);
    timer = setTimeout(() => reject(reason), Math.min(seconds * 1000, LONGEST_TIMER));
  });
  return Promise.race([work, late]).finally(() => clearTimeout(timer));
}
