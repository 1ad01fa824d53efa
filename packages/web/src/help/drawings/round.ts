/** Drawings of how diameters, lengths and run-out are measured. */
import { arc, box, circle, hatched, line, picture, pointer, shape, span, touch, words } from './pen.ts';

export const condition = picture(
  'Protected and worn places on a plunger',
  'A plunger seen from the side. Under the ring groove and beyond the end of the stroke the surface is as it was made; between them it is worn thinner.',
  46,
  [
    line('centre', [3, 21], [97, 21]),
    shape([
      [8, 13],
      [26, 13],
      [26, 14.2],
      [72, 14.2],
      [72, 13],
      [92, 13],
      [92, 29],
      [72, 29],
      [72, 27.8],
      [26, 27.8],
      [26, 29],
      [8, 29],
    ]),
    shape(
      [
        [78, 13],
        [84, 13],
        [84, 16],
        [78, 16],
      ],
      'paper',
    ),
    shape(
      [
        [78, 29],
        [84, 29],
        [84, 26],
        [78, 26],
      ],
      'paper',
    ),
    line('assumed', [26, 13], [72, 13]),
    line('assumed', [26, 29], [72, 29]),
    touch([17, 13]),
    touch([17, 29]),
    touch([75, 13]),
    touch([75, 29]),
    words([17, 8], 'protected', 'middle', 'bold'),
    words([49, 8], 'worn', 'middle', 'bold'),
    words([75, 8], 'protected', 'middle', 'bold'),
    ...span([26, 34], [72, 34], 'the stroke', [49, 40]),
    words([95, 40], 'the ring', 'end'),
    ...pointer([88, 36], [81.5, 27]),
  ],
);

export const outside = picture(
  'Outside diameter with a micrometer',
  'Left: the places along the part, three of them. Right: the part from the end between the anvils of a micrometer, once upright and once turned by a quarter.',
  56,
  [
    line('centre', [3, 28], [51, 28]),
    box(7, 18, 40, 20),
    line('cut', [13, 18], [13, 38]),
    line('cut', [27, 18], [27, 38]),
    line('cut', [41, 18], [41, 38]),
    words([27, 12], 'three places along', 'middle'),
    words([27, 47], 'look for the smallest', 'middle'),
    circle([77, 28], 11, 'outline', 'tint'),
    line('centre', [63, 28], [91, 28]),
    line('centre', [77, 14], [77, 42]),
    shape(
      [
        [75, 10],
        [79, 10],
        [79, 17],
        [75, 17],
      ],
      'paper',
    ),
    shape(
      [
        [75, 39],
        [79, 39],
        [79, 46],
        [75, 46],
      ],
      'paper',
    ),
    touch([77, 17]),
    touch([77, 39]),
    touch([66, 28]),
    touch([88, 28]),
    words([82, 11], '0°'),
    words([91, 25], '90°', 'start'),
    words([77, 53], 'twice round', 'middle'),
  ],
);

export const lobes = picture(
  'A part with three lobes',
  'A three-lobed outline between flat jaws measures the same however it is turned. In a vee the needle of the indicator moves.',
  56,
  [
    line('outline', [8, 12], [42, 12]),
    line('outline', [8, 36.2], [42, 36.2]),
    ...lobed(25, 24),
    ...span([47, 12], [47, 36.2], '', [47, 24]),
    words([25, 44], 'the same all round', 'middle'),
    shape([
      [58, 30],
      [75, 46],
      [92, 30],
      [92, 49],
      [58, 49],
    ]),
    ...lobed(75, 25.7),
    line('outline', [75, 6], [75, 13]),
    circle([75, 5], 3.6, 'outline', 'paper'),
    line('cut', [75, 5], [77.4, 3.2]),
    touch([75, 13.5]),
    words([75, 54.5], 'turned in a vee it shows', 'middle'),
  ],
);

function lobed(x: number, y: number) {
  const r = 24.2;
  const corner = (degrees: number): [number, number] => [
    x + (r / Math.sqrt(3)) * Math.cos((degrees * Math.PI) / 180),
    y + (r / Math.sqrt(3)) * Math.sin((degrees * Math.PI) / 180) + 1.8,
  ];
  const [top, right, left] = [corner(-90), corner(30), corner(150)];
  return [arc('outline', top, right, r), arc('outline', right, left, r), arc('outline', left, top, r)];
}

export const bores = picture(
  'Bores: what reads small, and what does not',
  'Left: the flat jaws of a calliper stand on a chord and read small. Right: a telescopic gauge is rocked in the bore; the largest across and the smallest along is the diameter.',
  56,
  [
    circle([22, 27], 14, 'outline', 'paper'),
    shape([
      [18.5, 13.5],
      [25.5, 13.5],
      [24.5, 20],
      [19.5, 20],
    ]),
    shape([
      [18.5, 40.5],
      [25.5, 40.5],
      [24.5, 34],
      [19.5, 34],
    ]),
    touch([18.5, 13.5]),
    touch([25.5, 13.5]),
    touch([18.5, 40.5]),
    touch([25.5, 40.5]),
    words([22, 49], 'flat jaws: a chord', 'middle'),
    ...hatched(52, 10, 40, 5),
    ...hatched(52, 39, 40, 5),
    line('outline', [52, 15], [92, 15]),
    line('outline', [52, 39], [92, 39]),
    line('outline', [52, 10], [92, 10]),
    line('outline', [52, 44], [92, 44]),
    line('centre', [50, 27], [96, 27]),
    line('cut', [71, 15], [71, 39]),
    line('assumed', [66, 15], [76, 39]),
    line('outline', [71, 27], [95, 20]),
    touch([71, 15]),
    touch([71, 39]),
    words([72, 52], 'rock it: smallest along', 'middle'),
  ],
);

export const lengths = picture(
  'Lengths from one face',
  'A stepped part; every length is taken from its left face. A depth is taken to the flat of a drilled hole, not to its point.',
  58,
  [
    line('centre', [4, 17], [96, 17]),
    shape([
      [8, 6],
      [30, 6],
      [30, 9],
      [58, 9],
      [58, 12],
      [90, 12],
      [90, 22],
      [58, 22],
      [58, 25],
      [30, 25],
      [30, 28],
      [8, 28],
    ]),
    line('hidden', [90, 14.5], [76, 14.5], [73.5, 17], [76, 19.5], [90, 19.5]),
    line('hidden', [76, 14.5], [76, 19.5]),
    line('cut', [8, 3], [8, 31]),
    ...span([8, 35], [30, 35], '', [20, 34]),
    ...span([8, 41], [58, 41], '', [20, 40]),
    ...span([8, 47], [90, 47], '', [20, 46]),
    line('thin', [30, 29], [30, 36]),
    line('thin', [58, 26], [58, 42]),
    line('thin', [90, 23], [90, 48]),
    words([8, 55], 'all from this face'),
    line('thin', [76, 11], [76, 4]),
    ...span([76, 5.5], [90, 5.5], '', [83, 4]),
    words([72, 7], 'to the flat', 'end'),
    line('thin', [90, 11], [90, 4]),
  ],
);

export const tapers = picture(
  'A taper by two diameters',
  'A cone with two diameters measured at places a known length apart.',
  50,
  [
    line('centre', [4, 24], [96, 24]),
    shape([
      [12, 10],
      [80, 17],
      [80, 31],
      [12, 38],
    ]),
    line('cut', [24, 11.2], [24, 36.8]),
    line('cut', [66, 15.6], [66, 32.4]),
    words([27, 22], 'D'),
    words([62, 22], 'd', 'end'),
    line('thin', [24, 38], [24, 45]),
    line('thin', [66, 34], [66, 45]),
    ...span([24, 43.5], [66, 43.5], 'L, known', [45, 41.8]),
    line('thin', [12, 38], [90, 38]),
    line('thin', [80, 31], [92, 29.8]),
    arc('dimension', [88, 30.2], [88.6, 38], 60),
    words([94, 35.5], 'α/2', 'middle'),
  ],
);

export const runout = picture(
  'Run-out with an indicator',
  'A spindle in two vees, turned by hand; an indicator stands on the seat.',
  48,
  [
    line('centre', [4, 22], [96, 22]),
    shape([
      [8, 17],
      [40, 17],
      [40, 13],
      [62, 13],
      [62, 17],
      [92, 17],
      [92, 27],
      [62, 27],
      [62, 31],
      [40, 31],
      [40, 27],
      [8, 27],
    ]),
    shape(
      [
        [14, 27],
        [26, 27],
        [26, 38],
        [14, 38],
      ],
      'paper',
    ),
    shape(
      [
        [76, 27],
        [88, 27],
        [88, 38],
        [76, 38],
      ],
      'paper',
    ),
    touch([51, 13]),
    line('outline', [51, 13], [51, 8]),
    circle([51, 5], 3.6, 'outline', 'paper'),
    line('cut', [51, 5], [53.2, 3]),
    words([57, 6], 'most less least'),
    words([20, 44], 'vee', 'middle'),
    words([82, 44], 'vee', 'middle'),
    ...pointer([5, 33], [5, 14]),
    words([2, 40], 'turn'),
  ],
);
