/** How marks on the drawing, sizes and findings refer to each other: `guide` is a feature, `guide.diameter` one of its sizes. */

/** Whether something marked `of` is the thing `mark` names, or one of its sizes. */
export function belongsTo(of: string, mark: string): boolean {
  return of === mark || of.startsWith(`${mark}.`);
}
