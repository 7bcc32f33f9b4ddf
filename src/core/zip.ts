/** The items of two lists of one length, place by place. */
export function zip<A, B>(ones: readonly A[], others: readonly B[]): [one: A, other: B][] {
  if (ones.length !== others.length) {
    throw new Error(`lists of ${ones.length} and of ${others.length} do not pair up`);
  }
  return ones.map((one, place) => [one, others[place]!]);
}
