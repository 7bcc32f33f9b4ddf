/** What the tests use of jStat, an independent library of distributions. */
declare module "jstat" {
  interface Distribution {
    cdf(x: number, ...parameters: number[]): number;
    inv(p: number, ...parameters: number[]): number;
  }
  const library: {
    readonly jStat: Readonly<
      Record<"normal" | "studentt" | "noncentralt" | "chisquare" | "centralF", Distribution>
    >;
  };
  export default library;
}
