/** Where the demonstration jobs and the built screens lie. */
import { fileURLToPath } from 'node:url';

const folder = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url));

export const places = {
  examples: folder('examples'),
  web: folder('packages/web/dist'),
  pictures: folder('docs/pictures'),
};
