/** Words that stand on lines. */
import type { Item, TextItem } from '@sparewright/core/drawing/scene';
import { textWidth } from '@sparewright/core/drawing/text-width';
import type { Mm } from '@sparewright/core/units/quantities';

/** Words in the midst of lines, with the paper bare behind them. */
export function onGround(words: TextItem): Item[] {
  const { at, height, anchor } = words;
  const long = textWidth(words.text, height);
  const left = anchor === 'end' ? at.x - long : anchor === 'middle' ? at.x - long / 2 : at.x;
  const corner = (dx: Mm, dy: Mm) => ({ x: left + dx, y: at.y + dy });
  const ground: Item = {
    item: 'path',
    stroke: undefined,
    fill: 'paper',
    parts: [
      { to: 'start', ...corner(-0.4, 0.7) },
      { to: 'line', ...corner(-0.4, -height - 0.5) },
      { to: 'line', ...corner(long + 0.4, -height - 0.5) },
      { to: 'line', ...corner(long + 0.4, 0.7) },
      { to: 'close' },
    ],
  };
  return [ground, words];
}
