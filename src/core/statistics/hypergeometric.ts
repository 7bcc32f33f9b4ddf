/**
 * The chance of each possible count in the first cell of a two-by-two table whose margins are fixed: of
 * `marked` among `total`, how many fall into a draw of `drawn`. The first entry belongs to the smallest
 * possible count, `least`.
 *
 * Neighbouring chances have a simple ratio, so the whole distribution is one walk along it, in logarithms
 * so that nothing underflows on the way.
 */
export function hypergeometric(
  total: number,
  marked: number,
  drawn: number,
): { least: number; chances: number[] } {
  const least = Math.max(0, drawn + marked - total);
  const most = Math.min(marked, drawn);
  let log = 0;
  const logs = [log];
  for (let count = least; count < most; count++) {
    const ratio =
      ((marked - count) * (drawn - count)) / ((count + 1) * (total - marked - drawn + count + 1));
    log += Math.log(ratio);
    logs.push(log);
  }
  const peak = logs.reduce((a, b) => Math.max(a, b));
  const weights = logs.map((log) => Math.exp(log - peak));
  const all = weights.reduce((a, b) => a + b);
  return { least, chances: weights.map((weight) => weight / all) };
}
