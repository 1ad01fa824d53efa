/** What a field of a form is, as data: the forms are lists of these, and one component shows them all. */
import type { Json } from '@sparewright/core/job/merge';
import type { Path } from '../document.ts';

export interface Choice {
  readonly value: string;
  readonly words: string;
}

export interface FieldSpec {
  /** Within the record it belongs to. */
  readonly path: Path;
  readonly title: string;
  /** `size` is kept as typed; `number` becomes a number, `numbers` a list of them, `yes` true or false. */
  readonly kind: 'size' | 'text' | 'prose' | 'number' | 'numbers' | 'choice' | 'yes';
  readonly unit?: string | undefined;
  readonly choices?: readonly Choice[] | undefined;
  /** It cannot be left empty. */
  readonly needed?: boolean | undefined;
  /** Records that have it; all when left out. */
  readonly of?: ((record: Json) => boolean) | undefined;
  readonly wide?: boolean | undefined;
  /** Changes the record in another way than putting the value in its place. */
  readonly become?: ((record: Json, value: string) => Json) | undefined;
}

export interface Column {
  readonly title: string;
  readonly fields: readonly FieldSpec[];
}

export const words = (...values: readonly string[]): Choice[] => values.map((value) => ({ value, words: value }));

type Extra = Partial<Omit<FieldSpec, 'path' | 'title' | 'kind'>>;
const field =
  (kind: FieldSpec['kind']) =>
  (path: string, title: string, extra: Extra = {}): FieldSpec => ({
    path: path.split('.').map((step) => (/^\d+$/.test(step) ? Number(step) : step)),
    title,
    kind,
    ...extra,
  });

export const size = field('size');
export const text = field('text');
export const prose = field('prose');
export const number = field('number');
export const numbers = field('numbers');
export const choice = field('choice');
export const yes = field('yes');

/** One field that fills a column. */
export const column = (spec: FieldSpec): Column => ({ title: spec.title, fields: [spec] });

/** What was typed as the document takes it; what is no number stays text, and is refused with a word at its field. */
export function typedValue(kind: FieldSpec['kind'], typed: string): Json {
  switch (kind) {
    case 'number':
      return numberOf(typed);
    case 'numbers':
      return typed
        .split(/[\s;]+/)
        .filter((word) => word !== '')
        .map(numberOf);
    case 'yes':
      return typed === 'yes';
    default:
      return typed;
  }
}

export function shownValue(kind: FieldSpec['kind'], value: Json | undefined): string {
  if (value === undefined || value === null) return '';
  if (kind === 'yes') return value === true ? 'yes' : 'no';
  if (Array.isArray(value)) return value.map((entry) => shownValue('text', entry)).join(' ');
  return typeof value === 'object' ? '' : String(value);
}

function numberOf(typed: string): Json {
  const plain = typed.trim().replace(',', '.');
  const value = Number(plain);
  return plain === '' || !Number.isFinite(value) ? typed : value;
}
