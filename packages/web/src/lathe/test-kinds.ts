/** The kinds of bench tests: their fields, what each needs, and how it is done. */
import type { Json } from '@sparewright/core/job/merge';
import { textAt } from '../document.ts';
import { type Choice, choice, type FieldSpec, number, size, text, words, yes } from '../forms/fields.ts';

export const testKinds = ['pushes', 'taps', 'collars', 'passes', 'cuts'] as const;
export type TestKind = (typeof testKinds)[number];

export interface KindOfTest {
  /** On the button that chooses it. */
  readonly name: string;
  /** One of them: `push test`. */
  readonly one: string;
  readonly stem: string;
  readonly how: string;
  readonly fields: (choices: Choices) => readonly FieldSpec[];
  /** Values a new one begins with; never one that would be reckoned with as if it had been read. */
  readonly begins: Readonly<Record<string, Json>>;
}

/** A kind of test, with values that are known before it is made. */
export interface BegunTest {
  readonly kind: TestKind;
  readonly begins: Readonly<Record<string, Json>>;
}

interface Choices {
  readonly cutters: readonly Choice[];
  readonly states: readonly Choice[];
}

const onBar = (record: Json) => textAt(record, ['at']) === 'bar';

const bar = (of?: FieldSpec['of']): FieldSpec[] => [
  size('bar.diameter', 'Bar: diameter', { needed: true, of }),
  size('bar.length', 'Bar: stands out by', { needed: true, of }),
  size('bar.grip', 'Bar: held over', { needed: true, of }),
  text('bar.material', 'Bar: material', { needed: true, of }),
  yes('bar.tailstock', 'Bar: tailstock at its end', { of }),
];

const cut = ({ cutters }: Choices): FieldSpec[] => [
  choice('cutter', 'Cutter', { choices: cutters, needed: true }),
  size('depth', 'Depth set, on the radius', { needed: true }),
  number('feed', 'Feed', { unit: 'mm/rev', needed: true }),
];

const last = ({ states }: Choices): FieldSpec[] => [
  ...(states.length > 0 ? [choice('state', 'State of the lathe', { choices: states })] : []),
  text('note', 'Note', { wide: true }),
];

export const kinds: Readonly<Record<TestKind, KindOfTest>> = {
  pushes: {
    name: 'Push',
    one: 'push test',
    stem: 'push',
    how: 'Pull with a luggage scale, an indicator from the bed where you pull. Load and let go once without writing down, then up in steps and down again; 1 kg on the scale is 9.8 N, 0.01 mm is 10 µm.',
    fields: (choices) => [
      choice('at', 'Pushed and read at', {
        choices: words('tool edge', 'top slide', 'cross slide', 'saddle', 'spindle nose', 'bar', 'tailstock'),
        needed: true,
      }),
      choice('direction', 'Which way', {
        choices: [
          { value: 'radial', words: 'away from the axis' },
          { value: 'axial', words: 'along the axis' },
          { value: 'tangential', words: 'the way of the cutting force' },
        ],
        needed: true,
      }),
      ...bar(onBar),
      ...last(choices),
    ],
    begins: { at: 'tool edge', direction: 'radial' },
  },
  taps: {
    name: 'Tap',
    one: 'tap test',
    stem: 'tap',
    how: 'A recording telephone 20 to 50 mm away; knock lightly with something hard, five times, half a second apart. Pick the recording below, or type the tone that its spectrum shows.',
    fields: (choices) => [
      choice('at', 'Tapped at', { choices: words('tool', 'bar', 'spindle along its axis'), needed: true }),
      number('frequency', 'It rings at', { unit: 'Hz', needed: true }),
      number('uncertainty', 'Give or take', { unit: 'Hz' }),
      number('damping', 'Damping, share of critical'),
      ...bar(onBar),
      ...last(choices),
    ],
    begins: { at: 'tool' },
  },
  collars: {
    name: 'Test bar',
    one: 'pair of collars',
    stem: 'collars',
    how: 'Two collars on a bar without the tailstock, turned at one setting, measured with the micrometer. Turn them at two depths: giving way grows with the depth, a headstock out of line does not.',
    fields: (choices) => [
      ...bar(),
      ...cut(choices),
      size('near', 'Collar near the jaws: diameter', { needed: true }),
      size('nearAt', 'It is from the jaws', { needed: true }),
      size('far', 'Far collar: diameter', { needed: true }),
      size('farAt', 'It is from the jaws', { needed: true }),
      ...last(choices),
    ],
    begins: {},
  },
  passes: {
    name: 'Pass',
    one: 'pass',
    stem: 'pass',
    how: 'Any pass of a job: the depth set by the dial, and the depth the micrometer found before and after, on the radius.',
    fields: (choices) => [
      ...bar(),
      ...cut(choices),
      size('got', 'Depth really taken, on the radius', { needed: true }),
      size('at', 'Where, from the jaws'),
      ...last(choices),
    ],
    begins: {},
  },
  cuts: {
    name: 'Sang or not',
    one: 'cut',
    stem: 'cut',
    how: 'Any cut of a job: what was set, and whether it sang. Cuts that stayed quiet teach as much.',
    fields: (choices) => [
      choice('heard', 'It', {
        choices: [
          { value: 'quiet', words: 'stayed quiet' },
          { value: 'sang', words: 'sang' },
        ],
        needed: true,
      }),
      choice('operation', 'What was cut', {
        choices: words('turning', 'facing', 'boring', 'grooving', 'parting'),
        needed: true,
      }),
      number('speed', 'Spindle speed', { unit: 'rpm', needed: true }),
      ...bar(),
      ...cut(choices),
      size('at', 'Where, from the jaws'),
      ...last(choices),
    ],
    begins: { operation: 'turning' },
  },
};

/** A test in a few words, by what was typed. */
export function testWords(kind: TestKind, test: Json): string {
  const at = (...path: string[]) => textAt(test, path);
  switch (kind) {
    case 'pushes':
      return `push at the ${at('at')}, ${at('direction') || 'radial'}`;
    case 'taps':
      return `tap at the ${at('at')}, ${at('frequency')} Hz`;
    case 'collars':
      return `collars Ø${at('near')} and Ø${at('far')}`;
    case 'passes':
      return `pass of ${at('depth')}, got ${at('got')}`;
    case 'cuts':
      return `${at('operation') || 'turning'} ${at('depth')} deep at ${at('speed')} rpm, ${at('heard')}`;
  }
}
