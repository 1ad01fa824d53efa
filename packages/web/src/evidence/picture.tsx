/** A picture that came as SVG text, put in place as a tree. */
import { useEffect, useRef } from 'react';
import { readPicture } from '../svg.ts';

interface Props {
  readonly svg: string;
}

export function Picture({ svg }: Props) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    host.current?.replaceChildren(readPicture(svg));
  }, [svg]);
  return <div className="plot" ref={host} />;
}
