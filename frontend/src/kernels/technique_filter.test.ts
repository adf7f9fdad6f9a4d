import { describe, expect, it } from "vitest";
import type { Technique } from "../schema/answers";
import { ANYTHING, fitsWish } from "./technique_filter";

const one = { title: "plain chain", group: "chains", level: "easy", level_words: "Easy", colours: 2, width_mm: 15, minutes: 40 } as Technique;

describe("what a maker wants of a technique", () => {
  it("is fulfilled by one that is so wide, has so many colours, is quick and easy enough", () => {
    expect(fitsWish(one, ANYTHING)).toBe(true);
    expect(fitsWish(one, { query: "CHAIN easy", leastCm: 1, mostCm: 2, colours: 2, minutes: 60, level: "easy" })).toBe(true);
  });

  it.each([
    { query: "tube" },
    { leastCm: 1.6 },
    { mostCm: 1.4 },
    { colours: 1 },
    { minutes: 30 },
    { level: "basic" as const },
  ])("is not where %o is wanted", (wish) => {
    expect(fitsWish(one, { ...ANYTHING, ...wish })).toBe(false);
  });
});
