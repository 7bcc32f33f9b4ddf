/** What does some work once, however often it is asked for before `later` comes: when what is being done is done. */
export function onceSoon(
  work: () => void,
  later: (run: () => void) => void = queueMicrotask,
): () => void {
  let isDue = false;
  return () => {
    if (isDue) return;
    isDue = true;
    later(() => {
      isDue = false;
      work();
    });
  };
}
