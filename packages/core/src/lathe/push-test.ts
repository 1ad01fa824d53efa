/**
 * What a push test says: how far a joint gives for each newton, apart from what it loses in play and friction.
 */
import { DomainError } from '../errors.ts';
import type { Newton } from '../units/quantities.ts';

export interface PushReading {
  readonly force: Newton;
  /** [µm] */
  readonly up?: number | undefined;
  readonly down?: number | undefined;
}

export interface PushResult {
  /** [µm/N] */
  readonly compliance: number;
  /** Standard uncertainty of it, scale and indicator included [µm/N]. */
  readonly uncertainty: number;
  /** How much further it stands while the force falls than while it rises: friction and play [µm]. */
  readonly lostMotion: number;
}

/** A luggage scale reads within 2 %, an indicator within 1 µm [methods-dynamics §9, common practice]. */
const scaleError = 0.03;
const indicatorError = 1;

/**
 * Fits two parallel lines, one to the readings going up and one to those coming down.
 *
 * @throws DomainError when there are not two different forces, or it gives way against the force
 */
export function pushResult(readings: readonly PushReading[]): PushResult {
  const branch = (way: 'up' | 'down') =>
    readings.flatMap((r) => {
      const y = r[way];
      return y === undefined ? [] : [{ x: r.force, y }];
    });
  const branches = [branch('up'), branch('down')].filter((b) => b.length > 0);
  let [sxx, sxy, points] = [0, 0, 0];
  const means = branches.map((b) => ({
    x: b.reduce((s, p) => s + p.x, 0) / b.length,
    y: b.reduce((s, p) => s + p.y, 0) / b.length,
  }));
  branches.forEach((b, i) => {
    const mean = means[i] ?? { x: 0, y: 0 };
    for (const { x, y } of b) {
      sxx += (x - mean.x) ** 2;
      sxy += (x - mean.x) * (y - mean.y);
      points++;
    }
  });
  if (!(sxx > 0)) throw new DomainError('readings', points, 'readings at two different forces on one branch, or more');
  const slope = sxy / sxx;
  if (!(slope > 0))
    throw new DomainError('readings', `${slope.toPrecision(3)} µm/N`, 'a deflection that grows with the force');
  let rest = 0;
  branches.forEach((b, i) => {
    const mean = means[i] ?? { x: 0, y: 0 };
    for (const { x, y } of b) rest += (y - mean.y - slope * (x - mean.x)) ** 2;
  });
  const freedom = points - branches.length - 1;
  const scatter = Math.max(indicatorError, freedom > 0 ? Math.sqrt(rest / freedom) : 2 * indicatorError);
  const [up, down] = means;
  const lostMotion = up && down ? down.y - slope * down.x - (up.y - slope * up.x) : 0;
  return {
    compliance: slope,
    uncertainty: Math.hypot(scatter / Math.sqrt(sxx), scaleError * slope),
    lostMotion,
  };
}
