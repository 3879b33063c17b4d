import { EXAMPLE_RATES } from '../../core/route/jobRates';
import type { WorkbookWriter, WriterValue } from '../../sheetHost/workbookWriter';
import { INVENTED } from '../firm';
import { headed, HEADING, INPUT, showVerdicts, TENTHS, WRAPPED } from './look';
import { jobTimes, jobVerdict } from './jobSheet';
import type { Survey } from '../survey';
import { surveyList } from './ordersSheet';
import { BUILD_LIST } from './piecesSheet';

const CHOSEN_SURVEY = 'Q-10';
const CREW = 4;
/** Of the crew, who stays to level the slate and cover it: common practice, no source. */
const FITTERS = 2;

/** Example prices, common practice, no source: each firm writes its own. */
const PRICES: readonly (readonly [item: string, price: number, unit: string])[] = [
  ['Person-hour', 36, 'price units an hour'],
  ['Vehicle', 65, 'price units a job'],
  ['Mechanical aid', 80, 'price units a job'],
  ['Written assessment', 55, 'price units a job'],
  ['Frame or template trial', 45, 'price units a job'],
  ['Return visit', 120, 'price units a visit'],
  ['More hours where tight', 0.25, 'share of the hours'],
  ['Visits expected where tight', 0.3, 'visits a job'],
];

const price = (item: string): string => `INDEX(Prices[Price],MATCH("${item}",Prices[Item],0))`;
const f = (formula: string): WriterValue => ({ formula });
const order = (column: string): WriterValue =>
  f(`INDEX(Orders[${column}],MATCH(JobSurvey,Orders[Survey],0))`);
const said = (column: string): WriterValue =>
  f(`INDEX(${jobVerdict(column)},MATCH(JobBuild,${jobVerdict('A')},0))`);
const time = (column: string): WriterValue =>
  f(`INDEX(${jobTimes(column)},MATCH(JobBuild,${jobTimes('M')},0))`);

/** Prices one job from what the functions say, with ordinary formulas. */
export function quoteSheet(book: WorkbookWriter, surveys: readonly Survey[]): void {
  const sheet = book.sheet('Quote');
  headed(
    sheet,
    'Quote',
    `Choose in the yellow cells. Prices are examples in price units. ${INVENTED}`,
    'stairs',
  );
  sheet.rows('A5', [
    ['Survey', CHOSEN_SURVEY],
    ['Customer', order('Customer')],
    ['Place', order('Place')],
    ['Build asked for', order('Build')],
    ['Another build', null],
    ['Build quoted', f('IF(B9="",B8,B9)')],
    ['Crew', CREW],
    ['Of them, who stays to set up', FITTERS],
  ]);
  sheet.format('B5', INPUT).format('B9', INPUT).format('B11', INPUT).format('B12', INPUT);
  sheet.list('B5', { from: surveyList(surveys) }, 'refused').list('B9', { from: BUILD_LIST }, 'refused');
  sheet.list('B11', ['2', '3', '4', '5', '6']).list('B12', ['1', '2', '3', '4', '5', '6']);
  book.name('JobSurvey', 'Quote!$B$5').name('JobBuild', 'Quote!$B$10');
  book.name('JobCrew', 'Quote!$B$11').name('JobFitters', 'Quote!$B$12');

  sheet.rows('A13', [
    ['Verdict on the route', said('B')],
    ['Clearance, mm a side', said('C')],
    ['Closest at', f(`"step "&${bare(said('D'))}&", "&${bare(said('E'))}`)],
    ['Heaviest piece, kg', said('H')],
    ['Handling', said('I')],
    ['Reason', said('J')],
    ['Carrying, min', time('N')],
    ['Set-up, min', time('O')],
    ['Person-hours', time('P')],
    ['For this crew', time('Q')],
  ]);
  showVerdicts(sheet, 'B13', '$B$13');
  sheet.format('B17:B18', WRAPPED).format('B14', { format: TENTHS }).format('B19:B21', { format: '0.0' });

  sheet.rows('A23', [['What', 'Quantity', 'Each, price units', 'Amount, price units']], HEADING);
  const aid = 'IF(ISNUMBER(SEARCH("mechanical aid",$B$17)),1,0)';
  // Where no aid is known the assessment is due all the same.
  const assessed = 'IF(ISNUMBER(SEARCH("written assessment",$B$17)),1,0)';
  const tight = 'IF($B$13="tight",1,0)';
  const lines: readonly (readonly [string, string, string])[] = [
    ['Person-hours', '$B$21', price('Person-hour')],
    [
      'More hours on a tight route',
      `${tight}*$B$21*${price('More hours where tight')}`,
      price('Person-hour'),
    ],
    ['Vehicle', '1', price('Vehicle')],
    ['Mechanical aid for the heaviest piece', aid, price('Mechanical aid')],
    ['Written assessment', assessed, price('Written assessment')],
    ['Trial with a frame or template', tight, price('Frame or template trial')],
    ['Return visits expected', `${tight}*${price('Visits expected where tight')}`, price('Return visit')],
  ];
  lines.forEach(([what, quantity, each], i) => {
    const row = 24 + i;
    sheet.rows(`A${row}`, [[what, f(quantity), f(each), f(`B${row}*C${row}`)]]);
  });
  const total = 24 + lines.length;
  sheet.rows(`A${total}`, [['Delivery and set-up', null, null, f(`SUM(D24:D${total - 1})`)]], { bold: true });
  sheet.format(`B24:D${total}`, { format: '0.00' });
  sheet.rows(`A${total + 2}`, [
    [
      'What the price is worth',
      f(
        'IF($B$13="goes","holds, once people, aids and floor are planned",IF($B$13="tight",' +
          '"holds only after a trial with a frame or template",IF($B$13="not measured",' +
          '"no price before the survey is complete",IF($B$13="no way found",' +
          '"no price: measure again or choose another build","no price: choose another build"))))',
      ),
    ],
    ['Build to advise', f(`INDEX(${jobVerdict('A')},1)&" ("&INDEX(${jobVerdict('B')},1)&")"`)],
    ['Whole-table floor check', 'see Floors; a structural engineer decides'],
  ]);

  sheet.table({
    name: 'Prices',
    at: 'F5',
    columns: [
      { name: 'Item', width: 30 },
      { name: 'Price', width: 9, format: '0.00' },
      { name: 'Unit', width: 22 },
    ],
    rows: PRICES.map((row) => [...row]),
  });
  sheet.table({
    name: 'Rates',
    at: 'F17',
    columns: [{ name: 'Rate' }, { name: 'Minutes', format: '0.00' }],
    rows: Object.entries(EXAMPLE_RATES).map(([what, minutes]) => [what, minutes]),
  });
  sheet.cell('F16', 'Minutes of a job: an example, write your own', { italic: true });
  sheet.format('F5:H5', HEADING).format('F17:G17', HEADING);
  sheet.widths([34, 34, 12, 12, 2, 30, 9, 22]);
  sheet.print({
    area: `A1:H${Math.max(total + 4, 17 + Object.keys(EXAMPLE_RATES).length)}`,
    across: 'landscape',
  });
}

const bare = (value: WriterValue): string => (value as { readonly formula: string }).formula;
