/** Drawings of how threads, crowns, grooves and drives are measured. */
import { box, circle, hatched, line, picture, pointer, shape, span, touch, words } from './pen.ts';

export const threads = picture(
  'A thread by crest, pitch and flank',
  'A thread from the side: the crest diameter across it, the length over ten pitches, and the angle between two flanks.',
  62,
  [
    line('centre', [4, 30], [96, 30]),
    shape([...teeth(14, 18, 6, 10, -1), [74, 42], ...teeth(14, 42, 6, 10, 1).toReversed()]),
    line('cut', [17, 13], [17, 47]),
    words([19, 28], 'crest Ø', 'start'),
    line('thin', [17, 12], [17, 4]),
    line('thin', [71, 12], [71, 4]),
    ...span([17, 7], [71, 7], '', [44, 5]),
    words([44, 4], 'over 9 pitches', 'middle'),
    line('thin', [47, 13], [50, 18]),
    line('thin', [53, 13], [50, 18]),
    words([78, 20], 'flanks', 'start'),
    ...pointer([77, 19], [52.6, 15.5]),
    words([78, 25], '55° or 60°', 'start'),
    words([44, 57], 'measure across many, then divide', 'middle'),
  ],
);

/** Ends of the flanks of `count` crests along a line, beginning in a root. */
function teeth(x: number, y: number, pitch: number, count: number, side: 1 | -1): [number, number][] {
  return Array.from({ length: count }, (_, i): [number, number][] => [
    [x + i * pitch, y],
    [x + (i + 0.5) * pitch, y + side * 5],
  ])
    .flat()
    .concat([[x + count * pitch, y]]);
}

export const crown = picture(
  'A crown by cap height and chord',
  'A domed end: the chord across its rim, and the height of the cap above the rim.',
  54,
  [
    line('centre', [8, 27], [92, 27]),
    {
      item: 'path',
      stroke: 'outline',
      fill: 'tint',
      parts: [
        { to: 'start', x: 14, y: 9 },
        { to: 'line', x: 56, y: 9 },
        { to: 'arc', x: 56, y: 45, radius: 24, largeArc: false, clockwise: true },
        { to: 'line', x: 14, y: 45 },
        { to: 'close' },
      ],
    },
    line('thin', [56, 9], [56, 45]),
    touch([56, 9]),
    touch([56, 45]),
    touch([64.1, 27]),
    line('thin', [57, 9], [86, 9]),
    line('thin', [57, 45], [86, 45]),
    ...span([84, 9], [84, 45], 'chord c', [82, 20], 'end'),
    line('thin', [56, 46], [56, 52]),
    line('thin', [64.1, 28], [64.1, 52]),
    ...pointer([46, 50.5], [56, 50.5]),
    ...pointer([74, 50.5], [64.1, 50.5]),
    words([75, 51.8], 'cap h'),
  ],
);

export const grooves = picture(
  'The floor of a groove over two wires',
  'A groove in section with a wire in it on each side, and a micrometer across the wires.',
  56,
  [
    line('centre', [4, 28], [62, 28]),
    shape([
      [8, 12],
      [24, 12],
      [24, 18],
      [40, 18],
      [40, 12],
      [56, 12],
      [56, 44],
      [40, 44],
      [40, 38],
      [24, 38],
      [24, 44],
      [8, 44],
    ]),
    circle([32, 14.5], 3.5, 'outline', 'paper'),
    circle([32, 41.5], 3.5, 'outline', 'paper'),
    line('cut', [32, 11], [32, 45]),
    line('thin', [33, 11], [70, 11]),
    line('thin', [33, 45], [70, 45]),
    ...span([68, 11], [68, 45], 'M over wires', [70, 24], 'start'),
    words([70, 33], 'floor ='),
    words([70, 38], 'M − 2 w'),
    line('thin', [24, 11], [24, 4]),
    line('thin', [40, 11], [40, 4]),
    ...span([24, 5.5], [40, 5.5], 'width', [50, 6.8]),
    words([32, 53], 'wire w, measured', 'middle'),
  ],
);

export const seal = picture(
  'A seal groove: what the ring needs',
  'A groove with a ring in it, closed by a bore. Shown are the depth, the width and the gap.',
  58,
  [
    box(8, 5, 84, 7, 'paper'),
    ...hatched(8, 5, 84, 7),
    shape([
      [8, 14],
      [36, 14],
      [36, 30],
      [64, 30],
      [64, 14],
      [92, 14],
      [92, 42],
      [8, 42],
    ]),
    {
      item: 'path',
      stroke: 'cut',
      fill: 'paper',
      parts: [
        { to: 'start', x: 41.5, y: 21 },
        { to: 'arc', x: 50, y: 12.2, radius: 9, largeArc: false, clockwise: true },
        { to: 'arc', x: 58.5, y: 21, radius: 9, largeArc: false, clockwise: true },
        { to: 'arc', x: 50, y: 29.8, radius: 9, largeArc: false, clockwise: true },
        { to: 'arc', x: 41.5, y: 21, radius: 9, largeArc: false, clockwise: true },
        { to: 'close' },
      ],
    },
    line('thin', [36, 31], [36, 50]),
    line('thin', [64, 31], [64, 50]),
    ...span([36, 48.5], [64, 48.5], 'width', [50, 54.5]),
    ...span([72, 12], [72, 30], 'depth', [74, 24], 'start'),
    line('thin', [65, 30], [74, 30]),
    ...pointer([18, 24], [18, 14.2]),
    words([12, 29], 'gap'),
    words([50, 38], 'floor', 'middle'),
  ],
);

export const hexagon = picture(
  'A hexagon socket across its flats',
  'The socket from the end, the jaws of a calliper on two opposite flats, and the depth in section.',
  54,
  [
    circle([26, 26], 19, 'outline', 'tint'),
    shape(
      Array.from({ length: 6 }, (_, i): [number, number] => [
        26 + 11 * Math.cos((i * Math.PI) / 3),
        26 + 11 * Math.sin((i * Math.PI) / 3),
      ]),
      'paper',
    ),
    touch([26, 16.5]),
    touch([26, 35.5]),
    line('cut', [26, 16.5], [26, 35.5]),
    words([28.5, 27.4], 's'),
    words([26, 51], 'on three pairs of flats', 'middle'),
    shape([
      [60, 9],
      [92, 9],
      [92, 43],
      [60, 43],
    ]),
    shape(
      [
        [60, 16.5],
        [76, 16.5],
        [76, 35.5],
        [60, 35.5],
      ],
      'paper',
    ),
    line('thin', [76, 36], [76, 49]),
    line('thin', [60, 44], [60, 49]),
    ...span([60, 47.5], [76, 47.5], 'depth', [86, 48.8]),
  ],
);
