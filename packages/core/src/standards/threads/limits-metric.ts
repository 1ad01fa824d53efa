/** Limits of ISO metric threads, ISO 965-1. */
import { DomainError } from '../../errors.ts';
import { band, type ThreadLimits } from './limits-type.ts';
import { metricDeviation, metricTolerance } from './metric-tolerance.ts';
import type { Side, Thread } from './record.ts';

interface MetricClass {
  readonly pitchGrade: number;
  readonly crestGrade: number;
  readonly letter: string;
  readonly written: string;
}

/** `6g`, `5g6g`, or the half of a fit `6H/6g` that belongs to the side. */
function readClass(text: string, side: Side): MetricClass {
  const half = text.split('/').find((part) => (/[GH]/.test(part) ? 'internal' : 'external') === side) ?? text;
  const match = (
    side === 'external' ? /^([3-9])([efgh])(?:([3-9])([efgh]))?$/ : /^([4-8])([GH])(?:([4-8])([GH]))?$/
  ).exec(half);
  if (!match || (match[4] !== undefined && match[4] !== match[2])) {
    throw new DomainError(
      'toleranceClass',
      text,
      side === 'external' ? 'a bolt class such as 6g, 6h, 6e, 4h or 5g6g' : 'a nut class such as 6H, 5H, 6G or 5H6H',
    );
  }
  const pitchGrade = Number(match[1]);
  return { pitchGrade, crestGrade: Number(match[3] ?? pitchGrade), letter: match[2] ?? '', written: half };
}

/** The usual class, and the thread's own if it belongs to this side. */
function usualClass(thread: Thread, side: Side, asked: string | undefined): string {
  if (asked !== undefined && (asked.includes('/') || /[GH]/.test(asked) === (side === 'internal'))) return asked;
  if (asked !== undefined && asked !== thread.toleranceClass) return asked;
  if (side === 'external') return thread.majorDiameter <= 1.4 ? '6h' : '6g';
  return thread.majorDiameter <= 1.4 ? '5H' : '6H';
}

export function metricLimits(thread: Thread, side: Side, asked: string | undefined): ThreadLimits {
  const cls = readClass(usualClass(thread, side, asked), side);
  return side === 'external' ? boltLimits(thread, cls) : nutLimits(thread, cls);
}

function boltLimits(thread: Thread, cls: MetricClass): ThreadLimits {
  const { majorDiameter: d, pitch: p } = thread;
  const es = metricDeviation(cls.letter, p);
  const pitchMax = thread.pitchDiameter + es;
  const pitchMin = pitchMax - metricTolerance('Td2', cls.pitchGrade, d, p);
  return {
    side: 'external',
    toleranceClass: cls.written,
    major: band(d + es, d + es - metricTolerance('Td', cls.crestGrade, d, p)),
    pitch: band(pitchMax, pitchMin),
    minor: band(thread.rootDiameterExternal + es, pitchMin - 0.616025 * p),
    minorFlatMax: Number((pitchMax - 0.433013 * p).toFixed(5)),
    allowance: -es,
    notSet: [],
    sources: ['ISO965-1-T1', 'MH31-p2025', 'MH27-p1794', 'FABORY-T002'],
  };
}

function nutLimits(thread: Thread, cls: MetricClass): ThreadLimits {
  const { majorDiameter: d, pitch: p } = thread;
  const ei = metricDeviation(cls.letter, p);
  const pitchMin = thread.pitchDiameter + ei;
  const pitchMax = pitchMin + metricTolerance('TD2', cls.pitchGrade, d, p);
  const minorMin = thread.minorDiameter + ei;
  return {
    side: 'internal',
    toleranceClass: cls.written,
    major: band(pitchMax + (11 / 12) * thread.fundamentalHeight, d + ei),
    pitch: band(pitchMax, pitchMin),
    minor: band(minorMin + metricTolerance('TD1', cls.crestGrade, d, p), minorMin),
    allowance: ei,
    notSet: ['major.max'],
    sources: ['ISO965-1-T1', 'MH31-p2025', 'MH27-p1794'],
  };
}
