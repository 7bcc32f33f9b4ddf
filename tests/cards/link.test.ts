import { deflateSync, strToU8 } from "fflate";
import { describe, expect, it } from "vitest";
import { CardProblem, LIMITS, type Card } from "../../src/cards/card";
import { checkCard, listOf } from "../../src/cards/checkCard";
import { cardInFragment, fragmentOf, linkTo } from "../../src/cards/link";
import { squadCards } from "./cards";

const packed = (value: unknown): string =>
  Buffer.from(deflateSync(strToU8(JSON.stringify(value)))).toString("base64url");

const refusalOf = (fragment: string): string => {
  try {
    cardInFragment(fragment);
  } catch (error) {
    if (error instanceof CardProblem) return error.message;
    throw error;
  }
  return "no refusal";
};

describe("a card in a link", () => {
  it("comes back as it went in, whoever it is for", () => {
    for (const card of squadCards()) expect(cardInFragment(fragmentOf(card))).toEqual(card);
  });

  it("stands behind the # of the address, which no browser sends", () => {
    const link = new URL(linkTo("https://squad.example/cards/?v=2", squadCards()[0]!));
    expect(link.origin + link.pathname + link.search).toBe("https://squad.example/cards/?v=2");
    expect(link.hash).toMatch(/^#[\w-]+$/);
  });

  it("is short enough for a code on paper, even with everything in it", () => {
    const long = (letter: string) => letter.repeat(LIMITS.nameLength);
    const full: Card = {
      ...squadCards()[0]!,
      name: "Ñ".repeat(LIMITS.nameLength),
      lifts: ["a", "b", "c", "d", "e", "f"].map((letter) => ({
        name: long(letter),
        oneRepMax: 123.45,
      })),
      today: Array.from({ length: LIMITS.today }, () => ({
        lift: long("a"),
        sets: 3,
        reps: 12,
        reserve: 2.5,
      })),
    };
    expect(linkTo("https://squad.example/cards/", full).length).toBeLessThan(1_000);
  });
});

describe("a link from anywhere", () => {
  const good = listOf(squadCards()[0]!);
  const changed = (at: number, value: unknown) =>
    packed(good.map((item, i) => (i === at ? value : item)));

  it("is refused in one line when a part of it is missing or changed", () => {
    const whole = fragmentOf(squadCards()[0]!);
    for (let length = 1; length < whole.length; length += 7) {
      expect(refusalOf(whole.slice(0, length))).not.toBe("no refusal");
    }
    expect(refusalOf(`${whole}"><img src=x>`)).toBe("it holds signs that no card has");
    expect(refusalOf("A".repeat(9_000))).toBe("it is too long");
    expect(refusalOf(packed("x".repeat(1_000_000)))).not.toBe("no refusal");
  });

  it("is refused whatever one of its values has become", () => {
    const wrong = [
      null,
      {},
      [],
      "",
      "x\u202ey",
      "x".repeat(61),
      -1,
      1e9,
      Number.MAX_VALUE,
      true,
      [[[]]],
    ];
    for (let at = 0; at < good.length; at++) {
      // Plates and today's sets may be none; the bar may be any weight.
      const unfit = wrong.filter(
        (value) => !(Array.isArray(value) && value.length === 0 && [5, 8].includes(at)),
      );
      for (const value of unfit) {
        expect([at, value, refusalOf(changed(at, value))]).not.toContain("no refusal");
      }
    }
    expect(refusalOf(packed([...good, "more"]))).not.toBe("no refusal");
    expect(refusalOf(changed(8, [[7, 3, 8, 2]]))).toContain("a planned lift");
    expect(refusalOf(changed(6, "__proto__"))).not.toBe("no refusal");
  });

  it("takes text as text", () => {
    const name = '<img src=x onerror="alert(1)">';
    expect(cardInFragment(changed(1, name)).name).toBe(name);
  });

  it("checks a card in a file the same way", () => {
    expect(() => checkCard({ name: "x" })).toThrow(CardProblem);
    expect(() => checkCard(JSON.parse('{"__proto__": []}'))).toThrow(CardProblem);
  });
});
