/** The typed client: every path and value comes from the server's own description. */
import createClient, { createQuerySerializer } from "openapi-fetch";
import type {
  Finding,
  Fitted,
  JobRequest,
  JobStatus,
  Lengths,
  MatChoice,
  MatPreview,
  Measured,
  Piece,
  ReadBlank,
  Saved,
  Shelf,
  ShelvedMotif,
  Snapped,
  Start,
  Stashed,
  Technique,
  TechniquePiece,
  Version,
  WordsRead,
  WorkResponse,
} from "../schema/answers";
import type { paths } from "../schema/types";

/** What the server would not do, in a sentence. `status` 0 means that it did not answer at all. */
export class RefusedError extends Error {
  constructor(
    readonly status: number,
    reason: string,
    readonly findings: readonly Finding[] = [],
  ) {
    super(reason);
  }
}

/** A save that takes longer is taken for one that is not answered: it is sent again. */
const MOST_SAVING_MS = 60_000;

export type Wire = ReturnType<typeof connect>;

/** `send` sends a request with the key of the run; `language` says, at each request, in which language the server is to answer. */
export function connect(send: (request: Request) => Promise<Response>, language: () => string) {
  const serialize = createQuerySerializer();
  const client = createClient<paths>({
    baseUrl: "/",
    fetch: send,
    querySerializer: (query) => serialize({ ...query, language: language() }),
  });

  /** The client has checked the path and the body; what comes back has the type that the server names for it. */
  async function unwrap<T>(asked: Promise<{ data?: unknown; error?: unknown; response: Response }>): Promise<T> {
    let got;
    try {
      got = await asked;
    } catch (error) {
      if (error instanceof DOMException && error.name === "AbortError") throw error;
      throw new RefusedError(0, "");
    }
    if (got.response.ok) return got.data as T;
    const refusal = got.error as { reason?: string; findings?: Finding[] } | string | undefined;
    if (typeof refusal === "object") throw new RefusedError(got.response.status, refusal.reason ?? "", refusal.findings ?? []);
    throw new RefusedError(got.response.status, refusal ?? "");
  }

  return {
    shelf: () => unwrap<Shelf>(client.GET("/api/pieces")),
    motifs: () => unwrap<ShelvedMotif[]>(client.GET("/api/motifs")),
    techniques: () => unwrap<Technique[]>(client.GET("/api/techniques")),
    technique: (name: string) => unwrap<TechniquePiece>(client.GET("/api/techniques/{name}", { params: { path: { name } } })),
    stash: () => unwrap<Stashed>(client.GET("/api/stash")),
    saveStash: (stashed: Stashed) => unwrap<Stashed>(client.PUT("/api/stash", { body: stashed })),
    starts: () => unwrap<Start[]>(client.GET("/api/starts")),
    open: (name: string) => unwrap<Piece>(client.GET("/api/pieces/{name}", { params: { path: { name } } })),
    add: (document: object) => unwrap<Saved>(client.POST("/api/pieces", { body: { document: { ...document } } })),
    save: (name: string, document: object, edition: string) =>
      unwrap<Saved>(client.PUT("/api/pieces/{name}", { params: { path: { name } }, body: { document: { ...document }, edition }, signal: AbortSignal.timeout(MOST_SAVING_MS) })),
    remove: (name: string) => unwrap<undefined>(client.DELETE("/api/pieces/{name}", { params: { path: { name } } })),
    keepVersion: (name: string) =>
      unwrap<Version>(client.POST("/api/pieces/{name}/versions", { params: { path: { name } } })),
    versions: (name: string) =>
      unwrap<Version[]>(client.GET("/api/pieces/{name}/versions", { params: { path: { name } } })),
    version: (name: string, version: string) =>
      unwrap<Piece>(
        client.GET("/api/pieces/{name}/versions/{version}", { params: { path: { name, version } } }),
      ),
    work: (document: object, page: string, serial: number, signal: AbortSignal) =>
      unwrap<WorkResponse>(client.POST("/api/work", { body: { document: { ...document }, page, serial }, signal })),
    read: (text: string, answers: readonly { key: ReadBlank["key"]; sentence: number; answer: string }[]) =>
      unwrap<WordsRead>(client.POST("/api/read", { body: { text, answers: [...answers] } })),
    lookAtMat: (picture: string, choice: MatChoice, page: string, serial: number, signal: AbortSignal) =>
      unwrap<MatPreview>(client.POST("/api/mat", { body: { picture, choice, page, serial }, signal })),
    snap: (document: object, band: number, page: string) =>
      unwrap<Snapped>(client.POST("/api/snap", { body: { document: { ...document }, band, page } })),
    fit: (document: object, measured: Measured, lengths: Lengths | null, wrist: string) =>
      unwrap<Fitted>(client.POST("/api/fit", { body: { document: { ...document }, measured, lengths, wrist } })),
    startJob: (piece: string, request: JobRequest, document: object) =>
      unwrap<JobStatus>(client.POST("/api/jobs", { body: { piece, job: request, document: { ...document } } })),
    /** Comes back as soon as there is more to tell than at `seen`, or after a while. */
    jobStatus: (job: string, seen: number, signal: AbortSignal) =>
      unwrap<JobStatus>(client.GET("/api/jobs/{job}", { params: { path: { job }, query: { seen } }, signal })),
    endJob: (job: string) => unwrap<JobStatus>(client.DELETE("/api/jobs/{job}", { params: { path: { job } } })),
    jobFile: (job: string, file: string) =>
      unwrap<Blob>(client.GET("/api/jobs/{job}/files/{file}", { params: { path: { job, file } }, parseAs: "blob" })),
  };
}
