/** The cell functions on grids, as `import { call, catalogue } from "reps-to-spare/functions"` gives them. */
export { call } from "./call";
export { catalogue } from "./catalogue";
export { CellError } from "../cells/error";
export type { ErrorCode } from "../cells/error";
export type { Content, Grid } from "../cells/grid";
export type {
  Catalogue,
  CatalogueFunction,
  CustomEnum,
  FunctionMetadata,
  Metadata,
  Parameter,
} from "../functions/catalogue";
