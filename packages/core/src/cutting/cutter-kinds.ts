/** Kinds of cutter and drill. Apart from the schema, so that a page can offer them without loading it. */
export const cutterKinds = ['turning', 'facing', 'boring', 'grooving', 'parting', 'threading', 'form'] as const;
export const drillKinds = ['twist', 'centre', 'flat-bottom', 'reamer'] as const;
