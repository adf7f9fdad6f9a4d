import { afterEach, beforeEach, expect, it, vi } from "vitest";
import type { Doc } from "../document/pattern";
import type { Told, Wire } from "../wire/client";
import { bench, useWire } from "./bench.svelte";
import { forget, heed, rest, shapeKey, wear } from "./rest.svelte";

const chain = (pegs: number, hex = "#34506b"): Doc =>
  ({
    pegwright: 2,
    title: "Neap",
    loom: { kind: "rows", rows: 1, pegs },
    colours: [{ letter: "A", name: "slate", hex }],
    motifs: [],
    steps: [{ do: "repeat", times: pegs - 1, pegs: 1, steps: [{ do: "place", colour: "A", over: ["A1", "A2"] }] }],
  }) as unknown as Doc;

/** A server whose jobs run until they are let go or ended. */
function server() {
  const jobs: { job: string; do: string; state: Told["state"]; go: () => void }[] = [];
  const files: Record<string, unknown> = {
    rest: { length_mm: 87, settled: true, strands: [] },
    worn: { length_mm: 87, settled: true, strands: [] },
    measure: { length_mm: 87, pulls: [] },
    lengthen: null,
  };
  const find = (job: string) => jobs.find((each) => each.job === job)!;
  const wire = {
    start: async (_piece: string, errand: { do: string }) => {
      const one = { job: `job ${jobs.length}`, do: errand.do, state: "running" as Told["state"], go: () => undefined as void };
      one.go = () => void (one.state = "done");
      jobs.push(one);
      return { job: one.job, state: "running", serial: 0 };
    },
    look: async (job: string) => {
      await new Promise((done) => setTimeout(done, 10));
      return { job, state: find(job).state, serial: 1 };
    },
    end: async (job: string) => void (find(job).state = "ended"),
    file: async (job: string) => new Blob([JSON.stringify(files[find(job).do])]),
  };
  useWire(wire as unknown as Wire);
  return jobs;
}

function lookAt(doc: Doc): void {
  const moves = [{ do: "place", events: [] }, { do: "clip", events: [] }];
  Object.assign(bench, { name: "neap", doc, seenDoc: doc, seen: { readable: true, moves, colours: ["A", "A"] } });
  heed();
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  forget();
  vi.useRealTimers();
});
const wait = (ms: number) => vi.advanceTimersByTimeAsync(ms);

it("a pause brings the piece to rest; a change ends that at once and begins anew at the next pause", async () => {
  const jobs = server();
  lookAt(chain(5));
  expect(jobs).toStrictEqual([]);
  await wait(1000);
  expect(jobs.map((job) => [job.do, job.state])).toStrictEqual([["rest", "running"]]);
  lookAt(chain(6));
  await wait(0);
  expect(jobs[0]!.state).toBe("ended");
  await wait(1000);
  expect(jobs).toHaveLength(2);
  jobs[1]!.go();
  await wait(200);
  expect([rest.shape?.length_mm, rest.stale]).toStrictEqual([87, false]);
  expect(jobs.map((job) => job.do)).toStrictEqual(["rest", "rest", "measure"]);
});

it("another tint is no other shape", async () => {
  const jobs = server();
  lookAt(chain(5));
  await wait(1000);
  lookAt(chain(5, "#b5382a"));
  await wait(1000);
  expect(jobs).toHaveLength(1);
  expect(shapeKey(chain(5))).toBe(shapeKey(chain(5, "#b5382a")));
  expect(shapeKey(chain(5))).not.toBe(shapeKey(chain(6)));
});

it("it is closed round a wrist when that is asked for, and what is worn is dropped with the design", async () => {
  const jobs = server();
  lookAt(chain(5));
  await wait(1000);
  jobs[0]!.go();
  await wait(200);
  void wear(160.4);
  await wait(100);
  expect(jobs.at(-1)!.do).toBe("worn");
  jobs.at(-1)!.go();
  await wait(200);
  expect(rest.worn?.girth).toBe(160);
  void wear(170);
  await wait(100);
  expect(rest.worn).toBeNull();
  lookAt(chain(6));
  await wait(100);
  expect([rest.worn, jobs.filter((job) => job.state === "running").length]).toStrictEqual([null, 0]);
});
