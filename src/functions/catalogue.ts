/** The shape of functions.json, and of the catalogue that readers get. */

export interface Parameter {
  readonly name: string;
  readonly description: string;
  readonly type: "any" | "string" | "number" | "boolean";
  readonly dimensionality: "scalar" | "matrix";
  readonly optional?: boolean;
  readonly customEnumId?: string;
}

export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly helpUrl?: string;
  readonly parameters: readonly Parameter[];
  readonly result: { readonly type?: string; readonly dimensionality?: string };
}

export interface CustomEnum {
  readonly id: string;
  readonly type: "string";
  readonly values: readonly {
    readonly name: string;
    readonly stringValue: string;
    readonly tooltip: string;
  }[];
}

export interface Metadata {
  readonly allowCustomDataForDataTypeAny: true;
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly FunctionMetadata[];
  readonly enums: readonly CustomEnum[];
}

export interface CatalogueFunction extends FunctionMetadata {
  /** The coach's family, which is the name of its folder. */
  readonly family: string;
  readonly returns: string;
  readonly errors: string;
  readonly examples: readonly string[];
  readonly source: string;
}

export interface Catalogue extends Omit<Metadata, "functions"> {
  readonly functions: readonly CatalogueFunction[];
}
