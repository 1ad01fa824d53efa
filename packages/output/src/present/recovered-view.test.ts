/** The recovered design as the screen shows it: whatever is taken is understood by the job, and nothing is shown that is no number. */

import { assess } from '@sparewright/core/job/assess';
import { readJob } from '@sparewright/core/job/read-document';
import { recoverJob } from '@sparewright/core/job/recover-job';
import { describe, expect, test } from 'vitest';
import type { DocumentPath, RecoveredView } from './job-view.ts';
import { recoveredView } from './recovered-view.ts';
import { presentSettings } from './settings.ts';

type Reading = Readonly<Record<string, unknown>>;

/** An invented roller: a worn journal, a bowl-shaped middle, a dome. */
function roller(units: 'mm' | 'in', readings: readonly Reading[]) {
  return {
    sparewright: 'job',
    version: 1,
    title: 'Roller, invented',
    units,
    hazard: 'ordinary',
    invented: true,
    evidence: { readings: readings.map((r, i) => ({ id: `r${i + 1}`, condition: 'protected', ...r })) },
    part: {
      name: 'Roller',
      generalTolerance: 'm',
      leftOpen: ['journal.diameter'],
      outside: [
        { id: 'journal', kind: 'cylinder', diameter: '12 mm', length: '20 mm', role: 'running' },
        { id: 'bowl', kind: 'cone', startDiameter: '20 mm', endDiameter: '20 mm', length: '20 mm' },
        { id: 'dome', kind: 'crown', diameter: '20 mm', length: '2 mm' },
      ],
    },
  };
}

const bowl = [0, 4, 8, 12, 16, 20].map((z) => ({
  of: 'bowl.profile',
  along: `${z} mm`,
  value: `${(2 * (Math.sqrt(32 ** 2 - (z - 10) ** 2) - 20)).toFixed(3)} mm`,
}));
const dome = [0, 3, 6, 9].map((r) => ({
  of: 'dome.depths',
  along: `${r} mm`,
  value: `${(1 + 30 - Math.sqrt(900 - r * r)).toFixed(3)} mm`,
}));
const journal = ['11.975 mm', '11.977 mm'].map((value) => ({ of: 'journal.diameter', value }));

function viewOf(document: unknown): RecoveredView {
  const job = readJob(document);
  const assessment = assess(job, undefined);
  const result = recoverJob(job, undefined, assessment.part);
  if (!result) throw new Error('nothing was recovered');
  return recoveredView(result, { document, job, assessment, settings: presentSettings(job) });
}

function put(document: unknown, at: DocumentPath, value: unknown): unknown {
  const copy = structuredClone(document);
  const last = at.at(-1);
  const holder = at.slice(0, -1).reduce<unknown>((node, step) => Reflect.get(Object(node), step), copy);
  Reflect.set(Object(holder), last ?? '', value);
  return copy;
}

describe.each(['mm', 'in'] as const)('a roller in a job in %s', (units) => {
  const document = roller(units, [...journal, ...bowl, ...dome]);
  const view = viewOf(document);
  const feature = (of: string) => view.features.find((f) => f.of === of);

  test('its journal is 12, left open until it is taken', () => {
    expect(feature('journal.diameter')).toMatchObject({ isOpen: true, decision: null, entered: '12 mm' });
    expect(feature('journal.diameter')?.takes[0]?.write).toMatch(units === 'mm' ? /^12 [a-z]\d/ : /^12 mm [a-z]\d/);
  });

  test('its bowl is an arc of 32 mm, its dome a sphere of 30 mm', () => {
    const bowlView = feature('bowl.profile');
    expect(bowlView?.designs[0]?.written).toContain(units === 'mm' ? 'arc, radius 32.0' : 'arc, radius 1.260');
    // Depths are rounded to a micrometre: the radius comes back to a hundredth or two.
    expect(feature('dome.depths')?.designs[0]?.written).toMatch(
      units === 'mm' ? /^sphere, radius (29\.9[789]|30\.0[0123])/ : /^sphere, radius 1\.18/,
    );
  });

  test('whatever is taken is understood, and the part has it', () => {
    for (const { of, takes } of view.features)
      for (const { write, puts } of takes)
        for (const { at, value } of puts) {
          const part = assess(readJob(put(document, at, value)), undefined).part;
          expect(part?.outside.length, `${of}: ${write}`).toBe(3);
        }
    const arc = feature('bowl.profile')?.takes[0]?.puts[0];
    expect(arc?.value).toMatchObject({ id: 'bowl', kind: 'arc', bulge: 'outward' });
  });

  test('no word and no picture has anything in it that is no number', () => {
    const text = JSON.stringify(view);
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
    for (const { line, bars } of view.features)
      for (const svg of [line, bars]) if (svg !== null) expect(svg).toMatch(/^<svg [\s\S]*<\/svg>\s*$/);
  });
});

test('a size the part does not have begins its section, and a part that is not there yet begins with it', () => {
  const reading = { of: 'tail.diameter', value: '9.98' };
  const { part: _, ...bare } = roller('mm', [reading, reading]);
  const puts = viewOf(bare).features[0]?.takes[0]?.puts;
  expect(puts?.map((p) => p.at)).toEqual([['part'], ['part', 'outside', 0]]);
  expect(puts?.[1]?.value).toMatchObject({ id: 'tail', kind: 'cylinder' });
  expect(viewOf(roller('mm', [reading])).features[0]?.takes[0]?.puts.map((p) => p.at)).toEqual([
    ['part', 'outside', 3],
  ]);
});
