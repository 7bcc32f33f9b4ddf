/** The part of Excel's custom-functions runtime that we use. */
export interface CustomFunctionsHost {
  associate(id: string, compute: (...args: unknown[]) => unknown): void;
  readonly Error: new (code: string, message?: string) => object;
  readonly ErrorCode: Readonly<Record<ExcelErrorName, string>>;
}

export type ExcelErrorName =
  "invalidValue" | "notAvailable" | "divisionByZero" | "invalidNumber" | "nullReference";
