/** What falls if one band snaps: asked of the server, and known for as long as the document stays. */
import type { Doc } from "../document/pattern";
import type { Snapped } from "../schema/answers";
import { RefusedError } from "../wire/client";
import { bench } from "./bench.svelte";
import { connection } from "./connection";
import { refusalText } from "./refusal_text";

const POINT_FOR_MS = 70;

class Snapping {
  #timer: ReturnType<typeof setTimeout> | undefined;
  #doc: Doc | null = null;
  #known = new Map<number, Snapped>();

  /** Say what falls if a band snaps; `null` says nothing any more. */
  async snap(band: number | null): Promise<void> {
    clearTimeout(this.#timer);
    bench.band = band;
    const { doc } = bench;
    if (!doc || band === null) {
      bench.snapped = null;
      return;
    }
    if (this.#doc !== doc) [this.#doc, this.#known] = [doc, new Map()];
    const known = this.#known;
    const snapped = known.get(band) ?? (await this.#ask(doc, band));
    if (snapped) known.set(band, snapped);
    if (bench.doc === doc && bench.band === band && bench.tool === "snap") bench.snapped = snapped;
  }

  /** The same for what is pointed at in passing. */
  snapSoon(band: number | null): void {
    clearTimeout(this.#timer);
    if (band !== bench.band) this.#timer = setTimeout(() => void this.snap(band), POINT_FOR_MS);
  }

  async #ask(doc: Doc, band: number): Promise<Snapped | null> {
    try {
      return await connection.wire.snap(doc, band, bench.page);
    } catch (error) {
      if (error instanceof RefusedError && error.status) bench.message = refusalText(error);
      return null;
    }
  }
}

export const snapping = new Snapping();
