/** The key of the studio's run, without which the server answers nothing.
 *
 * A studio that is started again has a new key. It reaches a page that is already open by the page's own address, or by
 * another window of the same studio that was opened with it. A page keeps the keys that it has heard of, and goes over to
 * the one that the server takes. */
const KEPT = "pegwright-token";
const MOST = 4;

export class RunKey {
  /** Newest first. */
  #keys: string[] = [];
  readonly #keep: Storage;
  readonly #channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel("pegwright-key");

  constructor(keep: Storage) {
    this.#keep = keep;
    this.#add(keep.getItem(KEPT) ?? "");
    this.#channel?.addEventListener("message", (event: MessageEvent<unknown>) => {
      if (typeof event.data === "string") this.#hear(event.data);
      else if (this.#keys[0]) this.#channel?.postMessage(this.#keys[0]);
    });
    this.#channel?.postMessage(null); // a window that was loaded anew asks the others for theirs
  }

  /** Take the key out of the page's address, so that it does not stay in sight, and tell the other windows. */
  takeFrom(place: Location): void {
    const given = place.hash.slice(1);
    if (!given) return;
    history.replaceState(null, "", place.pathname);
    this.#add(given);
    this.#keep.setItem(KEPT, given);
    this.#channel?.postMessage(given);
  }

  /** Send a request with the key in use; where the server does not take it, with the others that are known. */
  async send(request: Request): Promise<Response> {
    const tries = [...this.#keys];
    const [first = "", ...others] = tries;
    let response = await fetch(withKey(request, first));
    for (const key of others) {
      if (response.status !== 401) break;
      response = await fetch(withKey(request, key));
      if (response.status !== 401) this.#use(key);
    }
    return response;
  }

  /** A key of another window's may be older than ours: it is kept for the day that ours is refused. */
  #hear(key: string): void {
    if (!this.#keys.includes(key)) this.#keys.splice(1, 0, key);
    this.#keys.length = Math.min(this.#keys.length, MOST);
  }

  #add(key: string): void {
    if (key) this.#keys = [key, ...this.#keys.filter((each) => each !== key)].slice(0, MOST);
  }

  #use(key: string): void {
    this.#add(key);
    this.#keep.setItem(KEPT, key);
  }
}

function withKey(request: Request, key: string): Request {
  const copy = request.clone();
  copy.headers.set("X-Pegwright-Token", key);
  return copy;
}
