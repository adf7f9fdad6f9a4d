// @vitest-environment jsdom
import { flushSync, mount, unmount } from "svelte";
import { afterEach, expect, it } from "vitest";
import type { Doc } from "../document/pattern";
import type { WorkResponse } from "../schema/answers";
import { atRest, keyOfShape } from "../state/at_rest.svelte";
import { bench } from "../state/bench.svelte";
import { connection } from "../state/connection";
import { RefusedError, type Wire } from "../wire/client";
import Fit from "./Fit.svelte";

const doc = { pegwright: 2, title: "Neap", loom: { kind: "rows", rows: 1, pegs: 3 }, colours: [], motifs: [], steps: [] } as unknown as Doc;

/** A piece at rest, of a studio whose measuring ends so and whose fit is that. */
async function show(measuring: { state: string; reason?: string }, fit: () => Promise<unknown>): Promise<string> {
  connection.connect({
    startJob: async () => ({ job: "j", serial: 0, ...measuring }),
    jobFile: async () => ({ text: async () => JSON.stringify({ length_mm: 87, state: "open", pulls: [] }) }),
    endJob: async () => undefined,
    fit,
  } as unknown as Wire);
  const moves = [{ do: "place", phase: "place", step: 1, events: [] }, { do: "clip", phase: "finish", step: 2, events: [] }];
  Object.assign(bench, { name: "neap", doc, workedDoc: doc, work: { readable: true, moves, colours: ["A"], falls: [] } as unknown as WorkResponse });
  Object.assign(atRest, { shape: { length_mm: 87, settled: true, strands: [] }, shapeKey: keyOfShape(doc), wantedKey: keyOfShape(doc) });
  shown = mount(Fit, { target: document.body, props: { girth: 160 } });
  await atRest.measure();
  await new Promise((done) => setTimeout(done, 200)); // the wrist is typed: it is asked after a pause
  flushSync();
  return document.body.textContent!.replace(/\s+/g, " ");
}

let shown: ReturnType<typeof mount> | null = null;
afterEach(() => {
  if (shown) void unmount(shown);
  atRest.clear();
  document.body.innerHTML = "";
});

it("measuring that comes to nothing says why, and can be tried again", async () => {
  const said = await show({ state: "refused", reason: "it took too much memory" }, async () => null);
  expect(said).toContain("it took too much memory");
  expect(document.querySelector("button")?.textContent).toBe("Measure how it stretches");
});

it("a fit that the studio refuses is told", async () => {
  expect(await show({ state: "done" }, () => Promise.reject(new RefusedError(422, "that is no girth")))).toContain("that is no girth");
});

it("a piece that closes round no wrist is easy on none", async () => {
  const findings = [{ code: "fit-not-closed", severity: "warning", message: "it does not close round a wrist", place: {}, hint: "" }];
  const said = await show({ state: "done" }, async () => ({ fit: null, findings, document: null, extension: null }));
  expect(said).toContain("it does not close round a wrist");
  expect(said).not.toMatch(/on this one|Fits wrists/);
});
