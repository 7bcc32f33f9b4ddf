import { doiAddress, referenceText, type Method, type Reference } from "./read";

/** A method as HTML, folded away until it is asked for. */
export function methodHtml(method: Method, escaped: (text: string) => string): string {
  const { equation, assumes, notFor, story, worked, references, sentence } = method;
  const list = (points: readonly string[]) =>
    `<ul>${points.map((text) => `<li>${text}</li>`).join("")}</ul>`;
  const referenceItem = (reference: Reference) =>
    reference.doi === undefined
      ? escaped(referenceText(reference))
      : `${escaped(referenceText(reference))}. <a href="${doiAddress(reference.doi)}">doi:${escaped(reference.doi)}</a>`;
  const steps = escaped(worked.map(({ text }) => text).join("\n"));
  return `          <details class="method">
            <summary>Method: equation, assumptions, worked example, references</summary>
            <h4>Equation</h4>
            <pre tabindex="0">${escaped(equation)}</pre>
            <h4>Assumes</h4>
            ${list(assumes.map(escaped))}
            <h4>Not for</h4>
            ${list(notFor.map(escaped))}
            <h4>Worked example</h4>
            <p>${escaped(story)}</p>
            <pre tabindex="0">${steps}</pre>
            <h4>References</h4>
            ${list(references.map(referenceItem))}${
              sentence === undefined
                ? ""
                : `
            <h4>For a methods section</h4>
            <p>${escaped(sentence)}</p>`
            }
          </details>`;
}
