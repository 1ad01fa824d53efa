/** What a surface is for; steers fits, finish and the order of work. Apart from the schema, so that a page can offer them without loading it. */
export const roles = ['sliding', 'sealing', 'locating', 'running', 'pressed', 'bonded', 'clearance', 'free'] as const;
