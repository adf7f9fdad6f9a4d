import { describe, expect, it } from "vitest";
import { clock, partOf, Recording } from "./recording.svelte";

const VTT = "WEBVTT\n\n00:01.000 --> 00:05.000\nHook the lower loop.\n";
const utf16 = (text: string) => new Uint8Array([0xff, 0xfe, ...[...text].flatMap((sign) => [sign.charCodeAt(0) & 255, sign.charCodeAt(0) >> 8])]);

describe("what a dropped file is to a recording", () => {
  it.each([
    ["talk.vtt", "", "", "captions"],
    ["talk.SRT", "", "anything", "captions"],
    ["talk.txt", "text/plain", VTT, "captions"],
    ["talk.txt", "text/plain", "1\n00:00:01,000 --> 00:00:05,000\nHook it.\n", "captions"],
    ["talk.txt", "text/plain", "[0:01] Hook it.\n[1:02:05] Lay it.\n", "captions"],
    ["talk.txt", "text/plain", utf16(VTT), "captions"],
    ["talk", "video/mp4", "", "media"],
    ["talk.opus", "", "", "media"],
    ["pattern.txt", "text/plain", "Ebb\nStretch a band from A1 to A2.\n", null],
    ["pattern.txt", "text/plain", "[1:30] is when we begin.\nStretch a band.\n", null],
    ["follow.html", "text/html", "<!-- 0:05 --> <p>[0:01]\n[0:02]", null],
    ["ebb.json", "application/json", "{}", null],
    ["ebb.png", "image/png", "", null],
  ])("%s %s", async (name, type, body, part) => {
    expect(await partOf(new File([body], name, { type }))).toBe(part);
  });

  it("captions are kept byte for byte, and what is neither leaves them as they are", async () => {
    const recording = new Recording();
    const bytes = Uint8Array.from({ length: 100_000 }, (_, k) => (k * 7) % 256);
    expect(await recording.take([new File([bytes], "talk.srt")])).toBe(true);
    expect(Uint8Array.from(atob(recording.captions!.base64), (sign) => sign.charCodeAt(0))).toStrictEqual(bytes);
    expect(await recording.take([new File(["x"], "notes.pdf")])).toBe(false);
    expect(recording.message).toContain("notes.pdf");
    expect(recording.captions!.name).toBe("talk.srt");
    expect(await recording.take([new File([new Uint8Array(6_000_000)], "long.srt")])).toBe(false);
    expect(recording.message).toContain("long.srt");
  });

  it("a time is written as makers read it", () => {
    expect([0, 65.9, 3725].map(clock)).toStrictEqual(["0:00", "1:05", "1:02:05"]);
  });
});
