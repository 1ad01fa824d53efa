/** Who may come in over the network: a device that once sent the code shown on the host's screen. */
import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';

export interface Pairing {
  /** `K7QM-4R2X`, shown on the host's screen only. */
  readonly code: string;
  /** Whether the code is right, or how long to wait before the next try [s]. `name` is what the device is called in the list. */
  pair(typed: string, address: string, name?: string): { token: string } | { wrong: true } | { wait: number };
  knows(token: string): boolean;
  /** The one paired last first. */
  devices(): readonly Device[];
  /** @returns whether there was such a device */
  remove(id: string): boolean;
}

/** A device that was let in. */
export interface Device {
  readonly id: string;
  readonly name: string;
  readonly address: string;
  /** By the clock of this computer [ms]. */
  readonly since: number;
  /** When it asked for something last [ms]. */
  readonly seen: number;
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
  const devices = new Map<string, Device>();
  let failures: { readonly address: string; readonly at: number }[] = [];

  function waitOf(address: string): number {
    failures = failures.filter(({ at }) => at > now() - triesWithin);
    const own = failures.filter((one) => one.address === address);
    const [oldest] = own.length >= triesOfOne ? own : failures.length >= triesOfAll ? failures : [];
    return oldest === undefined ? 0 : Math.ceil((oldest.at + triesWithin - now()) / 1000);
  }

  return {
    code: `${code.slice(0, 4)}-${code.slice(4)}`,
    pair(typed, address, name = 'a device') {
      const wait = waitOf(address);
      if (wait > 0) return { wait };
      if (!same(typed.toUpperCase().replace(/[\s-]/g, ''), code)) {
        failures.push({ address, at: now() });
        return { wrong: true };
      }
      const token = randomBytes(32).toString('base64url');
      const device = { id: randomBytes(6).toString('hex'), name, address, since: now(), seen: now() };
      devices.set(digest(token), device);
      const [oldest] = devices.keys();
      if (devices.size > mostDevices && oldest !== undefined) devices.delete(oldest);
      return { token };
    },
    knows(token) {
      const key = digest(token);
      const device = devices.get(key);
      if (device === undefined || device.since <= now() - pairedFor) return false;
      devices.set(key, { ...device, seen: now() });
      return true;
    },
    devices: () => [...devices.values()].filter(({ since }) => since > now() - pairedFor).toReversed(),
    remove(id) {
      const found = [...devices].find(([, device]) => device.id === id);
      return found !== undefined && devices.delete(found[0]);
    },
  };
}

const digest = (text: string): string => createHash('sha256').update(text).digest('hex');

/** Takes as long whatever is typed. */
function same(a: string, b: string): boolean {
  return timingSafeEqual(Buffer.from(digest(a)), Buffer.from(digest(b)));
}
