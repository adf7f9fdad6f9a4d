/** Working orders for the bands that are laid: looked for by the server, shown on the loom one by one, taken or left. */
import { docOf, type Doc, type Pattern } from "../document/pattern";
import type { OrdersFound } from "../schema/answers";
import { bench } from "./bench.svelte";
import { Job } from "./job.svelte";

const FILE = "orders.json";
const SECONDS = 10;
const MORE_SECONDS = 60;

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
  readonly someFound = $derived(this.job.running && (this.job.status?.files?.includes(FILE) ?? false));

  /** Look for orders, and show the first on the loom. */
  async find({ afresh = bench.closed, longer = false }: HowToLook = {}): Promise<void> {
    this.drop();
    const { doc } = bench;
    if (!doc) return;
    this.doc = doc;
    const status = await this.job.run({ do: "plan", afresh, seconds: longer ? MORE_SECONDS : SECONDS });
    if (status?.state === "done" && this.doc === doc) await this.#receive();
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
    this.#docs = result.orders.map((order) => docOf(order.document as unknown as Pattern));
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
