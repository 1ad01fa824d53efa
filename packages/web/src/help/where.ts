/** Which help belongs where. */
import type { SheetBlock, StageName } from '@sparewright/output/present/job-view';
import type { WorkshopPart } from '../place.ts';
import type { MeaningId, MeasuringId } from './titles.ts';

interface HelpOfStage {
  readonly measure: readonly MeasuringId[];
  readonly meaning: readonly MeaningId[];
}

export const helpOfStage: Readonly<Record<StageName, HelpOfStage>> = {
  evidence: {
    measure: [
      'before',
      'condition',
      'outside',
      'lobes',
      'bores',
      'lengths',
      'tapers',
      'runout',
      'threads',
      'crown',
      'grooves',
      'seal-grooves',
      'hexagon',
    ],
    meaning: ['uncertainty', 'as-made', 'probability'],
  },
  part: { measure: ['tapers', 'crown', 'grooves', 'hexagon'], meaning: ['limits', 'roughness', 'pencil'] },
  duty: { measure: ['bores', 'seal-grooves'], meaning: ['clearance', 'squeeze', 'verdict', 'margin'] },
  route: { measure: ['runout'], meaning: ['goes', 'sings', 'cutting', 'times'] },
  bench: { measure: [], meaning: ['dial', 'stop-point', 'cusp'] },
  inspection: {
    measure: ['outside', 'lobes', 'bores', 'lengths', 'runout'],
    meaning: ['accept', 'uncertainty', 'proof'],
  },
  record: { measure: [], meaning: ['hazard', 'proof', 'pencil'] },
};

/** At a part of the workshop. */
export const helpOfWorkshop: Partial<Readonly<Record<WorkshopPart, readonly MeaningId[]>>> = {
  known: ['gives', 'sings'],
  gauges: ['uncertainty'],
};

const byColumn: Readonly<Record<string, MeaningId>> = {
  u: 'uncertainty',
  U: 'uncertainty',
  'mostly from': 'uncertainty',
  'as made, 95 %': 'as-made',
  'designed as': 'probability',
  'least clearance': 'clearance',
  limits: 'limits',
  stands: 'verdict',
  turns: 'dial',
  divisions: 'dial',
  'left to file': 'cusp',
  'accept from': 'accept',
};

const byFigure: Readonly<Record<string, MeaningId>> = {
  squeeze: 'squeeze',
  stretch: 'squeeze',
  'fill of the groove': 'squeeze',
  'safety against the duty': 'margin',
  'Aim the last cut at': 'stop-point',
  'Chance to end inside': 'stop-point',
};

/** The meanings of what stands in each block, each at the first block that needs it. */
export function meaningsIn(blocks: readonly SheetBlock[]): readonly (readonly MeaningId[])[] {
  const told = new Set<MeaningId>();
  return blocks.map((block) => {
    const fresh = [...new Set(meaningsOf(block))].filter((id) => !told.has(id));
    for (const id of fresh) told.add(id);
    return fresh;
  });
}

function meaningsOf(block: SheetBlock): MeaningId[] {
  const known = (table: Readonly<Record<string, MeaningId>>, words: readonly string[]): MeaningId[] =>
    words.flatMap((word) => (Object.hasOwn(table, word) ? (table[word] ?? []) : []));
  if (block.kind === 'facts')
    return known(
      byFigure,
      block.rows.map((row) => row.what),
    );
  if (block.kind === 'dial') return meaningsOf(block.table);
  if (block.kind !== 'table') return [];
  const firsts = block.rows.map((row) => ('length' in row ? (row[0] ?? '') : ''));
  return [
    ...known(
      byColumn,
      block.columns.map((c) => c.title),
    ),
    ...known(byFigure, firsts),
  ];
}

interface SizeAt {
  /** `guide.diameter` */
  readonly id: string;
  /** Where it stands in the job document. */
  readonly path: readonly (string | number)[];
}

/** How the size of a part is measured; `kind` is the shape of the feature it belongs to. */
export function measuringOf({ id, path }: SizeAt, kind: string): MeasuringId {
  const what = id.slice(id.lastIndexOf('.') + 1);
  if (path.includes('threads') || /pitch|crest/i.test(what)) return 'threads';
  if (path.includes('grooves')) return 'grooves';
  if (/flats/i.test(what) || kind === 'hexagon socket') return 'hexagon';
  if (kind === 'crown' && what === 'length') return 'crown';
  if (/^(start|end)Diameter$/.test(what)) return 'tapers';
  if (/diameter/i.test(what)) return path.includes('inside') ? 'bores' : 'outside';
  return 'lengths';
}
