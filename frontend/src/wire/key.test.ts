// @vitest-environment jsdom
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { RunKey } from "./key";

/** A server that takes one key only, as it does from one start to the next. */
let taken = "first";
const sent: string[] = [];
const place = (hash: string) => ({ hash, pathname: "/" }) as Location;
const ask = (key: RunKey) => key.send(new Request("http://127.0.0.1/api/pieces", { method: "PUT", body: "a document" }));

beforeEach(() => {
  taken = "first";
  sent.length = 0;
  sessionStorage.clear();
  vi.stubGlobal("fetch", async (request: Request) => {
    const key = request.headers.get("X-Pegwright-Token") ?? "";
    sent.push(`${key}: ${await request.text()}`);
    return new Response("", { status: key === taken ? 200 : 401 });
  });
});
afterEach(() => vi.unstubAllGlobals());

it("comes from the page's address, and is kept for this window", async () => {
  new RunKey(sessionStorage).takeFrom(place("#first"));
  expect((await ask(new RunKey(sessionStorage))).status).toBe(200);
});

it("is refused and says so where no other is known", async () => {
  expect((await ask(new RunKey(sessionStorage))).status).toBe(401);
});

it("of a studio started again is adopted from another window, and the request is sent again whole", async () => {
  const page = new RunKey(sessionStorage);
  page.takeFrom(place("#first"));
  taken = "second";
  const other = { getItem: () => null, setItem: () => undefined } as unknown as Storage;
  new RunKey(other).takeFrom(place("#second"));
  await vi.waitFor(async () => expect((await ask(page)).status).toBe(200));
  expect(sent.at(-1)).toBe("second: a document");
  sent.length = 0;
  await ask(page);
  expect(sent).toStrictEqual(["second: a document"]);
});

it("that is older than ours, heard late, does no harm", async () => {
  const page = new RunKey(sessionStorage);
  page.takeFrom(place("#first"));
  const other = { getItem: () => null, setItem: () => undefined } as unknown as Storage;
  new RunKey(other).takeFrom(place("#stale"));
  await new Promise((done) => setTimeout(done, 20));
  expect((await ask(page)).status).toBe(200);
  expect(sent).toHaveLength(1);
});
