/** What can be taken along: the packet to print and the drawing. */
interface Props {
  readonly id: string;
}

export function Downloads({ id }: Props) {
  const base = `/api/jobs/${encodeURIComponent(id)}`;
  return (
    <ul className="downloads">
      <li>
        <a href={`${base}/packet.pdf?paper=A4`} download>
          Packet to print, A4 (PDF)
        </a>
      </li>
      <li>
        <a href={`${base}/packet.pdf?paper=Letter`} download>
          Packet to print, Letter (PDF)
        </a>
      </li>
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
  );
}
