/** The maker's own stash: which bands are at hand, for every piece alike. */
import { Refused, type Stash } from "../wire/client";
import { wireNow } from "./bench.svelte";

type Goods = NonNullable<Stash["bands"]>[number];

class Mine {
  stash = $state.raw<Stash | null>(null);
  said = $state("");
}

export const mine = new Mine();
let edition = "";

/** Look into the stash. Where its file cannot be read, `said` says why and nothing is changed. */
export async function lookIn(): Promise<void> {
  try {
    const told = await wireNow().stash();
    [mine.stash, edition, mine.said] = [told.stash, told.edition, ""];
  } catch (error) {
    [mine.stash, mine.said] = [null, error instanceof Refused ? error.message : ""];
  }
}

/** Whether bands of the stash are of that colour and kind; what is left empty there stands for any. */
export function suits(goods: Goods, letter: string, name: string, band: string): boolean {
  const said = goods.colour ?? "";
  const colour = !said || said === letter || said.toLocaleLowerCase() === name.toLocaleLowerCase();
  return colour && (!goods.band || goods.band === band);
}

/** How many are at hand; null where the stash says nothing of them. */
export function have(letter: string, name: string, band: string): number | null {
  const found = (mine.stash?.bands ?? []).filter((goods) => suits(goods, letter, name, band));
  return found.some((goods) => goods.have) ? found.reduce((sum, goods) => sum + (goods.have ?? 0), 0) : null;
}

/** Bands that have a name and a look, to choose from. */
export function choice(): { name: string; tint: string; band: string; have: number }[] {
  return (mine.stash?.bands ?? []).flatMap(({ colour, tint, band, have }) =>
    colour && tint ? [{ name: colour, tint, band: band || "standard", have: have ?? 0 }] : [],
  );
}

/** Write down how many of a colour are at hand, and how it looks. */
export async function writeDown(name: string, tint: string, band: string, count: number): Promise<void> {
  if (!mine.stash) return;
  const bands = [...(mine.stash.bands ?? [])];
  const at = bands.findIndex((goods) => goods.colour?.toLocaleLowerCase() === name.toLocaleLowerCase() && (!goods.band || goods.band === band));
  if (at < 0) bands.push({ colour: name, tint, band, have: count });
  else bands[at] = { ...bands[at]!, tint, have: count };
  try {
    const told = await wireNow().saveStash({ stash: { ...mine.stash, bands }, edition });
    [mine.stash, edition, mine.said] = [told.stash, told.edition, ""];
  } catch (error) {
    await lookIn(); // written by another window in the meantime: look again, and let the maker say it once more
    mine.said = error instanceof Refused ? error.message : "";
  }
}
