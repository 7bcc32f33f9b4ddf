import { seededRandom } from "../../../src/core/statistics/seededRandom";
import type { HostileFile } from "./file";
import { formulaFiles } from "./formulas";
import { mutatedFiles } from "./mutations";
import { nameFiles } from "./names";
import { partFiles } from "./parts";
import { sheetFiles } from "./sheets";
import { xmlFiles } from "./xml";
import { zipFiles } from "./zip";

/** How many files are changed at random; the others are the same from every seed, but for damage to an archive. */
const mutations = 60;

/** All the hostile files, made anew from a seed. */
export function hostileFiles(seed: number): readonly HostileFile[] {
  const random = seededRandom(seed);
  return [
    ...zipFiles(random),
    ...xmlFiles(),
    ...sheetFiles(),
    ...formulaFiles(),
    ...nameFiles(),
    ...partFiles(),
    ...mutatedFiles(random, mutations),
  ];
}
