import type { CatalogueFunction, CustomEnum, Parameter } from "../functions/catalogue";

export type { Implementations } from "../functions/implementations";

/** The catalogue, as far as a workbook reads it; only help needs more than names. */
export interface FunctionsMetadata {
  readonly functions: readonly FunctionMetadata[];
  readonly enums?: readonly EnumMetadata[];
}

export interface FunctionMetadata
  extends
    Pick<CatalogueFunction, "id">,
    Partial<Pick<CatalogueFunction, "description" | "examples">> {
  readonly parameters: readonly ParameterMetadata[];
}

export type ParameterMetadata = Pick<Parameter, "name" | "optional" | "customEnumId"> &
  Partial<Pick<Parameter, "description">>;

export interface EnumMetadata extends Pick<CustomEnum, "id"> {
  readonly values: readonly Pick<CustomEnum["values"][number], "stringValue">[];
}
