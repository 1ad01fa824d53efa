/** Name by which SVG, CSS and the typesetter ask for the bundled face. */
export const faceName = 'National Park';
