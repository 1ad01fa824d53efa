/**
 * Curved sections from points measured on them: diameters at places along, or depths of a dome at distances from the axis. A cone,
 * an arc or a dome is believed when the points bear it out; else the curve stays free, through the points.
 */
import type { Weighed } from '../evidence/evidence-result.ts';
import { curveReading } from '../evidence/gather.ts';
import type { Reading } from '../evidence/schema.ts';
import { weigh } from '../evidence/uncertainty.ts';
import type { Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import { geometricCircle } from './circle.ts';
import { fitCrown } from './crown.ts';
import type { RecoverInput } from './recover-input.ts';
import type { CurvePoint, CurveShape, RecoveredCurve } from './recover-result.ts';

const steelExpansion = 11.5e-6;
/** How common the shapes of curved sections are before they are measured: `common practice`. */
const prior = { cone: 0.35, arc: 0.55, free: 0.1 } as const;
/** Points closer together than this are one place. */
const samePlace: Mm = 0.05;
/** Points of the fitted curve that is drawn. */
const drawn = 40;

export interface CurvesAnswer {
  readonly curves: readonly RecoveredCurve[];
  readonly findings: readonly Finding[];
}

export function recoverCurves(input: RecoverInput, readingsOf: ReadonlyMap<string, readonly Reading[]>): CurvesAnswer {
  const curves: RecoveredCurve[] = [];
  const findings: Finding[] = [];
  for (const [of, readings] of readingsOf) {
    const named = curveReading(of);
    if (!named) continue;
    const placed = sound(readings.map((r) => weighed(r, input)));
    const fewest = 3;
    const places = new Set(placed.map((w) => Math.round((w.reading.along ?? 0) / samePlace))).size;
    if (places < fewest) findings.push(tooFew(of, places));
    else curves.push(named.kind === 'depths' ? byDepths(named.feature, placed) : byDiameters(named.feature, placed));
  }
  return { curves, findings };
}

const weighed = (r: Reading, input: RecoverInput): Weighed =>
  weigh(
    r,
    input.gauges.find((g) => g.id === r.gauge),
    'outside',
    input.part?.material?.expansion ?? steelExpansion,
  );

/** Of use are readings with a place; where enough of them are protected, those alone. */
function sound(readings: readonly Weighed[]): Weighed[] {
  const usable = readings.filter((w) => w.reading.along !== undefined && w.reading.condition !== 'damaged');
  const good = usable.filter((w) => w.reading.condition === 'protected');
  return good.length >= 4 ? good : usable;
}

function byDepths(of: string, placed: readonly Weighed[]): RecoveredCurve {
  const points = placed.map((w) => ({ radius: w.reading.along ?? 0, depth: w.value }));
  const uncertainty = rms(placed.map((w) => w.uncertainty));
  const wears = placed.some((w) => w.reading.condition !== 'protected');
  const shapes = fitCrown(points, uncertainty, wears).map(
    (f): CurveShape => ({
      shape: f.shape,
      probability: f.probability,
      radius: f.shape === 'cone' ? undefined : f.radius,
      uncertainty: f.shape === 'cone' ? undefined : f.radiusUncertainty,
      bulge: undefined,
      deviation: f.deviation,
      ends: undefined,
    }),
  );
  return {
    of,
    measured: 'depths',
    shapes,
    points: points.map((p) => ({ along: p.radius, size: p.depth })),
    fitted: [],
  };
}

function byDiameters(of: string, placed: readonly Weighed[]): RecoveredCurve {
  const points = joined(placed);
  const u = Math.max(1e-4, rms(placed.map((w) => w.uncertainty)) / 2);
  const fits = [cone(points, u), arc(points, u), free(points)].filter((f) => f !== undefined);
  const top = Math.max(...fits.map((f) => f.log));
  const total = fits.reduce((sum, f) => sum + Math.exp(f.log - top), 0);
  const ranked = fits.toSorted((a, b) => b.log - a.log);
  return {
    of,
    measured: 'diameters',
    shapes: ranked.map((f) => ({ ...f.shape, probability: Math.exp(f.log - top) / total })),
    points,
    fitted: ranked[0]?.fitted ?? [],
  };
}

const rms = (values: readonly number[]) =>
  Math.sqrt(values.reduce((s, v) => s + v * v, 0) / Math.max(1, values.length));

/** Places from the left, readings of one place in their mean. */
function joined(placed: readonly Weighed[]): CurvePoint[] {
  const groups: { along: number; sizes: number[] }[] = [];
  for (const w of placed.toSorted((a, b) => (a.reading.along ?? 0) - (b.reading.along ?? 0))) {
    const along = w.reading.along ?? 0;
    const last = groups.at(-1);
    if (last && along - last.along < samePlace) last.sizes.push(w.value);
    else groups.push({ along, sizes: [w.value] });
  }
  return groups.map(({ along, sizes }) => ({ along, size: sizes.reduce((a, b) => a + b, 0) / sizes.length }));
}

interface Fit {
  readonly shape: Omit<CurveShape, 'probability'>;
  /** Logarithm of prior and evidence, by the criterion of Schwarz. */
  readonly log: number;
  readonly fitted: readonly CurvePoint[];
}

/** −χ²/2 − k ln n / 2: parameters are paid for. */
const score = (chiSquare: number, parameters: number, n: number, share: number): number =>
  -chiSquare / 2 - (parameters / 2) * Math.log(n) + Math.log(share);

function cone(points: readonly CurvePoint[], u: Mm): Fit {
  const n = points.length;
  const [mz, mr] = [mean(points.map((p) => p.along)), mean(points.map((p) => p.size / 2))];
  const sxx = points.reduce((s, p) => s + (p.along - mz) ** 2, 0) || 1e-300;
  const slope = points.reduce((s, p) => s + (p.along - mz) * (p.size / 2 - mr), 0) / sxx;
  const at = (z: Mm) => mr + slope * (z - mz);
  const off = points.map((p) => p.size / 2 - at(p.along));
  return {
    shape: {
      shape: 'cone',
      radius: undefined,
      uncertainty: undefined,
      bulge: undefined,
      deviation: rms(off),
      ends: ends(points, at),
    },
    log: score(
      off.reduce((s, v) => s + (v / u) ** 2, 0),
      2,
      n,
      prior.cone,
    ),
    fitted: along(points, at),
  };
}

/** An arc that the points go round once; undefined where no circle fits, or where it turns back within them. */
function arc(points: readonly CurvePoint[], u: Mm): Fit | undefined {
  const n = points.length;
  const inPlane = points.map((p) => ({ x: p.along, y: p.size / 2 }));
  if (isStraight(inPlane)) return undefined;
  const circle = geometricCircle(inPlane);
  const chord = mean(inPlane.map((p) => p.y));
  const bulge = circle.y < chord ? 'outward' : 'inward';
  const side = bulge === 'outward' ? 1 : -1;
  const at = (z: Mm) => circle.y + side * Math.sqrt(Math.max(0, circle.radius ** 2 - (z - circle.x) ** 2));
  const off = inPlane.map((p) => Math.hypot(p.x - circle.x, p.y - circle.y) - circle.radius);
  const [first, last] = [inPlane[0], inPlane.at(-1)];
  const turn = first && last ? Math.hypot(last.x - first.x, last.y - first.y) / circle.radius : 1;
  return {
    shape: {
      shape: 'arc',
      radius: circle.radius,
      // On a short arc of angle θ: u √(720/n) / θ². [metrology-methods §5]
      uncertainty: (Math.max(u, rms(off)) * Math.sqrt(720 / n)) / Math.max(1e-3, Math.min(turn, Math.PI)) ** 2,
      bulge,
      deviation: rms(off),
      ends: ends(points, at),
    },
    log: score(
      off.reduce((s, v) => s + (v / u) ** 2, 0),
      3,
      n,
      prior.arc,
    ),
    fitted: along(points, at),
  };
}

/** Through every point: nothing is left over, and every point is paid for. */
function free(points: readonly CurvePoint[]): Fit {
  return {
    shape: {
      shape: 'free',
      radius: undefined,
      uncertainty: undefined,
      bulge: undefined,
      deviation: 0,
      ends: undefined,
    },
    log: score(0, points.length, points.length, prior.free),
    fitted: points,
  };
}

const mean = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);

/** Diameters that the fitted shape has at the first and at the last place measured. */
function ends(points: readonly CurvePoint[], at: (z: Mm) => Mm): CurveShape['ends'] {
  const [first, last] = [points[0], points.at(-1)];
  return first && last
    ? [
        { along: first.along, size: 2 * at(first.along) },
        { along: last.along, size: 2 * at(last.along) },
      ]
    : undefined;
}

function along(points: readonly CurvePoint[], at: (z: Mm) => Mm): CurvePoint[] {
  const [from, to] = [points[0]?.along ?? 0, points.at(-1)?.along ?? 0];
  return Array.from({ length: drawn + 1 }, (_, i) => {
    const z = from + ((to - from) * i) / drawn;
    return { along: z, size: 2 * at(z) };
  });
}

/** In one line as far as a circle can be told from it. */
function isStraight(points: readonly { x: number; y: number }[]): boolean {
  const [mx, my] = [mean(points.map((p) => p.x)), mean(points.map((p) => p.y))];
  const [xx, yy, xy] = [
    mean(points.map((p) => (p.x - mx) ** 2)),
    mean(points.map((p) => (p.y - my) ** 2)),
    mean(points.map((p) => (p.x - mx) * (p.y - my))),
  ];
  return !(xx * yy - xy * xy > 1e-9 * (xx + yy) ** 2);
}

function tooFew(of: string, places: number): Finding {
  return {
    id: 'evidence.too-few-places',
    level: 'note',
    stage: 'evidence',
    at: of,
    says: `${places === 1 ? 'One place' : `${places} places`} of a curve say nothing of its shape: three or more are needed, each with its place.`,
    because: [],
    remedies: ['Measure further places along it, evenly spread', 'Enter with each reading the place it was taken at'],
  };
}
