/** Small named parts whose sheets are kept as pictures. All invented. */

import { type DrawingSettings, plainSettings } from '@sparewright/core/drawing/settings';
import type { SetupSketch } from '@sparewright/core/drawing/setup-sketch';
import { definePart } from '@sparewright/core/part/define-part';
import type { PartResult } from '@sparewright/core/part/part-result';
import { type PartDocument, partSchema } from '@sparewright/core/part/schema';

export interface NamedSheet {
  readonly part: PartResult;
  readonly settings: DrawingSettings;
}

function sheet(document: PartDocument, settings: Partial<DrawingSettings> = {}): NamedSheet {
  const part = partSchema(settings.units ?? 'mm').parse(document);
  const { generalTolerance, finish, edgeBreak, material } = part;
  return {
    part: definePart(part),
    settings: {
      ...plainSettings,
      title: part.name,
      generalTolerance,
      finish,
      edgeBreak,
      material,
      invented: true,
      drawnBy: 'E. Example',
      date: '2026-01-05',
      ...settings,
    },
  };
}

const common = { material: '303', generalTolerance: 'm', finish: 3.2, edgeBreak: 0.2 } as const;

export const sheets: Readonly<Record<string, NamedSheet>> = {
  'shouldered-pin': sheet({
    ...common,
    name: 'Shouldered pin',
    number: 'SP-1',
    outside: [
      {
        kind: 'cylinder',
        id: 'head',
        diameter: '18',
        length: '5 ±0.1',
        startEdge: { kind: 'chamfer', size: 0.5 },
        endEdge: { kind: 'chamfer', size: 0.5 },
      },
      {
        kind: 'cylinder',
        id: 'guide',
        diameter: '12 f7',
        length: '32',
        finish: 0.8,
        startEdge: { kind: 'fillet', radius: 0.4 },
      },
      { kind: 'cylinder', id: 'tip', diameter: '8 h9', length: '12', endEdge: { kind: 'chamfer', size: 1 } },
    ],
  }),
  'valve-guide-pin': sheet(
    {
      ...common,
      name: 'Valve guide pin',
      outside: [
        {
          kind: 'cylinder',
          id: 'head',
          diameter: '20',
          length: '6',
          role: 'locating',
          startEdge: { kind: 'chamfer', size: 0.5 },
          endEdge: { kind: 'chamfer', size: 0.5 },
        },
        {
          kind: 'cylinder',
          id: 'thread-body',
          name: 'threaded body',
          diameter: '16',
          length: '12',
          endEdge: { kind: 'chamfer', size: 1 },
        },
        {
          kind: 'cylinder',
          id: 'guide',
          diameter: '12 f7',
          length: '60 ±0.1',
          finish: 0.8,
          role: 'sliding',
          startEdge: { kind: 'fillet', radius: 0.4 },
        },
        {
          kind: 'cylinder',
          id: 'nose',
          diameter: '8 h9',
          length: '10',
          finish: 1.6,
          startEdge: { kind: 'fillet', radius: 0.4 },
          endEdge: { kind: 'chamfer', size: 1, angle: 30 },
        },
      ],
      grooves: [
        {
          id: 'upper-seal',
          on: 'guide',
          along: '8',
          width: '2.4 +0.1/0',
          floorDiameter: '9.1 h9',
          floorRadius: 0.3,
          edgeRadius: 0.1,
          finish: 1.6,
          purpose: 'o-ring',
        },
        {
          id: 'lower-seal',
          on: 'guide',
          along: '46',
          width: '2.4 +0.1/0',
          floorDiameter: '9.1 h9',
          floorRadius: 0.3,
          edgeRadius: 0.1,
          finish: 1.6,
          purpose: 'o-ring',
        },
      ],
      threads: [{ id: 'fixing', on: 'thread-body', designation: 'M16x1.5-6g', length: '10', from: 'end' }],
      notTurned: [
        {
          id: 'drive',
          name: 'drive hexagon',
          kind: 'hexagon socket',
          face: 'left',
          acrossFlats: '8 D12',
          depth: '5',
          made: 'bonded insert',
        },
      ],
    },
    { machine: 'Orchard sprayer, 1930s', hazard: 'pressure', partNumber: 'P 14' },
  ),
  plunger: sheet({
    ...common,
    name: 'Plunger',
    outside: [
      {
        kind: 'cylinder',
        id: 'skirt',
        diameter: '40 f7',
        length: '38',
        finish: 0.4,
        startEdge: { kind: 'chamfer', size: 1 },
      },
      { kind: 'cylinder', id: 'land', diameter: '39.6', length: '8' },
      { kind: 'crown', id: 'crown', diameter: '39.6', length: '4' },
    ],
    inside: {
      left: [
        {
          kind: 'bored',
          id: 'mouth',
          diameter: '32 H8',
          depth: '10',
          startEdge: { kind: 'chamfer', size: 1 },
          finish: 1.6,
        },
        { kind: 'cone', id: 'cavity', startDiameter: '28', endDiameter: '18', depth: '30' },
        { kind: 'drilled', id: 'pilot', diameter: '10', depth: '36', pointAngle: 118 },
      ],
    },
    grooves: [
      {
        id: 'seal',
        on: 'skirt',
        along: '28',
        width: '4.2',
        floorDiameter: '33.6 h9',
        floorRadius: 0.4,
        purpose: 'square seal',
      },
    ],
  }),
  'gland-spindle': sheet(
    {
      material: 'gunmetal',
      name: 'Gland spindle',
      generalTolerance: 'm',
      finish: 3.2,
      outside: [
        { kind: 'cone', id: 'seat', startDiameter: '1/4', endDiameter: '5/8', length: '0.25', finish: 0.8 },
        { kind: 'cylinder', id: 'stem', diameter: '3/8 f8', length: '2 1/4', finish: 1.6 },
        {
          kind: 'cylinder',
          id: 'screw',
          diameter: '1/2',
          length: '1',
          startEdge: { kind: 'chamfer', size: 0.03 },
          endEdge: { kind: 'chamfer', size: 0.03 },
        },
        { kind: 'cylinder', id: 'square', diameter: '0.4', length: '0.5' },
      ],
      threads: [{ id: 'lift', on: 'screw', designation: '1/2 BSF' }],
      notTurned: [
        {
          id: 'key',
          name: 'wheel square',
          kind: 'flats',
          on: 'square',
          count: 4,
          acrossFlats: '5/16',
          along: '0.05',
          length: '0.45',
        },
      ],
    },
    { units: 'in', paper: 'Letter', projection: 'third angle', machine: 'Stationary engine, 1920s' },
  ),
  'through-bush': sheet(
    {
      ...common,
      name: 'Flanged bush',
      outside: [
        {
          kind: 'cylinder',
          id: 'flange',
          diameter: '45',
          length: '6',
          startEdge: { kind: 'chamfer', size: 1 },
          endEdge: { kind: 'chamfer', size: 1 },
        },
        {
          kind: 'cylinder',
          id: 'body',
          diameter: '32 p6',
          length: '34',
          finish: 1.6,
          startEdge: { kind: 'relief', width: 2, depth: 0.3 },
          endEdge: { kind: 'chamfer', size: 1.5, angle: 15 },
        },
      ],
      inside: {
        left: [
          { kind: 'bored', id: 'recess', diameter: '26', depth: '5' },
          {
            kind: 'bored',
            id: 'bore',
            diameter: '22 H7',
            depth: 'through',
            finish: 0.8,
            endEdge: { kind: 'chamfer', size: 0.5 },
          },
        ],
      },
      grooves: [{ id: 'oil', on: 'bore', along: '14', width: '3', floorDiameter: '24', purpose: 'oil' }],
      notTurned: [
        { id: 'oiler', name: 'oil hole', kind: 'cross hole', on: 'body', diameter: '4', along: '14', through: false },
      ],
    },
    { decimalSign: 'comma' },
  ),
  'knurled-screw': sheet({
    ...common,
    name: 'Knurled adjusting screw',
    outside: [
      {
        kind: 'cylinder',
        id: 'knob',
        diameter: '24',
        length: '10',
        startEdge: { kind: 'chamfer', size: 1 },
        endEdge: { kind: 'chamfer', size: 1 },
      },
      { kind: 'cylinder', id: 'neck', diameter: '7.5', length: '4' },
      { kind: 'cylinder', id: 'shank', length: '36', endEdge: { kind: 'chamfer', size: 1 } },
      { kind: 'crown', id: 'point', diameter: '6', length: '1.5' },
    ],
    threads: [{ id: 'adjusting', on: 'shank', designation: 'M10x1-6g' }],
    notTurned: [
      { id: 'grip', kind: 'knurl', on: 'knob', pattern: 'diamond', pitch: 1 },
      { id: 'driver', name: 'driver slot', kind: 'slot', face: 'left', width: '2', depth: '3' },
    ],
  }),
  'half-known-spindle': sheet(
    {
      name: 'Half known spindle',
      outside: [
        { kind: 'cylinder', id: 'journal', diameter: '14 h7', length: '20' },
        { kind: 'cylinder', id: 'collar', diameter: '22' },
        { kind: 'cone', id: 'taper', startDiameter: '16', length: '30' },
        { kind: 'cylinder', id: 'tail' },
      ],
    },
    { drawnBy: undefined, date: undefined },
  ),
  handle: sheet({
    ...common,
    name: 'Ball handle',
    outside: [
      {
        kind: 'cylinder',
        id: 'spigot',
        diameter: '10 h8',
        length: '15',
        endEdge: { kind: 'relief', width: 1.5, depth: 0.3 },
      },
      { kind: 'cylinder', id: 'shoulder', diameter: '18', length: '4' },
      {
        kind: 'curve',
        id: 'waist',
        points: [
          { along: 0, diameter: 15 },
          { along: 10, diameter: 11 },
          { along: 25, diameter: 10 },
          { along: 45, diameter: 14 },
        ],
      },
      {
        kind: 'arc',
        id: 'belly',
        startDiameter: '14',
        endDiameter: '12',
        length: '20',
        radius: '15',
        bulge: 'outward',
      },
      { kind: 'crown', id: 'end', diameter: '12', length: '3' },
    ],
  }),
  'long-shaft': sheet({
    ...common,
    name: 'Lay shaft',
    outside: [
      {
        kind: 'cylinder',
        id: 'left-journal',
        diameter: '17 k6',
        length: '24',
        finish: 0.8,
        startEdge: { kind: 'chamfer', size: 1 },
      },
      {
        kind: 'cylinder',
        id: 'left-seat',
        diameter: '20 h7',
        length: '60',
        finish: 1.6,
        startEdge: { kind: 'fillet', radius: 0.6 },
      },
      { kind: 'cylinder', id: 'collar', diameter: '28', length: '8' },
      { kind: 'cylinder', id: 'middle', diameter: '24', length: '180' },
      { kind: 'cylinder', id: 'right-seat', diameter: '20 h7', length: '70', finish: 1.6 },
      {
        kind: 'cylinder',
        id: 'right-journal',
        diameter: '17 k6',
        length: '24',
        finish: 0.8,
      },
      { kind: 'cylinder', id: 'end-thread', length: '18', endEdge: { kind: 'chamfer', size: 1 } },
    ],
    grooves: [
      {
        id: 'left-ring',
        on: 'left-journal',
        along: '18',
        width: '1.1 H13',
        floorDiameter: '16.2 h11',
        purpose: 'retaining ring',
      },
      { id: 'run-out', on: 'right-journal', along: '21', width: '3', floorDiameter: '15', purpose: 'thread relief' },
    ],
    threads: [{ id: 'nut', on: 'end-thread', designation: 'M16x1.5-6g' }],
    notTurned: [
      {
        id: 'spanner',
        name: 'spanner flats',
        kind: 'flats',
        on: 'middle',
        count: 2,
        acrossFlats: '22',
        along: '20',
        length: '15',
      },
    ],
  }),
  'wheel-blank': sheet({
    ...common,
    name: 'Hand wheel blank',
    outside: [
      { kind: 'cylinder', id: 'hub', diameter: '36', length: '14', startEdge: { kind: 'chamfer', size: 1 } },
      {
        kind: 'cylinder',
        id: 'rim',
        diameter: '140 h11',
        length: '16',
        startEdge: { kind: 'fillet', radius: 3 },
        endEdge: { kind: 'chamfer', size: 1 },
      },
    ],
    inside: {
      left: [{ kind: 'bored', id: 'bore', diameter: '16 H7', depth: 'through' }],
      right: [{ kind: 'bored', id: 'dish', diameter: '100', depth: '9' }],
    },
  }),
};

function outlineOf(name: string) {
  const sheet = sheets[name];
  if (!sheet) throw new Error(`there is no sheet ${name}`);
  return sheet.part.outline;
}

export const setups: Readonly<Record<string, SetupSketch>> = {
  'setup-first-end': {
    outline: outlineOf('valve-guide-pin'),
    gripFrom: -12,
    gripTo: -2,
    endOut: 'right',
    tailstock: true,
    stockDiameter: 22,
    stockFrom: -40,
    stockTo: 90,
    chuckLabel: 'Three-jaw chuck, 10 mm gripped, bar Ø22',
    cutFrom: 18,
    cutTo: 78,
    labels: [
      { at: 48, text: 'op 4: turn Ø12 f7' },
      { at: 26, text: 'stop here' },
    ],
  },
  'setup-second-end': {
    outline: outlineOf('plunger'),
    gripFrom: 20,
    gripTo: 46,
    endOut: 'left',
    tailstock: false,
    stockDiameter: 42,
    stockFrom: -1,
    stockTo: 0,
    chuckLabel: 'Soft jaws on the finished skirt',
    cutFrom: 0,
    cutTo: 10,
    cutSide: 'inside',
    labels: [{ at: 5, text: 'op 9: bore Ø32 H8' }],
  },
};
