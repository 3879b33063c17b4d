import { CAUTIONS } from '../../core/measures/cautions';
import { sortedPiece, type PieceSize } from '../../core/measures/piece';
import { found, refused, type Problem } from '../../core/measures/problem';
import { stagePassages } from '../../core/route/stagePassages';
import { measureHeading } from '../../core/survey/words/measureHeading';
import { readHeaders } from '../../core/survey/table/readHeaders';
import { readRow } from '../../core/survey/table/readRow';
import { STAGE_NAMES, type StageName } from '../../core/stages/kinds';
import { shortfallOf } from '../../core/survey/table/shortfall';
import type { StageRow } from '../../core/survey/table/stageRow';
import { bestPassage } from '../../core/stages/opening/opening';
import { PIECE_LENGTH_RANGE, PIECE_SIZES, pieceTooShort } from '../arguments';
import type { TableCell } from '../description';
import { tableFunction } from '../namedArguments';
import { ROUTE_MOTIONS } from '../verdictTable';
import { firstOf } from '../../core/lists/ends';

export const stageClear = tableFunction({
  id: 'STAGECLEAR',
  group: 'Routes and surveys',
  summary: 'Clearance of a piece at each row of a route, every stage in its own best pose',
  arguments: [
    { name: 'headers', help: 'the header row of the route', quantity: 'range' },
    { name: 'rows', help: 'the rows of the route, or some of them', quantity: 'range' },
    ...PIECE_SIZES,
  ],
  result: {
    meaning: 'the clearance of each row, one below the other; an empty row stays empty',
    unit: 'mm a side',
  },
  source: 'each stage by its own function: OPENING, CORNER, FLIGHT and the rest',
  motions: ROUTE_MOTIONS,
  validity:
    'each stage alone; the best pose of each may not make one chain: STAGES and VERDICT look at the route',
  caution: CAUTIONS.route,
  example: {
    arguments: [
      [['Stage', 'Width', 'Height']],
      [
        ['door', 125, 1981],
        ['door', '225 mm', 1981],
      ],
      1830,
      930,
      25,
    ],
    result: [[50], [100]],
    within: 1e-9,
    source: 'on edge, half of what the width leaves: (125 - 25)/2 and (225 - 25)/2',
  },
  compute: ({ headers, rows, length, breadth, thickness }) => {
    const piece = sortedPiece(length, breadth, thickness);
    if (piece.length < PIECE_LENGTH_RANGE.least) return refused(pieceTooShort(piece.length));
    if (headers.length !== 1) {
      return refused({
        kind: 'impossible',
        argument: 'headers',
        got: `${headers.length} rows`,
        because: 'the headers are one row',
      });
    }
    const { columns } = readHeaders(firstOf(headers));
    if (columns.stage.length === 0) {
      const got = firstOf(headers)
        .filter((cell) => typeof cell === 'string')
        .join(', ');
      return refused({ kind: 'impossible', argument: 'headers', got, because: 'there is no column Stage' });
    }
    // A table with no cell at all would be no answer; an empty row below headers still gives one.
    if (rows.every((cells) => cells.length === 0)) {
      return refused({
        kind: 'impossible',
        argument: 'rows',
        got: '0 rows',
        because: 'it takes at least one row of the route',
      });
    }
    return found(
      rows.map((cells, i): TableCell[] => {
        const row = readRow(columns, cells, i);
        return [row === undefined ? '' : clearanceOf(row, piece)];
      }),
    );
  },
});

function clearanceOf(row: StageRow, piece: PieceSize): TableCell {
  const { stage } = row;
  if (stage === undefined) return { problem: stageProblem(row) };
  const problem = measureProblem(row, stage);
  if (problem) return { problem };
  const passages = stagePassages(stage, row.measures, piece);
  const best = passages.length > 0 ? bestPassage(passages) : undefined;
  // The figure of a search that found nothing says nothing of the stage.
  if (best && best.nothingFound !== true && Number.isFinite(best.clearance)) return best.clearance;
  return {
    problem: {
      kind: 'no answer',
      because: `no motion is shown for this ${stage}`,
      instead: 'measure it again, or try a frame',
    },
  };
}

const stageProblem = ({ stageText }: StageRow): Problem =>
  stageText.trim() === ''
    ? { kind: 'not measured', argument: 'Stage' }
    : { kind: 'not readable', argument: 'Stage', got: stageText, allowed: STAGE_NAMES.join(', ') };

function measureProblem(row: StageRow, stage: StageName): Problem | undefined {
  const shortfall = shortfallOf(row, stage);
  if (!shortfall) return undefined;
  if (shortfall.kind === 'not measured') {
    return { kind: 'not measured', argument: measureHeading(shortfall.measure) };
  }
  const { measure, got, why } = shortfall.refusal;
  return { kind: 'impossible', argument: measureHeading(measure), got, because: why };
}
