/** How a test is set up, in the drawing of the users' guide, in the colours of the page. */

import type { Json } from '@sparewright/core/job/merge';
import { useEffect, useRef } from 'react';
import { textAt } from '../document.ts';
import { readPicture } from '../svg.ts';
import collars from './set-ups/collars.svg?raw';
import pushAlong from './set-ups/push-along.svg?raw';
import pushTool from './set-ups/push-tool.svg?raw';
import pushWork from './set-ups/push-work.svg?raw';
import tap from './set-ups/tap.svg?raw';
import type { TestKind } from './test-kinds.ts';

/** What is drawn black on white on paper. */
const colours: readonly (readonly [paper: string, page: string])[] = [
  ['"#fff"', '"var(--paper)"'],
  ['"#eee"', '"var(--paper-shade)"'],
  ['"#000"', '"var(--ink)"'],
];

export function SetUpPicture({ kind, record }: { readonly kind: TestKind; readonly record: Json }) {
  const host = useRef<HTMLDivElement>(null);
  const svg = pictureOf(kind, record);
  useEffect(() => {
    if (svg === undefined) return;
    const coloured = colours.reduce((text, [paper, page]) => text.replaceAll(paper, page), svg);
    host.current?.replaceChildren(readPicture(coloured));
  }, [svg]);
  return svg === undefined ? null : <div className="picture set-up" ref={host} />;
}

function pictureOf(kind: TestKind, record: Json): string | undefined {
  if (kind === 'taps') return tap;
  if (kind === 'collars') return collars;
  if (kind !== 'pushes') return undefined;
  const at = textAt(record, ['at']);
  if (!['spindle nose', 'bar', 'tailstock'].includes(at)) return pushTool;
  return textAt(record, ['direction']) === 'axial' ? pushAlong : pushWork;
}
