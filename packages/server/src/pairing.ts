/** Who may come in over the network: a device that once sent the code shown on the host's screen. */
import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';

export interface Pairing {
  /** `K7QM-4R2X`, shown on the host's screen only. */
  readonly code: string;
  /** Whether the code is right, or how long to wait before the next try [s]. */
  pair(typed: string, address: string): { token: string } | { wrong: true } | { wait: number };
  knows(token: string): boolean;
}

/** Without signs that are taken for one another. */
const signs = '23456789ABCDEFGHJKMNPQRSTUVWXYZ';
const triesOfOne = 5;
const triesOfAll = 60;
const triesWithin = 10 * 60 * 1000;
/** How long a device stays paired [ms]; restarting the server ends it sooner. */
export const pairedFor = 30 * 24 * 3600 * 1000;
const mostDevices = 100;

export function createPairing(now: () => number = Date.now): Pairing {
  const code = Array.from({ length: 8 }, () => signs[randomInt(signs.length)]).join('');
  /** Only what a token hashes to is kept. */
  const devices = new Map<string, number>();
  let failures: { readonly address: string; readonly at: number }[] = [];

  function waitOf(address: string): number {
    failures = failures.filter(({ at }) => at > now() - triesWithin);
    const own = failures.filter((one) => one.address === address);
    const [oldest] = own.length >= triesOfOne ? own : failures.length >= triesOfAll ? failures : [];
    return oldest === undefined ? 0 : Math.ceil((oldest.at + triesWithin - now()) / 1000);
  }

  return {
    code: `${code.slice(0, 4)}-${code.slice(4)}`,
    pair(typed, address) {
      const wait = waitOf(address);
      if (wait > 0) return { wait };
      if (!same(typed.toUpperCase().replace(/[\s-]/g, ''), code)) {
        failures.push({ address, at: now() });
        return { wrong: true };
      }
      const token = randomBytes(32).toString('base64url');
      devices.set(digest(token), now());
      const [oldest] = devices.keys();
      if (devices.size > mostDevices && oldest !== undefined) devices.delete(oldest);
      return { token };
    },
    knows(token) {
      const since = devices.get(digest(token));
      return since !== undefined && since > now() - pairedFor;
    },
  };
}

const digest = (text: string): string => createHash('sha256').update(text).digest('hex');

/** Takes as long whatever is typed. */
function same(a: string, b: string): boolean {
  return timingSafeEqual(Buffer.from(digest(a)), Buffer.from(digest(b)));
}
