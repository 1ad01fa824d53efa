/** Findings for a terminal, worst first: how bad, where, what, the numbers, what helps. */
import type { Finding, Level } from '@sparewright/core/finding';
import type { Assessment } from '@sparewright/core/job/assessment';
import type { Job } from '@sparewright/core/job/schema';
import { presentFinding } from '@sparewright/output/present/finding';
import { presentPlace } from '@sparewright/output/present/place';
import { presentSettings } from '@sparewright/output/present/settings';
import type { Terminal } from '../terminal.ts';
import { plural } from './plural.ts';
import { paragraph } from './text.ts';

const levelWords: Readonly<Record<Level, string>> = { stop: 'STOP', caution: 'CAUTION', note: 'note' };
/** Width of the column in which the level stands. */
const margin = 10;

export function findingLines(
  job: Job,
  assessment: Assessment,
  terminal: Terminal,
  findings: readonly Finding[] = assessment.findings,
): string[] {
  return findings.flatMap((finding) => oneFinding(finding, job, assessment, terminal));
}

/** `1 stop, 4 cautions, 7 notes` */
export function findingCount(findings: readonly Finding[]): string {
  const of = (level: Level) => findings.filter((f) => f.level === level).length;
  const counted = (['stop', 'caution', 'note'] as const).filter((level) => of(level) > 0);
  return counted.length === 0 ? 'no findings' : counted.map((level) => plural(of(level), level)).join(', ');
}

export function hasStop(assessment: Assessment): boolean {
  return assessment.findings.some((f) => f.level === 'stop');
}

function oneFinding(finding: Finding, job: Job, assessment: Assessment, terminal: Terminal): string[] {
  const shown = presentFinding(finding, presentSettings(job));
  const place = presentPlace(finding.at, job, assessment);
  const because = shown.because.map((b) => (b.source === undefined ? b.text : `${b.text} (${b.source})`));
  return plainFinding({ ...finding, says: `${place}: ${shown.headline}`, remedies: shown.remedies }, terminal, because);
}

/** A finding that speaks for itself: how bad, what, what helps. */
export function plainFinding(
  { level, says, remedies }: Pick<Finding, 'level' | 'says' | 'remedies'>,
  { width, ink }: Terminal,
  because: readonly string[] = [],
): string[] {
  const inks = { stop: ink.red, caution: ink.yellow, note: ink.dim };
  const word = levelWords[level].padEnd(margin - 2);
  const [head = '', ...rest] = paragraph(says, { width, indent: margin });
  return [
    `  ${inks[level](word)}${head.slice(margin)}`,
    ...rest,
    ...because.flatMap((text) => paragraph(text, { width, indent: margin, mark: '· ', ink: ink.dim })),
    ...remedies.flatMap((text) => paragraph(text, { width, indent: margin, mark: 'Try: ' })),
  ];
}
