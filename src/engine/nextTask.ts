/** When all that follows from what was done already has run, and something else may. */
export const nextTask = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
