/** What the spreadsheet's buttons are called, by the command each carries. */
export const COMMAND_NAMES: Readonly<Record<string, string>> = {
  "univer.command.undo": "Undo",
  "univer.command.redo": "Redo",
  "sheet.command.set-once-format-painter": "Copy the format",
  "sheet.command.clear-selection-all": "Clear contents and format",
  "sheet.command.set-range-font-family": "Font",
  "sheet.command.set-range-fontsize": "Font size",
  "sheet.command.set-range-font-increase": "Larger font",
  "sheet.command.set-range-font-decrease": "Smaller font",
  "sheet.command.set-range-bold": "Bold",
  "sheet.command.set-range-italic": "Italic",
  "sheet.command.set-range-underline": "Underline",
  "sheet.command.set-range-stroke": "Strike through",
  "sheet.command.set-range-text-color": "Text colour",
  "sheet.command.set-background-color": "Fill colour",
  "sheet.command.set-border-basic": "Borders",
  "sheet.command.set-horizontal-text-align": "Align across",
  "sheet.command.set-vertical-text-align": "Align up and down",
  "sheet.command.set-text-wrap": "Wrap text",
  "sheet.command.set-text-rotation": "Turn text",
  "sheet.command.add-worksheet-merge": "Merge cells",
  "sheet.command.numfmt.set.percent": "Percent",
  "sheet.command.numfmt.set.currency": "Currency",
  "sheet.command.numfmt.add.decimal.command": "More decimals",
  "sheet.command.numfmt.subtract.decimal.command": "Fewer decimals",
  "base-ui.operation.toggle-shortcut-panel": "Keyboard shortcuts",
  "sheet.menu.image": "Picture",
  "ui.operation.open-find-dialog": "Find and replace",
  "sheet.menu.sheets-sort": "Sort",
  "sheet.command.toggle-gridlines": "Grid lines",
};

/** The same of controls without a command, by where they stand. */
export const PLACE_NAMES: readonly (readonly [selector: string, name: string])[] = [
  ["[data-u-comp=defined-name] input", "Selected cell"],
  ["[data-u-comp=defined-name] [data-slot=popover-trigger]", "Names in this workbook"],
  ["[data-u-command$=font-family] input", "Font"],
  ["[data-u-command$=fontsize] input", "Font size"],
  ["[data-u-comp=ribbon-toolbar]", "Format"],
  [".univer-w-40.univer-overflow-hidden + button", "Stop computing"],
  // Two of these come with one name.
  ["section[aria-live] ~ section[aria-live]", "Messages"],
];

/** The bar of sheets has four buttons that only their order tells apart. */
export const SHEET_BAR_NAMES = [
  "Add a sheet",
  "All sheets",
  "Earlier sheets",
  "Later sheets",
] as const;

/** Smaller, then larger, on the bar that zooms. */
export const ZOOM_NAMES = ["Zoom out", "Zoom in", "Zoom"] as const;
