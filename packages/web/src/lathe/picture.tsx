/** A sheet that is only looked at, drawn as wide as its place on the page. */
import type { Scene } from '@sparewright/core/drawing/scene';
import { paintSvg } from '@sparewright/output/svg/paint';
import { useEffect, useRef, useState } from 'react';
import { readPicture } from '../svg.ts';

/** With so many pixels to a millimetre of the sheet its figures are as large as the words around it. */
const pixelsPerMm = 5.4;
const widest = 170;

interface Props {
  /** Draws it for a width in millimetres of the sheet. */
  readonly draw: (width: number) => Scene;
}

export function Picture({ draw }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);

  useEffect(() => {
    const place = host.current;
    if (!place) return;
    const watch = new ResizeObserver(([entry]) => {
      if (entry) setWidth(Math.round(Math.min(widest, entry.contentRect.width / pixelsPerMm)));
    });
    watch.observe(place);
    return () => watch.disconnect();
  }, []);

  useEffect(() => {
    if (width === 0) return;
    const scene = draw(width);
    const svg = readPicture(paintSvg(scene, { theme: 'screen' }));
    svg.style.width = `${Math.round(scene.width * pixelsPerMm)}px`;
    host.current?.replaceChildren(svg);
  }, [draw, width]);

  return <div className="picture" ref={host} />;
}
