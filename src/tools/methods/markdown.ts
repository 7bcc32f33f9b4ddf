import { doiAddress, referenceText, type Method, type Reference } from "./read";

/** A method as lines of Markdown, folded away until it is asked for. */
export function methodLines(method: Method): string[] {
  const { equation, assumes, notFor, story, worked, references, sentence } = method;
  return [
    "<details><summary>Method: equation, assumptions, worked example, references</summary>",
    "",
    ...["**Equation**", "", "```text", equation, "```", ""],
    ...["**Assumes**", "", ...assumes.map(point), ""],
    ...["**Not for**", "", ...notFor.map(point), ""],
    ...[
      `**Worked example.** ${story}`,
      "",
      "```text",
      ...worked.map(({ text }) => text),
      "```",
      "",
    ],
    ...["**References**", "", ...references.map((one) => point(referenceLine(one))), ""],
    ...(sentence === undefined ? [] : [`**For a methods section.** ${sentence}`, ""]),
    ...["</details>", ""],
  ];
}

const point = (text: string) => `- ${text}`;

const referenceLine = (reference: Reference) =>
  reference.doi === undefined
    ? referenceText(reference)
    : `${referenceText(reference)}. [doi:${escaped(reference.doi)}](${doiAddress(reference.doi)})`;

const escaped = (doi: string) => doi.replaceAll("<", "&lt;").replaceAll(">", "&gt;");
