/** Listening back: a recording laid beside the lesson of the piece at hand. */
import type { Edit } from "../document/edit";
import type { Doc } from "../document/pattern";
import type { Heard } from "../schema/answers";
import { spoken, t, type Language } from "../words/words.svelte";
import { bench } from "./bench.svelte";
import { Job } from "./job.svelte";
import { Recording } from "./recording.svelte";

class Listening {
  readonly recording = new Recording();
  readonly job = new Job();
  /** Makes the files once more where a mend was refused. */
  readonly filing = new Job();
  told = $state.raw<Heard | null>(null);
  /** The document, and the language of the page, that `told` speaks of. */
  doc = $state.raw<Doc | null>(null);
  #said: Language = "en";
  #piece: string | null = null;
  /** Mends that the teacher does not want, by their place. */
  refused = $state.raw<ReadonlySet<number>>(new Set());
  isPaceKept = $state(false);
  readonly isStale = $derived(this.told !== null && this.doc !== bench.doc);

  /** Take dropped files, and listen where captions are among them. */
  async take(files: Iterable<File>): Promise<void> {
    this.forgetOtherPiece();
    if (await this.recording.take(files)) await this.listen();
  }

  async listen(): Promise<void> {
    const { captions, language } = this.recording;
    if (!captions) return;
    this.filing.end();
    const [doc, said] = [bench.doc, spoken.language];
    this.told = null;
    this.isPaceKept = false;
    this.refused = new Set();
    const status = await this.job.run({ do: "listen", captions: captions.base64, spoken: language });
    if (status?.state !== "done" || bench.doc !== doc) return;
    this.told = await this.job.json<Heard>("heard.json");
    [this.doc, this.#said] = [doc, said];
  }

  /** What was found is said in the language of the page, of the piece that is open. */
  lookAgain(): void {
    this.forgetOtherPiece();
    if (this.told && this.#said !== spoken.language && !this.isStale) void this.listen();
  }

  forgetOtherPiece(): void {
    if (this.#piece === bench.name) return;
    this.job.end();
    this.filing.end();
    if (this.#piece !== null) this.recording.clear();
    this.told = null;
    this.#piece = bench.name;
  }

  /** Take a mend, or leave the word as it was heard. */
  decide(mend: number, taken: boolean): void {
    const refused = new Set(this.refused);
    if (taken) refused.delete(mend);
    else refused.add(mend);
    this.refused = refused;
  }

  decideAll(taken: boolean): void {
    this.refused = new Set(taken ? [] : this.told?.mends.keys());
  }

  /** Fetch one of the files to take along, with the mends as they were decided. Null where newer work overtook it. */
  async file(name: string): Promise<Blob | null> {
    const { captions, language } = this.recording;
    if (!this.refused.size || !name.startsWith("captions.") || !captions) return this.job.file(name);
    const status = await this.filing.run({ do: "listen", captions: captions.base64, spoken: language, refused: [...this.refused] });
    return status?.state === "done" ? this.filing.file(name) : null;
  }

  /** Keep with the piece how long each step was shown. */
  keepPace(): void {
    if (!this.told?.pace.length || this.isStale) return;
    bench.commit({ label: t("edit-pace"), ops: this.told.pace as unknown as Edit["ops"] }, bench.moment);
    this.doc = bench.doc; // what was heard is as true as before
    this.isPaceKept = true;
  }

  end(): void {
    this.job.end();
    this.filing.end();
  }
}

export const listening = new Listening();
