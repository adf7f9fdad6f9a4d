/** A recording that has no pattern yet: what is said in it, and the draft that its clear sentences come to. */
import type { Draft, ReadBlank } from "../schema/answers";
import { spoken } from "../words/words.svelte";
import { bench } from "./bench.svelte";
import { connection } from "./connection";
import { Job } from "./job.svelte";
import { Recording } from "./recording.svelte";
import { refusalText } from "./refusal_text";
import type { WordAnswer } from "./words_read.svelte";

class RecordingDraft {
  readonly recording = new Recording();
  readonly job = new Job();
  told = $state.raw<Draft | null>(null);
  refusal = $state("");
  /** Whether a recording is being looked at. */
  isOpen = $state(false);
  /** How many moves are made in the picture. */
  moment = $state(0);
  /** The answers so far, all of one question together. */
  answers = $state.raw<readonly (readonly WordAnswer[])[]>([]);

  /** Take dropped files: captions are read anew. */
  async take(files: readonly File[]): Promise<void> {
    if (!this.isOpen) this.recording.language = spoken.language;
    this.isOpen = true;
    if (await this.recording.take(files)) {
      this.told = null;
      this.answers = [];
      await this.ask();
    }
  }

  async answer(blank: ReadBlank, answer: string): Promise<void> {
    this.answers = [...this.answers, blank.sentences.map((sentence) => ({ key: blank.key, sentence, answer }))];
    await this.ask();
  }

  async takeBack(): Promise<void> {
    this.answers = this.answers.slice(0, -1);
    await this.ask();
  }

  async ask(): Promise<void> {
    const { captions, language } = this.recording;
    if (!captions) return;
    this.refusal = "";
    const request = { do: "draft", captions: captions.base64, spoken: language, answers: this.answers.flat() } as const;
    const status = await this.job.run(request, { name: "draft", doc: {} });
    if (status?.state !== "done") return;
    this.told = await this.job.json<Draft>("draft.json");
    this.moment = this.told.lines.at(-1)?.done ?? 0;
  }

  /** Lay the draft on the shelf and open it. */
  async accept(): Promise<void> {
    const document = this.told?.read.document;
    if (!document) return;
    try {
      const { name } = await connection.wire.add(document);
      this.leave();
      await bench.open(name);
    } catch (error) {
      this.refusal = refusalText(error);
    }
  }

  leave(): void {
    this.job.end();
    this.recording.clear();
    Object.assign(this, { told: null, isOpen: false, answers: [], refusal: "" });
  }
}

export const recordingDraft = new RecordingDraft();
