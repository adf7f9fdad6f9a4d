/** The wire to the server that all stores and views share; the page sets it once, a test sets its own. */
import type { Wire } from "../wire/client";

class Connection {
  #wire: Wire | null = null;

  /** @throws Error before the page is connected. */
  get wire(): Wire {
    if (!this.#wire) throw new Error("the page is not connected to a server");
    return this.#wire;
  }

  connect(wire: Wire): void {
    this.#wire = wire;
  }
}

export const connection = new Connection();
