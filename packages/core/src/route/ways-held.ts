/** Ways to hold the work, in the words of the trade; shared by the wish, the setup, and the page. */
export const waysHeld = ['in the chuck', 'between centres', 'on a mandrel'] as const;

export type WayHeld = (typeof waysHeld)[number];
