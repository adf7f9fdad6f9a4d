/** Variants of the piece at hand: what the maker wants, what the server made, and taking one. */
import { docOf, type Doc, type Pattern } from "../document/pattern";
import { freeTitle } from "../document/titles";
import type { VariantChoice, VariantMade, VariantsMade } from "../schema/answers";
import { t } from "../words/words.svelte";
import { bench } from "./bench.svelte";
import { connection } from "./connection";
import { Job } from "./job.svelte";
import { refusalText } from "./refusal_text";
import { stash } from "./stash.svelte";
import { ownColours, withTintWords, type NamedTint } from "./tint_words";

const FILE = "variants.json";
/** Colours that make a choice of colourways worth while. */
const FEW = 2;

class Variants {
  readonly job = new Job();
  result = $state.raw<VariantsMade | null>(null);
  /** Where the picture of each variant that has come so far can be shown. */
  pictures = $state.raw<Readonly<Record<string, string>>>({});
  /** The document that they are variants of. */
  doc = $state.raw<Doc | null>(null);
  /** What was laid on the shelf last. */
  shelved = $state.raw<{ name: string; title: string } | null>(null);
  refusal = $state("");
  readonly trouble = $derived(this.refusal || this.job.trouble);
  /** The variants are there, and their pictures still come. */
  readonly picturing = $derived(this.job.running && this.result !== null);

  /** The colours that colourways are made of: the stash's, and the studio's own where those are few. */
  colours(): { colours: NamedTint[]; stashed: number } {
    const letters = bench.doc?.colours.length ?? 1;
    const stashed = stash.namedBands().map(({ name, tint, have }) => ({ name, tint, have }));
    if (stashed.length >= letters + FEW) return { colours: stashed, stashed: stashed.length };
    const taken = new Set(stashed.map(({ name }) => name.toLocaleLowerCase()));
    return { colours: [...stashed, ...ownColours().filter(({ name }) => !taken.has(name.toLocaleLowerCase()))], stashed: 0 };
  }

  async make(choice: VariantChoice): Promise<void> {
    this.drop();
    const { doc } = bench;
    if (!doc) return;
    this.doc = doc;
    const made = this.job.run({ do: "variants", choice });
    const timer = setInterval(() => void this.#receive(doc), 400);
    const status = await made;
    clearInterval(timer);
    if (status?.state === "done") await this.#receive(doc);
  }

  /** Take what has been made so far: the variants first, then one picture after the other. */
  async #receive(doc: Doc): Promise<void> {
    const files = this.job.status?.files ?? [];
    if (this.doc !== doc || !files.includes(FILE)) return;
    try {
      if (!this.result) {
        const result = await this.job.json<VariantsMade>(FILE);
        if (this.doc === doc) this.result = result;
      }
      for (const name of files) {
        if (!name.endsWith(".png") || this.pictures[name]) continue;
        const url = URL.createObjectURL(await this.job.file(name));
        if (this.doc !== doc || this.pictures[name]) URL.revokeObjectURL(url);
        else this.pictures = { ...this.pictures, [name]: url };
      }
    } catch (error) {
      if (this.doc === doc) this.refusal = refusalText(error);
    }
  }

  /** The variant as a document under the title of the piece. */
  #document(one: VariantMade): Doc {
    return withTintWords(docOf(one.document as unknown as Pattern));
  }

  /** Make it the piece at hand: one edit, and one undo goes back. */
  take(one: VariantMade): void {
    if (bench.doc !== this.doc) return;
    bench.commit({ label: t("edit-variant"), ops: [{ op: "replace", path: "", value: this.#document(one) }] });
  }

  /** Lay it on the shelf as a new piece, called after what is different. */
  async shelve(one: VariantMade, words: string): Promise<void> {
    this.refusal = "";
    try {
      const { pieces } = await connection.wire.shelf();
      const doc = this.#document(one);
      const title = freeTitle(`${doc.title}, ${words}`.slice(0, 190), pieces.map((piece) => piece.title));
      const { name } = await connection.wire.add({ ...doc, title });
      this.shelved = { name, title };
    } catch (error) {
      this.refusal = refusalText(error);
    }
  }

  /** End what is under way, and forget what was made. */
  drop(): void {
    this.job.end();
    for (const url of Object.values(this.pictures)) URL.revokeObjectURL(url);
    Object.assign(this, { result: null, doc: null, shelved: null, refusal: "", pictures: {} });
  }

  /** Drop it unless it speaks of the document at hand. */
  dropUnlessOf(doc: Doc | null): void {
    if (this.doc !== null && this.doc !== doc) this.drop();
  }
}

export const variants = new Variants();
