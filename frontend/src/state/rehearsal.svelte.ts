/** The rehearsal of the piece at hand: asked for by the maker, dropped as soon as the design changes. */
import type { Doc } from "../document/pattern";
import type { Rehearsed, Slipped } from "../schema/answers";
import { bench } from "./bench.svelte";
import { Job } from "./job.svelte";

class Rehearsal {
  readonly job = new Job();
  result = $state.raw<Rehearsed | null>(null);
  /** The document that `result` speaks of, or that is being rehearsed. */
  doc = $state.raw<Doc | null>(null);
  /** What each move costs, as a share of the costliest. */
  readonly heat = $derived.by(() => {
    const heat = this.result?.heat ?? [];
    const most = Math.max(0, ...heat);
    return most ? heat.map((lost) => lost / most) : [];
  });

  async rehearse(): Promise<void> {
    const doc = bench.doc;
    this.result = null;
    this.doc = doc;
    const status = await this.job.run({ do: "rehearse" });
    if (status?.state === "done" && this.doc === doc) this.result = await this.job.json<Rehearsed>("rehearsal.json");
  }

  /** Drop it unless it speaks of the document at hand. */
  dropUnlessOf(doc: Doc | null): void {
    if (this.doc === null || this.doc === doc) return;
    this.job.end();
    this.result = this.doc = null;
  }
}

export const rehearsal = new Rehearsal();

/** Show the loom as it is just before a mistake, with the stack open where the hook goes. */
export function showBeforeSlip(slip: Slipped): void {
  const move = bench.work.moves?.[slip.moment];
  const from = move?.events.find((event) => "source" in event);
  bench.tool = "point";
  bench.snapped = bench.slipped = null;
  bench.moment = slip.moment;
  bench.stackPeg = from && "source" in from ? from.source : null;
}

/** Show how it ends: the loom after the last move, with the bands marked that fall. */
export function showEndOfSlip(slip: Slipped): void {
  bench.tool = "point";
  bench.snapped = null;
  bench.stackPeg = null;
  bench.moment = bench.work.moves?.length ?? 0;
  bench.slipped = slip.falls;
}
