import type { Family } from "./scenario";

export const testing: Family = { name: "testing", scenarios: [] };
