import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countOutside, referenceRows } from '../../../test/reference.ts';
import { sourceKeys } from '../../sources/register.ts';
import { cutOffForFeed, cutOffForRa } from './cut-off.ts';
import { findGrit, finishesOfGrit, gritFinishes, gritSteps, grits, paperFor, sameGrain } from './grit.ts';
import { finishingAllowances, paperAllowance } from './polish-allowance.ts';
import { processesFor, processRoughness, roughnessOfProcess } from './process-roughness.ts';
import { finishQuestions } from './questions.ts';
import { fromMicroinch, gradeWithin, nGrades, raFromRms, raOfGrade, rtFromRa, rzFromRa } from './roughness-units.ts';
import { type SealFace, sealFaces, sealFinishAsked, sealSurfaceFinishes } from './seal-surface.ts';

const optional = (text: string | undefined) => (text === '' || text === undefined ? undefined : Number(text));

describe('abrasive paper', () => {
  test('has the grain of the reference, in both systems', () => {
    const printed = [
      ...referenceRows('surface', 'grit-fepa-p').map((r) => [
        r.grade,
        Number(r.mean_particle_um),
        optional(r.tolerance_um),
      ]),
      ...referenceRows('surface', 'grit-cami').map((r) => [r.cami_grade, Number(r.mean_particle_um), undefined]),
    ];
    expect([...grits['FEPA P'], ...grits.CAMI].map((g) => [g.grade, g.grain, g.tolerance])).toEqual(printed);
  });

  test('gets finer as the number rises', () => {
    for (const list of Object.values(grits)) {
      for (const [i, g] of list.entries()) {
        const next = list[i + 1];
        if (next) expect(next.grain).toBeLessThan(g.grain);
      }
    }
  });

  test('is the same in the other system where the comparison prints both on one line [stusshed-grit]', ({ task }) => {
    const lines = referenceRows('surface', 'grit-fepa-p').filter((r) => r.same_line_cami !== '');
    for (const row of lines) {
      expect(sameGrain(findGrit(row.grade ?? '')).grade).toBe(row.same_line_cami);
      expect(sameGrain(findGrit(row.same_line_cami ?? '')).grade).toBe(row.grade);
    }
    countOutside(task, lines.length);
  });

  test('is read with and without P, and an unknown grade lists the known ones', () => {
    expect(findGrit('p 400').grain).toBe(35);
    expect(findGrit('400').grain).toBe(23);
    expect(findGrit('400', 'FEPA P').grain).toBe(35);
    expect(() => findGrit('P90')).toThrow('P80, P100');
  });

  test('goes from coarse to fine in steps that at most halve the grain, ending at the one asked for', () => {
    const places = fc.tuple(fc.constantFrom('FEPA P' as const, 'CAMI' as const), fc.nat(30), fc.nat(30));
    fc.assert(
      fc.property(places, ([system, i, j]) => {
        const list = grits[system];
        const [from, to] = [list[Math.min(i, j) % list.length], list[Math.max(i, j) % list.length]];
        if (!from || !to || to.grain > from.grain) return;
        const steps = gritSteps(from, to);
        expect(steps[0]).toBe(from);
        expect(steps.at(-1)).toBe(to);
        for (const [k, step] of steps.entries()) {
          const next = steps[k + 1];
          if (next) expect(next.grain).toBeGreaterThanOrEqual(step.grain / 2);
          if (next) expect(next.grain).toBeLessThan(step.grain);
        }
      }),
    );
    expect(() => gritSteps(findGrit('P400'), findGrit('P240'))).toThrow('finer than P400');
    expect(() => gritSteps(findGrit('P400'), findGrit('600'))).toThrow('FEPA P');
  });

  test('leaves the Ra of the reference rows, which disagree', () => {
    const rows = referenceRows('surface', 'ra-by-grit');
    expect(gritFinishes.map((f) => [f.grades[0], f.system, f.raMin, f.raMax, f.source])).toEqual(
      rows.map((r) => [
        Number(r.grade_min?.replace('P', '')),
        r.system,
        optional(r.ra_min_um) ?? 0,
        Number(r.ra_max_um),
        r.source === 'common practice' ? 'common-practice' : r.source,
      ]),
    );
    const ra = finishesOfGrit(findGrit('240')).map((f) => f.raMax);
    expect(Math.max(...ra) / Math.min(...ra)).toBeGreaterThan(3);
    expect(finishesOfGrit(findGrit('P400')).every((f) => f.system !== 'US (CAMI)')).toBe(true);
  });

  test('is chosen as the coarsest that stays within the wanted Ra', () => {
    expect(paperFor(0.4).grades[0]).toBe(800);
    expect(paperFor(0.1).grades[0]).toBe(2000);
    expect(() => paperFor(0.05)).toThrow('lapping');
  });
});

describe('ways of working', () => {
  test('leave the Ra of the reference', () => {
    const rows = referenceRows('surface', 'ra-by-process');
    expect(processRoughness).toEqual(
      rows.map((r) => ({
        process: r.process,
        raMin: Number(r.ra_min_um),
        raMax: Number(r.ra_max_um),
        source: r.source,
      })),
    );
  });

  test('are found by name, and every process found for an Ra reaches it', () => {
    expect(roughnessOfProcess('Turning').map((p) => p.raMin)).toEqual([0.4]);
    expect(roughnessOfProcess('grinding')).toHaveLength(2);
    expect(() => roughnessOfProcess('filing')).toThrow('turning');
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 25, noNaN: true }), (ra) => {
        for (const p of processesFor(ra)) expect(p.raMin <= ra && ra <= p.raMax).toBe(true);
      }),
    );
  });
});

describe('one roughness in another measure', () => {
  test('microinches printed beside micrometres agree [parker-finish, apple-finish, apg-67, marco]', ({ task }) => {
    const printed = [
      [32, 0.81],
      [16, 0.41],
      [64, 1.6],
      [128, 3.3],
      [10, 0.25],
      [20, 0.51],
      [5, 0.13],
      [8, 0.2],
    ] as const;
    for (const [uin, um] of printed) expect(Math.abs(fromMicroinch(uin) / um - 1), `${uin} µin`).toBeLessThan(0.03);
    countOutside(task, printed.length);
  });

  test('N grades stand at the microinches that the standard prints beside them [ISO 1302, from memory]', ({ task }) => {
    const microinch = [1, 2, 4, 8, 16, 32, 63, 125, 250, 500, 1000, 2000];
    expect(nGrades).toHaveLength(microinch.length);
    for (const [i, [, ra]] of nGrades.entries())
      expect(Math.abs(fromMicroinch(microinch[i] ?? 0) / ra - 1)).toBeLessThan(0.03);
    countOutside(task, microinch.length);
  });

  test('the grade within an Ra is the coarsest that keeps it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.025, max: 100, noNaN: true }), (ra) => {
        const grade = gradeWithin(ra);
        expect(raOfGrade(grade)).toBeLessThanOrEqual(ra);
        const next = nGrades[nGrades.findIndex(([name]) => name === grade) + 1];
        if (next) expect(next[1]).toBeGreaterThan(ra);
      }),
    );
    expect(raOfGrade(' n7 ')).toBe(1.6);
    expect(() => raOfGrade('N13')).toThrow('N1 to N12');
    expect(() => gradeWithin(0.01)).toThrow('0.025');
  });

  test('the pairs of Ra and Rz that the O-ring standard asks for lie within the rule, 2 % for rounding [ISO 3601-2, from memory]', ({
    task,
  }) => {
    const pairs = referenceRows('surface', 'seal-surface-finish').filter((r) => r.source === 'mem-iso3601-2');
    for (const row of pairs) {
      const { low, high } = rzFromRa(Number(row.ra_max_um));
      expect(Number(row.rz_max_um)).toBeGreaterThan(low * 0.97);
      expect(Number(row.rz_max_um)).toBeLessThan(high);
    }
    countOutside(task, pairs.length);
  });

  test('Rt is seven times Ra and a little, give or take 35 % [epm]', () => {
    const { low, high } = rtFromRa(1);
    expect([low, high].map((v) => Number(v.toFixed(3)))).toEqual([4.68, 9.72]);
    expect(() => rtFromRa(0.05)).toThrow('0.1');
    expect(raFromRms(1)).toBeCloseTo(0.9, 12);
  });

  test('Ra of a sine wave is 0.9 of its root mean square, 2√2/π', () => {
    expect(Math.abs(raFromRms(1) - (2 * Math.SQRT2) / Math.PI)).toBeLessThan(0.001);
  });
});

describe('the stylus', () => {
  test('is set by Ra for papered and ground faces, by feed for turned ones, as the reference rows say', () => {
    for (const row of referenceRows('surface', 'measurement')) {
      const wanted = {
        cutOff: Number(row.cutoff_mm),
        evaluationLength: Number(row.evaluation_length_mm),
        shortWave: Number(row.lambda_s_um),
        tipRadiusMax: Number(row.tip_radius_max_um),
      };
      if (row.item === 'non-periodic') {
        expect(cutOffForRa(Number(row.ra_upto_um))).toEqual(wanted);
        expect(cutOffForRa(Number(row.ra_over_um) * 1.01)).toEqual(wanted);
      } else if (row.item?.startsWith('periodic')) {
        expect(cutOffForFeed(Number(row.rsm_upto_mm))).toEqual(wanted);
        expect(cutOffForFeed(Number(row.rsm_over_mm) * 1.01)).toEqual(wanted);
      }
    }
  });

  test('travels five cut-offs, and at least two marks fall in one', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.0131, max: 1.3, noNaN: true }), (feed) => {
        const { cutOff, evaluationLength } = cutOffForFeed(feed);
        expect(evaluationLength).toBeCloseTo(5 * cutOff, 12);
        expect(cutOff / feed).toBeGreaterThan(1.9);
      }),
    );
    expect(() => cutOffForRa(100)).toThrow('80 µm');
    expect(() => cutOffForFeed(0.01)).toThrow('0.013');
  });
});

describe('what to leave for finishing', () => {
  test('is what the reference rows say', () => {
    const rows = referenceRows('surface', 'polish-allowance');
    expect(finishingAllowances.map((a) => [a.low, a.high])).toEqual(
      rows.map((r) => [Number(r.allowance_on_diameter_min_mm), Number(r.allowance_on_diameter_max_mm)]),
    );
  });

  test('clears the marks: at least twice their depth, as the theoretical rows reckon it', () => {
    for (const row of referenceRows('surface', 'turned-finish-theoretical')) {
      const { least, low, high } = paperAllowance(Number(row.rt_circle_um));
      expect(1000 * least).toBeCloseTo(Number(row.least_removal_on_diameter_to_clear_um), 2);
      expect(low).toBeGreaterThan(least);
      expect(high).toBeGreaterThan(low);
    }
    expect(() => paperAllowance(0)).toThrow('more than 0');
  });
});

describe('faces of a seal', () => {
  test('are asked for as the reference rows say', () => {
    const rows = referenceRows('surface', 'seal-surface-finish');
    expect(sealSurfaceFinishes.map((s) => [s.surface, s.service, s.raMin, s.raMax, s.rzMax, s.source])).toEqual(
      rows.map((r) => [
        r.surface,
        r.service,
        optional(r.ra_min_um),
        optional(r.ra_max_um),
        optional(r.rz_max_um),
        r.source,
      ]),
    );
  });

  test('every row is reached by some face, and a sliding face is asked finer than a static one', () => {
    const faces: SealFace[] = [
      'static face',
      'static face, gas or vacuum',
      'static face, pulsating',
      'sliding face',
      'rotating shaft',
      'groove',
      'lead-in chamfer',
    ];
    expect(faces).toEqual(Object.keys(sealFaces));
    const reached = new Set(faces.flatMap((f) => sealFinishAsked(f).rows));
    expect(sealSurfaceFinishes.filter((s) => !reached.has(s))).toEqual([]);
    const strictest = (f: SealFace) => sealFinishAsked(f).strictest ?? 0;
    expect(strictest('sliding face')).toBeLessThan(strictest('static face'));
    expect(strictest('rotating shaft')).toBeLessThan(strictest('sliding face'));
  });
});

describe('questions', () => {
  const [surface, grit, polish] = finishQuestions;

  test('answer their own examples', () => {
    for (const question of [surface, grit, polish]) {
      const input = question.input.parse(question.example.input);
      const answer: unknown = Reflect.apply(question.answer, question, [input]);
      const parsed = question.output.parse(answer);
      const given = JSON.parse(JSON.stringify(question.example.gives), (_, v) =>
        typeof v === 'number' ? expect.closeTo(v, Number.isInteger(v) ? 9 : 3) : v,
      );
      expect(parsed).toMatchObject(given);
    }
  });

  test('name sources that are in the register', () => {
    const answers = [
      surface.answer({ feed: 0.1, noseRadius: 0.4, ra: 0.8, face: 'sliding face', process: 'turning' }),
      grit.answer({ grade: 'P400', from: 'P120' }),
      polish.answer({ rt: 5 }),
    ];
    for (const { sources } of answers) for (const key of sources) expect(sourceKeys).toContain(key);
    expect(answers[1]?.remarks.join()).toContain('never wrap cloth');
  });

  test('refuse half an input and say what is missing', () => {
    expect(() => surface.answer({ feed: 0.1 })).toThrow('noseRadius');
    expect(() => surface.answer({})).toThrow('"ra": 0.8');
    expect(() => grit.answer({})).toThrow('P400');
    expect(() => polish.answer({ noseRadius: 0.4 })).toThrow('feed');
    expect(() => surface.input.parse({ face: 'lid' })).toThrow('static face');
  });

  test('a feed above the nose radius is answered by geometry alone', () => {
    const answer = surface.answer({ feed: 0.3, noseRadius: 0.2 });
    expect(answer.turned?.expected).toBeUndefined();
    expect(answer.turned?.rt).toBeCloseTo(67.712, 2);
  });
});
