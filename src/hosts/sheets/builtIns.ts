/**
 * Apps Script does not say which built-in functions its V8 has. This is the only one we use that is younger than
 * the language level the script is compiled for, so it comes along where it is missing.
 */
if (!("at" in Array.prototype)) {
  Object.defineProperty(Array.prototype, "at", {
    configurable: true,
    writable: true,
    value(this: unknown[], index: number): unknown {
      return this[index < 0 ? this.length + index : index];
    },
  });
}

export {};
