import type { Catalogue } from "../functions/catalogue";

/** The build writes in its place what it reads from the comments beside the functions. */
declare const CATALOGUE: Catalogue;

/** Every cell function: its arguments, result, errors, examples and source, as the help shows them. */
export const catalogue: Catalogue = CATALOGUE;
