/** A family as a heading: "strength" is "Strength". */
export const familyTitle = (family: string): string =>
  family.charAt(0).toUpperCase() + family.slice(1);
