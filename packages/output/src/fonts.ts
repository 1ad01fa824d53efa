/** The bundled face, for painters, the packet and the server. */

export interface FontFile {
  readonly file: string;
  readonly weight: 400 | 700;
  readonly url: URL;
}

const folder = new URL('../fonts/', import.meta.url);

export const fontFiles: readonly FontFile[] = [
  { file: 'NationalPark-Regular.ttf', weight: 400, url: new URL('NationalPark-Regular.ttf', folder) },
  { file: 'NationalPark-Bold.ttf', weight: 700, url: new URL('NationalPark-Bold.ttf', folder) },
];
