import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { exampleDocument } from '../../test/examples.ts';
import type { Question } from '../question.ts';
import { latheQuestions } from './questions.ts';

const questions: readonly Question[] = latheQuestions;

/** Asks as the command line does: through the schema of the input, and the answer through its own. */
function ask(name: string, input: unknown): Record<string, unknown> {
  const question = questions.find((q) => q.name === name);
  if (!question) throw new Error(`no question ${name}`);
  const answer = question.output.parse(question.answer(question.input.parse(input)));
  if (typeof answer !== 'object' || answer === null) throw new Error(`${name} answers no record`);
  return { ...answer };
}

/** Every number in an answer, with its place. */
function numbers(value: unknown, at = ''): { at: string; value: number }[] {
  if (typeof value === 'number') return [{ at, value }];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => numbers(inner, `${at}.${key}`));
}

describe('each question answers its example', () => {
  for (const { name, example } of questions) {
    test(`${name}: ${example.from}`, () => {
      if (typeof example.gives !== 'object' || example.gives === null) throw new Error('gives nothing');
      expect(JSON.parse(JSON.stringify(ask(name, example.input)))).toEqual(partly(example.gives));
    });
  }
});

/** Records and lists that begin as told. */
function partly(gives: unknown): unknown {
  if (Array.isArray(gives)) {
    return expect.toSatisfy((got: unknown) => {
      if (!Array.isArray(got)) return false;
      gives.forEach((item, i) => {
        expect(got[i]).toEqual(partly(item));
      });
      return true;
    });
  }
  if (typeof gives !== 'object' || gives === null) return gives;
  return expect.objectContaining(Object.fromEntries(Object.entries(gives).map(([k, v]) => [k, partly(v)])));
}

/** A workshop document that can be altered before it is read. */
const loose = z.looseObject({ lathe: z.looseObject({}), cutters: z.array(z.looseObject({})) });
const workshop = loose.parse(exampleDocument('bench-lathe.workshop.json'));
const cut = {
  workshop,
  cutter: 'rough',
  material: '303',
  sections: [{ length: 40, outerDiameter: 10 }],
  grip: 18,
  depth: 0.2,
  feed: 0.05,
  speed: 800,
};

test('answers hold only finite numbers', () => {
  for (const operation of ['turning', 'facing']) {
    const all = numbers(ask('cut-on-lathe', { ...cut, operation }));
    expect(all.length).toBeGreaterThan(25);
    expect(all.filter(({ value }) => !Number.isFinite(value))).toEqual([]);
  }
});

test('a speed between two steps is judged, and the steps about it are named', () => {
  const said = (speed: number) => JSON.stringify(ask('cut-on-lathe', { ...cut, speed }));
  expect(said(900)).toContain('no step of 900 rpm; the nearest are 800 and 1250');
  expect(said(800)).not.toContain('no step');
});

describe('what cannot be is refused, and why is said', () => {
  test.each([
    ['a piece longer than the bed', { sections: [{ length: 301, outerDiameter: 10 }] }, '300 mm'],
    ['a piece larger than the swing', { sections: [{ length: 30, outerDiameter: 190 }] }, '180 mm'],
    ['a cutter that is not there', { cutter: 'ruff' }, 'rough'],
    ['a cut off the work', { to: 60 }, '40 mm'],
    ['no grip', { grip: 0 }, 'above 0 mm'],
    ['no speed', { speed: 0 }, '1 to 20000'],
    ['a speed above the fastest', { speed: 2001 }, 'at most 2000 rpm, the fastest'],
    ['a speed below the slowest', { speed: 124 }, 'at least 125 rpm, the slowest'],
    ['a depth of the whole radius', { depth: 5 }, 'less than 5 mm, the radius'],
    ['boring with a turning cutter', { operation: 'boring' }, 'barDiameter'],
    ['grooving with a turning cutter', { operation: 'grooving' }, 'width'],
    ['a plastic whose force is not known', { material: 'POM-C' }, 'cutting force is known'],
    ['a workshop without speeds', { workshop: { sparewright: 'workshop' } }, 'workshop'],
  ])('%s', (_, change, says) => {
    let message = '';
    try {
      ask('cut-on-lathe', { ...cut, ...change });
    } catch (error) {
      message = error instanceof Error ? error.message : '';
    }
    expect(message).toContain(says);
  });

  test('a cutter that does not stand out', () => {
    const document = { ...workshop, cutters: workshop.cutters.map((c) => ({ ...c, overhang: 0 })) };
    expect(() => ask('cut-on-lathe', { ...cut, workshop: document })).toThrow('overhang');
  });
});

test('tests in the workshop narrow what is known and are told one by one', () => {
  const document = {
    ...workshop,
    lathe: {
      ...workshop.lathe,
      tests: {
        pushes: [
          {
            id: 'edge',
            at: 'tool edge',
            readings: [
              { force: 0, up: 0, down: 9 },
              { force: 100, up: 15, down: 24 },
            ],
          },
          {
            id: 'saddle',
            at: 'saddle',
            readings: [
              { force: 0, up: 0 },
              { force: 200, up: 5 },
            ],
          },
        ],
      },
    },
  };
  const told = ask('lathe-knowledge', { workshop: document });
  expect(told.tests).toBe(2);
  expect(JSON.stringify(told.learnt)).toContain('saddle on the bed');
  const before = ask('lathe-knowledge', { workshop });
  expect(before.tests).toBe(0);
  expect(JSON.stringify(before.findings)).toContain('lathe.untested');
  expect(JSON.stringify(told.findings)).not.toContain('lathe.untested');
});

test('bare numbers in an inch workshop are inches', () => {
  const document = loose.parse(z.object({ workshop: z.unknown() }).parse(questions[0]?.example.input).workshop);
  const inch = {
    ...document,
    units: 'in',
    lathe: {
      ...document.lathe,
      swing: 7,
      betweenCentres: 12,
      spindleBore: 0.75,
      tailstock: { centre: 'live', travel: 2 },
      chucks: [{ id: 'chuck', name: 'chuck', jaws: 3, kind: 'self-centring', from: 0.1, to: 3.5, jawLength: 0.7 }],
      dials: { crossSlide: { division: 0.001, perTurn: 0.05, reads: 'radius' } },
    },
    cutters: [{ ...document.cutters[0], overhang: 0.8, maxDepth: 0.04 }],
  };
  const long = (length: number) => ({
    ...cut,
    workshop: inch,
    cutter: 'knife',
    sections: [{ length, outerDiameter: 30 }],
  });
  const says = (sizeLimit: string) => ask('cut-on-lathe', { ...long(304), sizeLimit }).says;
  expect(says('0.01 mm')).toMatch(/ \d\.\d{4} in/);
  expect(says('0.01 mm')).not.toContain(' mm');
  expect(() => ask('cut-on-lathe', long(305))).toThrow('304.8 mm');
});

test('a test half written down is passed over with a word, and the others count', () => {
  const tests = {
    pushes: [
      { id: 'begun', at: 'tool edge', readings: [{ force: 0 }, { force: 100 }] },
      {
        id: 'nose',
        at: 'spindle nose',
        readings: [
          { force: 0, up: 0 },
          { force: 100, up: 4 },
        ],
      },
    ],
    passes: [
      {
        id: 'old',
        bar: { diameter: 12, length: 40, grip: 18, material: '303' },
        cutter: 'lost',
        depth: 0.2,
        feed: 0.05,
        got: 0.19,
      },
    ],
  };
  const told = ask('lathe-knowledge', { workshop: { ...workshop, lathe: { ...workshop.lathe, tests } } });
  expect(told.tests).toBe(1);
  expect(told.findings).toMatchObject([
    { id: 'lathe.test-passed-over', at: 'begun' },
    { id: 'lathe.test-passed-over', at: 'old' },
  ]);
});
