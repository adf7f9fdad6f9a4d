/** A picture that is to become a mat: what the maker chooses, how it would lie, and the making of it. */
import { docOf, type Pattern } from "../document/pattern";
import type { MatChoice, MatMade, MatPreview } from "../schema/answers";
import { t } from "../words/words.svelte";
import { bench } from "./bench.svelte";
import { connection } from "./connection";
import { Job } from "./job.svelte";
import { readPicture, type PictureFile } from "./picture_file";
import { refusalText } from "./refusal_text";
import { stash } from "./stash.svelte";
import { ownColours, withTintWords, type NamedTint } from "./tint_words";

export interface ColourChoice extends NamedTint {
  band: string;
  use: boolean;
}

const LOOK_AFTER_MS = 150;
const NEW_PAGE = (): string => crypto.randomUUID();

class PictureMat {
  file = $state.raw<PictureFile | null>(null);
  title = $state("");
  across = $state(25);
  /** Left, top, right and bottom, as shares of the picture. */
  crop = $state.raw<[number, number, number, number]>([0, 0, 1, 1]);
  mostColours = $state(6);
  mixed = $state(false);
  pegs = $state(13);
  boreMm = $state(13.5);
  thicknessMm = $state(1.5);
  colours = $state<ColourChoice[]>([]);
  preview = $state.raw<MatPreview | null>(null);
  looking = $state(false);
  refusal = $state("");
  readonly job = new Job();
  /** The screen is open: a picture was dropped or chosen. */
  isOpen = $state(false);
  readonly used = $derived(this.colours.filter((colour) => colour.use));
  readonly grid = $derived((this.mixed ? this.preview?.mixed : this.preview?.plain) ?? null);
  readonly #page = NEW_PAGE();
  #serial = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #asking: AbortController | null = null;

  /** Take a picture up. Its colours are those of the stash, or the studio's own where there are none. */
  async open(file: File): Promise<void> {
    this.leave();
    this.isOpen = true;
    this.title = file.name.replace(/\.[^.]*$/, "").replace(/[-_]+/g, " ").trim() || t("mat");
    await stash.load();
    const known = stash.namedBands();
    const band = known[0]?.band ?? "standard";
    const here = known.filter((each) => each.band === band).map((each) => ({ ...each, use: true }));
    this.colours = here.length > 1 ? here : ownColours().map((each) => ({ ...each, band: "standard", use: true }));
    try {
      this.file = await readPicture(file);
      if (!this.file) this.refusal = t("picture-too-large", { file: file.name });
    } catch {
      this.refusal = t("picture-unreadable", { file: file.name });
    }
    this.look(0);
  }

  addColour(name: string, tint: string): void {
    this.colours = [...this.colours, { name, tint, have: null, band: this.colours[0]?.band ?? "standard", use: true }];
    this.look();
  }

  /** Ask how it would lie, a moment after the last change. */
  look(after = LOOK_AFTER_MS): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#ask(), after);
  }

  #choice(): MatChoice {
    return {
      title: this.title.trim() || t("mat"),
      across: this.across,
      crop: this.crop,
      most_colours: this.mostColours,
      diffuse: this.mixed,
      pegs: this.pegs,
      band: this.used[0]?.band ?? "standard",
      bore_mm: this.boreMm,
      thickness_mm: this.thicknessMm,
      colours: this.used.map(({ name, tint, have }) => ({ name, tint, have })),
    };
  }

  async #ask(): Promise<void> {
    const { file } = this;
    if (!file || !this.used.length) return;
    this.#asking?.abort();
    const asking = (this.#asking = new AbortController());
    const serial = ++this.#serial;
    this.looking = true;
    try {
      const preview = await connection.wire.lookAtMat(file.data, this.#choice(), this.#page, serial, asking.signal);
      if (serial !== this.#serial) return;
      this.preview = preview;
      this.refusal = preview.plain ? "" : (preview.reason ?? "");
    } catch (error) {
      if (serial === this.#serial) this.refusal = refusalText(error);
    } finally {
      if (serial === this.#serial) this.looking = false;
    }
  }

  /** Have it worked and proved, lay it on the shelf, and open it. */
  async make(): Promise<void> {
    const { file } = this;
    if (!file || !this.grid) return;
    this.refusal = "";
    const status = await this.job.run({ do: "mat", picture: file.data, choice: this.#choice() }, { name: "picture", doc: {} });
    if (status?.state !== "done" || this.file !== file) return;
    try {
      const made = await this.job.json<MatMade>("mat.json");
      if (!made.document) {
        this.refusal = made.findings[0]?.message ?? t("job-failed");
        return;
      }
      const { name } = await connection.wire.add(withTintWords(docOf(made.document as unknown as Pattern)));
      this.leave();
      await bench.open(name);
    } catch (error) {
      this.refusal = refusalText(error);
    }
  }

  leave(): void {
    clearTimeout(this.#timer);
    this.#asking?.abort();
    this.#serial++;
    this.job.end();
    if (this.file?.url) URL.revokeObjectURL(this.file.url);
    Object.assign(this, { file: null, preview: null, isOpen: false, looking: false, refusal: "", crop: [0, 0, 1, 1], mixed: false });
  }
}

export const pictureMat = new PictureMat();
