/** What the engine computes, by name in upper case. */
export async function knownFunctions(): Promise<ReadonlySet<string>> {
  const engine = await import("@univerjs/engine-formula");
  const families = [
    engine.functionArray,
    engine.functionCompatibility,
    engine.functionCube,
    engine.functionDatabase,
    engine.functionDate,
    engine.functionEngineering,
    engine.functionFinancial,
    engine.functionInformation,
    engine.functionLogical,
    engine.functionLookup,
    engine.functionMath,
    engine.functionMeta,
    engine.functionStatistical,
    engine.functionText,
    engine.functionUniver,
    engine.functionWeb,
  ];
  return new Set(
    families.flatMap((family) => family.map(([, name]) => String(name).toUpperCase())),
  );
}
