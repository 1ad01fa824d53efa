/** The route as the screens show it: setups, operations in order with what was wished otherwise, and the work as each leaves it. */
import type { WorkOutline } from '@sparewright/core/route/route-result';
import type { Mm, MmPerRev, Rpm } from '@sparewright/core/units/quantities';
import type { FactView, LevelName, SheetBlock } from './job-view.ts';
import type { PresentSettings } from './settings.ts';

/** A finding that stands at its operation or setup, where its place need not be said. */
export interface NoticeView {
  readonly level: LevelName;
  readonly says: string;
  readonly because: readonly { readonly text: string; readonly source: string }[];
  /** What helps, in one sentence; empty when nothing is known to. */
  readonly helps: string;
}

export interface SetupView {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly chuck: string;
  readonly endOut: 'left' | 'right';
  readonly tailstock: boolean;
  readonly gripFrom: Mm;
  readonly gripTo: Mm;
  readonly work: WorkOutline;
  readonly facts: readonly FactView[];
  readonly cautions: readonly string[];
  readonly why: readonly string[];
  readonly notices: readonly NoticeView[];
}

/** What a person wants otherwise with an operation. */
export interface WishView {
  /** Its place in the order is kept as wished. */
  readonly placed: boolean;
  readonly skipped: boolean;
  readonly instead: string;
  readonly cutter: string;
  readonly breaks: readonly string[];
}

/** A cut as the questions about the lathe take it, apart from the workshop. */
export interface CutAsked {
  readonly operation: 'turning' | 'facing' | 'boring' | 'grooving' | 'parting';
  readonly cutter: string;
  readonly material: string;
  readonly sections: readonly {
    readonly length: Mm;
    readonly outerDiameter: Mm;
    readonly innerDiameter?: Mm | undefined;
  }[];
  readonly grip: Mm;
  readonly tailstock: boolean;
  readonly from: Mm;
  readonly to: Mm;
  readonly diameter: Mm;
  readonly depth: Mm;
  readonly feed: MmPerRev;
  readonly speed: Rpm;
  readonly sizeLimit?: Mm | undefined;
}

export interface OperationView {
  readonly id: string;
  readonly number: number;
  readonly setup: string;
  readonly title: string;
  /** `8 min (6 to 14 min)` */
  readonly time: string;
  readonly cutter: string;
  readonly numbers: readonly FactView[];
  readonly cautions: readonly string[];
  readonly why: readonly string[];
  readonly notices: readonly NoticeView[];
  readonly tables: readonly Extract<SheetBlock, { kind: 'dial' }>[];
  /** Features as the drawing marks them. */
  readonly marks: readonly string[];
  readonly wish: WishView | null;
  readonly from: Mm;
  readonly to: Mm;
  readonly side: 'outside' | 'inside';
  /** The work after it; null where a drawing shows no difference. */
  readonly leaves: WorkOutline | null;
  /** Its hardest cut; null where it is no cut that the model of the lathe covers. */
  readonly cut: CutAsked | null;
}

export interface RouteView {
  readonly settings: PresentSettings;
  readonly time: string;
  /** The planner’s own route against the one wished; null where nothing is wished otherwise. */
  readonly compared: { readonly planner: string; readonly own: string; readonly says: string } | null;
  readonly setups: readonly SetupView[];
  readonly operations: readonly OperationView[];
  readonly chucks: readonly { readonly value: string; readonly words: string }[];
  readonly cutters: readonly { readonly value: string; readonly words: string }[];
}
