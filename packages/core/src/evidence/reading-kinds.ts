/** Kinds of gauge, and how a surface was where it was measured. Apart from the schema, so that a page can offer them without loading it. */
export const gaugeKinds = [
  'outside micrometer',
  'inside micrometer',
  'three-point bore gauge',
  'calliper',
  'depth gauge',
  'height gauge',
  'dial indicator',
  'telescopic gauge and micrometer',
  'pin gauges',
  'thread pitch gauge',
  'wires and micrometer',
  'radius gauges',
  'rule',
] as const;

export const conditions = ['protected', 'worn', 'unsure', 'damaged', 'corroded', 'plated'] as const;
