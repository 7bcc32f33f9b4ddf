import { comparisons } from "./comparisons";
import { reserve } from "./reserve";
import type { Family } from "./scenario";
import { studies } from "./studies";
import { testing } from "./testing";
import { trend } from "./trend";

/** Every family of functions that gives intervals or chances; each has a table in docs/accuracy.md. */
export const families: readonly Family[] = [trend, reserve, testing, comparisons, studies];
