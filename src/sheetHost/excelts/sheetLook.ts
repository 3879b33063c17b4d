import type { Worksheet } from '@cj-tech-master/excelts';
import { blockAddress, readAddress, within, type Block } from '../address';
import type { CellChoices, CellLook, SheetLook } from '../cellLook';
import type { CellValue } from '../hostValues';
import type { ConditionHolds } from './conditionHolds';

/** What the library holds of a look; its types say less. */
interface HeldColor {
  readonly argb?: string;
}
interface HeldStyle {
  readonly fill?: { readonly pattern?: string; readonly fgColor?: HeldColor; readonly bgColor?: HeldColor };
  readonly font?: {
    readonly bold?: boolean;
    readonly italic?: boolean;
    readonly underline?: boolean | string;
    readonly color?: HeldColor;
  };
  readonly alignment?: { readonly horizontal?: string };
}
interface HeldRule {
  readonly type: string;
  readonly priority?: number;
  readonly formulae?: readonly unknown[];
  readonly style?: HeldStyle;
}

interface Condition {
  readonly block: Block;
  readonly priority: number;
  readonly formula: string;
  readonly look: CellLook;
}

/** What a look is read with. */
export interface LookReader {
  /** What a cell of this sheet shows, counted from 0. */
  readonly value: (row: number, column: number) => CellValue;
  /** What the cells of a range shows, the range as a formula names it; undefined where it is none. */
  readonly range: (reference: string) => readonly CellValue[] | undefined;
  readonly conditions: ConditionHolds;
}

/** How a worksheet of the library looks. Themes and patterns are left out: a colour that is not written is none. */
export function sheetLook(sheet: Worksheet, reader: LookReader): SheetLook {
  const conditions = conditionsOf(sheet);
  const [view] = (sheet.views ?? []) as readonly { state?: string; xSplit?: number; ySplit?: number }[];
  const frozen = view?.state === 'frozen';
  return {
    frozen: { rows: (frozen && view.ySplit) || 0, columns: (frozen && view.xSplit) || 0 },
    width: (column) => {
      const { width } = sheet.getColumn(column + 1);
      return typeof width === 'number' && width > 0 ? width : undefined;
    },
    cell: (row, column) => {
      const own = sheet.findCell(row + 1, column + 1) as HeldStyle | undefined;
      const looks = conditions
        .filter(({ block, formula }) => {
          if (!within(block, row, column)) return false;
          return reader.conditions.holds(formula, row - block.row, column - block.column, reader.value);
        })
        .map(({ look }) => look);
      // The first of them that says something is what is seen.
      return [own ? lookOf(own) : {}, ...looks.reverse()].reduce(
        (below, above) => ({ ...below, ...above }),
        {},
      );
    },
    wraps: (row, column) => {
      const own = sheet.findCell(row + 1, column + 1);
      // A joined cell is as wide as all that it is joined of: its text runs over them.
      return own?.alignment?.wrapText === true && !own.isMerged;
    },
    choices: (row, column) => choicesOf(sheet, row, column, reader),
  };
}

function conditionsOf(sheet: Worksheet): Condition[] {
  const held = sheet as unknown as {
    readonly conditionalFormattings?: readonly {
      readonly ref: string;
      readonly rules: readonly HeldRule[];
    }[];
  };
  return (held.conditionalFormattings ?? [])
    .flatMap(({ ref, rules }) =>
      ref.split(' ').flatMap((range) => {
        const block = readAddress(range);
        return rules.flatMap((rule): Condition[] => {
          const [formula] = rule.formulae ?? [];
          if (!block || rule.type !== 'expression' || typeof formula !== 'string' || !rule.style) return [];
          return [{ block, priority: rule.priority ?? Infinity, formula, look: lookOf(rule.style, true) }];
        });
      }),
    )
    .sort((a, b) => a.priority - b.priority);
}

/** @param ofCondition a conditional format has its fill in the background colour */
function lookOf({ fill, font, alignment }: HeldStyle, ofCondition = false): CellLook {
  const filled =
    fill && fill.pattern !== 'none'
      ? rgb(ofCondition ? (fill.bgColor ?? fill.fgColor) : fill.fgColor)
      : undefined;
  const color = rgb(font?.color);
  const align = alignment?.horizontal;
  return {
    ...(filled === undefined ? {} : { fill: filled }),
    ...(color === undefined ? {} : { color }),
    ...(font?.bold ? { bold: true } : {}),
    ...(font?.italic ? { italic: true } : {}),
    ...(font?.underline && font.underline !== 'none' ? { underline: true } : {}),
    ...(align === 'left' || align === 'center' || align === 'right' ? { align } : {}),
  };
}

function rgb({ argb = '' }: HeldColor = {}): string | undefined {
  return /^[0-9a-f]{8}$/i.test(argb) ? argb.slice(2).toUpperCase() : undefined;
}

function choicesOf(
  sheet: Worksheet,
  row: number,
  column: number,
  reader: LookReader,
): CellChoices | undefined {
  const found = sheet.dataValidations.find(blockAddress({ row, column, rows: 1, columns: 1 })) as
    | { readonly type?: string; readonly formulae?: readonly unknown[]; readonly showErrorMessage?: boolean }
    | undefined;
  const [from] = found?.formulae ?? [];
  if (found?.type !== 'list' || typeof from !== 'string') return undefined;
  const words = /^".*"$/s.test(from)
    ? from.slice(1, -1).replace(/""/g, '"').split(',')
    : reader
        .range(from.replace(/^=/, ''))
        ?.flatMap((value) => (typeof value === 'string' || typeof value === 'number' ? [String(value)] : []));
  return words && { words, others: found.showErrorMessage === true ? 'refused' : 'allowed' };
}
