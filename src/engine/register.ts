import type { ICommandInfo, Univer } from "@univerjs/core";
import { ICommandService } from "@univerjs/core";
import type { ISetFormulaCalculationNotificationMutation } from "@univerjs/engine-formula";
import {
  FormulaExecuteStageType,
  IFunctionService,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
} from "@univerjs/engine-formula";
import { IDescriptionService } from "@univerjs/sheets-formula";
import { correctEngine } from "./corrections";
import { describeFunctions } from "./describe";
import { CellFunction } from "./executor";
import type { Messages } from "./messages";
import { createMessages } from "./messages";
import type { FunctionsMetadata, Implementations } from "./metadata";
import "./sheetBounds";
import { implementationOf } from "../functions/implementationOf";
import type { Spelling } from "../formula/spelling";
import { spell } from "../formula/spelling";

const SPELLINGS: readonly Spelling[] = ["excel", "excel file", "sheets"];

/**
 * Teaches a workbook every function of the catalogue, with its help, and returns the messages that
 * go with the errors in its cells.
 *
 * All three spellings compute, so that a formula pasted from another program answers; only
 * Excel's, the one we write, is offered while typing.
 */
export function registerFunctions(
  univer: Univer,
  metadata: FunctionsMetadata,
  implementations: Implementations,
): Messages {
  const injector = univer.__getInjector();
  const messages = createMessages();

  const executors = metadata.functions.flatMap(({ id }) => {
    const implementation = implementationOf(implementations, id);
    return SPELLINGS.map(
      (spelling) => new CellFunction(spell(id, spelling).toUpperCase(), implementation, messages),
    );
  });
  const functions = injector.get(IFunctionService);
  functions.registerExecutors(...executors);
  injector.get(IDescriptionService).registerDescriptions(describeFunctions(metadata));

  correctEngine(functions);
  injector.get(ICommandService).beforeCommandExecuted((command) => {
    if (startsPass(command)) messages.startCalculation();
  });
  return messages;
}

/** The engine computes in passes: all the formulas, then again what depends on a range they spilled. */
function startsPass({ id, params }: Readonly<ICommandInfo>): boolean {
  if (id === SetFormulaCalculationStartMutation.id) return true;
  if (id !== SetFormulaCalculationNotificationMutation.id) return false;
  const { stageInfo } = params as ISetFormulaCalculationNotificationMutation;
  return stageInfo?.stage === FormulaExecuteStageType.START_CALCULATION_ARRAY_FORMULA;
}
