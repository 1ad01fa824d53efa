/** The part's dimensions by id, with a note of which have been shown: none is shown twice and none is lost. */
import type { Dimension, PartResult } from '../part/part-result.ts';
import { isToleranceClass, limitedText, type NumberStyle } from './numbers.ts';

export class Sizes {
  readonly #byId: ReadonlyMap<string, Dimension>;
  readonly #shown = new Set<string>();
  readonly style: NumberStyle;

  constructor(part: PartResult, style: NumberStyle) {
    this.#byId = new Map(part.dimensions.map((d) => [d.id, d]));
    this.style = style;
  }

  /** The dimension of a feature by its field, marked as shown. */
  take(feature: string, field: string): Dimension | undefined {
    const dimension = this.peek(feature, field);
    if (dimension) this.#shown.add(dimension.id);
    return dimension;
  }

  peek(feature: string, field: string): Dimension | undefined {
    return this.#byId.get(`${feature}.${field}`);
  }

  /** Text of a dimension that is being shown. */
  text(dimension: Dimension, sign = ''): string {
    return limitedText(dimension, this.style, sign);
  }

  /** What has not been taken. */
  left(): Dimension[] {
    return [...this.#byId.values()].filter((d) => !this.#shown.has(d.id));
  }
}

/** Limits of its own, not those of the general tolerance or of the thread it is cut with. */
export function hasOwnLimits(dimension: Dimension): boolean {
  return dimension.basis === 'stated' || isToleranceClass(dimension.basis);
}
