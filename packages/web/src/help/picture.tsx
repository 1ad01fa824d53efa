/** A drawing of the help, in the colours of the screen. */
import type { Scene } from '@sparewright/core/drawing/scene';
import { paintSvg } from '@sparewright/output/svg/paint';
import { useEffect, useRef } from 'react';

export function Picture({ scene }: { readonly scene: Scene }) {
  const host = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const read = new DOMParser().parseFromString(paintSvg(scene, { theme: 'screen' }), 'image/svg+xml');
    const svg = document.importNode(read.documentElement, true);
    // Its title would show as a tip wherever the mouse rests.
    svg.querySelector('title')?.remove();
    svg.querySelector('desc')?.remove();
    svg.setAttribute('aria-label', `${scene.title}. ${scene.description}`);
    host.current?.replaceChildren(svg);
  }, [scene]);
  return <div className="help-picture" ref={host} />;
}
