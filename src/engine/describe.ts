import { splitArguments } from "../formula/calls";
import { BooleanNumber } from "@univerjs/core";
import type { IFunctionInfo } from "@univerjs/engine-formula";
import { FunctionType } from "@univerjs/engine-formula";
import { firstSentence } from "../functions/firstSentence";
import type {
  EnumMetadata,
  FunctionMetadata,
  FunctionsMetadata,
  ParameterMetadata,
} from "./metadata";

/** The catalogue as the workbook's autocomplete and argument help show it. */
export function describeFunctions({ functions, enums = [] }: FunctionsMetadata): IFunctionInfo[] {
  return functions.map((entry) => describeFunction(entry, enums));
}

function describeFunction(entry: FunctionMetadata, enums: readonly EnumMetadata[]): IFunctionInfo {
  const description = entry.description ?? "";
  // The help puts an example together from one for every parameter; ours is a whole formula.
  const example = argumentsOf(entry.examples?.[0] ?? "");
  return {
    functionName: `SPARE.${entry.id}`,
    functionType: FunctionType.User,
    description,
    abstract: firstSentence(description),
    functionParameter: entry.parameters.map((parameter, index) => ({
      name: parameter.name,
      detail: describeParameter(parameter, enums),
      example: example[index] ?? `[${parameter.name}]`,
      require: parameter.optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
      repeat: BooleanNumber.FALSE,
    })),
  };
}

function describeParameter(parameter: ParameterMetadata, enums: readonly EnumMetadata[]): string {
  const choices = choicesOf(parameter, enums);
  const offered = choices.length > 0 ? ` One of: ${choices.join(", ")}.` : "";
  return (parameter.description ?? "") + offered;
}

function choicesOf(parameter: ParameterMetadata, enums: readonly EnumMetadata[]): string[] {
  const found = enums.find(({ id }) => id === parameter.customEnumId);
  return (found?.values ?? []).map(({ stringValue }) => `"${stringValue}"`);
}

/** What stands between a formula's outermost brackets, split at the commas that part its arguments. */
function argumentsOf(formula: string): string[] {
  const inside = /\((.*)\)$/.exec(formula)?.[1] ?? "";
  return inside === "" ? [] : splitArguments(inside).map((argument) => argument.trim());
}
