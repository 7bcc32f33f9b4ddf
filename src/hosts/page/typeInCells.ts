import type { Univer } from "@univerjs/core";
import { ILayoutService } from "@univerjs/preset-sheets-core";

/**
 * Has the next key go to the selected cell. Where there is no mouse nothing happens: a keyboard would cover half of a
 * phone before anybody wants to type.
 */
export function typeInCells(univer: Univer): void {
  if (!matchMedia("(pointer: fine)").matches) return;
  univer.__getInjector().get(ILayoutService).focus();
}

/** A press on a sheet's tab shows its cells, in which one types next; a second one, at once, renames the sheet. */
export function typeInCellsOfPressedTab(univer: Univer, place: HTMLElement): void {
  place.addEventListener("click", ({ target, detail }) => {
    const isTab = (target as Element).closest("[data-u-comp=slide-tab-bar]") !== null;
    if (isTab && detail === 1) typeInCells(univer);
  });
}
