import type { RouteFault, WordDoubt } from '../table/stageRow';
import type { MeasureName } from '../../stages/measures';
import type { StageName } from '../../stages/kinds';
import type { UnitMeant } from './unitsMeant';

/** Row index of a problem with the table as a whole, shown at its header row. */
export const HEADER_ROW = -1;

interface AtRow {
  /**
   * An error keeps a row, a piece or a table from being taken as measured; a warning is to be looked at; a question
   * is about what the route leaves open, which is supposed meanwhile.
   */
  readonly severity: 'error' | 'warning' | 'question';
  /** Zero-based place in the table, header not counted; HEADER_ROW for the table as a whole. */
  readonly rowIndex: number;
}

/** What is wrong with the header row. */
export type HeaderProblem = AtRow &
  (
    | { readonly kind: 'column missing'; readonly column: string; readonly near?: string }
    | { readonly kind: 'column doubled'; readonly column: string; readonly times: number }
    | { readonly kind: 'no rows' }
  );

/** What is wrong with one row of a route, by itself. */
export type RowProblem = AtRow & { readonly measure?: MeasureName } & (
    | { readonly kind: 'no stage' }
    | { readonly kind: 'unknown stage'; readonly got: string; readonly nearest?: readonly StageName[] }
    | { readonly kind: 'no stage of ours'; readonly got: string }
    | { readonly kind: 'no step number' }
    | { readonly kind: 'header repeated' }
    | { readonly kind: 'word not taken'; readonly doubt: WordDoubt }
    | { readonly kind: 'hand where nothing turns'; readonly stage: StageName }
    | { readonly kind: 'run not used'; readonly stage: StageName }
    | {
        /** A narrow part at a stage that knows none, or a height of one whose width was not taken: nothing is made of it. */
        readonly kind: 'narrow part not used';
        readonly stage: StageName;
        readonly measure: 'lowWidth' | 'lowHeight';
        readonly lacksWidth: boolean;
      }
    | {
        readonly kind: 'narrow part as wide';
        readonly measure: 'lowWidth';
        readonly lowWidth: number;
        readonly width: number;
      }
    | { readonly kind: 'height of the narrow part asked'; readonly measure: 'lowHeight' }
    | { readonly kind: 'not a whole step'; readonly step: number }
    | {
        readonly kind: 'not measured';
        readonly measure: MeasureName;
        readonly stage: StageName;
        /** The table has no column for it. */
        readonly noColumn: boolean;
        /** Run is filled in, which some write for the going. */
        readonly runForGoing?: boolean;
      }
    | {
        readonly kind: 'refused';
        readonly measure: MeasureName;
        readonly stage: StageName | undefined;
        readonly got: unknown;
        readonly why: string;
      }
    | {
        /** A bare 0 that is taken for none, and that an empty cell can arrive as. */
        readonly kind: 'bare zero asked';
        readonly measure: MeasureName;
        readonly stage: StageName;
      }
    | {
        readonly kind: 'unusual';
        readonly measure: MeasureName;
        readonly stage: StageName;
        readonly value: number;
        readonly least: number;
        readonly most: number;
        readonly source: string;
        readonly meant: readonly UnitMeant[];
      }
    | { readonly kind: 'width and height exchanged'; readonly width: number; readonly height: number }
    | { readonly kind: 'rise and going exchanged'; readonly rise: number; readonly going: number }
    | {
        readonly kind: 'door leaf';
        readonly measure: 'width';
        readonly leaf: number;
        /** What such a leaf leaves clear, open at a right angle, in each thickness that is usual. */
        readonly leaves: readonly LeafClear[];
        /** The note says that it was measured clear. */
        readonly noteSaysClear: boolean;
      }
    | {
        readonly kind: 'headroom square';
        readonly measure: 'height';
        readonly value: number;
        /** What it would be plumb. */
        readonly plumb: number;
        /** [rad] */
        readonly pitch: number;
      }
    | {
        readonly kind: 'steep';
        /** [rad] */
        readonly pitch: number;
        readonly as: 'ladder' | 'steep stair';
        /** What it is beyond [rad]. */
        readonly limit: number;
      }
    | {
        readonly kind: 'rises and going';
        readonly sum: number;
        readonly least: number;
        readonly most: number;
      }
    | {
        readonly kind: 'rise of the flight';
        readonly measure: 'rise';
        readonly total: number;
        readonly risers: number;
      }
    | {
        readonly kind: 'flight length';
        readonly measure: 'length';
        readonly value: number;
        readonly risers: number;
        readonly expected: number;
      }
    | {
        readonly kind: 'landing shallow';
        readonly measure: 'depth';
        readonly depth: number;
        readonly width: number;
      }
    | {
        readonly kind: 'ceiling below the door';
        readonly measure: 'ceiling';
        readonly stage: StageName;
        readonly height: number;
        readonly ceiling: number;
      }
    | {
        readonly kind: 'column of another stage';
        readonly column: string;
        readonly stage: StageName;
        readonly stages: readonly StageName[];
      }
  );

/** What a leaf of a thickness leaves clear [mm]. */
export interface LeafClear {
  readonly thickness: number;
  readonly clear: number;
}

/** What is wrong between the rows of a survey. */
export type RouteProblem = AtRow &
  (
    | { readonly kind: 'no survey name' }
    | { readonly kind: 'route fault'; readonly fault: RouteFault }
    | { readonly kind: 'asked'; readonly about: RouteQuestion }
    | { readonly kind: 'step doubled'; readonly step: number; readonly survey: string }
    | {
        readonly kind: 'step missing';
        readonly from: number;
        readonly to: number;
        readonly survey: string;
      }
    | { readonly kind: 'ends before the room'; readonly stage: StageName; readonly survey: string }
    | {
        readonly kind: 'not a storey';
        readonly measure: 'risers';
        readonly risers: number;
        readonly total: number;
        readonly least: number;
        readonly most: number;
      }
    | {
        readonly kind: 'storey against ceiling';
        readonly measure: 'risers';
        readonly risers: number;
        readonly rise: number;
        readonly total: number;
        readonly ceiling: number;
        readonly least: number;
        readonly most: number;
      }
  );

/** One of the three sizes of a piece. */
export type SizeName = 'length' | 'breadth' | 'thickness';
/** A measure of a piece in a table of pieces. */
export type PieceMeasure = SizeName | 'mass' | 'count';

/** What is wrong with a row of the pieces. */
export type PieceProblem = AtRow &
  (
    | { readonly kind: 'no build' }
    | { readonly kind: 'no piece name' }
    | { readonly kind: 'size not given'; readonly measure: PieceMeasure }
    | {
        readonly kind: 'size refused';
        readonly measure: PieceMeasure;
        readonly got: unknown;
        readonly why: string;
      }
    | { readonly kind: 'count taken as one' }
    | { readonly kind: 'sizes out of order'; readonly sizes: readonly [number, number, number] }
    | {
        readonly kind: 'density';
        readonly density: number;
        readonly least: number;
        readonly most: number;
        readonly slate: boolean;
        readonly meant: readonly DensityMeant[];
      }
    | {
        readonly kind: 'slate thickness';
        readonly value: number;
        readonly least: number;
        readonly most: number;
      }
    | { readonly kind: 'piece doubled'; readonly build: string; readonly piece: string }
    | {
        readonly kind: 'sections missing';
        readonly build: string;
        readonly of: number;
        readonly found: number;
        readonly missing?: readonly number[];
      }
    | {
        readonly kind: 'part missing';
        readonly build: string;
        readonly part: string;
        /** A build that has it. */
        readonly other: string;
      }
  );

/** A reading of a piece under which its mass and its sizes would agree. */
export type DensityMeant =
  | { readonly measure: SizeName; readonly unit: 'cm' | 'in'; readonly value: number }
  | { readonly measure: 'mass'; readonly unit: 'lb'; readonly value: number }
  | {
      readonly measure: 'mass';
      readonly unit: 'all together';
      readonly count: number;
      readonly value: number;
    };

/** What a route leaves open. */
export type RouteQuestion =
  | { readonly kind: 'which way the stair goes' }
  | { readonly kind: 'turn at the stair end'; readonly end: 'foot' | 'head'; readonly space: number }
  | { readonly kind: 'which hand'; readonly straight: number }
  | { readonly kind: 'arm and next row differ'; readonly arm: number; readonly next: number }
  | {
      readonly kind: 'straight and space differ';
      readonly run: number;
      readonly space: number;
      readonly width: number;
    }
  | { readonly kind: 'floor and passage differ'; readonly space: number; readonly length: number }
  | { readonly kind: 'no flight beside the landing'; readonly side: 'before' | 'after' }
  | {
      /** A landing whose Width is that of the flight above it: it looks measured downward. */
      readonly kind: 'landing measured downward';
      readonly lower: number;
      readonly upper: number;
    }
  /** A flight beside a landing whose measured space is at the landing's end of it, and not at the other. */
  | { readonly kind: 'space at the landing'; readonly end: 'foot' | 'head' }
  | { readonly kind: 'passage goes on beside the door' }
  | { readonly kind: 'openings face each other' };

/** What is wrong, doubtful or unanswered in a table, as data; `problemWords` words it. */
export type SurveyProblem = HeaderProblem | RowProblem | RouteProblem | PieceProblem;
