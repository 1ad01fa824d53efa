/** A job as the screens show it, as plain data: what the server tells and the page draws. */

import type { OperationKind } from '@sparewright/core/route/operation-kinds';
import type { Setup, WorkOutline } from '@sparewright/core/route/route-result';
import type { HoldingWish } from '@sparewright/core/route/schema';
import type { Mm, MmPerRev, Rpm } from '@sparewright/core/units/quantities';
import type { PresentSettings } from './settings.ts';

export type StageName = 'evidence' | 'part' | 'duty' | 'route' | 'bench' | 'inspection' | 'record';
export type LevelName = 'stop' | 'caution' | 'note';

/** One job in the list. */
export interface JobEntry {
  readonly id: string;
  readonly title: string;
  /** Machine the part belongs to; empty when none is entered. */
  readonly machine: string;
  readonly hazard: string;
  /** When it was last changed, as in `2026-03-01T09:30:00.000Z`. */
  readonly updated: string;
  readonly revision: number;
  /** How far it has come; null when that is not known. */
  readonly stage: StageName | null;
  /** The worst thing found; null when nothing was. */
  readonly worst: { readonly level: LevelName; readonly says: string } | null;
}

export interface FindingView {
  readonly level: LevelName;
  readonly stage: StageName;
  /** Where it belongs, in words. */
  readonly where: string;
  readonly says: string;
  readonly because: readonly { readonly text: string; readonly source: string }[];
  readonly remedies: readonly string[];
  /** Features and dimensions it belongs to, as the drawing marks them with `data-of`. */
  readonly marks: readonly string[];
}

/** One size of the part. */
export interface SizeRow {
  /** As the drawing marks it: `guide.diameter`. */
  readonly id: string;
  readonly feature: string;
  readonly title: string;
  /** As it was typed; null for sizes that are not typed as one value. */
  readonly entered: string | null;
  /** Where it stands in the job document. */
  readonly path: readonly (string | number)[];
  readonly nominal: string;
  readonly least: string;
  readonly most: string;
  readonly basis: string;
}

/** A row that stands over the ones that follow it and says what they have in common. */
export interface GroupView {
  readonly title: string;
  readonly says: string;
}

export interface TableView {
  readonly kind: 'table';
  readonly columns: readonly {
    readonly title: string;
    readonly unit: string;
    readonly right: boolean;
    readonly blank: boolean;
  }[];
  readonly rows: readonly (readonly string[] | GroupView)[];
}

export interface FactView {
  readonly what: string;
  readonly is: string;
}

/** What a sheet is made of: finished words in order; the screens only place them. */
export type SheetBlock =
  | { readonly kind: 'heading'; readonly text: string; readonly small: boolean }
  | { readonly kind: 'words'; readonly text: string; readonly secondary: boolean }
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly numbered: boolean }
  | { readonly kind: 'sources'; readonly items: readonly string[] }
  | { readonly kind: 'facts'; readonly rows: readonly FactView[] }
  | { readonly kind: 'caution'; readonly title: string; readonly lines: readonly string[] }
  | {
      /** How the figures before it come about. */
      readonly kind: 'why';
      readonly worked: readonly {
        readonly what: string;
        readonly formula: string;
        readonly put: readonly string[];
        readonly gives: string;
        readonly source: string;
      }[];
    }
  | {
      /** What to set on the dials for one operation, row by row. */
      readonly kind: 'dial';
      /** `4`, as the operation is numbered; several tables may belong to one. */
      readonly operation: string;
      /** `Table 4a` */
      readonly name: string;
      readonly title: string;
      readonly notes: readonly string[];
      readonly table: TableView;
    }
  | {
      readonly kind: 'proof';
      readonly title: string;
      readonly how: string;
      readonly acceptance: string;
      readonly why: string;
    }
  | TableView;

/** Steps from the job document to a value in it. */
export type DocumentPath = readonly (string | number)[];

/** One way to settle a feature. */
export interface TakeView {
  /** What is taken, in words: `as it was made`, `matched to the cylinder`. */
  readonly name: string;
  /** What is written: `12 f7`. */
  readonly write: string;
  /** What that means, where it is not said by the text itself: `11.984 to 11.966 mm`. */
  readonly means: string;
  readonly why: string;
  /** Values to put into the document when it is taken; none where the decision alone is written down. */
  readonly puts: readonly { readonly at: DocumentPath; readonly value: unknown }[];
}

export interface DecisionView {
  readonly decided: string;
  readonly why: string;
}

/** A size, thread, cone, crown, groove or drive of the part, or a size of a mate. */
export interface RecoveredFeatureView {
  /** As the drawing marks it: `guide.diameter`, `thread`. */
  readonly of: string;
  readonly title: string;
  /** What was concluded, in a sentence or two. */
  readonly says: readonly string[];
  /** Readings and conclusions on a number line, as SVG; null where there is none to draw. */
  readonly line: string | null;
  /** The ranked designs as bars, as SVG; null where nothing is ranked. */
  readonly bars: string | null;
  /** The ranked designs in words, likeliest first. */
  readonly designs: readonly { readonly written: string; readonly share: string }[];
  /** Metal gone, place by place, under the specimen it is of; its name is empty where there is only one. */
  readonly wear: readonly { readonly on: string; readonly places: readonly string[] }[];
  /** What tells the first designs apart. */
  readonly lookAlike: string | null;
  /** What to measure next, the most telling first. */
  readonly next: readonly string[];
  /** Recommended first; none for a mate. */
  readonly takes: readonly TakeView[];
  /** Where a value of one's own is put; null where there is no such place. */
  readonly ownAt: DocumentPath | null;
  /** As it stands in the document; null while nothing is entered. */
  readonly entered: string | null;
  readonly decision: DecisionView | null;
  /** Under which name it is left open in the part. */
  readonly openAs: string;
  /** Left open: drawn in pencil until it is settled. */
  readonly isOpen: boolean;
  readonly conflicts: readonly FindingView[];
}

export interface RecoveredView {
  /** Inches or millimetres, hole or shaft basis. */
  readonly habit: string;
  readonly features: readonly RecoveredFeatureView[];
  /** Over all features, the most telling first. */
  readonly next: readonly string[];
  /** What contradicts itself but belongs to no feature shown. */
  readonly conflicts: readonly FindingView[];
}

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
  readonly held: Setup['held'];
  readonly freeFrom: Mm;
  readonly mandrel: Setup['mandrel'];
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
  readonly infeed: string;
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
  readonly kind: OperationKind;
  readonly title: string;
  /** `8 min (6 to 14 min)` */
  readonly time: string;
  /** By the plan alone, before anything was learned [s]. */
  readonly planned: number;
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

/** A way to hold the work, weighed against others. */
export interface HoldingWayView {
  readonly how: string;
  readonly taken: boolean;
  /** `61 min in time and risk`, and how far that is from the way taken. */
  readonly cost: string;
  readonly why: readonly string[];
  /** What to put into the wishes of the route to have it. */
  readonly wish: HoldingWish;
}

/** The ways of one setup that were weighed. */
export interface HoldingsView {
  readonly setup: number;
  readonly ways: readonly HoldingWayView[];
}

/** The route: setups, operations in order with what was wished otherwise, and the work as each leaves it. */
export interface RouteView {
  readonly settings: PresentSettings;
  readonly time: string;
  /** The planner’s own route against the one wished; null where nothing is wished otherwise. */
  readonly compared: { readonly planner: string; readonly own: string; readonly says: string } | null;
  /** Setups of which there are ways to choose from. */
  readonly holdings: readonly HoldingsView[];
  readonly setups: readonly SetupView[];
  readonly operations: readonly OperationView[];
  readonly chucks: readonly { readonly value: string; readonly words: string }[];
  readonly cutters: readonly { readonly value: string; readonly words: string }[];
}

/** A job with everything the page shows of it. */
export interface JobPage {
  readonly title: string;
  readonly machine: string;
  readonly hazard: string;
  readonly invented: boolean;
  readonly units: 'mm' | 'in';
  /** The job document itself, as it was read. */
  readonly document: unknown;
  /** SVG in the screen's colours; null while there is nothing to draw. */
  readonly drawing: string | null;
  readonly sizes: readonly SizeRow[];
  /** Where features lie along the part, from its left face [mm]. */
  readonly spans: readonly { readonly feature: string; readonly from: number; readonly to: number }[];
  readonly stages: readonly { readonly stage: StageName; readonly name: string; readonly stands: string }[];
  readonly findings: readonly FindingView[];
  readonly cautions: readonly { readonly about: string; readonly lines: readonly string[] }[];
  readonly missing: readonly string[];
  /** What the readings say the part was meant to be; null while there are none. */
  readonly recovered: RecoveredView | null;
  /** Setups and operations; null while there is no route. */
  readonly routing: RouteView | null;
  readonly sheets: Readonly<Record<StageName, readonly SheetBlock[]>>;
}

/** Why a request was refused. */
export interface Refusal {
  readonly message: string;
  readonly issues: readonly {
    /** Place in the document: `part.outside[2].diameter`. */
    readonly path: string;
    readonly value: string;
    readonly expected: string;
    readonly example: string | null;
  }[];
}
