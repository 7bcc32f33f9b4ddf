import { mkdtempSync, existsSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DOMParser } from "@xmldom/xmldom";
import { OfficeAddinManifest } from "office-addin-manifest";
import { convert } from "office-addin-manifest-converter";
import { describe, expect, test } from "vitest";
import { PNG } from "pngjs";
import { rebase } from "../../../src/tools/excelConfig";
import { DEVELOPMENT_BASE, ROOT } from "../../../src/tools/paths";
import { built } from "../../built";
import { caught, elementAt } from "../../present";

const BUILT = built("manifest.xml");
const source = readFileSync(join(ROOT, "manifest.xml"), "utf8");

/**
 * The order in which an add-in only manifest must have its elements, for those we use and their neighbours: "How
 * to find the proper order of manifest elements", Office Add-ins documentation, Microsoft Learn.
 */
const PUBLISHED_ORDER: Record<string, string[]> = {
  OfficeApp: [
    "Id",
    "AlternateId",
    "Version",
    "ProviderName",
    "DefaultLocale",
    "DisplayName",
    "Description",
    "IconUrl",
    "HighResolutionIconUrl",
    "SupportUrl",
    "AppDomains",
    "Hosts",
    "Requirements",
    "DefaultSettings",
    "Permissions",
    "Dictionary",
    "VersionOverrides",
    "ExtendedOverrides",
  ],
  VersionOverrides: [
    "Description",
    "Requirements",
    "Hosts",
    "Resources",
    "WebApplicationInfo",
    "EquivalentAddins",
  ],
  Host: ["Runtimes", "AllFormFactors", "DesktopFormFactor", "MobileFormFactor"],
  DesktopFormFactor: ["GetStarted", "FunctionFile", "ExtensionPoint"],
  AllFormFactors: ["ExtensionPoint"],
  ExtensionPoint: ["Script", "Page", "Metadata", "Namespace", "OfficeTab", "OfficeMenu"],
  Resources: ["bt:Images", "bt:Urls", "bt:ShortStrings", "bt:LongStrings"],
  OfficeTab: ["Group"],
  Group: ["Label", "Icon", "Control"],
  Control: ["Label", "ToolTip", "Supertip", "Icon", "Action"],
  Supertip: ["Title", "Description"],
  Action: ["TaskpaneId", "SourceLocation", "FunctionName"],
  GetStarted: ["Title", "Description", "LearnMoreUrl"],
};

describe("the add-in only manifest", () => {
  test("reads back with the platform's own tool", async () => {
    const info = await OfficeAddinManifest.readManifestFile(BUILT);
    expect(info).toMatchObject({
      displayName: "Reps to Spare",
      hosts: ["Workbook"],
      officeAppType: "TaskPaneApp",
    });
    expect(info.id).toMatch(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/);
  });

  test("converts with the platform's converter without an error", async () => {
    const folder = mkdtempSync(join(tmpdir(), "spare-manifest-"));
    await convert(BUILT, folder);
    const converted = JSON.parse(readFileSync(join(folder, "manifest.json"), "utf8")) as {
      name: { short: string };
    };
    expect(converted.name.short).toBe("Reps to Spare");
  });

  test("has its elements in the published order", () => {
    const document = new DOMParser().parseFromString(source, "text/xml");
    const misplaced: string[] = [];
    visit(document.documentElement);
    expect(misplaced).toEqual([]);

    function visit(element: Element): void {
      const children = Array.from(element.childNodes).filter(
        (node): node is Element => node.nodeType === 1,
      );
      const order = PUBLISHED_ORDER[element.tagName];
      if (order !== undefined) {
        let before = 0;
        for (const { tagName } of children) {
          const place = order.indexOf(tagName);
          if (place === -1 || place < before) misplaced.push(`${element.tagName} > ${tagName}`);
          before = place;
        }
      }
      children.forEach(visit);
    }
  });

  test("puts one button on the Home tab, which opens the pane", () => {
    const document = new DOMParser().parseFromString(source, "text/xml");
    const only = (tag: string, within: Element = document.documentElement) => {
      const found = Array.from(within.getElementsByTagName(tag));
      expect(found, tag).toHaveLength(1);
      return elementAt(found, 0);
    };
    const desktop = only("DesktopFormFactor");
    expect(only("OfficeTab", desktop).getAttribute("id")).toBe("TabHome");
    const button = only("Control", desktop);
    expect(button.getAttribute("xsi:type")).toBe("Button");
    const action = only("Action", button);
    expect(action.getAttribute("xsi:type")).toBe("ShowTaskpane");
    const page = only("SourceLocation", action).getAttribute("resid")!;
    expect(source).toContain(`<bt:Url id="${page}" DefaultValue="${DEVELOPMENT_BASE}pane.html"/>`);
    for (const icon of Array.from(desktop.getElementsByTagName("Icon"))) {
      const sizes = Array.from(icon.getElementsByTagName("bt:Image"));
      expect(sizes.map((image) => image.getAttribute("size"))).toEqual(["16", "32", "80"]);
    }
  });

  test("keeps its texts to the length that the ribbon allows", () => {
    const texts = (list: string) =>
      caught(source, new RegExp(`<bt:${list}>(.*?)</bt:${list}>`, "gs")).flatMap((resources) =>
        caught(resources, /DefaultValue="([^"]*)"/g),
      );
    expect(texts("ShortStrings").length).toBeGreaterThan(2);
    for (const text of texts("ShortStrings")) expect(text.length).toBeLessThanOrEqual(125);
    expect(texts("LongStrings")).toHaveLength(1);
    for (const text of texts("LongStrings")) expect(text.length).toBeLessThanOrEqual(250);
  });

  test("names only resources that it defines", () => {
    const used = caught(source, /resid="([^"]+)"/g);
    const defined = caught(source, /<bt:\w+ id="([^"]+)"/g);
    expect(used.length).toBeGreaterThan(3);
    expect(defined).toEqual(expect.arrayContaining(used));
    expect(new Set(defined).size).toBe(defined.length);
  });

  test("points only at files that are in dist", () => {
    const manifest = readFileSync(BUILT, "utf8");
    const files = caught(manifest, /DefaultValue="https:\/\/[^/"]+\/([^"]*)"/g);
    expect(files.length).toBeGreaterThan(8);
    for (const file of files) expect(existsSync(built(file)), file).toBe(true);
  });

  test("moves every address to another host, with or without a last slash", () => {
    for (const base of ["https://your.host/path/", "https://your.host/path"]) {
      const moved = rebase(source, base);
      expect(moved).not.toContain("localhost");
      expect(moved).toContain("<AppDomain>https://your.host</AppDomain>");
      expect(moved).toContain('"https://your.host/path/functions.json"');
    }
    expect(rebase(source, DEVELOPMENT_BASE)).toBe(source);
  });

  test("has an icon of every size that Excel asks for", () => {
    for (const size of [16, 32, 64, 80, 128]) {
      const png = readFileSync(built("icons", `icon-${size}.png`));
      expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([size, size]);
    }
  });

  test("has an icon drawn for 16 pixels, no edge of it between two of them", () => {
    const { data } = PNG.sync.read(readFileSync(built("icons", "icon-16.png")));
    const colours = new Set(
      Array.from({ length: 256 }, (_pixel, at) =>
        data.subarray(4 * at, 4 * at + 4).toString("hex"),
      ),
    );
    expect(colours).toEqual(new Set(["0e5a5eff", "ffffffff", "00000000"]));
  });
});
