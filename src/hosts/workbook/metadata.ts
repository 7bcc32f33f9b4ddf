import type { Grid } from "../../cells";

/**
 * The catalogue as `functions.json` has it: the metadata format of Excel custom functions, as far
 * as this host reads it.
 */
export interface FunctionsMetadata {
  readonly functions: readonly FunctionMetadata[];
  readonly enums?: readonly EnumMetadata[];
}

export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly parameters: readonly ParameterMetadata[];
}

export interface ParameterMetadata {
  readonly name: string;
  readonly description?: string;
  readonly optional?: boolean;
  readonly customEnumId?: string;
}

export interface EnumMetadata {
  readonly id: string;
  readonly values: readonly EnumValueMetadata[];
}

export interface EnumValueMetadata {
  readonly name: string;
  readonly stringValue?: string;
  readonly numberValue?: number;
  readonly tooltip?: string;
}

/** Every function's implementation by its id. Arguments are cells as a host hands them over. */
export type Implementations = Record<string, (...args: unknown[]) => Grid>;
