/** The weight of a finding in a word and in a mark, so that colour never stands alone. */
import type { LevelName } from '@sparewright/output/present/job-view';

export const levelWords: Readonly<Record<LevelName, string>> = { stop: 'Stop', caution: 'Caution', note: 'Note' };

export const levelMarks: Readonly<Record<LevelName, string>> = { stop: '■', caution: '▲', note: '–' };
