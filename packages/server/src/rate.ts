/** How many requests an address may make: many at once, fewer in the long run. */

const atOnce = 400;
const perSecond = 40;
const mostKept = 2000;

/** @returns whether a request of that address goes through */
export function rateLimit(now: () => number = Date.now): (address: string) => boolean {
  const left = new Map<string, { requests: number; at: number }>();
  return (address) => {
    const known = left.get(address) ?? { requests: atOnce, at: now() };
    const requests = Math.min(atOnce, known.requests + ((now() - known.at) / 1000) * perSecond);
    left.delete(address);
    left.set(address, { requests: Math.max(0, requests - 1), at: now() });
    const [oldest] = left.keys();
    if (left.size > mostKept && oldest !== undefined) left.delete(oldest);
    return requests >= 1;
  };
}
