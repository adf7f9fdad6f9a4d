/** The first tour: six things that make a piece, each told where the hand's tip stands and done with by doing it. */
import { t } from "../words/words.svelte";
import { bench } from "./bench.svelte";
import { preferences } from "./preferences.svelte";

const LENGTH = 6;

class Tour {
  /** The piece was looked at closely; the lesson was opened. */
  looked = $state(false);
  taught = $state(false);
  /** The step that is told, from 1; 0 where there is none. */
  readonly step = $derived.by(() => {
    if (preferences.toured || !bench.doc) return 0;
    const moves = bench.work.moves ?? [];
    const laid = moves.filter((move) => move.do === "place").length;
    const done = [laid > 0, laid > 1, moves.some((move) => move.do === "hook"), bench.closed, this.looked, this.taught];
    const last = done.lastIndexOf(true); // what comes later is done only after what comes before it
    return last + 2 > LENGTH ? 0 : last + 2;
  });

  get text(): string {
    return this.step ? `${t("tour-of", { step: this.step, of: LENGTH })} ${t(`tour-${this.step}`)}` : "";
  }

  leave(): void {
    preferences.toured = true;
  }

  begin(): void {
    this.looked = this.taught = false;
    preferences.toured = false;
  }
}

export const tour = new Tour();
