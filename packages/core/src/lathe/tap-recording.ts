/**
 * At which tones something rings when it is knocked against, and how fast they die away, from a recording of several knocks.
 *
 * Knowledge: a lightly damped part dies away as A e^(−ζωt), so that ln A falls by ζω in a second. Each knock is looked at from just
 * after the contact; what stands out in all of them is the part, what stands out once is something else [methods-dynamics §9].
 */
import { DomainError } from '../errors.ts';
import { powerSpectrum } from '../numerics/fourier.ts';
import type { Hertz } from '../units/quantities.ts';
import type { Recording } from './wave-file.ts';

export interface Tone {
  readonly frequency: Hertz;
  /** Spread from knock to knock, at least what the length of a knock can tell. */
  readonly uncertainty: Hertz;
  /** Share of critical damping; undefined where it does not die away clearly. */
  readonly damping: number | undefined;
  /** Power of its peak over that of the highest. */
  readonly strength: number;
}

export interface Tones {
  readonly knocks: number;
  /** The strongest first. */
  readonly tones: readonly Tone[];
}

/** Telephones are deaf below the first, and nothing of a lathe that matters rings above the second [Hz]. */
const band = { from: 70, to: 6000 } as const;
/** A knock is looked at for this long, from this long after it began [s]. */
const looked = 0.4;
const contact = 0.004;
/** Knocks follow each other no faster [s]. */
const between = 0.2;
/** Blocks in which loudness is measured [s]. */
const block = 0.002;
const mostTones = 4;
/** A peak lower than this share of the highest is not told. */
const leastStrength = 0.04;

/** @throws DomainError when no knock stands out of the noise */
export function tonesOf({ samples, rate }: Recording): Tones {
  const starts = knocksIn(samples, rate);
  if (starts.length === 0)
    throw new DomainError('recording', 'no knock', 'knocks that stand out of the noise, half a second apart');
  const size = 2 ** Math.ceil(Math.log2(2 * looked * rate));
  const pieces = starts.map((start, i) => pieceAt(samples, rate, start, starts[i + 1]));
  const spectra = pieces.map((piece) => spectrumOf(piece, size));
  const mean = new Float64Array(size / 2 + 1);
  for (const s of spectra) for (const [k, p] of s.entries()) mean[k] = (mean[k] ?? 0) + p / spectra.length;
  const perHertz = size / rate;
  return {
    knocks: starts.length,
    tones: peaksOf(mean, perHertz).map(({ at, strength }) => {
      const each = spectra.map((s) => refined(s, highestNear(s, at, 0.03)) / perHertz);
      const frequency = each.reduce((sum, f) => sum + f, 0) / each.length;
      const spread = Math.sqrt(each.reduce((sum, f) => sum + (f - frequency) ** 2, 0) / Math.max(1, each.length - 1));
      const dampings = pieces.flatMap((piece) => dampingOf(piece, rate, frequency) ?? []).toSorted((a, b) => a - b);
      return {
        frequency,
        uncertainty: Math.max(spread, 1 / (4 * looked)),
        damping: 2 * dampings.length > pieces.length ? dampings[Math.floor(dampings.length / 2)] : undefined,
        strength,
      };
    }),
  };
}

/** Places where it becomes much louder than it usually is. */
function knocksIn(samples: Float64Array, rate: number): number[] {
  const width = Math.max(1, Math.round(block * rate));
  const loud = Float64Array.from({ length: Math.floor(samples.length / width) }, (_, b) => {
    let sum = 0;
    for (let i = b * width; i < (b + 1) * width; i++) sum += (samples[i] ?? 0) ** 2;
    return Math.sqrt(sum / width);
  });
  const sorted = loud.toSorted();
  const usual = sorted[Math.floor(sorted.length / 4)] ?? 0;
  const loudest = sorted.at(-1) ?? 0;
  const threshold = Math.max(6 * usual, 0.15 * loudest, 1e-4);
  const starts: number[] = [];
  const apart = Math.round(between / block);
  let last = -apart;
  loud.forEach((l, b) => {
    if (l > threshold && b - last >= apart) starts.push(b * width);
    if (l > threshold) last = b;
  });
  return starts.filter((s) => samples.length - s > 0.1 * rate);
}

function pieceAt(samples: Float64Array, rate: number, start: number, next: number | undefined): Float64Array {
  const from = start + Math.round((block + contact) * rate);
  const to = Math.min(
    samples.length,
    from + Math.round(looked * rate),
    (next ?? Infinity) - Math.round(contact * rate),
  );
  const piece = samples.slice(from, to);
  const mean = piece.reduce((sum, x) => sum + x, 0) / piece.length;
  return piece.map((x) => x - mean);
}

/** Each knock counts alike, however hard it was; its end is faded out. */
function spectrumOf(piece: Float64Array, size: number): Float64Array {
  const faded = new Float64Array(size);
  for (const [i, x] of piece.entries()) faded[i] = x * 0.5 * (1 + Math.cos((Math.PI * i) / piece.length));
  const power = powerSpectrum(faded);
  const whole = power.reduce((sum, p) => sum + p, 0);
  return whole > 0 ? power.map((p) => p / whole) : power;
}

function peaksOf(power: Float64Array, perHertz: number): { readonly at: number; readonly strength: number }[] {
  const found: { at: number; power: number }[] = [];
  const last = Math.min(power.length - 2, Math.floor(band.to * perHertz));
  for (let k = Math.ceil(band.from * perHertz); k <= last; k++) {
    const p = power[k] ?? 0;
    if (p > (power[k - 1] ?? 0) && p >= (power[k + 1] ?? 0)) found.push({ at: k, power: p });
  }
  found.sort((a, b) => b.power - a.power);
  const highest = found[0]?.power ?? 0;
  const kept: { at: number; strength: number }[] = [];
  for (const peak of found) {
    const strength = peak.power / highest;
    if (strength < leastStrength || kept.length === mostTones) break;
    if (kept.every((k) => Math.abs(Math.log(k.at / peak.at)) > 0.12)) kept.push({ at: peak.at, strength });
  }
  return kept;
}

function highestNear(power: Float64Array, at: number, share: number): number {
  let best = at;
  for (let k = Math.max(1, Math.floor(at * (1 - share))); k <= Math.ceil(at * (1 + share)); k++)
    if ((power[k] ?? 0) > (power[best] ?? 0)) best = k;
  return best;
}

/** Top of the parabola through the logarithms of a peak and its neighbours. */
function refined(power: Float64Array, at: number): number {
  const [a, b, c] = [at - 1, at, at + 1].map((k) => Math.log(Math.max(1e-300, power[k] ?? 0)));
  const curve = (a ?? 0) - 2 * (b ?? 0) + (c ?? 0);
  const shift = curve < 0 ? (0.5 * ((a ?? 0) - (c ?? 0))) / curve : 0;
  return at + Math.max(-0.5, Math.min(0.5, shift));
}

/** Waves in a window over which the height of a tone is taken. */
const waves = 4;
/** Heights below this share of the first are noise. */
const faded = 0.05;

/** From the fall of the logarithm of its height; undefined when there is too little of it. */
function dampingOf(piece: Float64Array, rate: number, frequency: Hertz): number | undefined {
  const width = Math.max(8, Math.round((waves * rate) / frequency));
  const step = Math.max(1, Math.round(width / 4));
  const heights: { readonly t: number; readonly log: number }[] = [];
  for (let from = 0; from + width <= piece.length; from += step) {
    let [re, im] = [0, 0];
    for (let i = 0; i < width; i++) {
      const x = (piece[from + i] ?? 0) * (1 - Math.cos((2 * Math.PI * (i + 0.5)) / width));
      const phase = (2 * Math.PI * frequency * (from + i)) / rate;
      re += x * Math.cos(phase);
      im += x * Math.sin(phase);
    }
    heights.push({ t: from / rate, log: Math.log(Math.max(1e-300, Math.hypot(re, im))) });
  }
  const first = heights[0]?.log ?? 0;
  const end = heights.findIndex((h) => h.log < first + Math.log(faded));
  const used = end < 0 ? heights : heights.slice(0, end);
  if (used.length < 4) return undefined;
  const [t, log] = [used.reduce((s, h) => s + h.t, 0) / used.length, used.reduce((s, h) => s + h.log, 0) / used.length];
  const across = used.reduce((s, h) => s + (h.t - t) ** 2, 0);
  const slope = used.reduce((s, h) => s + (h.t - t) * (h.log - log), 0) / across;
  const damping = -slope / (2 * Math.PI * frequency);
  return damping > 0.0005 && damping < 0.5 ? damping : undefined;
}
