import { expect, it } from "vitest";
import type { Doc } from "../document/pattern";
import type { JobStatus } from "../schema/answers";
import type { Wire } from "../wire/client";
import { connection } from "./connection";
import { Job } from "./job.svelte";

/** A server whose job has made a first file when it comes to this. */
function serve(state: JobStatus["state"]): void {
  const wire = {
    startJob: async () => ({ job: "one", state: "running", serial: 0 }),
    jobStatus: async () => {
      await new Promise((done) => setTimeout(done, 5));
      return { job: "one", state, serial: 1, files: ["handout-a4.pdf"] };
    },
    endJob: async () => undefined,
  };
  connection.connect(wire as unknown as Wire);
}
const piece = { name: "neap", doc: {} as Doc };
const press = { do: "press", whole: true } as const;

it("says in words that its process was ended from outside, or that newer work took its place", async () => {
  for (const [state, words] of [["failed", "Something went wrong. Try again."], ["ended", "It was stopped before it was ready."]] as const) {
    serve(state);
    const job = new Job();
    await job.run(press, piece);
    expect(job.trouble).toBe(words);
  }
});

it("says that it was stopped where the maker stops it, until it is begun again; closing it says nothing", async () => {
  serve("running");
  const job = new Job();
  void job.run(press, piece);
  await new Promise((done) => setTimeout(done, 2));
  job.stop();
  expect(job.trouble).toBe("It was stopped before it was ready.");
  expect(job.running).toBe(false);
  serve("done");
  await job.run(press, piece);
  expect(job.trouble).toBe("");
  job.stop(); // there is nothing left to stop
  expect(job.trouble).toBe("");
  serve("running");
  void job.run(press, piece);
  await new Promise((done) => setTimeout(done, 2));
  job.end();
  expect(job.trouble).toBe("");
});
