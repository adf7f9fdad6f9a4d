import { afterEach, beforeEach, expect, it, vi } from "vitest";
import type { Doc } from "../document/pattern";
import type { Wire } from "../wire/client";
import { bench, commit, isSafe, open, undo, useWire } from "./bench.svelte";

/** A studio that remembers what it was given to save, and when. */
function studio() {
  const saves: { at: number; name: string; title: string }[] = [];
  const wire = {
    open: async () => ({ name: "piece", edition: "0", document: { pegwright: 2, title: "edit 0", loom: { kind: "rows", rows: 1, pegs: 2 } } }),
    work: async () => ({ readable: true, moves: [] }),
    save: async (name: string, doc: Doc) => {
      await new Promise((done) => setTimeout(done, 40)); // a disk takes its time
      saves.push({ at: Date.now(), name, title: doc.title });
      return { name: "piece", edition: `${saves.length}` };
    },
  };
  useWire(wire as unknown as Wire);
  return saves;
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

it("a hand that never rests is saved all the same, never more than a second behind", async () => {
  const saves = studio();
  await open("piece");
  const begun = Date.now();
  const titleAt = (ms: number) => Math.floor(ms / 50) + 1; // the edit made by then
  for (let k = 1; k <= 100; k++) {
    commit({ label: "", ops: [{ op: "replace", path: "/title", value: `edit ${k}` }] });
    await vi.advanceTimersByTimeAsync(50);
  }
  for (let ms = 1000; ms < 5000; ms += 50) {
    const kept = saves.filter(({ at }) => at <= begun + ms).at(-1)?.title ?? "edit 0";
    expect(titleAt(ms) - Number(kept.split(" ")[1])).toBeLessThanOrEqual(20); // 20 edits are a second
  }
  await vi.advanceTimersByTimeAsync(1000);
  expect([isSafe(), saves.at(-1)?.title, bench.saving]).toStrictEqual([true, "edit 100", "saved"]);
});

it("what is undone is saved too", async () => {
  const saves = studio();
  await open("piece");
  commit({ label: "", ops: [{ op: "replace", path: "/title", value: "edit 1" }] });
  await vi.advanceTimersByTimeAsync(1000);
  undo();
  expect(isSafe()).toBe(false);
  await vi.advanceTimersByTimeAsync(1000);
  expect([isSafe(), saves.map(({ title }) => title)]).toStrictEqual([true, ["edit 1", "edit 0"]]);
});

it("an edit made while another piece is being fetched is saved in its own", async () => {
  const saves = studio();
  await open("piece");
  const opening = open("other");
  commit({ label: "", ops: [{ op: "replace", path: "/title", value: "edit 1" }] });
  await vi.advanceTimersByTimeAsync(1000);
  await opening;
  expect([saves.map(({ name, title }) => [name, title]), bench.name, bench.doc?.title]).toStrictEqual([[["piece", "edit 1"]], "other", "edit 0"]);
});
