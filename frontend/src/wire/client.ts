/** The typed client: every path and value comes from the server's own description. */
import createClient, { createQuerySerializer } from "openapi-fetch";
import type { components, paths } from "./types";

export type Seen = components["schemas"]["Seen"];
export type SeenMove = components["schemas"]["SeenMove"];
export type LoomEvent = SeenMove["events"][number];
export type Finding = components["schemas"]["Worded"];
export type Start = components["schemas"]["Start"];
export type Shelf = components["schemas"]["Shelf"];
export type Glance = components["schemas"]["Glance"];
export type Piece = components["schemas"]["Piece"];
export type Saved = components["schemas"]["Saved"];
export type Version = components["schemas"]["Version"];
export type Told = components["schemas"]["Told"];
export type Errand = components["schemas"]["Sending"]["errand"];
export type AtRest = components["schemas"]["AtRest"];
export type Strand = components["schemas"]["Strand"];
export type Measured = components["schemas"]["Measured"];
export type Lengths = components["schemas"]["Lengths"];
export type Fitted = components["schemas"]["Fitted"];
export type ShelvedMotif = components["schemas"]["ShelvedMotif"];
export type Stash = components["schemas"]["Stash"];
export type Stashed = components["schemas"]["Stashed"];
export type Rehearsed = components["schemas"]["Rehearsed"];
export type Slipped = components["schemas"]["Slipped"];
export type Snapped = components["schemas"]["Snapped"];

/** What the server would not do, in a sentence. `status` 0 means that it did not answer at all. */
export class Refused extends Error {
  constructor(
    readonly status: number,
    reason: string,
    readonly findings: readonly Finding[] = [],
  ) {
    super(reason);
  }
}

const KEY = "pegwright-token";

/** Take the token out of the address, so that it does not stay in sight, and keep it for this tab. */
export function takeToken(place: Location, keep: Storage): string {
  const given = place.hash.slice(1);
  if (given) {
    keep.setItem(KEY, given);
    history.replaceState(null, "", place.pathname);
  }
  return keep.getItem(KEY) ?? "";
}

export type Wire = ReturnType<typeof connect>;

/** `language` tells, at each request, in which language the server is to answer. */
export function connect(token: string, language: () => string) {
  const serialize = createQuerySerializer();
  const client = createClient<paths>({
    baseUrl: "/",
    headers: { "X-Pegwright-Token": token },
    querySerializer: (query) => serialize({ ...query, language: language() }),
  });

  /** The client has checked the path and the body; what comes back has the type that the server names for it. */
  async function answer<T>(asked: Promise<{ data?: unknown; error?: unknown; response: Response }>): Promise<T> {
    let got;
    try {
      got = await asked;
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") throw error;
      throw new Refused(0, "");
    }
    if (got.response.ok) return got.data as T;
    const said = got.error as { reason?: string; findings?: Finding[] } | string | undefined;
    if (typeof said === "object") throw new Refused(got.response.status, said.reason ?? "", said.findings ?? []);
    throw new Refused(got.response.status, said ?? "");
  }

  return {
    shelf: () => answer<Shelf>(client.GET("/api/pieces")),
    motifs: () => answer<ShelvedMotif[]>(client.GET("/api/motifs")),
    stash: () => answer<Stashed>(client.GET("/api/stash")),
    saveStash: (stashed: Stashed) => answer<Stashed>(client.PUT("/api/stash", { body: stashed })),
    starts: () => answer<Start[]>(client.GET("/api/starts")),
    open: (name: string) => answer<Piece>(client.GET("/api/pieces/{name}", { params: { path: { name } } })),
    add: (document: object) => answer<Saved>(client.POST("/api/pieces", { body: { document: { ...document } } })),
    save: (name: string, document: object, edition: string) =>
      answer<Saved>(client.PUT("/api/pieces/{name}", { params: { path: { name } }, body: { document: { ...document }, edition } })),
    remove: (name: string) => answer<undefined>(client.DELETE("/api/pieces/{name}", { params: { path: { name } } })),
    keep: (name: string) =>
      answer<Version>(client.POST("/api/pieces/{name}/versions", { params: { path: { name } } })),
    versions: (name: string) =>
      answer<Version[]>(client.GET("/api/pieces/{name}/versions", { params: { path: { name } } })),
    version: (name: string, version: string) =>
      answer<Piece>(
        client.GET("/api/pieces/{name}/versions/{version}", { params: { path: { name, version } } }),
      ),
    work: (document: object, page: string, serial: number, signal: AbortSignal) =>
      answer<Seen>(client.POST("/api/work", { body: { document: { ...document }, page, serial }, signal })),
    snap: (document: object, band: number) =>
      answer<Snapped>(client.POST("/api/snap", { body: { document: { ...document }, band } })),
    fit: (document: object, measured: Measured, lengths: Lengths | null, wrist: string) =>
      answer<Fitted>(client.POST("/api/fit", { body: { document: { ...document }, measured, lengths, wrist } })),
    start: (piece: string, errand: Errand, document: object) =>
      answer<Told>(client.POST("/api/jobs", { body: { piece, errand, document: { ...document } } })),
    /** Comes back as soon as there is more to tell than at `seen`, or after a while. */
    look: (job: string, seen: number, signal: AbortSignal) =>
      answer<Told>(client.GET("/api/jobs/{job}", { params: { path: { job }, query: { seen } }, signal })),
    end: (job: string) => answer<Told>(client.DELETE("/api/jobs/{job}", { params: { path: { job } } })),
    file: (job: string, file: string) =>
      answer<Blob>(client.GET("/api/jobs/{job}/files/{file}", { params: { path: { job, file } }, parseAs: "blob" })),
  };
}
