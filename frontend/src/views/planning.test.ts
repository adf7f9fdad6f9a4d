// @vitest-environment jsdom
import { flushSync, mount, unmount } from "svelte";
import { afterEach, beforeEach, expect, it } from "vitest";
import type { Doc } from "../document/pattern";
import type { JobRequest, JobStatus, WorkResponse } from "../schema/answers";
import { bench } from "../state/bench.svelte";
import { connection } from "../state/connection";
import { mends } from "../state/mends.svelte";
import { orders } from "../state/orders.svelte";
import { RefusedError, type Wire } from "../wire/client";
import OrderShown from "./OrderShown.svelte";
import Planning from "./Planning.svelte";

const doc = (title: string): Doc => ({ pegwright: 2, title, loom: { kind: "rows", rows: 1, pegs: 3 }, colours: [], motifs: [], steps: [] }) as unknown as Doc;
const order = (title: string, phrases: number) => ({ document: doc(title), phrases, loops_above: 0, travel_mm: 123, symmetry: 1, loose_loops: 0, cautions: 0 });
const finding = { code: "order-none", severity: "error", message: "no order holds", place: {}, hint: "lay a cap", fix: { label: "lay a cap", patch: [{ op: "replace", path: "/title", value: "capped" }] } };

/** A studio whose jobs are done at once with these files, or are still under way. */
function studio(files: Record<string, unknown>, state: JobStatus["state"] = "done"): JobRequest[] {
  const asked: JobRequest[] = [];
  connection.connect({
    work: async () => ({ readable: true, moves: [{ do: "place", phase: "place", step: 1, events: [] }], holds: false }),
    save: () => new Promise(() => undefined),
    startJob: async (_piece: string, request: JobRequest) => {
      asked.push(request);
      return { job: "j", state, serial: 0, files: Object.keys(files), reason: state === "refused" ? "cannot be read" : "" };
    },
    jobStatus: () => new Promise(() => undefined),
    jobFile: async (_job: string, name: string) => ({ text: async () => JSON.stringify(files[name]) }),
    endJob: async () => undefined,
  } as unknown as Wire);
  return asked;
}

let shown: ReturnType<typeof mount>[] = [];
let mended = 0;
function show(more: Partial<WorkResponse> = {}): void {
  const own = doc("own");
  Object.assign(bench, { name: "own", doc: own, workedDoc: own, setAside: null, history: { undo: [], redo: [] }, pending: [], moment: 1 });
  bench.work = { readable: true, moves: [{ do: "place", phase: "place", step: 1, events: [] }], findings: [], holds: false, ...more } as unknown as WorkResponse;
  shown = [mount(Planning, { target: document.body, props: { onmend: () => mended++ } }), mount(OrderShown, { target: document.body })];
  flushSync();
}
async function settle(): Promise<void> {
  for (let i = 0; i < 12; i++) await new Promise((done) => setTimeout(done));
  flushSync();
}
async function press(text: string): Promise<void> {
  const found = [...document.querySelectorAll("button")].find((button) => `${button.ariaLabel ?? button.getAttribute("aria-label") ?? ""} ${button.textContent}`.includes(text));
  if (!found) throw new Error(`no button ${text}: ${document.body.textContent}`);
  found.click();
  await settle();
}
const text = (): string => document.body.textContent!.replace(/\s+/g, " ");

beforeEach(() => (mended = 0));
afterEach(() => {
  orders.drop();
  mends.drop();
  for (const one of shown) void unmount(one);
  document.body.innerHTML = "";
});

it("one press shows the first order in place of the piece; others are a press away", async () => {
  studio({ "orders.json": { orders: [order("one", 5), order("two", 7)], given: order("own", 8), tried: 9, cut_short: false, findings: [] } });
  show({ holds: true });
  await press("Find an order");
  expect([bench.doc?.title, bench.ownDoc?.title, text().includes("Order 1 of 2, not taken yet: 5 phrases to teach · never a loop above the one that is taken · the hook goes 12 cm · left and right alike")]).toStrictEqual(["one", "own", true]);
  await press("The next order");
  expect(bench.doc?.title).toBe("two");
  await press("Leave it as it was");
  expect([bench.doc?.title, orders.shown, text().includes("2 orders were found"), text().includes("As it is now: 8 phrases")]).toStrictEqual(["own", -1, true, true]);
});

it("the same piece worked more simply is compared, and shown like an order", async () => {
  const effort = (phrases: number, colour_changes: number, travel_mm: number) => ({ phrases, colour_changes, travel_mm });
  const simpler = { document: doc("simpler"), before: effort(16, 9, 2550), after: effort(8, 1, 1940) };
  studio({ "orders.json": { orders: [{ ...order("one", 5), failures: 1.26 }], given: order("own", 8), simpler, tried: 9, cut_short: false, findings: [] } });
  show({ holds: true });
  await press("Find an order");
  expect(text()).toContain("1.3 slips that bring bands down, on average");
  expect([...document.querySelectorAll("tbody tr")].map((row) => [...row.children].map((cell) => cell.textContent))).toStrictEqual([
    ["phrases to teach", "16", "8"],
    ["changes of colour", "9", "1"],
    ["the hook goes", "255 cm", "194 cm"],
  ]);
  await press("Show it on the loom");
  expect([bench.doc?.title, text().includes("not taken yet: phrases to teach: 8")]).toStrictEqual(["simpler", true]);
  await press("The order before");
  expect(bench.doc?.title).toBe("one");
  await press("The next order");
  await press("Take it");
  expect([bench.doc?.title, bench.setAside, bench.history.undo.length]).toStrictEqual(["simpler", null, 1]);
});

it("orders are shown before they are rehearsed, and what is learnt of them comes after", async () => {
  const files = { "orders.json": { orders: [{ ...order("one", 5), failures: null as number | null }], given: null, simpler: null, tried: 9, cut_short: false, findings: [] } };
  studio(files, "running");
  let finish = (): void => undefined;
  const running: JobStatus = { job: "j", state: "running", serial: 1, what: "rehearsing orders", files: ["orders.json"] } as JobStatus;
  const heard = [Promise.resolve(running), new Promise<JobStatus>((done) => (finish = () => done({ ...running, state: "done", serial: 2 })))];
  connection.connect({ ...connection.wire, jobStatus: () => heard.shift()! } as unknown as Wire);
  show();
  await press("Find an order");
  expect([bench.doc?.title, orders.rehearsing, text().includes("is being rehearsed"), text().includes("slips")]).toStrictEqual(["one", true, true, false]);
  files["orders.json"].orders[0]!.failures = 0.4;
  finish();
  await settle();
  expect([bench.doc?.title, orders.rehearsing, text().includes("0.4 slips")]).toStrictEqual(["one", false, true]);
});

it("what cannot be is told with what would help", async () => {
  studio({ "orders.json": { orders: [], tried: 9, cut_short: false, findings: [finding] } });
  show();
  await press("Find an order");
  expect(text()).toContain("no order holds");
  await press("Mend it: lay a cap");
  expect(bench.doc?.title).toBe("capped");
});

it("what is worked stays, unless the maker lets it go, or the piece is closed", async () => {
  const asked = studio({ "orders.json": { orders: [], tried: 9, cut_short: true, findings: [finding] } });
  show({ moves: [{ do: "hook", phase: "work", step: 1, events: [] }] as never });
  await press("Find an order");
  await press("Leave out what is worked so far");
  await press("Look for longer");
  orders.drop();
  bench.work = { ...bench.work, moves: [{ do: "clip", phase: "finish", step: 1, events: [] }] as never };
  flushSync();
  await press("Find other orders");
  expect(asked.map((request) => [request.do, "afresh" in request && request.afresh])).toStrictEqual([["plan", false], ["plan", true], ["plan", false], ["plan", true]]);
});

it("a search that is stopped shows what is found so far", async () => {
  studio({ "orders.json": { orders: [order("one", 5)], tried: 3, cut_short: true, findings: [] } }, "running");
  show();
  await press("Find an order");
  expect(document.querySelector("progress")).not.toBeNull();
  await press("Show what is found");
  expect([bench.doc?.title, orders.job.running, text().includes("no time to try them all")]).toStrictEqual(["one", false, true]);
});

it("a piece that falls is mended at once, in another way on a press, and back by one undo", async () => {
  studio({ "mends.json": { mends: [{ label: "twist it", document: doc("twisted") }, { label: "cap it", document: doc("capped") }], tried: 3, cut_short: false, findings: [{ ...finding, message: "band 2 falls" }] } });
  show({ moves: [{ do: "clip", phase: "finish", step: 1, events: [] }] as never });
  await press("Mend the piece");
  expect([bench.doc?.title, mended, text().includes("Mended: twist it."), text().includes("band 2 falls")]).toStrictEqual(["twisted", 1, true, true]);
  await press("cap it");
  expect([bench.doc?.title, bench.history.undo.length]).toStrictEqual(["capped", 1]);
  bench.undo();
  expect(bench.doc?.title).toBe("own");
});

it("what the studio refuses is said", async () => {
  studio({}, "refused");
  show();
  await press("Find an order");
  expect(text()).toContain("cannot be read");
  connection.connect({ ...connection.wire, startJob: async () => Promise.reject(new RefusedError(503, "too much is under way")) } as unknown as Wire);
  await press("Find an order");
  expect(text()).toContain("too much is under way");
});
