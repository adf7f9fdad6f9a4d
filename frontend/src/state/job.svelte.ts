/** Work in the background, as the page follows it: begun, heard of, ended; newer work takes the place of older. */
import type { JobRequest, JobStatus } from "../schema/answers";
import { RefusedError } from "../wire/client";
import { spoken, t } from "../words/words.svelte";
import { bench } from "./bench.svelte";
import { connection } from "./connection";
import { refusalText } from "./refusal_text";

const RETRY_AFTER_MS = 1000;

export class Job {
  status = $state.raw<JobStatus | null>(null);
  /** What the server would not even begin, in a sentence. */
  refusal = $state("");
  #stopped = $state(false);
  readonly running = $derived(this.status?.state === "waiting" || this.status?.state === "running");
  /** How far it is, from 0 to 1; null while nobody knows. */
  readonly share = $derived(this.status?.total ? this.status.done! / this.status.total : null);
  /** Why nothing came of it, in a sentence; empty while it runs and where it is done. */
  readonly trouble = $derived.by(() => {
    if (this.refusal) return this.refusal;
    if (this.#stopped) return t("job-ended");
    switch (this.status?.state) {
      case "refused":
        return this.status.reason || t("job-failed");
      case "failed":
        return t("job-failed");
      case "ended":
        return t("job-ended");
      default:
        return "";
    }
  });
  #following: AbortController | null = null;

  /** Request a job for the piece at hand, or another document, and follow it.
   * Returns what came of it; null where newer work overtook it. `heard` is told of every change on the way. */
  async run(
    request: JobRequest,
    { name, doc }: { name: string | null; doc: object | null } = bench,
    heard: (status: JobStatus) => void = () => undefined,
  ): Promise<JobStatus | null> {
    if (!name || !doc) return null;
    this.#following?.abort();
    const following = (this.#following = new AbortController());
    this.refusal = "";
    this.#stopped = false;
    try {
      this.status = await connection.wire.startJob(name, { language: spoken.language, ...request }, doc);
      while (!following.signal.aborted && this.running) {
        try {
          const status = await connection.wire.jobStatus(this.status.job, this.status.serial ?? 0, following.signal);
          if (!following.signal.aborted) {
            this.status = status;
            if (this.running) heard(status);
          }
        } catch (error) {
          if (!(error instanceof RefusedError) || error.status) throw error;
          await new Promise((done) => setTimeout(done, RETRY_AFTER_MS)); // the studio does not answer just now
        }
      }
    } catch (error) {
      if (error instanceof RefusedError && !following.signal.aborted) {
        this.refusal = refusalText(error);
        this.status = null;
      }
      return null;
    }
    return following.signal.aborted ? null : this.status;
  }

  /** End it, here and on the server. */
  end(): void {
    this.#following?.abort();
    this.#stopped = false;
    if (this.status && this.running) {
      void connection.wire.endJob(this.status.job).catch(() => undefined);
      this.status = null;
    }
  }

  /** End it because the maker asks for that, and say so. */
  stop(): void {
    const stopped = this.running;
    this.end();
    this.#stopped = stopped;
  }

  /** Fetch a file that it has made.
   * @throws RefusedError where there is none. */
  async file(name: string): Promise<Blob> {
    if (!this.status) throw new RefusedError(404, "");
    return connection.wire.jobFile(this.status.job, name);
  }

  /** Fetch a JSON file that it has made, as the type that the server gives it. */
  async json<T>(name: string): Promise<T> {
    return JSON.parse(await (await this.file(name)).text()) as T;
  }
}
