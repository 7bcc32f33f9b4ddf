import { visible } from "../../cells/visible";

/** A file that is not a workbook we can read; the message says why in one line, whatever the file holds. */
export class UnreadableFile extends Error {
  override name = "UnreadableFile";

  constructor(message: string) {
    super(visible(message));
  }
}
