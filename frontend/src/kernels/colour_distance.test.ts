import { expect, it } from "vitest";
import { anyClose, oklab } from "./colour_distance";

it.each([
  ["#ffffff", [1, 0, 0]], // the four pure colours as in CSS Color 4's sample values, to three places
  ["#ff0000", [0.628, 0.225, 0.126]],
  ["#00ff00", [0.866, -0.234, 0.179]],
  ["#0000ff", [0.452, -0.032, -0.312]],
])("%s in OKLab", (hex, lab) => {
  oklab(hex).forEach((value, i) => expect(value).toBeCloseTo((lab as number[])[i]!, 2));
});

it("two greens are close, blue and red are not", () => {
  expect(anyClose(["#2f6b4f", "#36724a"])).toBe(true);
  expect(anyClose(["#34506b", "#b5382a", "#f2efe6"])).toBe(false);
});
