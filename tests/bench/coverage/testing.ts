import { groups } from "./groups";
import { retests } from "./retests";
import type { Family } from "./scenario";
import { testDays } from "./testDays";

export const testing: Family = { name: "testing", scenarios: [...retests, ...testDays, ...groups] };
