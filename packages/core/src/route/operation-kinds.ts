/** Kinds of operations, in the order in which they customarily come. */
export const operationKinds = [
  'face',
  'centre',
  'drill',
  'rough turn',
  'bore',
  'knurl',
  'groove',
  'finish turn',
  'chamfer',
  'thread',
  'turn cone',
  'turn curve',
  'polish',
  'part off',
  'off the lathe',
] as const;

export type OperationKind = (typeof operationKinds)[number];
