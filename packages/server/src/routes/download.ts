/** Headers of an answer that a browser writes to a file. */

export function download(type: string, name: string): Record<string, string> {
  return { 'content-type': type, 'content-disposition': `attachment; filename="${name}"` };
}

/** A title as a file name that every system takes. */
export function fileName(title: string): string {
  const name = title
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return name.slice(0, 60) || 'job';
}
