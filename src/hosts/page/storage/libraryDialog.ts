import "./libraryDialog.css";
import { element } from "../../../elements/element";
import type { MessageStrip } from "../messageStrip";
import type { Book } from "./database";
import type { Library } from "./library";
import { reasonOf } from "./library";

/** The dialog that lists the workbooks on this device, and the button that opens it. */
export function libraryButton(library: Library, { say }: MessageStrip): HTMLButtonElement {
  const button = element("button", {
    type: "button",
    className: "library-button",
    title: "The workbooks on this device",
  });
  const name = () => {
    button.textContent = library.opened.name;
    document.title = `${library.opened.name} – Reps to Spare`;
  };
  const dialog = element("dialog", { className: "library", "aria-label": "Workbooks" });
  document.body.append(dialog);
  button.setAttribute("aria-haspopup", "dialog");
  button.addEventListener("click", () => {
    void show().then(() => {
      dialog.showModal();
    });
  });
  // A click beside the list closes it, as Escape does.
  dialog.addEventListener("click", (event) => {
    if (event.target === dialog) dialog.close();
  });
  library.onChange(() => {
    name();
    if (dialog.open) void show();
  });
  name();

  /** Does something with a workbook; the dialog closes where another one opens. */
  async function attempt(what: string, work: () => Promise<void>, close = false): Promise<void> {
    if (close) dialog.close();
    try {
      await work();
    } catch (error) {
      say(`${what}: ${reasonOf(error)}.`, "trouble");
    }
  }

  async function show(): Promise<void> {
    const books = await library.list();
    const list = element("ul", {}, ...books.map(row));
    const close = action("Close", () => dialog.close());
    dialog.replaceChildren(
      element("header", {}, element("h2", {}, "Workbooks on this device"), close),
      books.length > 0
        ? list
        : element("p", {}, "None yet. The first thing you change is kept here."),
      element(
        "footer",
        {},
        action("New", () => void attempt("No new workbook", () => library.openNew(), true)),
        action(
          "Demo",
          () => void attempt("The demo was not opened", () => library.openDemo(), true),
        ),
        element(
          "p",
          {},
          "Kept in this browser, on this device only. Save a workbook to a file to have it elsewhere.",
        ),
      ),
    );
  }

  function row(book: Book): HTMLElement {
    const isOpen = book.id === library.opened.book?.id;
    const open = element("button", { type: "button", className: "open" }, book.name);
    if (isOpen) open.setAttribute("aria-current", "true");
    open.addEventListener("click", () => {
      void attempt(`${book.name} was not opened`, () => library.openBook(book.id), true);
    });
    const about = element("span", { className: "about" }, isOpen ? "open" : when(book.changed));
    const line = element("li", {}, open, about);
    line.append(
      action("Rename", () => rename(book, line), book.name),
      action("Copy", () => void attempt("Not copied", () => library.copy(book.id)), book.name),
      action("Delete", () => remove(book), book.name),
    );
    return line;
  }

  function rename(book: Book, line: HTMLElement): void {
    const field = element("input", { type: "text", value: book.name, "aria-label": "Name" });
    const form = element("form", {}, field, element("button", { type: "submit" }, "Rename"));
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      const typed = field.value.trim();
      if (typed) void attempt("Not renamed", () => library.rename(book.id, typed));
    });
    field.addEventListener("keydown", (event) => {
      if (event.key !== "Escape") return;
      event.preventDefault();
      void show();
    });
    line.replaceChildren(form);
    field.select();
    field.focus();
  }

  function remove(book: Book): void {
    const lost = book.saved === undefined ? " It was never saved to a file." : "";
    if (!window.confirm(`Delete ${book.name} from this device?${lost}`)) return;
    void attempt("Not deleted", () => library.remove(book.id));
  }

  return button;
}

/** A button that says what it does; `to` names the workbook for who cannot see the row. */
function action(text: string, onClick: () => void, to?: string): HTMLButtonElement {
  const button = element("button", { type: "button" }, text);
  if (to !== undefined) button.setAttribute("aria-label", `${text} ${to}`);
  button.addEventListener("click", onClick);
  return button;
}

const when = (time: number) =>
  new Date(time).toLocaleString(navigator.language, { dateStyle: "medium", timeStyle: "short" });
