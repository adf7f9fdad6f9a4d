/** A maker's words as they are read: the text, what was answered so far, and what the server makes of both. */
import type { ReadBlank, WordsRead } from "../schema/answers";
import { bench } from "./bench.svelte";
import { connection } from "./connection";
import { refusalText } from "./refusal_text";

export interface WordAnswer {
  key: ReadBlank["key"];
  sentence: number;
  answer: string;
}

class WordsReadStore {
  text = $state("");
  told = $state.raw<WordsRead | null>(null);
  refusal = $state("");
  busy = $state(false);
  /** How many moves are made in the picture. */
  moment = $state(0);
  #answers: WordAnswer[] = [];
  /** How many answers there were before each of the maker's. */
  #before: number[] = [];
  #serial = 0;
  answered = $state(0);

  /** Read a text; where it is a document, open it at once. */
  async read(text: string): Promise<void> {
    this.text = text;
    this.#answers = [];
    this.#before = [];
    this.answered = 0;
    await this.ask();
    const { told } = this;
    if (told?.document && !told.sentences.length) await this.accept();
  }

  /** Answer one of the questions, for all sentences that it is about. */
  async answer(blank: ReadBlank, answer: string): Promise<void> {
    this.#before.push(this.#answers.length);
    this.#answers = [...this.#answers, ...blank.sentences.map((sentence) => ({ key: blank.key, sentence, answer }))];
    this.answered = this.#before.length;
    await this.ask();
  }

  /** Take the last answer back. */
  async takeBack(): Promise<void> {
    this.#answers = this.#answers.slice(0, this.#before.pop() ?? 0);
    this.answered = this.#before.length;
    await this.ask();
  }

  /** Read the text again, with all answers; also when the page's language has changed. */
  async ask(): Promise<void> {
    const serial = ++this.#serial;
    this.busy = true;
    this.refusal = "";
    try {
      const told = await connection.wire.read(this.text, this.#answers);
      if (serial !== this.#serial) return;
      this.told = told;
      this.moment = told.work.moves?.length ?? 0;
    } catch (error) {
      if (serial === this.#serial) this.refusal = refusalText(error);
    } finally {
      if (serial === this.#serial) this.busy = false;
    }
  }

  /** Lay the piece on the shelf and open it on the bench. */
  async accept(): Promise<void> {
    const document = this.told?.document;
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
    this.#serial++;
    this.told = null;
    this.text = this.refusal = "";
    this.busy = false;
  }
}

export const wordsRead = new WordsReadStore();
