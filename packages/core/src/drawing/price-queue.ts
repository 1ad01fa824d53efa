/**
 * Things by their price, the cheapest first, of equal ones the first given: a heap, for mostly only the first few are wanted.
 * A thing may stand for a row of ever dearer ones: the next of its row is made only when the one after it is asked for.
 */
export class PriceQueue<T extends { readonly price: number }> {
  readonly #things: T[];
  readonly #nextOf: (thing: T) => T | undefined;
  readonly #prices: Float64Array;
  /** Indices; none is dearer than the two below it. */
  readonly #heap: Uint32Array;
  #size: number;
  /** The cheapest has been given and still lies at the top. */
  #given = false;

  /** @param nextOf  what follows a thing in its row, no cheaper than it; nothing when left out */
  constructor(things: readonly T[], nextOf: (thing: T) => T | undefined = () => undefined) {
    this.#things = [...things];
    this.#nextOf = nextOf;
    this.#size = things.length;
    const prices = new Float64Array(things.length);
    const heap = new Uint32Array(things.length);
    things.forEach((thing, i) => {
      prices[i] = thing.price;
      heap[i] = i;
    });
    this.#prices = prices;
    this.#heap = heap;
    for (let i = (this.#size >> 1) - 1; i >= 0; i--) this.#sink(i);
  }

  /** The cheapest that is left; undefined when none is. */
  next(): T | undefined {
    if (this.#given) this.#goOn();
    this.#given = this.#size > 0;
    return this.#given ? this.#things[this.#heap[0] ?? 0] : undefined;
  }

  /** Puts what follows the one that was given in its place. */
  #goOn(): void {
    const heap = this.#heap;
    const index = heap[0] ?? 0;
    const given = this.#things[index];
    const next = given && this.#nextOf(given);
    if (next) {
      this.#things[index] = next;
      this.#prices[index] = next.price;
    } else {
      this.#size -= 1;
      heap[0] = heap[this.#size] ?? 0;
    }
    this.#sink(0);
  }

  #sink(from: number): void {
    const heap = this.#heap;
    let at = from;
    for (;;) {
      const left = 2 * at + 1;
      if (left >= this.#size) return;
      const right = left + 1;
      const below = right < this.#size && this.#isBefore(heap[right] ?? 0, heap[left] ?? 0) ? right : left;
      const [one, other] = [heap[at] ?? 0, heap[below] ?? 0];
      if (!this.#isBefore(other, one)) return;
      heap[at] = other;
      heap[below] = one;
      at = below;
    }
  }

  #isBefore(a: number, b: number): boolean {
    const difference = (this.#prices[a] ?? 0) - (this.#prices[b] ?? 0);
    return difference < 0 || (difference === 0 && a < b);
  }
}
