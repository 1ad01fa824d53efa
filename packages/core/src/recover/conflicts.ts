/** Readings that cannot be right: in the wrong unit, or against each other. */
import type { Weighed } from '../evidence/evidence-result.ts';
import type { Because, Finding } from '../finding.ts';
import type { Mm } from '../units/quantities.ts';
import { mmPerInch } from '../units/quantities.ts';
import type { Turn } from './posterior.ts';

export interface Screened {
  readonly kept: readonly Weighed[];
  readonly findings: readonly Finding[];
}

function said(
  id: string,
  level: Finding['level'],
  at: string,
  says: string,
  because: Because[],
  remedies: string[],
): Finding {
  return { id, level, stage: 'evidence', at, says, because, remedies };
}

const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const [low = 0, high = 0] = [sorted[Math.floor((sorted.length - 1) / 2)], sorted[Math.ceil((sorted.length - 1) / 2)]];
  return (low + high) / 2;
};

/**
 * Sets aside what is no reading of this size, and says why.
 *
 * @param of  dimension
 * @param weighed  its readings
 * @param expected  size it is thought to have, where somebody entered one
 * @param turn  whether wear makes it smaller
 */
export function screen(of: string, weighed: readonly Weighed[], expected: Mm | undefined, turn: Turn): Screened {
  const sound = weighed.filter((w) => Number.isFinite(w.value) && w.value > 0 && Number.isFinite(w.uncertainty));
  const findings: Finding[] = weighed.length > sound.length ? [noSize(of)] : [];
  const first = sound[0];
  if (!first) return { kept: [], findings };
  const middle = expected ?? agreed(sound);
  if (middle === undefined) return { kept: [], findings: [...findings, unitsUnclear(of, sound)] };
  const kept: Weighed[] = [];
  for (const w of sound) {
    const unit = wrongUnit(of, w, middle);
    if (unit) findings.push(unit);
    else if (isWild(w, middle, turn)) findings.push(wild(of, w, middle));
    else kept.push(w);
  }
  // When nobody else is there to contradict it, what was entered may be wrong just as well: the readings stand.
  if (kept.length === 0) return { kept: sound, findings };
  return { kept, findings: [...findings, ...quarrels(of, kept, turn)] };
}

/** The middle of the readings, unless they are of two kinds with nothing to tell which is right. */
function agreed(sound: readonly Weighed[]): Mm | undefined {
  const values = sound.map((w) => w.value);
  const middle = median(values);
  const near = values.filter((v) => Math.abs(v / middle - 1) < 0.15);
  if (near.length > 0) return median(near);
  // Two camps of one size each: the middle lies between them, near nobody.
  const camps = values.map((v) => values.filter((o) => Math.abs(o / v - 1) < 0.05).length);
  const best = Math.max(...camps);
  const leaders = values.filter((_, i) => camps[i] === best);
  const spread = Math.max(...leaders) / Math.min(...leaders);
  return spread < 1.1 ? median(leaders) : undefined;
}

/** Within this part of 25.4, a ratio of two readings is a mix-up of units. */
const unitSlack = 0.06;

function wrongUnit(of: string, w: Weighed, middle: Mm): Finding | undefined {
  const ratio = w.value / middle;
  const typed = [mmPerInch, 1 / mmPerInch].find((f) => Math.abs(ratio / f - 1) < unitSlack);
  if (typed === undefined) return undefined;
  const meant = typed > 1 ? 'millimetres entered as inches' : 'inches entered as millimetres';
  return said(
    'evidence.wrong-unit',
    'caution',
    w.reading.id,
    `Reading ${w.reading.id} of ${of} is ${typed > 1 ? '25.4 times too large' : '25.4 times too small'} beside the others: ${meant}. It is left out.`,
    [
      { what: `reading ${w.reading.id}`, value: w.value, unit: 'mm', limit: middle },
      { what: 'the same in the other unit', value: w.value / typed, unit: 'mm' },
    ],
    [
      `Enter it with its unit, as ${typed > 1 ? `${+(w.value / mmPerInch).toFixed(3)} mm` : `${+w.value.toFixed(4)} in`}`,
    ],
  );
}

/** Farther off than any wear or swelling: more than 2 mm and a tenth of the size, or on the side where there is no wear. */
function isWild(w: Weighed, middle: Mm, turn: Turn): boolean {
  const off = turn * (w.value - middle);
  const far = Math.max(2, 0.1 * middle);
  return (
    Math.abs(off) > far || (off > 0.5 * far && w.reading.condition !== 'corroded' && w.reading.condition !== 'plated')
  );
}

function wild(of: string, w: Weighed, middle: Mm): Finding {
  return said(
    'evidence.reading-far-off',
    'caution',
    w.reading.id,
    `Reading ${w.reading.id} of ${of} lies farther from the others than wear explains. It is left out.`,
    [{ what: `reading ${w.reading.id}`, value: w.value, unit: 'mm', limit: middle }],
    ['Measure that place again', 'Look whether the reading belongs to another feature'],
  );
}

/** Pairs of readings that neither gauge error nor wear reconciles: at least this many uncertainties apart. */
const apart = 4.5;

function quarrels(of: string, kept: readonly Weighed[], turn: Turn): Finding[] {
  const bySpecimen = new Map<string, Weighed[]>();
  for (const w of kept.toSorted((a, b) => a.value - b.value)) {
    const specimen = w.reading.specimen ?? '';
    const known = bySpecimen.get(specimen);
    if (known) known.push(w);
    else bySpecimen.set(specimen, [w]);
  }
  return [...bySpecimen.values()].flatMap((sorted) => quarrelsOf(of, sorted, turn)).slice(0, 4);
}

/** The ends of a sorted list quarrel if any do: only they are held against each other. */
function quarrelsOf(of: string, sorted: readonly Weighed[], turn: Turn): Finding[] {
  const good = sorted.filter((w) => w.reading.condition === 'protected');
  const worn = sorted.filter((w) => w.reading.condition === 'worn');
  const found: Finding[] = [];
  for (const a of good.slice(0, 2))
    for (const b of good.slice(-2))
      if (b.value - a.value > apart * between(a, b))
        found.push(bothRight(of, a, b, 'both places are said to be unworn'));
  const [fullest, least] = turn === 1 ? [worn.slice(-2), good.slice(0, 2)] : [worn.slice(0, 2), good.slice(-2)];
  for (const a of fullest)
    for (const b of least)
      if (turn * (a.value - b.value) > apart * between(a, b))
        found.push(bothRight(of, a, b, 'the worn place has more metal than the unworn one'));
  return found;
}

/** Uncertainty of a difference; what one gauge does to both readings alike drops out of it. */
function between(a: Weighed, b: Weighed): Mm {
  const own = (w: Weighed) =>
    Math.hypot(
      ...w.budget
        .filter((s) => s.from !== 'error of the gauge' || a.reading.gauge !== b.reading.gauge)
        .map((s) => s.share),
    );
  return Math.hypot(own(a), own(b));
}

function bothRight(of: string, a: Weighed, b: Weighed, why: string): Finding {
  return said(
    'evidence.readings-contradict',
    'caution',
    a.reading.id,
    `Readings ${a.reading.id} and ${b.reading.id} of ${of} cannot both be right: ${why}.`,
    [
      { what: `reading ${a.reading.id}`, value: a.value, unit: 'mm' },
      { what: `reading ${b.reading.id}`, value: b.value, unit: 'mm' },
      {
        what: 'difference',
        value: Math.abs(a.value - b.value),
        unit: 'mm',
        limit: apart * between(a, b),
        source: 'GUM',
      },
    ],
    ['Measure both places again, with the same gauge', 'Look again at which place is worn, burred or plated'],
  );
}

function noSize(of: string): Finding {
  return said(
    'evidence.no-size',
    'caution',
    of,
    `A reading of ${of} is no size above nought. It is left out.`,
    [],
    ['Enter it again'],
  );
}

function unitsUnclear(of: string, sound: readonly Weighed[]): Finding {
  const [a, b] = [Math.min(...sound.map((w) => w.value)), Math.max(...sound.map((w) => w.value))];
  const isUnit = Math.abs(b / a / mmPerInch - 1) < unitSlack;
  return said(
    isUnit ? 'evidence.wrong-unit' : 'evidence.readings-contradict',
    'caution',
    of,
    isUnit
      ? `Readings ${sound.map((w) => w.reading.id).join(' and ')} of ${of} differ by a factor of 25.4: one is in the wrong unit, and nothing says which.`
      : `The readings of ${of} are of different things: they have no size in common. None is used.`,
    [
      { what: 'smallest reading', value: a, unit: 'mm' },
      { what: 'largest reading', value: b, unit: 'mm' },
    ],
    ['Enter each reading with its unit', 'Measure once more, to see which stands alone'],
  );
}
