/** What a built file of types gives away: every export with its declaration and its comment, in the index's order. */
import { dirname, join } from "node:path";
import ts from "typescript";

/** The text of a file of types, by its path in the built library: `core/strength/index.d.ts`. */
export type ReadTypes = (path: string) => string;

export interface ApiEntry {
  readonly name: string;
  /** As the file of types has it, without its comment. */
  readonly declaration: string;
  /** What its comment says before any tag. */
  readonly about: string;
  /** Its arguments that the comment names, each with what it says. */
  readonly parameters: readonly (readonly [name: string, text: string])[];
  readonly returns: string;
  readonly throws: string;
  /** The names of the arguments of a function; nothing for what is none. */
  readonly takes: readonly string[] | undefined;
}

export interface Surface {
  /** What the index says of itself. */
  readonly about: string;
  readonly entries: readonly ApiEntry[];
  /** The indexes whose exports are handed on as a whole. */
  readonly indexes: readonly string[];
}

/** Reads an index, one declaration after the other. */
export function surfaceOf(index: string, read: ReadTypes): Surface {
  const file = parse(index, read);
  const [, about = ""] = /^\/\*\*([\s\S]*?)\*\//.exec(file.text) ?? [];
  const entries: ApiEntry[] = [];
  const indexes: string[] = [];
  for (const statement of file.statements) {
    if (!ts.isExportDeclaration(statement)) continue;
    const from = join(dirname(index), textOf(statement.moduleSpecifier)).replace(/\.js$/, ".d.ts");
    const clause = statement.exportClause;
    if (clause === undefined) indexes.push(from);
    else if (ts.isNamedExports(clause)) {
      const source = parse(from, read);
      for (const { name } of clause.elements) entries.push(entryOf(name.text, source));
    }
  }
  return { about: plain(about), entries, indexes };
}

const parse = (path: string, read: ReadTypes) =>
  ts.createSourceFile(path, read(path), ts.ScriptTarget.Latest, true);

const textOf = (node: ts.Expression | undefined) =>
  node !== undefined && ts.isStringLiteral(node) ? node.text : "";

function entryOf(name: string, file: ts.SourceFile): ApiEntry {
  const statement = file.statements.find((each) => namesOf(each).includes(name));
  if (statement === undefined) throw new Error(`${file.fileName} declares no ${name}`);
  const [comment] = ts.getJSDocCommentsAndTags(statement).filter(ts.isJSDoc);
  const tags: readonly ts.JSDocTag[] = comment?.tags ?? [];
  const said = (kind: string) =>
    tags
      .filter(({ tagName }) => tagName.text === kind)
      .map((tag) => commentText(tag.comment))
      .join(" ");
  return {
    name,
    declaration: statement.getText(file).replace(/^export declare /, ""),
    about: commentText(comment?.comment),
    parameters: tags
      .filter(ts.isJSDocParameterTag)
      .map((tag) => [tag.name.getText(file), commentText(tag.comment)] as const),
    returns: said("returns"),
    throws: said("throws"),
    takes: takenBy(statement),
  };
}

function namesOf(statement: ts.Statement): string[] {
  if (ts.isVariableStatement(statement)) {
    return statement.declarationList.declarations.map(({ name }) => name.getText());
  }
  const { name } = statement as { name?: ts.Node };
  return name === undefined ? [] : [name.getText()];
}

/** The arguments of a function, or of a constant that is one; one that is taken apart has no name. */
function takenBy(statement: ts.Statement): string[] | undefined {
  const nameOf = ({ name }: ts.ParameterDeclaration) => (ts.isIdentifier(name) ? name.text : "");
  if (ts.isFunctionDeclaration(statement)) return statement.parameters.map(nameOf);
  if (!ts.isVariableStatement(statement)) return undefined;
  const type = statement.declarationList.declarations[0]?.type;
  return type !== undefined && ts.isFunctionTypeNode(type)
    ? type.parameters.map(nameOf)
    : undefined;
}

const commentText = (comment: ts.JSDoc["comment"]) =>
  (ts.getTextOfJSDocComment(comment) ?? "").replace(/^[-–] */, "").trim();

/** A comment's text without the stars before its lines. */
const plain = (comment: string) => comment.replace(/^[ \t]*\* ?/gm, "").trim();
