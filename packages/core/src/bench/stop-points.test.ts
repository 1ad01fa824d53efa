import { describe, expect, test } from 'vitest';
import { exampleJob, exampleWorkshop } from '../../test/examples.ts';
import { definePart } from '../part/define-part.ts';
import { lastCutSpread } from '../route/last-cut.ts';
import { planRoute } from '../route/plan-route.ts';
import { stopPoints } from './stop-points.ts';

const workshop = exampleWorkshop();

function pointsOf(name: 'valve-guide-pin' | 'plunger') {
  const job = exampleJob(name);
  const part = job.part && definePart(job.part);
  const route = part && planRoute(part, workshop, job.route);
  if (!part || !route) throw new Error('the example has a route');
  return stopPoints(part, route, workshop);
}

describe('stop points', () => {
  test('the operation turns to where the bench sheet says to stop', () => {
    const job = exampleJob('valve-guide-pin');
    const part = job.part && definePart(job.part);
    const route = part && planRoute(part, workshop, job.route);
    if (!part || !route) throw new Error('the example has a route');
    for (const point of stopPoints(part, route, workshop).stopPoints) {
      const title = route.operations.find((o) => o.id === point.operation)?.title ?? '';
      expect(Number(/Ø([\d.]+)/.exec(title)?.[1]), title).toBeCloseTo(point.stopAt, 3);
    }
  });

  test('a sliding size that is polished is left over its upper limit for the paper', () => {
    const point = pointsOf('valve-guide-pin').stopPoints.find((p) => p.dimension === 'guide.diameter');
    expect(point?.stopAt).toBeGreaterThan(point?.max ?? Number.POSITIVE_INFINITY);
    expect(point?.leave).toBeCloseTo((point?.stopAt ?? 0) - ((point?.max ?? 0) + (point?.min ?? 0)) / 2, 9);
  });

  test('no more is left than a patient hand takes off with paper: five hundredths', () => {
    for (const p of [...pointsOf('valve-guide-pin').stopPoints, ...pointsOf('plunger').stopPoints])
      expect(p.leave).toBeLessThan(0.05);
  });

  test('a bore is aimed at the middle of its limits', () => {
    const bore = pointsOf('valve-guide-pin').stopPoints.find((p) => p.dimension === 'insert-bore.diameter');
    expect(bore?.stopAt).toBeCloseTo(10.018, 3);
    expect(bore?.leave).toBe(0);
  });

  test('a last cut that may well miss is called out, with its chance', () => {
    const { findings } = pointsOf('valve-guide-pin');
    expect(findings.map((f) => f.at)).toEqual(['insert-bore.diameter']);
    expect(findings[0]?.because[0]?.value).toBeLessThan(0.9);
  });

  test('wide sizes and threads need no stop point', () => {
    const dimensions = pointsOf('valve-guide-pin').stopPoints.map((p) => p.dimension);
    expect(dimensions).not.toContain('head.diameter');
    expect(dimensions).not.toContain('threaded.diameter');
  });

  test('a finer dial narrows where the last cut ends', () => {
    const { crossSlide } = workshop.lathe.dials;
    const finer = {
      ...workshop,
      lathe: { ...workshop.lathe, dials: { ...workshop.lathe.dials, crossSlide: { ...crossSlide, division: 0.005 } } },
    };
    expect(lastCutSpread(finer, 6, true)).toBeLessThan(lastCutSpread(workshop, 6, true));
  });
});

test('a size without limits gets no stop point and no talk of chances; the part says once that limits are missing', () => {
  const job = exampleJob('plunger');
  const { generalTolerance: _, ...bare } = job.part ?? { outside: [], name: '' };
  const part = definePart({
    ...bare,
    outside: bare.outside.map((s) =>
      s.kind === 'cylinder' && s.diameter ? { ...s, diameter: { ...s.diameter, tolerance: { kind: 'none' } } } : s,
    ),
  });
  const route = planRoute(part, workshop, undefined);
  if (!route) throw new Error('it has a route');
  expect(stopPoints(part, route, workshop)).toEqual({ stopPoints: [], findings: [] });
  expect(route.findings.map((f) => f.id)).not.toContain('route.dial-too-coarse');
  expect(part.findings.filter((f) => f.id === 'part.no-limits').length).toBe(1);
});
