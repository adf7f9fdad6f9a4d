/** The maker's own stash: which bands are at hand, for every piece alike. */
import type { Stash, Stashed } from "../schema/answers";
import { connection } from "./connection";
import { refusalText } from "./refusal_text";

type StashedBand = NonNullable<Stash["bands"]>[number];

class StashStore {
  content = $state.raw<Stash | null>(null);
  /** Why it cannot be read or written; empty where it can. */
  refusal = $state("");
  #edition = "";

  /** Read the stash. Where its file cannot be read, `refusal` says why and nothing is changed. */
  async load(): Promise<void> {
    try {
      this.#take(await connection.wire.stash());
    } catch (error) {
      this.content = null;
      this.refusal = refusalText(error);
    }
  }

  #take({ stash, edition }: Stashed): void {
    this.content = stash;
    this.#edition = edition;
    this.refusal = "";
  }

  /** How many bands of a colour and kind are at hand; null where the stash says nothing of them. */
  count(letter: string, name: string, band: string): number | null {
    const found = (this.content?.bands ?? []).filter((each) => matchesColour(each, letter, name, band));
    return found.some((each) => each.have) ? found.reduce((sum, each) => sum + (each.have ?? 0), 0) : null;
  }

  /** Bands that have a name and a look, to choose from. */
  namedBands(): { name: string; tint: string; band: string; have: number }[] {
    return (this.content?.bands ?? []).flatMap(({ colour, tint, band, have }) =>
      colour && tint ? [{ name: colour, tint, band: band || "standard", have: have ?? 0 }] : [],
    );
  }

  /** Record how many of a colour are at hand, and how it looks. */
  async record(name: string, tint: string, band: string, count: number): Promise<void> {
    if (!this.content) return;
    const bands = [...(this.content.bands ?? [])];
    const at = bands.findIndex((each) => each.colour?.toLocaleLowerCase() === name.toLocaleLowerCase() && (!each.band || each.band === band));
    if (at < 0) bands.push({ colour: name, tint, band, have: count });
    else bands[at] = { ...bands[at]!, tint, have: count };
    try {
      this.#take(await connection.wire.saveStash({ stash: { ...this.content, bands }, edition: this.#edition }));
    } catch (error) {
      await this.load(); // written by another window in the meantime: read again, and let the maker say it once more
      this.refusal = refusalText(error);
    }
  }
}

/** Whether bands of the stash are of that colour and kind; what is left empty there stands for any. */
export function matchesColour(stashed: StashedBand, letter: string, name: string, band: string): boolean {
  const given = stashed.colour ?? "";
  const colour = !given || given === letter || given.toLocaleLowerCase() === name.toLocaleLowerCase();
  return colour && (!stashed.band || stashed.band === band);
}

export const stash = new StashStore();
