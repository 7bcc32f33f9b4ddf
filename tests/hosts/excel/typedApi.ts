import { readFileSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";
import { ROOT } from "../../../src/tools/paths";
import { parse } from "../../sources";

/** A member of a class of Excel's API, as Microsoft's own types have it. */
export interface Member {
  readonly isMethod: boolean;
  /** The class that it gives, if it gives one. */
  readonly gives: string | undefined;
  /** The requirement set that it came with, such as 1.9. */
  readonly set: string | undefined;
}

const TYPES = join(ROOT, "node_modules", "@microsoft", "office-js", "dist", "office.d.ts");

/** Excel's classes by name, with their members. */
export function readTypedApi(): ReadonlyMap<string, ReadonlyMap<string, Member>> {
  const text = readFileSync(TYPES, "utf8");
  // The file is five megabytes; Excel's part of it is enough.
  const start = text.indexOf("declare namespace Excel {");
  const end = text.indexOf("\ndeclare namespace ", start + 1);
  const source = parse(text.slice(start, end), "excel.d.ts");
  const classes = new Map<string, Map<string, Member>>();
  const visit = (node: ts.Node): void => {
    if (ts.isClassDeclaration(node) && node.name) {
      const members = classes.get(node.name.text) ?? new Map<string, Member>();
      for (const member of node.members) addMember(members, member);
      classes.set(node.name.text, members);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return classes;
}

function addMember(members: Map<string, Member>, member: ts.ClassElement): void {
  if (!member.name || !(ts.isMethodDeclaration(member) || ts.isPropertyDeclaration(member))) return;
  const name = member.name.getText();
  if (members.has(name)) return;
  members.set(name, {
    isMethod: ts.isMethodDeclaration(member),
    gives: member.type?.getText().replace(/^Excel\./, ""),
    set: /\[Api set: ExcelApi (\d+\.\d+)\]/.exec(member.getFullText())?.[1],
  });
}
