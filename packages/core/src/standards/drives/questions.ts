/**
 * Questions about hexagons, slots and driving squares.
 */
import { z } from 'zod';
import { defineQuestion } from '../../question.ts';
import type { SourceKey } from '../../sources/register.ts';
import { lengthField, numberField, textField } from '../../units/fields.ts';
import { limitsField, notesField, rounded, standingField, trustFields } from '../small-parts/answer-fields.ts';
import { weakest } from '../small-parts/standing.ts';
import { hexagon } from './hexagon.ts';
import {
  bladeTorque,
  hexagonKeyTorque,
  hexagonTorsionStress,
  pinSpannerTorque,
  socketTorqueByFlanks,
} from './hexagon-strength.ts';
import { withoutBroach } from './hexagon-table.ts';
import { driveSquare, slot } from './slot.ts';

const hexagonDrive = defineQuestion({
  name: 'hexagon-drive',
  asks: 'What are the limits of a hexagon key, socket or head, and what torque does it carry?',
  input: z.strictObject({
    acrossFlats: lengthField('mm', 'nominal width across flats', { max: 100 }),
    torque: numberField('torque put on it', 'N·m', 0, 10_000).optional(),
    depth: lengthField('mm', 'depth that the key engages', { max: 100 }).optional(),
    pressure: numberField(
      'peak pressure allowed on the flanks: in use about half the proof stress of the softer part, common practice',
      'MPa',
      1,
      3000,
    ).optional(),
    tensileStrength: numberField('tensile strength of the key', 'MPa', 100, 3000).optional(),
  }),
  output: z.strictObject({
    sharpCorners: z.number().describe('through sharp corners: the least bar an external hexagon is cut from [mm]'),
    key: z
      .strictObject({
        flats: limitsField('across flats'),
        corners: limitsField('across corners'),
        testTorque: z.number().describe('torque a key must withstand [N·m]'),
        makerShear: z.number().optional().describe("least torque at which a maker's key shears [N·m]"),
        makerYield: z.number().optional().describe("least torque at which a maker's key yields [N·m]"),
        standing: standingField,
      })
      .optional()
      .describe('the key'),
    socket: z
      .strictObject({
        flats: limitsField('across flats'),
        cornersMin: z.number().describe('across corners, at least [mm]'),
        usedBy: z
          .array(
            z.strictObject({
              screw: z.string().describe('screw'),
              depthMin: z.number().describe('depth of socket, at least [mm]'),
            }),
          )
          .describe('screws with this socket'),
        standing: standingField,
      })
      .optional()
      .describe('the socket'),
    external: z
      .strictObject({
        flats: limitsField('across flats'),
        cornersMin: z.number().describe('across corners, at least [mm]'),
        usedBy: z.array(z.string()).describe('bolts with this head'),
        standing: standingField,
      })
      .optional()
      .describe('the external hexagon'),
    keyStress: z.number().optional().describe('greatest torsion stress in the thinnest key at the torque [MPa]'),
    keyTorque: z.number().optional().describe('torque at which a key of that strength lets go [N·m]'),
    flankTorque: z.number().optional().describe('torque that the flanks carry at that depth and pressure [N·m]'),
    withoutBroach: z
      .array(z.string())
      .describe('ways to an internal hexagon without a broaching press, common practice'),
    notes: notesField,
    ...trustFields,
  }),
  sources: ['ISO2936', 'ISO4762-MEM', 'CREATIVE', 'ISO4759-MEM', 'PRACMAINT', 'BONDHUS', 'hex-CALC', 'common-practice'],
  example: {
    input: { acrossFlats: 5 },
    gives: { socket: { cornersMin: 5.72 }, external: { cornersMin: 5.45 } },
    from: 'CREATIVE, fastener tables: socket and external hexagon of 5 mm',
  },
  answer({ acrossFlats, torque, depth, pressure, tensileStrength }) {
    const { key, socket, external, sharpCorners } = hexagon(acrossFlats);
    const keySources: SourceKey[] = key ? [key.source, ...(key.maker ? (['PRACMAINT'] as const) : [])] : [];
    return {
      sharpCorners: rounded(sharpCorners, 3),
      ...(key && {
        key: {
          flats: { ...key.flats },
          corners: { ...key.corners },
          testTorque: key.testTorque,
          makerShear: key.maker?.shear,
          makerYield: key.maker?.yield,
          standing: key.standing,
        },
      }),
      ...(socket && {
        socket: {
          flats: { ...socket.flats },
          cornersMin: rounded(socket.cornersMin, 3),
          usedBy: socket.usedBy.map((use) => ({ ...use })),
          standing: socket.standing,
        },
      }),
      ...(external && {
        external: {
          flats: { ...external.flats },
          cornersMin: rounded(external.cornersMin, 3),
          usedBy: [...external.usedBy],
          standing: external.standing,
        },
      }),
      ...(torque !== undefined && {
        keyStress: rounded(hexagonTorsionStress(torque, key?.flats.min ?? acrossFlats), 1),
      }),
      ...(tensileStrength !== undefined && { keyTorque: rounded(hexagonKeyTorque(tensileStrength, acrossFlats), 2) }),
      ...(depth !== undefined &&
        pressure !== undefined && { flankTorque: rounded(socketTorqueByFlanks(acrossFlats, depth, pressure), 2) }),
      withoutBroach: [...withoutBroach],
      notes: [
        ...[socket?.note, external?.note].filter((note) => note !== undefined),
        'a worn or cheap key rounds a socket far below these torques: seat it fully and pull square',
      ],
      sources: [...new Set([...keySources, ...(socket?.sources ?? []), ...(external?.sources ?? [])])],
      standing: weakest([key, socket, external].flatMap((part) => part?.standing ?? [])),
    };
  },
});

const slotQuestion = defineQuestion({
  name: 'slot',
  asks: 'How wide and deep is the slot of a screw, and what torque does a blade or a pin spanner carry?',
  input: z.strictObject({
    thread: textField('thread of the cheese-head screw, ISO 1207: M5', 12),
    blade: z
      .strictObject({
        length: lengthField('mm', 'length of the blade in the slot', { max: 200 }),
        depth: lengthField('mm', 'depth it engages', { max: 50 }),
        pressure: numberField('peak pressure allowed', 'MPa', 1, 3000),
      })
      .optional()
      .describe('a blade or two-flat key, for its torque'),
    pins: z
      .strictObject({
        circle: lengthField('mm', 'circle the two pins stand on', { max: 300 }),
        pin: lengthField('mm', 'pin diameter', { max: 30 }),
        depth: lengthField('mm', 'depth they engage', { max: 50 }),
        pressure: numberField('bearing pressure allowed', 'MPa', 1, 3000),
        shear: numberField('shear stress allowed in the pins', 'MPa', 1, 2000),
      })
      .optional()
      .describe('a pin spanner, for its torque'),
  }),
  output: z.strictObject({
    nominal: z.number().describe('nominal width [mm]'),
    width: limitsField('width of the slot'),
    depthMin: z.number().describe('depth, at least [mm]'),
    bladeTorque: z.number().optional().describe('torque the blade carries [N·m]'),
    pinTorque: z.number().optional().describe('torque the two pins carry [N·m]'),
    ...trustFields,
  }),
  sources: ['CQW', 'slots-MEM', 'hex-CALC'],
  example: {
    input: { thread: 'M5' },
    gives: { width: { max: 1.51 }, depthMin: 1.3 },
    from: 'CQW, fastener tables, ISO 1207',
  },
  answer({ thread, blade, pins }) {
    const { nominal, width, depthMin, sources, standing } = slot(thread);
    return {
      nominal,
      width: { ...width },
      depthMin,
      ...(blade && { bladeTorque: rounded(bladeTorque(blade.length, blade.depth, blade.pressure), 3) }),
      ...(pins && {
        pinTorque: rounded(pinSpannerTorque(pins.circle, pins.pin, pins.depth, pins.pressure, pins.shear), 3),
      }),
      sources: [...sources],
      standing,
    };
  },
});

const driveSquareQuestion = defineQuestion({
  name: 'drive-square',
  asks: 'What are the limits of a driving square and of the hole for it?',
  input: z.strictObject({ nominal: lengthField('mm', 'nominal square: 6.3, 10, 12.5, 20 or 25', { max: 25 }) }),
  output: z.strictObject({
    male: limitsField('the square'),
    female: limitsField('the hole'),
    ...trustFields,
  }),
  sources: ['ISO1174-MEM'],
  example: {
    input: { nominal: 12.5 },
    gives: { male: { max: 12.7 } },
    from: 'the square is ½ in at its largest (reference joints, ISO 1174-1, from memory)',
  },
  answer({ nominal }) {
    const { male, female, source, standing } = driveSquare(nominal);
    return { male: { ...male }, female: { ...female }, sources: [source], standing };
  },
});

export const driveQuestions = [hexagonDrive, slotQuestion, driveSquareQuestion] as const;
