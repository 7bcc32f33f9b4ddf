import type { Implementation } from "../functions/implementations";

/** The catalogue, as far as a workbook reads it. */
export interface FunctionsMetadata {
  readonly functions: readonly FunctionMetadata[];
  readonly enums?: readonly EnumMetadata[];
}

export interface FunctionMetadata {
  readonly id: string;
  readonly description?: string;
  readonly parameters: readonly ParameterMetadata[];
  /** Whole formulas that use the function. */
  readonly examples?: readonly string[];
}

export interface ParameterMetadata {
  readonly name: string;
  readonly description?: string;
  readonly optional?: boolean;
  readonly customEnumId?: string;
}

export interface EnumMetadata {
  readonly id: string;
  readonly values: readonly { readonly stringValue: string }[];
}

/** Every function's implementation by its id. */
export type Implementations = Readonly<Record<string, Implementation>>;
