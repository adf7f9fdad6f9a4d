// @vitest-environment jsdom
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import type { Doc } from "../document/pattern";
import { RefusedError, type Wire } from "../wire/client";
import { bench } from "./bench.svelte";
import { connection } from "./connection";
import { keepUnsaved, unsavedNames, unsavedOf } from "./unsaved";

/** A studio that remembers what it was given to save, and when. */
function studio() {
  const saves: { at: number; name: string; title: string }[] = [];
  const wire = {
    open: async () => ({ name: "piece", edition: "0", document: { pegwright: 2, title: "edit 0", loom: { kind: "rows", rows: 1, pegs: 2 } } }),
    work: async () => ({ readable: true, moves: [] }),
    save: async (name: string, doc: Doc, edition: string) => {
      if (edition === "another") throw new RefusedError(409, "");
      await new Promise((done) => setTimeout(done, 40)); // a disk takes its time
      saves.push({ at: Date.now(), name, title: doc.title });
      return { name: "piece", edition: `${saves.length}` };
    },
  };
  connection.connect(wire as unknown as Wire);
  return saves;
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

it("a hand that never rests is saved all the same, never more than a second behind", async () => {
  const saves = studio();
  await bench.open("piece");
  const begun = Date.now();
  const titleAt = (ms: number) => Math.floor(ms / 50) + 1; // the edit made by then
  for (let k = 1; k <= 100; k++) {
    bench.commit({ label: "", ops: [{ op: "replace", path: "/title", value: `edit ${k}` }] });
    await vi.advanceTimersByTimeAsync(50);
  }
  for (let ms = 1000; ms < 5000; ms += 50) {
    const kept = saves.filter(({ at }) => at <= begun + ms).at(-1)?.title ?? "edit 0";
    expect(titleAt(ms) - Number(kept.split(" ")[1])).toBeLessThanOrEqual(20); // 20 edits are a second
  }
  await vi.advanceTimersByTimeAsync(1000);
  expect([bench.saving.isSaved, saves.at(-1)?.title, bench.saving.state]).toStrictEqual([true, "edit 100", "saved"]);
});

it("what is undone is saved too", async () => {
  const saves = studio();
  await bench.open("piece");
  bench.commit({ label: "", ops: [{ op: "replace", path: "/title", value: "edit 1" }] });
  await vi.advanceTimersByTimeAsync(1000);
  bench.undo();
  expect(bench.saving.isSaved).toBe(false);
  await vi.advanceTimersByTimeAsync(1000);
  expect([bench.saving.isSaved, saves.map(({ title }) => title)]).toStrictEqual([true, ["edit 1", "edit 0"]]);
});

it("an edit made while another piece is being fetched is saved in its own", async () => {
  const saves = studio();
  await bench.open("piece");
  const opening = bench.open("other");
  bench.commit({ label: "", ops: [{ op: "replace", path: "/title", value: "edit 1" }] });
  await vi.advanceTimersByTimeAsync(1000);
  await opening;
  expect([saves.map(({ name, title }) => [name, title]), bench.name, bench.doc?.title]).toStrictEqual([[["piece", "edit 1"]], "other", "edit 0"]);
});

it("a server that was away is asked again, and the verdict is of the last edit", async () => {
  studio();
  await bench.open("piece");
  const { wire } = connection;
  let away = true;
  const asked: string[] = [];
  const work = async (doc: object) => {
    if (away) throw new RefusedError(401, "");
    asked.push((doc as Doc).title);
    return { readable: true, moves: [] };
  };
  const save = async (...given: Parameters<Wire["save"]>) => {
    if (away) throw new RefusedError(401, "");
    return wire.save(...given);
  };
  connection.connect({ ...wire, work, save } as unknown as Wire);
  for (const title of ["one", "two", "three"]) bench.commit({ label: "", ops: [{ op: "replace", path: "/title", value: title }] });
  await vi.advanceTimersByTimeAsync(5000);
  expect([bench.saving.state, bench.workedDoc?.title, unsavedOf("piece")?.doc.title]).toStrictEqual(["locked", "edit 0", "three"]);
  away = false;
  await vi.advanceTimersByTimeAsync(3000);
  expect([asked, bench.workedDoc?.title, bench.saving.state, unsavedNames()]).toStrictEqual([["three"], "three", "saved", []]);
});

it("a disk that takes no more says so, not that the studio is silent, and the edit is saved once it does", async () => {
  const saves = studio();
  await bench.open("piece");
  const { wire } = connection;
  let full = true;
  const save = async (...given: Parameters<Wire["save"]>) => {
    if (full) throw new RefusedError(507, "the disk is full");
    return wire.save(...given);
  };
  connection.connect({ ...wire, save } as unknown as Wire);
  bench.commit({ label: "", ops: [{ op: "replace", path: "/title", value: "one" }] });
  await vi.advanceTimersByTimeAsync(1000);
  expect([bench.saving.state, bench.saving.reason, unsavedOf("piece")?.doc.title]).toStrictEqual(["failed", "the disk is full", "one"]);
  full = false;
  await vi.advanceTimersByTimeAsync(2000);
  expect([bench.saving.state, saves.at(-1)?.title]).toStrictEqual(["saved", "one"]);
});

it("what was not saved comes back as one edit that can be undone", async () => {
  studio();
  const doc = { pegwright: 2, title: "mine", loom: { kind: "rows", rows: 1, pegs: 2 }, colours: [], motifs: [], steps: [] } as unknown as Doc;
  keepUnsaved("piece", { doc, edition: "0" });
  await bench.open("piece");
  expect([bench.doc?.title, bench.recovered, bench.saving.isSaved]).toStrictEqual(["mine", true, false]);
  await vi.advanceTimersByTimeAsync(1000);
  expect([bench.saving.state, unsavedNames()]).toStrictEqual(["saved", []]);
  bench.undo();
  expect(bench.doc?.title).toBe("edit 0");
});

it("what was not saved of a piece that changed on the disk overwrites nothing", async () => {
  const saves = studio();
  const doc = { pegwright: 2, title: "mine", loom: { kind: "rows", rows: 1, pegs: 2 }, colours: [], motifs: [], steps: [] } as unknown as Doc;
  keepUnsaved("piece", { doc, edition: "another" });
  await bench.open("piece");
  await vi.advanceTimersByTimeAsync(5000);
  expect([bench.doc?.title, bench.saving.state, saves]).toStrictEqual(["mine", "changed", []]);
  await bench.openSaved("piece");
  expect([bench.doc?.title, bench.saving.state, unsavedNames()]).toStrictEqual(["edit 0", "saved", []]);
});

/** A studio that keeps one piece as the server does, and is killed when `mute` says so: it writes, and never answers. */
function killable() {
  const disk = { title: "edit 0", edition: 0 };
  const saves: string[] = [];
  const state = { mute: false };
  const { wire } = connection;
  const open = async () => ({ ...(await wire.open("piece")), edition: `${disk.edition}`, document: { pegwright: 2, title: disk.title, loom: { kind: "rows", rows: 1, pegs: 2 } } });
  const save = async (_: string, doc: object, edition: string) => {
    const { title } = doc as Doc;
    if (title !== disk.title && edition !== `${disk.edition}`) throw new RefusedError(409, "");
    if (title !== disk.title) Object.assign(disk, { title, edition: disk.edition + 1 });
    saves.push(title);
    if (state.mute) throw new RefusedError(0, "");
    return { name: "piece", edition: `${disk.edition}` };
  };
  connection.connect({ ...wire, open, save } as unknown as Wire);
  return { disk, saves, state };
}
const retitle = (value: string) => bench.commit({ label: "", ops: [{ op: "replace", path: "/title", value }] });

it("a save that was written and not answered for is no change by another, whatever was made since", async () => {
  localStorage.clear();
  studio();
  const { disk, saves, state } = killable();
  await bench.open("piece");
  state.mute = true;
  retitle("one");
  await vi.advanceTimersByTimeAsync(500);
  retitle("two");
  expect([bench.saving.state, disk.title, unsavedOf("piece")?.sent?.title]).toStrictEqual(["lost", "one", "one"]);
  state.mute = false;
  await vi.advanceTimersByTimeAsync(3000);
  expect([bench.saving.state, disk.title, unsavedNames()]).toStrictEqual(["saved", "two", []]);
  expect(saves.filter((title, k) => title !== saves[k - 1])).toStrictEqual(["one", "two"]);
});

it("nor after the page went: what is on the disk is recognised, and only what is newer is put back", async () => {
  for (const [newer, recovered] of [["", false], ["two", true]] as const) {
    localStorage.clear();
    studio();
    const { disk, state } = killable();
    await bench.open("piece");
    state.mute = true;
    retitle("one");
    await vi.advanceTimersByTimeAsync(200);
    if (newer) retitle(newer);
    const kept = unsavedOf("piece")!; // and here the page is gone
    state.mute = false;
    await bench.leave();
    Object.assign(disk, { title: "one", edition: 1 });
    keepUnsaved("piece", kept);
    await bench.open("piece");
    expect([bench.doc?.title, bench.recovered, bench.saving.state === "changed"]).toStrictEqual([newer || "one", recovered, false]);
    await vi.advanceTimersByTimeAsync(1000);
    expect([bench.saving.state, disk.title, unsavedNames()]).toStrictEqual(["saved", newer || "one", []]);
  }
});

/** A studio whose answer tells of which document it is. */
async function withProposal() {
  localStorage.clear();
  const saves = studio();
  const work = async (doc: object) => ({ readable: true, moves: [], heaps: [{ name: (doc as Doc).title }] });
  connection.connect({ ...connection.wire, work } as unknown as Wire);
  await bench.open("piece");
  const own = bench.doc!;
  const proposal = { ...own, title: "proposed" };
  bench.showProposal(proposal);
  await vi.advanceTimersByTimeAsync(1000);
  return { saves, own, proposal };
}
const firstHeapName = (): string | undefined => bench.work.heaps?.[0]?.name as string | undefined;

it("a proposal is shown and not saved, and is gone when it is left or undone", async () => {
  for (const leave of [() => bench.dropProposal(), () => bench.undo()]) {
    const { saves, own } = await withProposal();
    expect([firstHeapName(), bench.saving.isSaved, bench.ownDoc === own]).toStrictEqual(["proposed", true, true]);
    leave();
    expect([firstHeapName(), bench.doc === own, bench.history.undo]).toStrictEqual(["edit 0", true, []]);
    await vi.advanceTimersByTimeAsync(1000);
    expect(saves).toStrictEqual([]);
  }
});

it("a proposal that is taken is one edit, saved, and one undo goes back", async () => {
  const { saves, own } = await withProposal();
  bench.takeProposal();
  await vi.advanceTimersByTimeAsync(1000);
  expect([saves.map(({ title }) => title), bench.setAside, bench.history.undo.length]).toStrictEqual([["proposed"], null, 1]);
  bench.undo();
  expect([bench.doc === own, firstHeapName()]).toStrictEqual([true, "edit 0"]);
  bench.redo();
  expect(bench.doc?.title).toBe("proposed");
  await vi.advanceTimersByTimeAsync(1000);
});

it("whoever goes on with a proposal that is shown has taken it", async () => {
  const { saves } = await withProposal();
  bench.commit({ label: "", ops: [{ op: "replace", path: "/title", value: "mine by now" }] });
  await vi.advanceTimersByTimeAsync(1000);
  expect([saves.map(({ title }) => title), bench.history.undo.length]).toStrictEqual([["mine by now"], 2]);
  bench.undo();
  bench.undo();
  expect(bench.doc?.title).toBe("edit 0");
  await vi.advanceTimersByTimeAsync(1000);
});

it("a piece that is left while a proposal is shown stays as it was", async () => {
  const { saves } = await withProposal();
  await bench.leave();
  await bench.open("piece");
  expect([saves, bench.doc?.title, bench.setAside]).toStrictEqual([[], "edit 0", null]);
});
