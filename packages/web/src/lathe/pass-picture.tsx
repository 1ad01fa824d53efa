/** Size against pass, for a dial table that says which diameter each pass leaves. */
import { drawChart } from '@sparewright/output/chart/draw-chart';
import type { SheetBlock } from '@sparewright/output/present/job-view';
import { useCallback } from 'react';
import { Picture } from './picture.tsx';

type Dial = Extract<SheetBlock, { kind: 'dial' }>;

const after = 'diameter after';
const expected = 'expect at the softest place';

export default function PassPicture({ dial }: { readonly dial: Dial }) {
  const draw = useCallback(
    (width: number) => {
      const aimed = columnOf(dial, after);
      const soft = columnOf(dial, expected);
      const unit = dial.table.columns.find((c) => c.title === after)?.unit ?? '';
      const decimalSign = dial.table.rows.flat().some((cell) => typeof cell === 'string' && cell.includes(','))
        ? 'comma'
        : 'point';
      const [first, last] = [aimed[0]?.[1], aimed.at(-1)?.[1]];
      return drawChart(
        {
          title: 'Size against pass',
          description: `${aimed.length} passes, from ${first} to ${last} ${unit}.`,
          x: { title: 'pass', unit: '', whole: true },
          y: { title: 'diameter after the pass', unit },
          lines: [
            { points: aimed, meaning: 'computed', stepped: true, label: 'as set' },
            ...(soft.length > 0
              ? [{ points: soft, meaning: 'inferred', stepped: true, label: 'softest place' } as const]
              : []),
          ],
          marks: aimed.map(([x, y]) => ({ x, y, shape: 'dot', meaning: 'computed' }) as const),
        },
        { decimalSign, width, height: 50 },
      );
    },
    [dial],
  );
  return (
    <figure>
      <figcaption>Size against pass</figcaption>
      <Picture draw={draw} />
    </figure>
  );
}

/** The figures of a column as they are written, by pass. */
function columnOf({ table }: Dial, title: string): (readonly [pass: number, size: number])[] {
  const [passAt, at] = [
    table.columns.findIndex((c) => c.title === 'pass'),
    table.columns.findIndex((c) => c.title === title),
  ];
  if (passAt < 0 || at < 0) return [];
  return table.rows.flatMap((row) => {
    if (!('length' in row)) return [];
    const [pass, size] = [numberIn(row[passAt]), numberIn(row[at])];
    return pass === undefined || size === undefined ? [] : [[pass, size] as const];
  });
}

function numberIn(cell: string | undefined): number | undefined {
  const value = Number((cell ?? '').replace(',', '.').replace('−', '-'));
  return cell === undefined || cell === '' || !Number.isFinite(value) ? undefined : value;
}
