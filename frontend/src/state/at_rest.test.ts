import { afterEach, beforeEach, expect, it, vi } from "vitest";
import type { Doc } from "../document/pattern";
import type { JobStatus } from "../schema/answers";
import type { Wire } from "../wire/client";
import { atRest, keyOfShape } from "./at_rest.svelte";
import { bench } from "./bench.svelte";
import { connection } from "./connection";

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
  const jobs: { job: string; do: string; state: JobStatus["state"]; go: () => void }[] = [];
  const files: Record<string, unknown> = {
    rest: { length_mm: 87, settled: true, strands: [] },
    worn: { length_mm: 87, settled: true, strands: [] },
    measure: { length_mm: 87, pulls: [] },
    lengthen: null,
  };
  const find = (job: string) => jobs.find((each) => each.job === job)!;
  const wire = {
    startJob: async (_piece: string, request: { do: string }) => {
      const one = { job: `job ${jobs.length}`, do: request.do, state: "running" as JobStatus["state"], go: () => undefined as void };
      one.go = () => void (one.state = "done");
      jobs.push(one);
      return { job: one.job, state: "running", serial: 0 };
    },
    jobStatus: async (job: string) => {
      await new Promise((done) => setTimeout(done, 10));
      return { job, state: find(job).state, serial: 1 };
    },
    endJob: async (job: string) => void (find(job).state = "ended"),
    jobFile: async (job: string) => new Blob([JSON.stringify(files[find(job).do])]),
  };
  connection.connect(wire as unknown as Wire);
  return jobs;
}

function showPiece(doc: Doc): void {
  const moves = [{ do: "place", events: [] }, { do: "clip", events: [] }];
  Object.assign(bench, { name: "neap", doc, workedDoc: doc, work: { readable: true, moves, colours: ["A", "A"] } });
  atRest.follow();
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  atRest.clear();
  vi.useRealTimers();
});
const wait = (ms: number) => vi.advanceTimersByTimeAsync(ms);

it("a pause brings the piece to rest; a change ends that at once and begins anew at the next pause", async () => {
  const jobs = server();
  showPiece(chain(5));
  expect(jobs).toStrictEqual([]);
  await wait(1000);
  expect(jobs.map((job) => [job.do, job.state])).toStrictEqual([["rest", "running"]]);
  showPiece(chain(6));
  await wait(0);
  expect(jobs[0]!.state).toBe("ended");
  await wait(1000);
  expect(jobs).toHaveLength(2);
  jobs[1]!.go();
  await wait(200);
  expect([atRest.shape?.length_mm, atRest.stale]).toStrictEqual([87, false]);
  expect(jobs.map((job) => job.do)).toStrictEqual(["rest", "rest", "measure"]);
});

it("a design that comes back is measured to its end, and what was measured of it is asked for once", async () => {
  const jobs = server();
  showPiece(chain(5));
  await wait(1000);
  jobs[0]!.go();
  await wait(200);
  expect(jobs.map((job) => [job.do, job.state])).toStrictEqual([["rest", "done"], ["measure", "running"]]);
  showPiece(chain(6));
  await wait(100);
  expect([atRest.stale, atRest.measured]).toStrictEqual([true, null]);
  showPiece(chain(5));
  await wait(1000);
  expect(jobs.map((job) => [job.do, job.state]).slice(1)).toStrictEqual([["measure", "ended"], ["measure", "running"]]);
  jobs[2]!.go();
  await wait(200);
  expect(atRest.measured?.length_mm).toBe(87);
  expect(jobs[3]!.do).toBe("lengthen");
  showPiece(chain(6));
  await wait(100);
  expect(atRest.measured).toBeNull();
  showPiece(chain(5));
  expect(atRest.measured?.length_mm).toBe(87);
  await wait(1000);
  expect(jobs.slice(3).map((job) => [job.do, job.state])).toStrictEqual([["lengthen", "ended"], ["lengthen", "running"]]);
});

it("another tint is no other shape", async () => {
  const jobs = server();
  showPiece(chain(5));
  await wait(1000);
  showPiece(chain(5, "#b5382a"));
  await wait(1000);
  expect(jobs).toHaveLength(1);
  expect(keyOfShape(chain(5))).toBe(keyOfShape(chain(5, "#b5382a")));
  expect(keyOfShape(chain(5))).not.toBe(keyOfShape(chain(6)));
});

it("it is closed round a wrist when that is asked for, and what is worn is dropped with the design", async () => {
  const jobs = server();
  showPiece(chain(5));
  await wait(1000);
  jobs[0]!.go();
  await wait(200);
  void atRest.closeRound(160.4);
  await wait(100);
  expect(jobs.at(-1)!.do).toBe("worn");
  jobs.at(-1)!.go();
  await wait(200);
  expect(atRest.worn?.girth).toBe(160);
  void atRest.closeRound(170);
  await wait(100);
  expect(atRest.worn).toBeNull();
  showPiece(chain(6));
  await wait(100);
  expect([atRest.worn, jobs.filter((job) => job.state === "running").length]).toStrictEqual([null, 0]);
});
