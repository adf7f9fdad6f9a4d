/** The picture that lies under the loom to be traced. It is kept by this browser, for each piece, and goes nowhere else. */
import { fitInto, fitTwoPoints, pointAt, type PictureFit, type Spot } from "../document/fit_picture";
import { bench } from "./bench.svelte";

interface Kept {
  picture: Blob;
  width: number;
  height: number;
  fit: PictureFit;
  strength: number;
}

/** No picture is kept with more pixels along a side. */
const MOST_PX = 2000;
const [DATABASE, STORE] = ["pegwright", "traced"];

class Tracing {
  kept = $state.raw<Kept | null>(null);
  /** The address of the picture, for as long as it is shown. */
  url = $state("");
  /** What was pressed so far: a point of the picture and its place, then another. */
  pressed = $state.raw<readonly Spot[]>([]);
  #piece: string | null = null;

  /** Take up the picture of a piece; null puts it away. */
  async open(piece: string | null): Promise<void> {
    this.#piece = piece;
    this.#show(null);
    const kept = piece === null ? null : await inStore<Kept | undefined>("readonly", (store) => store.get(piece)).catch(() => null);
    if (this.#piece === piece) this.#show(kept ?? null);
  }

  /** Lay a picture under the loom, as large as fits.
   * @throws DOMException where the file is no picture that the browser can read. */
  async take(file: Blob): Promise<void> {
    const bitmap = await createImageBitmap(file);
    const scale = Math.min(1, MOST_PX / Math.max(bitmap.width, bitmap.height));
    const canvas = new OffscreenCanvas(Math.max(1, Math.round(bitmap.width * scale)), Math.max(1, Math.round(bitmap.height * scale)));
    canvas.getContext("2d")!.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    bitmap.close();
    const picture = await canvas.convertToBlob({ type: "image/webp", quality: 0.85 });
    const { width, height } = canvas;
    this.#show({ picture, width, height, strength: 0.6, fit: fitInto(width, height, loomInPlan()) });
    await this.#keep();
  }

  change(change: Partial<Pick<Kept, "fit" | "strength">>): void {
    if (!this.kept) return;
    this.kept = { ...this.kept, ...change };
    void this.#keep();
  }

  remove(): void {
    const piece = this.#piece;
    this.#show(null);
    if (piece !== null) void inStore("readwrite", (store) => store.delete(piece)).catch(() => undefined);
  }

  /** A press while it is fitted: a point of the picture, then the place where that belongs; twice. */
  press(place: Spot): void {
    const { kept } = this;
    if (!kept) return;
    const isPoint = this.pressed.length % 2 === 0;
    this.pressed = [...this.pressed, isPoint ? pointAt(kept.fit, place) : place];
    const [a, atA, b, atB] = this.pressed;
    if (!a || !atA || !b || !atB) return;
    const fit = fitTwoPoints(a, b, atA, atB);
    if (fit) this.change({ fit });
    this.pressed = [];
    bench.tool = "lay";
  }

  #show(kept: Kept | null): void {
    if (this.url) URL.revokeObjectURL(this.url);
    this.url = kept ? URL.createObjectURL(kept.picture) : "";
    this.kept = kept;
    this.pressed = [];
    if (bench.tool === "trace") bench.tool = "lay";
  }

  async #keep(): Promise<void> {
    const [piece, kept] = [this.#piece, this.kept];
    if (piece !== null && kept) await inStore("readwrite", (store) => store.put(kept, piece)).catch(() => undefined); // a browser without room shows it all the same
  }
}

function loomInPlan() {
  const pegs = (bench.work.pegs ?? []) as unknown as [string, number, number, number][];
  const [xs, ys] = [pegs.map(([, x]) => x), pegs.map(([, , y]) => y)];
  const [left, bottom] = [Math.min(...xs) - 12, Math.min(...ys) - 12];
  return { left, bottom, width: Math.max(...xs) + 12 - left, height: Math.max(...ys) + 12 - bottom };
}

function inStore<T>(mode: IDBTransactionMode, what: (store: IDBObjectStore) => IDBRequest): Promise<T> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(DATABASE, 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(STORE);
    opening.onerror = () => reject(opening.error!);
    opening.onsuccess = () => {
      const asked = what(opening.result.transaction(STORE, mode).objectStore(STORE));
      asked.onsuccess = () => resolve(asked.result as T);
      asked.onerror = () => reject(asked.error!);
      asked.transaction!.oncomplete = () => opening.result.close();
    };
  });
}

export const tracing = new Tracing();
