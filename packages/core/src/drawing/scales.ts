/** Preferred scales (ISO 5455, from memory), largest first. */
export const preferredScales: readonly number[] = [20, 10, 5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50, 1 / 100];

/** `5:1`, `1:1`, `1:2`. */
export function scaleText(scale: number): string {
  const round = (value: number) => String(Math.round(value * 1000) / 1000);
  return scale >= 1 ? `${round(scale)}:1` : `1:${round(1 / scale)}`;
}
