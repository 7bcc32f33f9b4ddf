import type { Family } from "./scenario";

export const trend: Family = { name: "trend", scenarios: [] };
