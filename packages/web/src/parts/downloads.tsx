/** What can be taken along: the packet, looked at before it is printed, the drawing, the job itself. */
import { useState } from 'react';
import { jobAddress } from '../ask-server.ts';
import { textAt } from '../document.ts';
import type { OpenJob } from '../use-job.ts';
import { PacketPreview } from './packet-preview.tsx';

interface Props {
  readonly id: string;
  readonly job: OpenJob;
}

const papers = ['A4', 'Letter'] as const;

export function Downloads({ id, job }: Props) {
  const base = jobAddress(id);
  const [shown, setShown] = useState<(typeof papers)[number]>();
  const own = textAt(job.document, ['sheet', 'paper']) === 'Letter' ? 'Letter' : 'A4';
  return (
    <>
      <ul className="downloads">
        {papers.map((paper) => (
          <li key={paper}>
            <a href={`${base}/packet.pdf?paper=${paper}`} download>
              Packet to print, {paper} (PDF)
            </a>
          </li>
        ))}
        <li>
          <a href={`${base}/export`} download>
            The job as one file, with photographs
          </a>
        </li>
        <li>
          <a href={`${base}/drawing.svg`} download>
            Drawing (SVG)
          </a>
        </li>
      </ul>
      <section className="packet-preview" aria-labelledby="packet-heading">
        <h3 id="packet-heading">The packet, looked at</h3>
        <p className="papers">
          {shown === undefined ? (
            <button type="button" onClick={() => setShown(own)}>
              Look at the pages
            </button>
          ) : (
            <>
              {papers.map((paper) => (
                <button key={paper} type="button" aria-pressed={paper === shown} onClick={() => setShown(paper)}>
                  {paper}
                </button>
              ))}
              <button type="button" onClick={() => setShown(undefined)}>
                Fold it up
              </button>
            </>
          )}
        </p>
        {shown !== undefined && <PacketPreview key={shown} id={id} paper={shown} revision={job.revision} />}
      </section>
    </>
  );
}
