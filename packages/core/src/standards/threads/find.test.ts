import fc from 'fast-check';
import { expect, test } from 'vitest';
import { radians } from '../../units/quantities.ts';
import { standardThreads } from './catalogue.ts';
import { apart, findThread } from './find.ts';
import { threadLimits } from './limits.ts';
import { parseThread } from './thread.ts';

const bolt = (crest: number, pitch: number, angle?: number) =>
  ({
    side: 'external',
    crestDiameter: { value: crest, uncertainty: 0.02 },
    pitch: { value: pitch, uncertainty: 0.01 },
    ...(angle === undefined ? {} : { flankAngle: { value: radians(angle), uncertainty: radians(1) } }),
  }) as const;

test('a bolt of ⌀9.85 with 1.5 mm pitch is M10', () => {
  expect(findThread(bolt(9.85, 1.5))[0]?.thread.designation).toBe('M10');
});

test('⌀6.25, 20 to the inch: the angle tells BSW from UNC, and without it both are offered', () => {
  expect(findThread(bolt(6.25, 1.27, 55.4))[0]?.thread.designation).toBe('1/4 BSW');
  expect(findThread(bolt(6.25, 1.27, 59.8))[0]?.thread.designation).toBe('1/4-20 UNC');
  const both = findThread(bolt(6.25, 1.27)).slice(0, 2);
  expect(both.map((m) => m.thread.designation).toSorted()).toEqual(['1/4 BSW', '1/4-20 UNC']);
  expect(both[1]?.probability).toBeGreaterThan(0.3);
});

test('a worn crest is still recognised, one too large is not taken for wear', () => {
  expect(findThread(bolt(9.6, 1.5))[0]?.thread.designation).toBe('M10');
  expect(findThread(bolt(10.25, 1.5)).map((m) => m.thread.designation)).not.toContain('M10');
});

test('a European brake union is told from the 3/8-24 that it starts in', () => {
  const match = findThread(bolt(9.9, 1))[0];
  expect(match?.thread.designation).toBe('M10x1');
  expect(match?.use).toContain('brake');
  expect(apart(parseThread('M10x1'), parseThread('3/8-24 UNF')).tenPitches).toBeCloseTo(0.583, 3);
});

test('any listed parallel thread, made anywhere in its limits, is among its own first matches', () => {
  fc.assert(
    fc.property(fc.constantFrom(...standardThreads()), fc.double({ min: 0, max: 1, noNaN: true }), (t, share) => {
      if (t.family === 'pipe-taper' || t.family === 'npt' || t.family === 'cycle') return;
      const major = (() => {
        try {
          return threadLimits(t, 'external').major;
        } catch {
          return { min: t.majorDiameter - 0.1 * t.pitch, max: t.majorDiameter };
        }
      })();
      const found = findThread(
        {
          side: 'external',
          crestDiameter: { value: major.min + share * (major.max - major.min), uncertainty: 0.005 },
          pitch: { value: t.pitch, uncertainty: 0.003 },
          flankAngle: { value: t.flankAngle, uncertainty: radians(0.5) },
        },
        8,
      );
      expect(
        found.map((m) => m.thread.designation),
        t.designation,
      ).toContain(t.designation);
    }),
    { numRuns: 800 },
  );
});

test('shares add up to one at most, and no thread is offered for nonsense', () => {
  const all = findThread(bolt(6.25, 1.27), 50);
  expect(all.reduce((sum, m) => sum + m.probability, 0)).toBeCloseTo(1, 9);
  expect(findThread(bolt(47.1, 0.33))).toEqual([]);
  expect(() => findThread(bolt(0, 1))).toThrow('above 0');
});

test('once warm, a search over all threads takes under 2 ms', () => {
  findThread(bolt(9.85, 1.5));
  const start = performance.now();
  for (let i = 0; i < 50; i++) findThread(bolt(3 + i, 1.5));
  expect((performance.now() - start) / 50).toBeLessThan(2);
});
