/** What `npm run excel` was asked for. */
export type ExcelOrder =
  | { readonly act: 'stop' }
  | { readonly act: 'start'; readonly place: 'desktop' }
  | { readonly act: 'start'; readonly place: 'web'; readonly document: string };

const USAGE =
  'npm run excel opens Excel on this computer with the add-in; npm run excel -- web --document https://… a workbook in the browser; npm run excel -- stop takes the add-in out again';

/**
 * Reads what follows `npm run excel --`. Throws where it cannot be done, and says what can.
 * @param platform where this runs: Excel for the desktop is on Windows and Mac alone
 */
export function readExcelOrder(
  given: readonly string[],
  platform: NodeJS.Platform = process.platform,
): ExcelOrder {
  const [first = 'desktop', ...rest] = given;
  if (first === 'web') {
    const [flag, document, ...more] = rest;
    if (flag !== '--document' || document === undefined || more.length > 0) throw new Error(USAGE);
    if (!/^https:\/\/\S+$/.test(document))
      throw new Error(`document is "${document}": allowed is the https address of a workbook in the browser`);
    return { act: 'start', place: 'web', document };
  }
  if (rest.length > 0 || (first !== 'desktop' && first !== 'stop'))
    throw new Error(`"${given.join(' ')}" is not known. ${USAGE}`);
  if (first === 'stop') return { act: 'stop' };
  if (platform !== 'win32' && platform !== 'darwin')
    throw new Error(`Excel for the desktop is not on ${platform}: only Windows and Mac have it. ${USAGE}`);
  return { act: 'start', place: 'desktop' };
}
