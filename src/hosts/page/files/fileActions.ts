import "./files.css";
import { hasCircle } from "../../../engine/settle";
import { element } from "../../../elements/element";
import type { MessageStrip } from "../messageStrip";
import { printSheet } from "../print/printSheet";
import type { PageWorkbook } from "../spreadsheet";
import type { Library } from "../storage/library";
import { reasonOf } from "../storage/library";
import type { ChosenFile } from "./chosenFile";
import { acceptDrops, chooseFile } from "./chosenFile";
import { saidOfCircles, saidOfKept, saidOfLosses } from "./say";
import { writeFileTo } from "./writeFile";

/** The part of the page that opens and saves files, fetched when it is first needed. */
const loadFiles = () => import(/* webpackMode: "lazy", webpackChunkName: "files" */ "./xlsxFiles");

/** What one does with files, from a button or a key. */
export interface FileActions {
  open(): Promise<void>;
  save(): Promise<void>;
  print(): Promise<void>;
}

/**
 * Opens a workbook from this computer, saves it back and prints it. A file is read and written in the
 * page itself: nothing of it goes anywhere.
 */
export function fileActions(
  workbook: PageWorkbook,
  library: Library,
  { say }: MessageStrip,
): FileActions {
  let opening = false;

  async function openFile({ file, handle }: ChosenFile): Promise<void> {
    say(`Opening ${file.name} …`);
    opening = true;
    try {
      const { readFile } = await loadFiles();
      const name = withoutExtension(file.name);
      const read = await readFile(new Uint8Array(await file.arrayBuffer()), name);
      const { data, losses, kept, circles } = read;
      // What Save writes is .xlsx, so only such a file can be written back to.
      const back = handle && file.name.toLowerCase().endsWith(".xlsx") ? { file: handle } : {};
      await library.openFile(data, name, { losses, ...back });
      const lost = saidOfLosses("A copy saved here will not have its", losses);
      const inCircles = saidOfCircles(circles);
      const kind = inCircles === "" ? "note" : "trouble";
      say(`${file.name} is open.${inCircles}${lost}${saidOfKept(kept)}`, kind);
    } catch (error) {
      say(`${file.name} was not opened: ${reasonOf(error)}.`, "trouble");
    } finally {
      opening = false;
    }
  }

  let wasCircle = false;
  workbook.api.getFormula().calculationEnd(() => {
    const isCircle = hasCircle(workbook.univer);
    if (isCircle && !wasCircle && !opening) void sayCircles();
    wasCircle = isCircle;
  });

  async function sayCircles(): Promise<void> {
    const { circlesNow } = await loadFiles();
    const said = saidOfCircles(circlesNow(workbook)).trim();
    if (said !== "") say(said, "trouble");
  }

  acceptDrops((chosen) => void openFile(chosen));

  return {
    async open() {
      const chosen = await chooseFile();
      if (chosen) await openFile(chosen);
    },

    async save() {
      const { name, book } = library.opened;
      const fileName = `${name}.xlsx`;
      try {
        const { writeFile } = await loadFiles();
        let whole: ReturnType<typeof writeFile> | undefined;
        const bytes = async () => {
          await workbook.computed();
          return (whole ??= writeFile(workbook)).bytes;
        };
        const written = await writeFileTo(book?.file, fileName, bytes);
        if (!written) return;
        const handle = written.to === "file" ? written.handle : undefined;
        await library.savedTo(withoutExtension(handle?.name ?? fileName), handle);
        const where = handle ? `saved to ${handle.name}` : "saved to your downloads";
        const subject = handle ? name : fileName;
        const losses = [...(book?.losses ?? []), ...(whole?.losses ?? [])];
        const lost = saidOfLosses("It is without its", losses);
        say(`${subject} was ${where}.${lost}${saidOfKept(whole?.kept ?? [])}`);
      } catch (error) {
        say(`The workbook was not saved: ${reasonOf(error)}.`, "trouble");
      }
    },

    async print() {
      await workbook.computed();
      await printSheet(workbook);
    },
  };
}

/** The buttons for them. */
export function fileButtons({ open, save, print }: FileActions): HTMLElement[] {
  const button = (text: string, title: string, action: () => Promise<void>) => {
    const made = element("button", { type: "button", title }, text);
    made.addEventListener("click", () => void action());
    return made;
  };
  return [
    button("Open", "Open an .xlsx workbook from this computer (Ctrl+O)", open),
    button("Save", "Save the workbook to this computer as .xlsx (Ctrl+S)", save),
    button("Print", "Print the sheet that is shown (Ctrl+P)", print),
  ];
}

function withoutExtension(name: string): string {
  return name.replace(/\.[^.]*$/, "");
}
