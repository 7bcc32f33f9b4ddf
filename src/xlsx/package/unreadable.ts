/** A file that is not a workbook we can read; the message says why in one line. */
export class UnreadableFile extends Error {
  override name = "UnreadableFile";
}
