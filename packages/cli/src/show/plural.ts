/** `1 operation`, `3 operations` */
export function plural(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}
