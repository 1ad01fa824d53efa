/**
 * What can be chosen, in the words of the document. The core says the same in its schemas; the page does not load those, for
 * they would double what a phone has to fetch. A test compares the two.
 */

export const hazards = [
  'ordinary',
  'pressure',
  'lifting',
  'vehicle safety',
  'food contact',
  'electrical',
  'rotating at speed',
] as const;
export const roles = ['sliding', 'sealing', 'locating', 'running', 'pressed', 'bonded', 'clearance', 'free'] as const;
export const conditions = ['protected', 'worn', 'unsure', 'damaged', 'corroded', 'plated'] as const;
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
export const bearingKinds = ['deep groove', 'angular contact', 'taper roller', 'plain', 'unknown'] as const;
export const cutterKinds = ['turning', 'facing', 'boring', 'grooving', 'parting', 'threading', 'form'] as const;
export const drillKinds = ['twist', 'centre', 'flat-bottom', 'reamer'] as const;
export const edgeConditions = ['sharp', 'honed', 'moulded'] as const;
