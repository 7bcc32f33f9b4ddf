import "./files.css";
import type { PageWorkbook } from "../spreadsheet";
import { printSheet } from "./printView";

const workbookType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** The part of the page that opens and saves files, fetched when it is first needed. */
const loadFiles = () => import(/* webpackMode: "lazy", webpackChunkName: "files" */ "./xlsxFiles");

/**
 * Puts into the page's header what opens a workbook from this computer, saves it back and prints it.
 * A file is read and written in the page itself: nothing of it goes anywhere.
 */
export function addFileActions(workbook: PageWorkbook, header: Element, strip: HTMLElement): void {
  let name = "reps-to-spare.xlsx";
  let unsaved = false;
  workbook.onEdit(() => (unsaved = true));

  const say = (message: string) => {
    strip.textContent = message;
  };

  async function open(file: File): Promise<void> {
    if (unsaved && !window.confirm(`Open ${file.name} and lose what you changed since saving?`)) {
      return;
    }
    say(`Opening ${file.name} …`);
    try {
      const { readFile } = await loadFiles();
      const bytes = new Uint8Array(await file.arrayBuffer());
      const { data, losses } = await readFile(bytes, withoutExtension(file.name));
      await workbook.open(data);
      name = file.name;
      unsaved = false;
      document.title = `${file.name} – Reps to Spare`;
      say(describeOpened(file.name, losses));
    } catch (error) {
      say(`${file.name} was not opened: ${reasonOf(error)}.`);
    }
  }

  async function save(): Promise<void> {
    try {
      const { writeFile } = await loadFiles();
      download(writeFile(workbook), `${withoutExtension(name)}.xlsx`);
      unsaved = false;
      say(`${withoutExtension(name)}.xlsx was saved to your downloads.`);
    } catch (error) {
      say(`The workbook was not saved: ${reasonOf(error)}.`);
    }
  }

  const input = document.createElement("input");
  Object.assign(input, { type: "file", accept: `.xlsx,.xlsm,${workbookType}`, hidden: true });
  input.setAttribute("aria-label", "Workbook to open");
  input.addEventListener("change", () => {
    const [file] = input.files ?? [];
    // Empty again, so that the same file can be opened once more.
    if (file) void open(file).finally(() => (input.value = ""));
  });

  const actions = document.createElement("div");
  actions.className = "file-actions";
  actions.setAttribute("role", "group");
  actions.setAttribute("aria-label", "Workbook file");
  actions.append(
    button("Open", "Open an .xlsx workbook from this computer", () => input.click()),
    button("Save", "Save the workbook to this computer as .xlsx", () => void save()),
    button("Print", "Print the sheet that is shown", () => void printSheet(workbook)),
    input,
  );
  header.querySelector("h1")!.after(actions);
  acceptDrops((file) => void open(file));

  window.addEventListener("beforeunload", (event) => {
    if (unsaved) event.preventDefault();
  });
}

function button(text: string, title: string, onClick: () => void): HTMLButtonElement {
  const element = document.createElement("button");
  Object.assign(element, { type: "button", textContent: text, title });
  element.addEventListener("click", onClick);
  return element;
}

/** Takes a file dropped anywhere on the page, before the spreadsheet can see it. */
function acceptDrops(open: (file: File) => void): void {
  const holdsFile = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
  const mark = (over: boolean) => document.body.classList.toggle("file-over", over);
  document.addEventListener(
    "dragover",
    (event) => {
      if (!holdsFile(event)) return;
      event.preventDefault();
      mark(true);
    },
    true,
  );
  document.addEventListener("dragleave", (event) => {
    if (event.relatedTarget === null) mark(false);
  });
  document.addEventListener(
    "drop",
    (event) => {
      if (!holdsFile(event)) return;
      event.preventDefault();
      event.stopPropagation();
      mark(false);
      const [file] = event.dataTransfer?.files ?? [];
      if (file) open(file);
    },
    true,
  );
}

function download(bytes: Uint8Array, name: string): void {
  const address = URL.createObjectURL(new Blob([bytes.slice()], { type: workbookType }));
  const link = document.createElement("a");
  Object.assign(link, { href: address, download: name });
  link.click();
  // The browser has taken hold of the file by the time it does anything else.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

function describeOpened(name: string, losses: readonly string[]): string {
  if (losses.length === 0) return `${name} is open.`;
  return `${name} is open. A copy saved here will not have its ${inWords(losses)}.`;
}

function inWords(items: readonly string[]): string {
  const last = items.at(-1)!;
  return items.length === 1 ? last : `${items.slice(0, -1).join(", ")} and ${last}`;
}

function withoutExtension(name: string): string {
  return name.replace(/\.[^.]*$/, "");
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
