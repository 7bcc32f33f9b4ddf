/** Points of a smooth function that tell it to about twelve digits between them. */
const POINTS = 16;

/**
 * A smooth function between 0 and `end`, told from its values at the Chebyshev points, by the second barycentric formula
 * (Berrut and Trefethen 2004, SIAM Rev 46:501-517). It is never asked at 0 or at `end` themselves.
 */
export function interpolated(f: (x: number) => number, end: number): (x: number) => number {
  const angles = Array.from(
    { length: POINTS },
    (_point, i) => ((2 * i + 1) * Math.PI) / (2 * POINTS),
  );
  const nodes = angles.map((angle, i) => {
    const point = (end * (1 + Math.cos(angle))) / 2;
    return { point, value: f(point), weight: (i % 2 === 0 ? 1 : -1) * Math.sin(angle) };
  });
  return (x) => {
    let [above, below] = [0, 0];
    for (const { point, value, weight } of nodes) {
      const distance = x - point;
      if (distance === 0) return value;
      const share = weight / distance;
      above += share * value;
      below += share;
    }
    return above / below;
  };
}
