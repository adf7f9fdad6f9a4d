/** Work in the background, as the page follows it: begun, heard of, ended; newer work takes the place of older. */
import { Refused, type Errand, type Told } from "../wire/client";
import { spoken } from "../words/words.svelte";
import { bench, wireNow } from "./bench.svelte";

const AGAIN_MS = 1000;

export class Task {
  told = $state.raw<Told | null>(null);
  /** What the server would not even begin, in a sentence. */
  said = $state("");
  readonly running = $derived(this.told?.state === "waiting" || this.told?.state === "running");
  /** How far it is, from 0 to 1; null while nobody knows. */
  readonly share = $derived(this.told?.total ? this.told.done! / this.told.total : null);
  #follow: AbortController | null = null;

  /** Send an errand for the piece at hand and follow it. Returns what came of it; null where newer work overtook it. */
  async run(errand: Errand): Promise<Told | null> {
    const { name, doc } = bench;
    if (!name || !doc) return null;
    this.#follow?.abort();
    const follow = (this.#follow = new AbortController());
    this.said = "";
    try {
      this.told = await wireNow().start(name, { language: spoken.language, ...errand }, doc);
      while (!follow.signal.aborted && this.running) {
        try {
          const told = await wireNow().look(this.told.job, this.told.serial ?? 0, follow.signal);
          if (!follow.signal.aborted) this.told = told;
        } catch (error) {
          if (!(error instanceof Refused) || error.status) throw error;
          await new Promise((done) => setTimeout(done, AGAIN_MS)); // the studio does not answer just now
        }
      }
    } catch (error) {
      if (error instanceof Refused && !follow.signal.aborted) {
        this.said = error.message;
        this.told = null;
      }
      return null;
    }
    return follow.signal.aborted ? null : this.told;
  }

  /** End it, here and on the server. */
  end(): void {
    this.#follow?.abort();
    if (this.told && this.running) {
      void wireNow().end(this.told.job).catch(() => undefined);
      this.told = null;
    }
  }

  /** Fetch what it has made. */
  async file(name: string): Promise<Blob> {
    if (!this.told) throw new Refused(404, "");
    return wireNow().file(this.told.job, name);
  }
}

/** Hand a file to the maker. */
export function give(blob: Blob, name: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
