/** The rehearsal of the piece at hand: asked for by the maker, let go of as soon as the design changes. */
import type { Doc } from "../document/pattern";
import type { Rehearsed, Slipped } from "../wire/client";
import { bench } from "./bench.svelte";
import { Task } from "./task.svelte";

class Rehearsal {
  task = new Task();
  told = $state.raw<Rehearsed | null>(null);
  /** The document that `told` speaks of, or that is being rehearsed. */
  doc = $state.raw<Doc | null>(null);
  /** What each move costs, as a share of the costliest. */
  readonly heat = $derived.by(() => {
    const heat = this.told?.heat ?? [];
    const most = Math.max(0, ...heat);
    return most ? heat.map((lost) => lost / most) : [];
  });
}

export const rehearsal = new Rehearsal();

export async function rehearse(): Promise<void> {
  const doc = bench.doc;
  rehearsal.told = null;
  rehearsal.doc = doc;
  const told = await rehearsal.task.run({ do: "rehearse" });
  if (told?.state !== "done" || rehearsal.doc !== doc) return;
  rehearsal.told = JSON.parse(await (await rehearsal.task.file("rehearsal.json")).text()) as Rehearsed;
}

/** Let go of it unless it speaks of the document at hand. */
export function heedRehearsal(doc: Doc | null): void {
  if (rehearsal.doc === null || rehearsal.doc === doc) return;
  rehearsal.task.end();
  rehearsal.told = rehearsal.doc = null;
}

/** Show the loom as it is just before a slip, with the stack open where the hook goes. */
export function showSlip(slip: Slipped): void {
  const move = bench.seen.moves?.[slip.moment];
  const from = move?.events.find((event) => "source" in event);
  bench.tool = "point";
  bench.snapped = bench.slipped = null;
  bench.moment = slip.moment;
  bench.peg = from && "source" in from ? from.source : null;
}

/** Show the end of it: the loom after the last move, with the bands marked that fall. */
export function showEnd(slip: Slipped): void {
  bench.tool = "point";
  bench.snapped = null;
  bench.peg = null;
  bench.moment = bench.seen.moves?.length ?? 0;
  bench.slipped = slip.falls;
}
