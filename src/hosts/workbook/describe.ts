import { BooleanNumber } from "@univerjs/core";
import type { IFunctionInfo, IFunctionParam } from "@univerjs/engine-formula";
import { FunctionType } from "@univerjs/engine-formula";
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
  return {
    functionName: `SPARE.${entry.id}`,
    functionType: FunctionType.User,
    description,
    abstract: firstSentence(description),
    functionParameter: entry.parameters.map((parameter) => describeParameter(parameter, enums)),
  };
}

function describeParameter(
  parameter: ParameterMetadata,
  enums: readonly EnumMetadata[],
): IFunctionParam {
  const choices = choicesOf(parameter, enums);
  const offered = choices.length > 0 ? ` One of: ${choices.join(", ")}.` : "";
  return {
    name: parameter.name,
    detail: (parameter.description ?? "") + offered,
    example: choices.length > 0 ? choices[0] : "A2",
    require: parameter.optional ? BooleanNumber.FALSE : BooleanNumber.TRUE,
    repeat: BooleanNumber.FALSE,
  };
}

function choicesOf(parameter: ParameterMetadata, enums: readonly EnumMetadata[]): string[] {
  const found = enums.find(({ id }) => id === parameter.customEnumId);
  return (found?.values ?? []).map(({ name, stringValue, numberValue }) =>
    stringValue === undefined ? String(numberValue ?? name) : `"${stringValue}"`,
  );
}

/** Up to the first full stop that ends a sentence, so not the one in "RPE 8.5". */
function firstSentence(text: string): string {
  return /^.*?\.(?=\s|$)/s.exec(text)?.[0] ?? text;
}
