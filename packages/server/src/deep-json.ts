/** JSON that is nested so deeply that reading it could break off the program is refused before it is read. */
import { InputError } from '@sparewright/core/errors';

/** No document is nested nearly as deep. */
const deepest = 64;

/** @throws InputError when JSON text is nested past all sense */
export function refuseDeep(text: string): void {
  if (depthOf(text) > deepest)
    throw new InputError([
      { path: 'body', value: 'text', expected: `lists and objects nested at most ${deepest} deep` },
    ]);
}

/**
 * How deep brackets are nested; counted on the text, because a parsed value would already be too deep to walk. One walk
 * over the text, whatever stands in it.
 */
function depthOf(text: string): number {
  let depth = 0;
  let most = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const sign = text[i];
    if (sign === '"') quoted = !quoted;
    else if (quoted) i += sign === '\\' ? 1 : 0;
    else if (sign === '[' || sign === '{') depth += 1;
    else if (sign === ']' || sign === '}') depth -= 1;
    most = Math.max(most, depth);
  }
  return most;
}
