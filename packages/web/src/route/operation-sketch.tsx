/** The work as it is at one operation, in the chuck, with the surface that is cut in marking blue. */
import { drawSetup } from '@sparewright/core/drawing/setup-sketch';
import type { OperationView, RouteView, SetupView } from '@sparewright/output/present/job-view';
import { holderOf, holdingName } from '@sparewright/output/sheets/setup-sketch';
import { useCallback } from 'react';
import { Picture } from '../lathe/picture.tsx';

interface Props {
  readonly operation: OperationView;
  readonly setup: SetupView;
  /** The work before it. */
  readonly before: SetupView['work'];
  readonly settings: RouteView['settings'];
}

export function OperationSketch({ operation, setup, before, settings }: Props) {
  const draw = useCallback(() => {
    const after = operation.leaves ?? before;
    const radii = before.outside.flatMap((s) => [s.from.r, s.to.r]);
    const largestDiameter = 2 * Math.max(...radii);
    const free = setup.endOut === 'right' ? after.to : after.from;
    return drawSetup({
      outline: {
        outside: after.outside,
        insideLeft: after.inside,
        insideRight: [],
        through: false,
        length: after.to,
        largestDiameter,
      },
      before: { outside: before.outside, insideLeft: before.inside },
      gripFrom: setup.gripFrom,
      gripTo: setup.gripTo,
      endOut: setup.endOut,
      tailstock: setup.tailstock,
      holder: holderOf(setup),
      stockDiameter: largestDiameter,
      stockFrom: free,
      stockTo: free,
      chuckLabel: holdingName(setup),
      cutFrom: operation.from,
      cutTo: operation.to,
      cutSide: operation.side,
      ...settings,
    });
  }, [operation, setup, before, settings]);
  return <Picture draw={draw} />;
}
