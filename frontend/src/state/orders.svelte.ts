/** Working orders for the bands that are laid: looked for by the server, shown on the loom one by one, taken or left. */
import { docOf, type Doc, type Pattern } from "../document/pattern";
import type { OrdersFound } from "../schema/answers";
import { bench } from "./bench.svelte";
import { Job } from "./job.svelte";

const FILE = "orders.json";
const SECONDS = 10;
const MORE_SECONDS = 60;
/** What the server says once all orders are tried. */
const REHEARSING = "rehearsing orders";

/** `afresh` sets aside what the maker worked; without it that is done where the piece is closed already. */
export interface HowToLook {
  afresh?: boolean;
  longer?: boolean;
}

class Orders {
  readonly job = new Job();
  result = $state.raw<OrdersFound | null>(null);
  /** The document that they are looked for. */
  doc = $state.raw<Doc | null>(null);
  #docs = $state.raw<readonly Doc[]>([]);
  /** Which of them is shown on the loom, from 0; -1 where the piece itself is. */
  readonly shown = $derived(bench.setAside && bench.doc ? this.#docs.indexOf(bench.doc) : -1);
  /** There is something to show before all were tried. */
  readonly someFound = $derived(this.job.running && !this.result && (this.job.status?.files?.includes(FILE) ?? false));
  /** They are shown already, and are being rehearsed. */
  readonly rehearsing = $derived(this.job.running && this.result !== null);
  /** The number of the same piece worked more simply, among all that can be shown. */
  readonly simplerIndex = $derived(this.result?.simpler ? this.result.orders.length : -1);

  /** Look for orders, and show the first on the loom. */
  async find({ afresh = bench.closed, longer = false }: HowToLook = {}): Promise<void> {
    this.drop();
    const { doc } = bench;
    if (!doc) return;
    this.doc = doc;
    let received = false;
    const status = await this.job.run({ do: "plan", afresh, seconds: longer ? MORE_SECONDS : SECONDS }, bench, ({ what }) => {
      if (what === REHEARSING && !received && this.doc === doc) {
        received = true;
        void this.#receive();
      }
    });
    if (status?.state !== "done" || this.doc !== doc) return;
    if (received) await this.#receiveMeasures();
    else await this.#receive();
  }

  /** The orders are those that are shown; what is new is what the rehearsal says of them. */
  async #receiveMeasures(): Promise<void> {
    const { doc } = this;
    const result = await this.job.json<OrdersFound>(FILE);
    if (this.doc === doc && this.result) this.result = result;
  }

  /** Try no more, and show the best so far. */
  async enough(): Promise<void> {
    if (this.someFound) await this.#receive();
    this.job.end();
  }

  async #receive(): Promise<void> {
    const { doc } = this;
    const result = await this.job.json<OrdersFound>(FILE);
    if (this.doc !== doc || doc !== bench.doc) return;
    const found = [...result.orders, ...(result.simpler ? [result.simpler] : [])];
    this.#docs = found.map(({ document }) => docOf(document as unknown as Pattern));
    this.result = result;
    this.show(0);
  }

  /** Show one of them on the loom; it is not taken thereby. */
  show(index: number): void {
    const doc = this.#docs[index];
    if (doc) bench.showProposal(doc);
  }

  /** End what is under way, and forget what was found. */
  drop(): void {
    if (this.shown >= 0) bench.dropProposal();
    this.job.end();
    this.result = this.doc = null;
    this.#docs = [];
  }

  /** Drop it unless it speaks of the document at hand. */
  dropUnlessOf(doc: Doc | null): void {
    if (this.doc !== null && this.doc !== doc) this.drop();
  }
}

export const orders = new Orders();
