/**
 * What is said about a gland: every limit that does not hold, and what no limit can say.
 */
import type { Because, Finding, Level } from '../finding.ts';
import { source } from '../sources/register.ts';
import { elastomerExpansion, knownElastomer, knownMedium, rateElastomer } from '../standards/seals/elastomer.ts';
import type { Rating } from '../standards/seals/elastomer-table.ts';
import { brakeCaution } from '../standards/seals/square-ring.ts';
import type { GlandFigures } from './gland-figures.ts';
import { gapUnpublished } from './gland-gap-rules.ts';
import type { GlandInput } from './gland-input.ts';
import type { HeldLimit } from './gland-rule.ts';

export function glandFindings(input: GlandInput, figures: GlandFigures, limits: readonly HeldLimit[]): Finding[] {
  const at = input.at ?? 'gland';
  const finding = (
    id: string,
    level: Level,
    says: string,
    because: Because[],
    remedies: readonly string[],
  ): Finding => ({
    id: `duty.gland-${id}`,
    level,
    stage: 'duty',
    at,
    says,
    because,
    remedies,
  });
  const findings = limits
    .filter((limit) => !limit.holds)
    .map((limit) => finding(limit.id, limit.level, sentence(limit), [because(limit)], limit.remedies));

  const fattest = input.ring.section + input.ring.sectionTolerance;
  if (fattest >= input.grooveWidth.min) {
    const why = {
      what: 'cross-section at its largest',
      value: fattest,
      unit: 'mm',
      limit: input.grooveWidth.min,
    } as const;
    findings.push(
      finding(
        'too-narrow',
        'stop',
        'The ring is as wide as its groove: it does not go in.',
        [why],
        ['widen the groove'],
      ),
    );
  }
  const unpublished = gapUnpublished(input.hardness, input.pressure);
  if (input.backUp) {
    findings.push(
      finding(
        'gap-back-up',
        'note',
        'The gap is not judged: the published gaps are for rings without a back-up ring.',
        [],
        [],
      ),
    );
  } else if (input.pressure === 0) {
    findings.push(
      finding(
        'gap-no-pressure',
        'note',
        'The gap is not judged: there is no pressure to push the ring into it.',
        [],
        ['state the pressure'],
      ),
    );
  } else if (unpublished !== undefined) {
    const why = { what: 'pressure', value: input.pressure, unit: 'MPa' } as const;
    findings.push(
      finding(
        'gap-unpublished',
        'caution',
        `The gap is not judged: ${unpublished}.`,
        [why],
        ['fit a back-up ring, or take a harder one'],
      ),
    );
  }
  if (figures.stretch.min < 0 && figures.stretch.nominal >= 0 && input.kind === 'piston') {
    const why = { what: 'least stretch', value: figures.stretch.min, unit: '%', limit: 0 } as const;
    findings.push(
      finding(
        'stretch-may-be-loose',
        'note',
        'A ring at its largest is loose in the groove.',
        [why],
        ['choose the ring by measuring it'],
      ),
    );
  }
  const assumed = assumedExpansion(input);
  if (assumed.length > 0) {
    const says = `Growth by heat is reckoned from memory: ${assumed.join('; ')}.`;
    findings.push(finding('expansion-assumed', 'note', says, [], ['state the rubber and the materials of both parts']));
  }
  if (input.medium !== undefined && knownMedium(input.medium)?.includes('brake')) {
    findings.push(finding('brake', 'caution', brakeCaution, [], ['have the work checked and the brake tested']));
  }
  return [...findings, ...mediumFindings(input, finding)];
}

/** What is taken for the expansions that are not stated, where there is any growth to reckon. */
function assumedExpansion({ temperature, elastomer, expansion }: GlandInput): string[] {
  if (!temperature || (temperature.min === 20 && temperature.max === 20)) return [];
  const rubber = elastomer === undefined ? undefined : elastomerExpansion(elastomer);
  return [
    ...(rubber === undefined ? ['the rubber as the one that grows most, silicone'] : []),
    ...(expansion === undefined ? ['both parts as steel'] : []),
  ];
}

const ratingLevel: Partial<Record<Rating, Level>> = { C: 'note', D: 'caution', E: 'stop' };

function mediumFindings(
  { elastomer, medium }: GlandInput,
  finding: (id: string, level: Level, says: string, because: Because[], remedies: readonly string[]) => Finding,
): Finding[] {
  const unknown = [
    elastomer !== undefined && knownElastomer(elastomer) === undefined ? `elastomer “${elastomer}”` : undefined,
    medium !== undefined && knownMedium(medium) === undefined ? `medium “${medium}”` : undefined,
  ].filter((name) => name !== undefined);
  if (unknown.length > 0) {
    const says = `Whether the rubber stands the medium is not judged: no table here names ${unknown.join(' or ')}.`;
    return [finding('medium-unknown', 'note', says, [], ['ask the maker of the ring'])];
  }
  if (elastomer === undefined || medium === undefined) return [];
  const verdict = rateElastomer(elastomer, medium);
  if (verdict.rating === undefined) {
    const says = `Whether ${verdict.material} stands ${verdict.medium} is not judged: no source rates the pair.`;
    return [finding('medium-unrated', 'note', says, [], ['ask the maker of the ring'])];
  }
  const level = ratingLevel[verdict.rating];
  if (level === undefined) return [];
  const row = verdict.rows.find(({ rating }) => rating === verdict.rating);
  const note = row?.note === undefined ? '' : ` (${row.note})`;
  const says = `${verdict.material} in ${verdict.medium} is rated ${verdict.rating}${note} [${row?.source}].`;
  return [finding('medium', level, says, [], ['take an elastomer rated A or B for this medium'])];
}

function sentence(limit: HeldLimit): string {
  const under = limit.value < (limit.least ?? Number.NEGATIVE_INFINITY);
  const bound = under ? `at least ${round(limit.least)}` : `at most ${round(limit.most)}`;
  const trust = source(limit.source).kind === 'from memory' || limit.standing !== 'read' ? `, ${limit.standing}` : '';
  const meaning = under ? limit.under : limit.over;
  return `${capital(limit.what)} is ${round(limit.value)} ${limit.unit}; ${bound} ${limit.unit} is wanted${trust}: ${meaning}.`;
}

function because(limit: HeldLimit): Because {
  const bound = limit.value < (limit.least ?? Number.NEGATIVE_INFINITY) ? limit.least : limit.most;
  return { what: limit.what, value: limit.value, unit: limit.unit, limit: bound, source: limit.source };
}

function round(value: number | undefined): string {
  return value === undefined ? '' : String(Number(value.toFixed(Math.abs(value) < 10 ? 3 : 1)));
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
