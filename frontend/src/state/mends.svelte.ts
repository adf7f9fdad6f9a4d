/** The smallest changes that make a piece hold: looked for by the server; the first is made at once, others stay at hand. */
import { docOf, type Doc, type Pattern } from "../document/pattern";
import type { MendsFound } from "../schema/answers";
import { bench } from "./bench.svelte";
import { Job } from "./job.svelte";

class Mends {
  readonly job = new Job();
  result = $state.raw<MendsFound | null>(null);
  /** The document that falls. */
  doc = $state.raw<Doc | null>(null);
  #docs = $state.raw<readonly Doc[]>([]);
  /** Which of the changes is made, from 0; -1 for none. */
  readonly made = $derived(bench.doc ? this.#docs.indexOf(bench.doc) : -1);

  /** Look for what mends the piece, and make the smallest change. Returns whether one was made. */
  async find(): Promise<boolean> {
    this.drop();
    bench.dropProposal();
    const { doc } = bench;
    if (!doc) return false;
    this.doc = doc;
    const status = await this.job.run({ do: "mend" });
    if (status?.state !== "done" || this.doc !== doc) return false;
    const result = await this.job.json<MendsFound>("mends.json");
    if (this.doc !== doc || bench.doc !== doc) return false;
    this.#docs = result.mends.map((mend) => docOf(mend.document as unknown as Pattern));
    this.result = result;
    this.make(0);
    return result.mends.length > 0;
  }

  /** Make one of the changes, in place of one that is made already. */
  make(index: number): void {
    const [doc, mend] = [this.#docs[index], this.result?.mends[index]];
    if (!doc || !mend || this.made === index) return;
    if (this.made >= 0) bench.undo();
    bench.commit({ label: mend.label, ops: [{ op: "replace", path: "", value: doc }] });
  }

  /** End what is under way, and forget what was found. */
  drop(): void {
    this.job.end();
    this.result = this.doc = null;
    this.#docs = [];
  }

  /** Drop it unless it speaks of the document at hand, or of one that it mended. */
  dropUnlessOf(doc: Doc | null): void {
    if (this.doc !== null && this.doc !== doc && this.made < 0) this.drop();
  }
}

export const mends = new Mends();
