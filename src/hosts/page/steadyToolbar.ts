import type { IMenuSchema } from "@univerjs/preset-sheets-core";
import { DesktopRibbonService } from "@univerjs/preset-sheets-core";
import { onceSoon } from "./onceSoon";

/*
 * The spreadsheet makes its toolbar anew, every button and then each once more to measure it, whenever a part of it
 * adds to the menus, a hundred times while the page opens, and whenever a button is said to be hidden or not, which all
 * of them say again with each key. Here additions that come together make one new toolbar, and so does a button that
 * comes or goes. What else a button shows it follows by itself.
 */

const ribbon = DesktopRibbonService.prototype;

ribbon["_initRibbonSubscription"] = function () {
  const updateSoon = onceSoon(() => this["_updateRibbon"]());
  let focused: string | null | undefined;
  this.disposeWithMe(this["_menuManagerService"].menuChanged$.subscribe(updateSoon));
  this.disposeWithMe(
    this["_univerInstanceService"].focused$.subscribe((unit: string | null) => {
      if (unit !== focused) updateSoon();
      focused = unit;
    }),
  );
};

const setRibbon = ribbon["_setRibbon"];

ribbon["_setRibbon"] = function (tabs: IMenuSchema[]) {
  const before = buttonsOf(this["_ribbon$"].getValue());
  const after = buttonsOf(tabs);
  const isSame = after.length === before.length && after.every((one, at) => one === before[at]);
  if (!isSame) setRibbon.call(this, tabs);
};

/** Tabs hold groups, and those the buttons. */
const buttonsOf = (tabs: readonly IMenuSchema[]): IMenuSchema[] =>
  tabs.flatMap((tab) => tab.children ?? []).flatMap((group) => group.children ?? []);
