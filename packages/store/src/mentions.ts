/** Attachments that the text of a document or a bench entry names by their hash: they are kept as long as the text is. */
import type { Connection } from './connection.ts';
import { query } from './tables.ts';

const hashes = /(?<![0-9a-f])[0-9a-f]{64}(?![0-9a-f])/g;

export function keepMentions(db: Connection, document: number, text: string): void {
  for (const [hash] of text.matchAll(hashes))
    db.run(
      query
        .insertInto('attachment_mention')
        .values({ document, hash })
        .onConflict((of) => of.doNothing()),
    );
}
