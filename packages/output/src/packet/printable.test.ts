import type { Scene } from '@sparewright/core/drawing/scene';
import { expect, test } from 'vitest';
import { printable, printableScene } from './printable.ts';

test('what the face can set stays as it is', () => {
  const text = 'Ø12 f7 ±0.02 µm ½ ° × − – Größe';
  expect(printable({ text })).toEqual({ value: { text }, lost: new Set() });
});

test('likenesses take the place of what it cannot set', () => {
  expect(printable('⌀12\u202fmm ①\tend').value).toBe('Ø12 mm 1 end');
});

test('what has no likeness becomes a question mark and is reported, wherever it stands', () => {
  const { value, lost } = printable({ rows: [['漢'], ['b']], n: 3, none: undefined });
  expect(value).toEqual({ rows: [['?'], ['b']], n: 3, none: undefined });
  expect([...lost]).toEqual(['漢']);
});

test('the same holds for the words in a drawing', () => {
  const scene: Scene = {
    width: 1,
    height: 1,
    title: 't',
    description: 'd',
    items: [{ item: 'text', at: { x: 0, y: 0 }, text: '⌀漢', height: 2, anchor: 'start', turn: 0 }],
  };
  expect(printableScene(scene).items[0]).toMatchObject({ text: 'Ø?' });
});
