/** A recording: its captions as they were dropped, and the sound or film itself, which never leaves the page. */
import { spoken, t, type Language } from "../words/words.svelte";

/** Longer captions than a hundred hours of talk are not sent. */
const MOST_BYTES = 5_500_000;
const LOOKED_AT = 20_000;

/** What a dropped file is to a recording: its captions, its sound or film, or neither. */
export type Part = "captions" | "media" | null;

export async function partOf(file: File): Promise<Part> {
  if (/^(audio|video)\//.test(file.type) || /\.(mp4|m4a|mov|webm|mkv|mp3|wav|ogg|oga|opus|flac|aac)$/i.test(file.name)) return "media";
  if (/\.(vtt|srt)$/i.test(file.name)) return "captions";
  if (/^image\//.test(file.type) || /\.(json|pegwright|html?)$/i.test(file.name)) return null;
  const start = await textOf(file.slice(0, LOOKED_AT));
  const timed = start.split(/\r\n|\r|\n/).filter((line) => /^\s*\[(\d{1,4}:)?\d{1,2}:[0-5]\d/.test(line)).length;
  return /^\ufeff?WEBVTT\b/.test(start) || /\d:[0-5]\d(?:[.,]\d+)?\s+-->/.test(start) || timed > 1 ? "captions" : null;
}

/** The text of a file in any of the encodings that editors write. */
async function textOf(file: Blob): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const [a, b] = bytes;
  return new TextDecoder(a === 0xff && b === 0xfe ? "utf-16le" : a === 0xfe && b === 0xff ? "utf-16be" : "utf-8").decode(bytes);
}

export class Recording {
  /** The captions as the server takes them, and the name of their file. */
  captions = $state.raw<{ name: string; base64: string } | null>(null);
  media = $state.raw<{ name: string; url: string; isFilm: boolean } | null>(null);
  /** The language that is heard in it. */
  language = $state<Language>(spoken.language);
  /** What was wrong with a file that was dropped, in a sentence. */
  message = $state("");
  /** The place in the recording, in seconds. */
  at = $state(0);
  player = $state.raw<HTMLMediaElement | null>(null);

  /** Take files that belong to a recording. Returns whether captions are among them. */
  async take(files: Iterable<File>): Promise<boolean> {
    this.message = "";
    let heard = false;
    for (const file of files) {
      const part = await partOf(file);
      if (part === "media") this.#play(file);
      else if (part !== "captions") this.message = t("no-recording", { file: file.name });
      else if (file.size > MOST_BYTES) this.message = t("captions-too-long", { file: file.name });
      else {
        this.captions = { name: file.name, base64: base64Of(new Uint8Array(await file.arrayBuffer())) };
        heard = true;
      }
    }
    return heard;
  }

  /** Go to a place in the recording, and let it be heard from there. */
  seek(seconds: number): void {
    this.at = seconds;
    if (!this.player) return;
    this.player.currentTime = seconds;
    void this.player.play().catch(() => undefined); // the browser says itself what it cannot play
  }

  clear(): void {
    if (this.media) URL.revokeObjectURL(this.media.url);
    Object.assign(this, { captions: null, media: null, message: "", at: 0 });
  }

  #play(file: File): void {
    if (this.media) URL.revokeObjectURL(this.media.url);
    const isFilm = file.type.startsWith("video/") || /\.(mp4|mov|webm|mkv)$/i.test(file.name);
    this.media = { name: file.name, url: URL.createObjectURL(file), isFilm };
  }
}

function base64Of(bytes: Uint8Array): string {
  const parts = [];
  for (let i = 0; i < bytes.length; i += 0x8000) parts.push(String.fromCharCode(...bytes.subarray(i, i + 0x8000)));
  return btoa(parts.join(""));
}

/** A time in a recording as a maker reads it: 4:05, or 1:04:05. */
export function clock(seconds: number): string {
  const whole = Math.floor(seconds);
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const end = String(rest).padStart(2, "0");
  return hours ? `${hours}:${String(minutes).padStart(2, "0")}:${end}` : `${minutes}:${end}`;
}
