import { readFileSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { describe, expect, it } from "vitest";
import rooms from "../src/rooms.json";
import { ROOT } from "../src/tools/paths";
import { caught } from "./present";
import { importsOf, sourcesIn, sourceText } from "./sources";

/** What the files of one room may import, beside the room itself. */
interface Allowed {
  readonly rooms: readonly string[];
  readonly packages: readonly string[];
}
const table = Object.entries<Allowed>(rooms.src);

const roomOf = (file: string) =>
  table.find(([room]) => `${relative("src", file)}/`.startsWith(`${room}/`))?.[0];

interface Import {
  readonly file: string;
  /** The room of a file of ours; nothing for a package. */
  readonly room: string | undefined;
  /** The package's name; nothing for a file of ours. */
  readonly packageName: string | undefined;
}

/** Every import of a folder's files, or of those that mention something; one of a file outside the rooms, such as package.json, is none. */
function importsIn(folder: string, mentioning = ""): Import[] {
  return sourcesIn(folder)
    .filter((file) => sourceText(file).includes(mentioning))
    .flatMap((file) =>
      importsOf(file).flatMap((name): Import[] => {
        if (!name.startsWith(".")) return [{ file, room: undefined, packageName: name }];
        const room = roomOf(normalize(join(dirname(file), name)));
        return room === undefined ? [] : [{ file, room, packageName: undefined }];
      }),
    );
}

const allows = (packages: readonly string[], name: string) =>
  packages.some((each) => each === "*" || name === each || name.startsWith(`${each}/`));

describe("the rooms", () => {
  it("are all in the table: every file of the program lies in one", () => {
    expect(sourcesIn("src").filter((file) => roomOf(file) === undefined)).toEqual([]);
  });

  it("are seen through: their imports are found", () => {
    const arrows = (room: string) =>
      new Set(
        importsIn(join("src", room)).flatMap(({ room, packageName }) => room ?? packageName!),
      );
    expect([...arrows("core")].some((name) => name.startsWith("@stdlib/"))).toBe(true);
    expect(arrows("functions")).toEqual(new Set(["cells", "core", "functions"]));
    expect(arrows("engine").has("@univerjs/core/facade")).toBe(true);
    expect(arrows("engine").has("xlsx")).toBe(true);
  });

  it.each(table)("hold to the table: %s", (room, { rooms, packages }) => {
    const strangers = importsIn(join("src", room)).filter(({ room: other, packageName }) =>
      other === undefined
        ? !allows(packages, packageName!)
        : other !== room && !rooms.includes(other),
    );
    expect(strangers).toEqual([]);
  });

  it.each(table.filter(([, { packages }]) => !packages.includes("*")))(
    "have no arrow in the table that no file needs: %s",
    (room, { rooms, packages }) => {
      const needed = importsIn(join("src", room));
      expect(rooms.filter((other) => !needed.some((one) => one.room === other))).toEqual([]);
      const names = needed.flatMap(({ packageName }) => packageName ?? []);
      expect(packages.filter((each) => !names.some((name) => allows([each], name)))).toEqual([]);
    },
  );

  it("import in one direction", () => {
    const inTurn: string[] = [];
    // A room comes after all it imports; where none can come next, the rest stand in a circle.
    for (let before = -1; before !== inTurn.length;) {
      before = inTurn.length;
      const next = table.find(
        ([room, { rooms }]) =>
          !inTurn.includes(room) && rooms.every((other) => inTurn.includes(other)),
      );
      if (next) inTurn.push(next[0]);
    }
    expect(table.map(([room]) => room).filter((room) => !inTurn.includes(room))).toEqual([]);
  });

  it("keep the hosts apart", () => {
    const hosts = table.filter(([room]) => room.startsWith("hosts/"));
    expect(hosts.length).toBeGreaterThan(3);
    for (const [room, { rooms }] of hosts) {
      expect(
        rooms.filter((other) => other.startsWith("hosts/")),
        room,
      ).toEqual([]);
    }
  });

  it("are described in DEVELOPERS.md as the table has them", () => {
    const rows = readFileSync(join(ROOT, "DEVELOPERS.md"), "utf8").matchAll(
      /^\| *`src\/(\S+)\/` *\|.*\|([^|]*)\|$/gm,
    );
    const described = [...rows].map(([, room, allowed = ""]) => [
      room,
      caught(allowed, /`([^`]+?)\/?`/g),
    ]);
    expect(described).toEqual(
      table.map(([room, { rooms, packages }]) => [
        room,
        packages.includes("*") ? [] : [...rooms, ...packages],
      ]),
    );
  });

  it("run anywhere: functions, cells and science touch no page, network, file or console", () => {
    const worldly = /\b(document|window|fetch|XMLHttpRequest|process|console|localStorage)\s*[.(]/;
    const found = ["core", "cells", "functions", "formula"]
      .flatMap((room) => sourcesIn(join("src", room)))
      .filter((file) => worldly.test(withoutComments(sourceText(file))));
    expect(found).toEqual([]);
  });
});

const withoutComments = (text: string) => text.replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, "");

describe("the spreadsheet engine", () => {
  /** The rooms, or folders of tests, that may import it. */
  const ofEngine = {
    src: table.filter(([, { packages }]) => packages.includes("@univerjs")).map(([room]) => room),
    tests: rooms.tests["@univerjs"],
  };

  it("is known in its room and the page's alone", () => {
    expect(ofEngine.src).toEqual(["engine", "hosts/page"]);
  });

  it.each(["src", "tests"] as const)("is imported in %s where the table says", (side) => {
    const knowing = importsIn(side, "@univerjs/")
      .filter(({ packageName }) => packageName?.startsWith("@univerjs/"))
      .map(({ file }) => file.replaceAll("\\", "/"));
    const isAllowed = (file: string) =>
      ofEngine[side].some((folder) => file.startsWith(`${side}/${folder}/`));
    expect(knowing.length).toBeGreaterThan(0);
    expect(knowing.filter((file) => !isAllowed(file))).toEqual([]);
  });
});
