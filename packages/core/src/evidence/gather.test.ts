import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Dimension } from '../part/part-result.ts';
import { gatherEvidence, weightedMean } from './gather.ts';
import type { Evidence, Gauge, Reading } from './schema.ts';

const steel = 11.5e-6;
const gauges: Gauge[] = [{ id: 'm', name: 'micrometer', kind: 'outside micrometer', resolution: 0.01 }];
const guide: Dimension = {
  id: 'guide.diameter',
  feature: 'guide',
  title: 'diameter of the guide',
  kind: 'outside diameter',
  nominal: 6,
  max: 5.99,
  min: 5.978,
  upper: -0.01,
  lower: -0.022,
  basis: 'f7',
  text: '6 f7',
};

function of(...readings: Partial<Reading>[]): Evidence {
  return { readings: readings.map((r, i) => ({ id: `r${i}`, of: 'guide.diameter', value: 6, gauge: 'm', ...r })) };
}

function gather(evidence: Evidence, dimension = guide) {
  return gatherEvidence(evidence, gauges, [dimension], [], steel);
}

describe('readings of one dimension', () => {
  test('protected places give the estimate, worn ones the wear', () => {
    const { gathered } = gather(of({ value: 5.98, condition: 'protected' }, { value: 5.91, condition: 'worn' }));
    expect(gathered[0]?.estimate?.value).toBeCloseTo(5.98, 4);
    expect(gathered[0]?.wear).toBeCloseTo(0.07, 4);
  });

  test('a worn shaft bounds its as-made size from below, a bore from above', () => {
    const shaft = gather(of({ value: 5.95, condition: 'worn' })).gathered[0];
    expect(shaft?.bound?.kind).toBe('at least');
    expect(shaft?.bound?.value).toBeLessThan(5.95);
    const bore = gather(of({ value: 6.05, condition: 'worn' }), { ...guide, kind: 'inside diameter' }).gathered[0];
    expect(bore?.bound?.kind).toBe('at most');
    expect(bore?.bound?.value).toBeGreaterThan(6.05);
  });

  test('damaged, corroded and plated places bound nothing', () => {
    for (const condition of ['damaged', 'corroded', 'plated'] as const)
      expect(gather(of({ condition })).gathered[0]?.bound).toBeUndefined();
  });

  test('limits that the unworn original lies outside of are called out', () => {
    const { findings } = gather(of({ value: 6.03, condition: 'protected' }));
    expect(findings.map((f) => f.id)).toContain('evidence.size-differs-from-original');
    expect(gather(of({ value: 5.985, condition: 'protected' })).findings).toEqual([]);
  });

  test('limits smaller than what is left of a worn shaft are called out', () => {
    expect(gather(of({ value: 6.05, condition: 'worn' })).findings.map((f) => f.id)).toContain(
      'evidence.size-against-wear',
    );
  });

  test('a worn place fuller than the protected one is called out', () => {
    const { findings } = gather(of({ value: 5.98, condition: 'protected' }, { value: 6.02, condition: 'worn' }));
    expect(findings.map((f) => f.id)).toContain('evidence.worn-place-is-fuller');
  });

  test('protected places that disagree are called out', () => {
    const { findings } = gather(of({ value: 5.95, condition: 'protected' }, { value: 5.99, condition: 'protected' }));
    expect(findings.map((f) => f.id)).toContain('evidence.protected-readings-disagree');
  });

  test('a reading of a dimension that is not there, or with an unknown gauge, is said', () => {
    const ids = gather({ readings: [{ id: 'x', of: 'nose.length', value: 3, gauge: 'lost' }] }).findings.map(
      (f) => f.id,
    );
    expect(ids).toEqual(['evidence.unknown-dimension', 'evidence.unknown-gauge']);
  });

  test('no evidence is no trouble', () => {
    expect(gatherEvidence(undefined, [], [], [], steel)).toEqual({ gathered: [], findings: [] });
  });

  test('ten readings with one micrometer are no surer than its own error allows', () => {
    const many = gather(of(...Array.from({ length: 10 }, () => ({ value: 5.98, condition: 'protected' as const }))));
    expect(many.gathered[0]?.estimate?.uncertainty).toBeCloseTo(0.004 / Math.sqrt(3), 6);
  });
});

describe('weighted mean', () => {
  const reading = fc.record({
    value: fc.double({ min: 1, max: 100, noNaN: true }),
    uncertainty: fc.double({ min: 0.001, max: 0.1, noNaN: true }),
  });

  test('lies between the smallest and the largest reading', () => {
    fc.assert(
      fc.property(fc.array(reading, { minLength: 1, maxLength: 12 }), (values) => {
        const mean = weightedMean(values).value;
        expect(mean).toBeGreaterThanOrEqual(Math.min(...values.map((v) => v.value)) - 1e-9);
        expect(mean).toBeLessThanOrEqual(Math.max(...values.map((v) => v.value)) + 1e-9);
      }),
    );
  });

  test('n equal readings have 1/√n of the uncertainty of one', () => {
    const one = { value: 5, uncertainty: 0.01 };
    expect(weightedMean([one, one, one, one]).uncertainty).toBeCloseTo(0.005, 12);
  });
});
