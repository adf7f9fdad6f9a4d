import fc from "fast-check";
import reference from "fast-json-patch";
import { describe, expect, it } from "vitest";
import { CASES } from "../cases";
import { apply, valueAt, EditError, type Edit, type Json, type Op } from "./edit";

/** JSON Patch against another library (fast-json-patch, MIT), and against Python's jsonpatch by its cases. */

const key = fc.constantFrom("a", "b", "~", "/", "0", "1", "é");
const value = fc.letrec<{ json: Json }>((tie) => ({
  json: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    fc.constantFrom<Json>(null, true, 0, 1, "x"),
    fc.array(tie("json"), { maxLength: 3 }),
    fc.dictionary(key, tie("json"), { maxKeys: 3, noNullPrototype: true }),
  ),
})).json;

/** Paths that mostly lead somewhere in the document. */
function paths(doc: Json, here = ""): string[] {
  const own = [here];
  if (Array.isArray(doc)) {
    doc.forEach((each, i) => own.push(...paths(each, `${here}/${i}`)));
    own.push(`${here}/-`, `${here}/${doc.length}`, `${here}/${doc.length + 1}`);
  } else if (doc && typeof doc === "object") {
    for (const [name, each] of Object.entries(doc))
      own.push(...paths(each, `${here}/${name.replaceAll("~", "~0").replaceAll("/", "~1")}`));
    own.push(`${here}/new`);
  } else own.push(`${here}/under`);
  return own;
}

const cases = value.chain((doc) =>
  fc.record({
    doc: fc.constant(doc),
    op: fc.record({
      op: fc.constantFrom("add", "replace", "remove", "test" as const),
      path: fc.constantFrom(...paths(doc)),
      value,
    }) as fc.Arbitrary<Op>,
  }),
);

/** What the other library makes of it; undefined where it refuses. */
function applyPlainly(doc: Json, op: Op): { doc: Json } | undefined {
  try {
    return { doc: reference.applyPatch(structuredClone(doc), [op as never], true).newDocument as Json };
  } catch {
    return undefined;
  }
}

function ours(doc: Json, op: Op): { doc: Json; inverse: Edit } | undefined {
  try {
    return apply(doc, { label: "", ops: [op] });
  } catch (error) {
    expect(error).toBeInstanceOf(EditError);
    return undefined;
  }
}

describe("edits", () => {
  it("do what another JSON Patch library does", () => {
    let compared = 0;
    fc.assert(
      fc.property(cases, ({ doc, op }) => {
        if (op.path === "" && op.op === "remove") return; // the other library makes null of it
        if (op.path.endsWith("/under")) {
          expect(ours(doc, op)).toBeUndefined(); // the other lets it pass
          return;
        }
        const [mine, theirs] = [ours(doc, op), applyPlainly(doc, op)];
        expect(mine?.doc).toStrictEqual(theirs?.doc);
        if (mine) compared++;
      }),
      { numRuns: 2000, seed: 5 },
    );
    expect(compared).toBeGreaterThan(500);
  });

  it("are taken back by their inverse, and the inverse by its own", () => {
    fc.assert(
      fc.property(cases, ({ doc, op }) => {
        const before = structuredClone(doc);
        const made = ours(doc, op);
        expect(doc).toStrictEqual(before); // the old document is never touched
        if (!made) return;
        const back = apply(made.doc, made.inverse);
        expect(back.doc).toStrictEqual(doc);
        expect(apply(back.doc, back.inverse).doc).toStrictEqual(made.doc);
      }),
      { numRuns: 2000 },
    );
  });

  it("are their own JSON", () => {
    fc.assert(
      fc.property(cases, ({ doc, op }) => {
        const made = ours(doc, op);
        if (!made) return;
        const inverse = JSON.parse(JSON.stringify(made.inverse)) as Edit;
        expect(apply(made.doc, inverse).doc).toStrictEqual(doc);
      }),
    );
  });

  it("share what they leave alone", () => {
    const doc = { steps: [{ a: 1 }, { b: 2 }], colours: [{ c: 3 }] };
    const made = apply(doc, { label: "", ops: [{ op: "replace", path: "/steps/0/a", value: 9 }] });
    expect(made.doc.colours).toBe(doc.colours);
    expect(made.doc.steps[1]).toBe(doc.steps[1]);
  });

  it("do nothing at all where one operation of several fails", () => {
    const doc = { a: 1 };
    const ops: Op[] = [
      { op: "replace", path: "/a", value: 2 },
      { op: "test", path: "/a", value: 3 },
    ];
    expect(() => apply(doc, { label: "", ops })).toThrow(EditError);
    expect(doc).toStrictEqual({ a: 1 });
  });

  it("take no prototype for a field", () => {
    const made = apply<Record<string, unknown>>({}, { label: "", ops: [{ op: "add", path: "/__proto__", value: { x: 1 } }] });
    expect(Object.getPrototypeOf(made.doc)).toBe(Object.prototype);
    expect(valueAt({}, "/constructor")).toBeUndefined();
  });

  it("carry out every fix as Python's library does", () => {
    expect(CASES.fixes.length).toBeGreaterThan(0);
    for (const { before, patch, after } of CASES.fixes)
      expect(apply(before, { label: "", ops: patch }).doc).toStrictEqual(after);
  });
});
