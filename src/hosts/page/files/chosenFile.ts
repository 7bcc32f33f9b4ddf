/** A file that somebody chose, and where the browser may write back to it, its handle. */
export interface ChosenFile {
  readonly file: File;
  readonly handle?: FileSystemFileHandle;
}

export const WORKBOOK_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** What some browsers offer to choose files that a page may write to, with what we ask of it. */
interface Pickers {
  /** One file, since several are not asked for. */
  showOpenFilePicker?(options: object): Promise<readonly [FileSystemFileHandle]>;
  showSaveFilePicker?(options: object): Promise<FileSystemFileHandle>;
}

const pickers = () => window as unknown as Pickers;

const KINDS = [
  {
    description: "Workbooks",
    accept: { [WORKBOOK_TYPE]: [".xlsx"], "application/zip": [".xlsm"] },
  },
];

/** Lets somebody choose a workbook; nothing where they think better of it. */
export async function chooseFile(): Promise<ChosenFile | undefined> {
  const { showOpenFilePicker } = pickers();
  if (!showOpenFilePicker) return chooseByInput();
  const chosen = await unlessCancelled(showOpenFilePicker({ types: KINDS, id: "workbooks" }));
  if (!chosen) return undefined;
  const [handle] = chosen;
  return { file: await handle.getFile(), handle };
}

/** Lets somebody choose where a workbook is saved; "unsupported" where the browser cannot. */
export async function choosePlace(
  name: string,
): Promise<FileSystemFileHandle | "unsupported" | undefined> {
  const { showSaveFilePicker } = pickers();
  if (!showSaveFilePicker) return "unsupported";
  const types = [{ description: "Workbook", accept: { [WORKBOOK_TYPE]: [".xlsx"] } }];
  return unlessCancelled(showSaveFilePicker({ suggestedName: name, types, id: "workbooks" }));
}

async function unlessCancelled<T>(choosing: Promise<T>): Promise<T | undefined> {
  try {
    return await choosing;
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return undefined;
    throw error;
  }
}

function chooseByInput(): Promise<ChosenFile | undefined> {
  const input = document.createElement("input");
  Object.assign(input, { type: "file", accept: `.xlsx,.xlsm,${WORKBOOK_TYPE}` });
  return new Promise((resolve) => {
    input.addEventListener("change", () => {
      const [file] = input.files ?? [];
      resolve(file && { file });
    });
    input.addEventListener("cancel", () => resolve(undefined));
    input.click();
  });
}

interface DroppedItem extends DataTransferItem {
  getAsFileSystemHandle?(): Promise<FileSystemHandle | null>;
}

/** Takes a file dropped anywhere on the page, before the spreadsheet can see it. */
export function acceptDrops(open: (chosen: ChosenFile) => void): void {
  const holdsFile = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
  const mark = (over: boolean) => document.body.classList.toggle("file-over", over);
  const take = (event: DragEvent) => {
    event.preventDefault();
    event.stopPropagation();
    mark(false);
    const [file] = event.dataTransfer?.files ?? [];
    if (!file) return;
    const items: DroppedItem[] = [...(event.dataTransfer?.items ?? [])];
    const item = items.find(({ kind }) => kind === "file");
    const handle = item?.getAsFileSystemHandle?.();
    void Promise.resolve(handle)
      .catch(() => null)
      .then((found) => {
        open(found?.kind === "file" ? { file, handle: found as FileSystemFileHandle } : { file });
      });
  };
  const listen = (type: "dragover" | "drop", react: (event: DragEvent) => void) => {
    const onlyFiles = (event: DragEvent) => holdsFile(event) && react(event);
    document.addEventListener(type, onlyFiles, true);
  };
  listen("dragover", (event) => {
    event.preventDefault();
    mark(true);
  });
  listen("drop", take);
  document.addEventListener("dragleave", (event) => {
    if (event.relatedTarget === null) mark(false);
  });
}
