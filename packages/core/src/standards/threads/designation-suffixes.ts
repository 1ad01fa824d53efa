/** What follows the size in a designation: the class, the hand, the number of starts. */
import type { Hand, Thread } from './record.ts';
import { refuse } from './special.ts';

const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** The text in plain characters: `×` as x, decimal commas as points, single spaces, no inch marks. */
export function tidy(text: string): string {
  let plain = text
    .trim()
    .replace(/[×✕✖*]/g, 'x')
    .replace(/[–—−]/g, '-')
    .replace(/⁄/g, '/');
  for (const [sign, fraction] of Object.entries(vulgar)) plain = plain.replace(sign, ` ${fraction}`);
  return plain
    .replace(/(\d),(\d)/g, '$1.$2')
    .replace(/(\d)-(\d+\/\d)/, '$1 $2')
    .replace(/["″”]|\b(?:in|inch)\b\.?/gi, ' ')
    .replace(/\bt\.?p\.?i\.?(?=\W|$)/gi, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

export interface Suffixes {
  /** The designation without them. */
  readonly rest: string;
  /** Puts class, hand and starts on the thread and into its designation. */
  apply(text: string, thread: Thread): Thread;
}

const metricClass = String.raw`[3-9][efghEFGH](?:[3-9][efghEFGH])?(?:\/[3-9][efghEFGH](?:[3-9][efghEFGH])?)?`;
const words: Readonly<Record<string, number>> = { two: 2, double: 2, twin: 2, three: 3, triple: 3, four: 4 };

/** Takes class, hand and starts off the end of a tidied designation. */
export function readSuffixes(plain: string): Suffixes {
  let rest = plain;
  const take = (pattern: RegExp): string | undefined => {
    const match = pattern.exec(rest);
    if (!match) return undefined;
    rest = rest.replace(pattern, ' ').trim();
    return match[1] ?? '';
  };
  const left = take(/[\s-]*\b(left[- ]?hand(?:ed)?|left|l\.?h\.?|links)(?=\W|$)\.?/i);
  const right = take(/[\s-]*\b(right[- ]?hand(?:ed)?|right|r\.?h\.?)(?=\W|$)\.?/i);
  const hand: Hand = left !== undefined && right === undefined ? 'left' : 'right';
  const startsText = take(/[\s-]*\b(\d|two|double|twin|three|triple|four)[- ]?starts?\b/i)?.toLowerCase();
  const starts = startsText === undefined ? 1 : (words[startsText] ?? Number(startsText));
  const fit = take(/[\s-]*\b(close|medium|free|normal)(?:[- ](?:fit|class))?$/i)?.toLowerCase();
  const unified = take(/[\s-]+(?:class )?([123][AaBb])(?=\s|$|-)/)?.toUpperCase();
  const metric = /^m/i.test(rest) ? take(new RegExp(String.raw`[\s-]+(${metricClass})$`)) : undefined;
  const pipe = /^(g|bsp)|bsp|[\d\s]g\b/i.test(rest) ? take(/[\s-]*\b(?:class )?([AaBb])$|(?<=\d)([AaBb])$/) : undefined;
  const pipeClass = pipe === undefined ? undefined : (plain.match(/[AaBb]$/)?.[0] ?? pipe).toUpperCase();
  const lead = readLead(rest);
  if (lead) rest = lead.rest;
  return {
    rest: rest.replace(/[\s-]+$/, ''),
    apply: (text, thread) =>
      dress(text, thread, { hand, starts: lead?.starts ?? starts, fit, unified, metric, pipe: pipeClass }),
  };
}

/** `M16xPh3P1.5`: lead and pitch of a thread of several starts. */
function readLead(rest: string): { rest: string; starts: number } | undefined {
  const match = /x ?(?:ph)? ?(\d*\.?\d+) ?p ?(\d*\.?\d+)/i.exec(rest);
  if (!match) return undefined;
  return { rest: rest.replace(match[0], `x${match[2]}`), starts: Number(match[1]) / Number(match[2]) };
}

interface Dress {
  readonly hand: Hand;
  readonly starts: number;
  readonly fit: string | undefined;
  readonly unified: string | undefined;
  readonly metric: string | undefined;
  readonly pipe: string | undefined;
}

function dress(text: string, thread: Thread, { hand, starts, fit, unified, metric, pipe }: Dress): Thread {
  if (!Number.isInteger(starts) || starts < 1 || starts > 8)
    refuse(text, 'a lead that is 1 to 8 whole pitches', 'M16xPh3P1.5');
  const toleranceClass = metric ?? unified ?? pipe ?? fit;
  if (toleranceClass !== undefined && !classFits(thread, { metric, unified, pipe, fit })) {
    refuse(
      text,
      `a class that goes with ${thread.designation} (${classes(thread)})`,
      `${thread.designation}${example(thread)}`,
    );
  }
  const size = thread.family === 'metric' ? metricSize(thread, starts) : thread.designation;
  const spaced = pipe !== undefined || fit !== undefined;
  const several = starts > 1 && thread.family !== 'metric' ? ` ${starts}-start` : '';
  const classText = toleranceClass === undefined ? '' : `${spaced ? ' ' : '-'}${toleranceClass}`;
  return {
    ...thread,
    designation: `${size}${several}${classText}${hand === 'left' ? '-LH' : ''}`,
    starts,
    hand,
    ...(toleranceClass === undefined ? {} : { toleranceClass }),
  };
}

function metricSize(thread: Thread, starts: number): string {
  if (starts === 1) return thread.designation;
  return `M${thread.size}xPh${Number((starts * thread.pitch).toFixed(4))}P${thread.pitch}`;
}

function classFits(thread: Thread, said: Pick<Dress, 'metric' | 'unified' | 'pipe' | 'fit'>): boolean {
  if (said.metric !== undefined) return thread.family === 'metric';
  if (said.unified !== undefined) return thread.family === 'unified';
  if (said.pipe !== undefined) return thread.family === 'pipe-parallel';
  if (thread.family === 'ba') return said.fit === 'close' || said.fit === 'normal';
  return thread.family === 'whitworth' || thread.family === 'brass';
}

/** The classes of a thread's family, in words. */
export function classes(thread: Thread): string {
  switch (thread.family) {
    case 'metric':
      return '4 to 8 with e, f, g, h outside and G, H inside';
    case 'unified':
      return '1A 2A 3A outside, 1B 2B 3B inside';
    case 'whitworth':
    case 'brass':
      return 'close, medium or free; nuts medium or normal';
    case 'ba':
      return 'close or normal';
    case 'pipe-parallel':
      return 'A or B outside, none inside';
    default:
      return 'none';
  }
}

function example(thread: Thread): string {
  switch (thread.family) {
    case 'metric':
      return '-6g';
    case 'unified':
      return '-2A';
    case 'whitworth':
      return ' medium';
    case 'pipe-parallel':
      return ' A';
    default:
      return '';
  }
}
