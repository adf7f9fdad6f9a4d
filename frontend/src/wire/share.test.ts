import fc from "fast-check";
import { expect, test } from "vitest";
import { shareUnchanged } from "./share";

const json = fc.jsonValue({ maxDepth: 4 });

test("what is shared says what the answer says", () => {
  fc.assert(
    fc.property(json, json, (old, fresh) => {
      const said = structuredClone(fresh);
      const before = structuredClone(old);
      expect(shareUnchanged(old, fresh)).toStrictEqual(said);
      expect(old).toStrictEqual(before);
    }),
  );
});

test("the same answer again is the old one itself", () => {
  fc.assert(
    fc.property(json, (old) => {
      expect(shareUnchanged(old, structuredClone(old))).toBe(old);
    }),
  );
});

test("a part that did not change stays itself; a longer list keeps what it had", () => {
  const old = { moves: [{ at: "A1" }, { at: "A2" }], pegs: [["A1", 0]], gone: 1 };
  const fresh = { moves: [{ at: "A1" }, { at: "A3" }, { at: "A2" }], pegs: [["A1", 0]] };
  const shared = shareUnchanged(old, fresh);
  expect(shared).not.toBe(old);
  expect(shared.moves[0]).toBe(old.moves[0]);
  expect(shared.moves[1]).toStrictEqual({ at: "A3" });
  expect(shared.pegs).toBe(old.pegs);
});
