import { expect, it } from "vitest";
import { isProblem, pictures } from "../../../src/pane/pictures";
import { EXAMPLES } from "../../../src/pane/pictures/examples";

it("has an example for every picture and for nothing else", () => {
  expect(Object.keys(EXAMPLES).sort()).toEqual(pictures.map(({ id }) => id).sort());
});

it.each(pictures.map((picture) => [picture.id, picture] as const))(
  "has cells that %s can draw",
  (id, picture) => {
    const data = picture.read(EXAMPLES[id] ?? []);
    expect(isProblem(data) ? data.problem : "drawn").toBe("drawn");
  },
);
