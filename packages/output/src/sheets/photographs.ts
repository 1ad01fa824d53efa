/** The photographs of a job as they are printed with its record: small, each with its words and its place. */
import type { Job } from '@sparewright/core/job/schema';
import { presentLength } from '../present/length.ts';
import { type Block, capital, heading, words } from './blocks.ts';
import type { PacketContext } from './context.ts';

export interface PrintedPhotographs {
  readonly blocks: readonly Block[];
  /** Pictures by the name that the blocks call them by. */
  readonly files: Readonly<Record<string, Uint8Array>>;
}

type Photograph = NonNullable<Job['photographs']>[number];

/** What a packet may come to hold of pictures [bytes]: it is to be printed and sent. */
const mostBytes = 60_000_000;

/** Nothing for a job without photographs. */
export function photographsOf(context: PacketContext): PrintedPhotographs {
  const { job, picture } = context;
  const all = job.photographs ?? [];
  if (all.length === 0) return { blocks: [], files: {} };
  if (!picture) return { blocks: [heading('Photographs'), words(notHere(all.length), 'pencil')], files: {} };
  const files: Record<string, Uint8Array> = {};
  let room = mostBytes;
  const pictures = all.map((photograph, i) => {
    const bytes = picture(photograph.file);
    const ending = bytes && endingOf(bytes);
    const says = wordsOf(photograph, i + 1, context);
    if (!bytes || !ending)
      return { ...says, lacks: 'The picture is not at hand, or of a kind that cannot be printed.' };
    if (bytes.length > room) return { ...says, lacks: 'Left out: the packet would be too large to send.' };
    room -= bytes.length;
    const file = `photograph-${i + 1}.${ending}`;
    files[file] = bytes;
    return { ...says, file };
  });
  return { blocks: [heading('Photographs'), { kind: 'photographs', pictures }], files };
}

/** The same without any picture, for one that cannot be set must not keep the packet from being printed. */
export function withoutPictures({ blocks }: PrintedPhotographs): PrintedPhotographs {
  const lacks = 'The picture could not be set.';
  return {
    blocks: blocks.map((block) =>
      block.kind === 'photographs'
        ? { ...block, pictures: block.pictures.map(({ file: _, ...says }) => ({ lacks, ...says })) }
        : block,
    ),
    files: {},
  };
}

const notHere = (count: number): string =>
  `${count === 1 ? 'One photograph belongs' : `${count} photographs belong`} to this job; the pictures themselves are not at hand here.`;

/** By how it begins; undefined for what the typesetter does not read. */
function endingOf(bytes: Uint8Array): string | undefined {
  const begin = String.fromCharCode(...bytes.subarray(0, 12));
  if (begin.startsWith('\xff\xd8\xff')) return 'jpg';
  if (begin.startsWith('\x89PNG\r\n\x1a\n')) return 'png';
  return begin.startsWith('RIFF') && begin.endsWith('WEBP') ? 'webp' : undefined;
}

function wordsOf({ shows, of, along }: Photograph, number: number, context: PacketContext) {
  const { units, decimalSign } = context.settings;
  const place = [
    of === undefined ? '' : capital(nameOf(of, context)),
    along === undefined ? '' : `${presentLength(along, units, decimalSign, units === 'in' ? 3 : 1)} ${units} along`,
  ];
  return { number: String(number), shows: shows ?? 'Not described yet.', place: place.filter(Boolean).join(', ') };
}

/** What a photograph is of, as it is called elsewhere on the sheets. */
function nameOf(of: string, { job, assessment: { part } }: PacketContext): string {
  const named = [...(job.evidence?.specimens ?? []), ...(job.mates ?? [])].find(({ id }) => id === of);
  if (named?.name !== undefined) return named.name;
  const title = (id: string): string | undefined => part?.dimensions.find((d) => d.id === id)?.title;
  const readings = [...(job.evidence?.readings ?? []), ...(job.inspection?.readings ?? [])];
  const reading = readings.find(({ id }) => id === of);
  if (reading) return `reading of the ${title(reading.of) ?? plain(reading.of)}`;
  return title(of) ?? plain(of);
}

const plain = (id: string): string => id.replaceAll('-', ' ').replace('.', ', ');
