import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { scripts } from "../../package.json";
import { ROOT, SCRIPT, SHEETS } from "../../src/tools/paths";
import { caught, named } from "../present";

/*
 * A forge's files. No forge runs them here: what can be held is that they parse, have the form that GitHub asks for
 * ("Syntax for issue forms", "Workflow syntax", GitHub Docs), and name what there is.
 */

const read = (file: string) => readFileSync(join(ROOT, ".github", file), "utf8");
const yamlIn = (folder: string) =>
  readdirSync(join(ROOT, ".github", folder))
    .filter((file) => file.endsWith(".yml"))
    .map((file) => [file, parse(read(`${folder}/${file}`)) as unknown] as const);

interface Step {
  readonly uses?: string;
  readonly run?: string;
}

interface Job {
  readonly "runs-on": string;
  readonly needs?: string;
  readonly steps: readonly Step[];
}

interface Workflow {
  readonly name: string;
  readonly on: Readonly<Record<string, unknown>>;
  readonly permissions: Readonly<Record<string, string>>;
  readonly jobs: Readonly<Record<string, Job>>;
}

const workflows = yamlIn("workflows") as readonly (readonly [string, Workflow])[];
const workflow = (file: string) => named(Object.fromEntries(workflows), file);
const stepsOf = ({ jobs }: Workflow) => Object.values(jobs).flatMap(({ steps }) => steps);
const commandsOf = (one: Workflow) => stepsOf(one).flatMap(({ run }) => run ?? []);

describe.each(workflows)("the workflow %s", (_file, one) => {
  test("has a name, an occasion, and jobs of steps that use or run something", () => {
    expect(Object.keys(one)).toEqual(expect.arrayContaining(["name", "on", "permissions", "jobs"]));
    expect(one.permissions).toEqual({ contents: "read" });
    for (const job of Object.values(one.jobs)) {
      expect(job["runs-on"]).toBe("ubuntu-latest");
      if (job.needs !== undefined) expect(one.jobs).toHaveProperty(job.needs);
    }
    for (const { uses, run } of stepsOf(one)) {
      expect((uses === undefined) !== (run === undefined)).toBe(true);
      if (uses !== undefined) expect(uses).toMatch(/^actions\/[a-z-]+@v\d+$/);
    }
  });

  test("runs only scripts that there are", () => {
    for (const command of commandsOf(one)) {
      for (const script of caught(command, /npm run ([\w-]+)/g)) {
        expect(scripts).toHaveProperty(script);
      }
      for (const file of caught(command, /(?:^| )(\.[\w-]+\/[\w./-]+)/g)) {
        expect(statSync(join(ROOT, file)).mode & 0o111, file).toBeGreaterThan(0);
      }
    }
  });
});

test("every push and every change that is proposed goes through .ci/run", () => {
  const check = workflow("check.yml");
  expect(Object.keys(check.on)).toEqual(["push", "pull_request"]);
  expect(commandsOf(check).some((command) => command.endsWith(".ci/run"))).toBe(true);
});

test("a release's tag publishes dist/ and the script for Google Sheets", () => {
  const publish = workflow("publish.yml");
  expect(publish.on).toHaveProperty("push.tags", ["v*"]);
  const text = read("workflows/publish.yml");
  expect(text).toContain("path: dist\n");
  expect(join(ROOT, "dist", "sheets")).toBe(SHEETS);
  expect(commandsOf(publish).join("\n")).toContain(`sheets/${SCRIPT}`);
});

const KINDS = ["markdown", "input", "textarea", "dropdown", "checkboxes"];

describe.each(yamlIn("ISSUE_TEMPLATE").filter(([file]) => file !== "config.yml"))(
  "the form %s",
  (_file, form) => {
    const { name, description, body } = form as {
      name: unknown;
      description: unknown;
      body: { type: string; id?: string; attributes: Record<string, unknown> }[];
    };

    test("has a name, a description and fields of known kinds, each with an id of its own", () => {
      for (const text of [name, description]) expect(text).toMatch(/\w/);
      const fields = body.filter(({ type }) => type !== "markdown");
      expect(fields.length).toBeGreaterThan(0);
      for (const { type, attributes } of body) {
        expect(KINDS).toContain(type);
        expect(attributes[type === "markdown" ? "value" : "label"]).toMatch(/\w/);
      }
      const ids = fields.map(({ id }) => id);
      expect(ids.filter((id) => !/^[a-z]+$/.test(id ?? ""))).toEqual([]);
      expect(new Set(ids).size).toBe(ids.length);
    });
  },
);

test.each(["CONTRIBUTING.md", "SECURITY.md"])("%s links only to files that there are", (file) => {
  const links = caught(`${read(file)}`, /\]\(([^)#\s]+)[^)]*\)/g);
  for (const link of links) expect(existsSync(join(ROOT, ".github", link)), link).toBe(true);
});
