import { writeWorkbook } from '../sheetHost/excelts/writeWorkbook';
import { createWorkbook, type WorkbookWriter } from '../sheetHost/workbookWriter';
import { crewSheet } from './sheets/crewSheet';
import { otherBuildsSheet } from './sheets/otherBuildsSheet';
import { floorsSheet } from './sheets/floorsSheet';
import { jobSheet } from './sheets/jobSheet';
import { measureAgainSheet } from './sheets/measureAgainSheet';
import { monthSheet } from './sheets/monthSheet';
import { ordersSheet } from './sheets/ordersSheet';
import { piecesSheet } from './sheets/piecesSheet';
import { quoteSheet } from './sheets/quoteSheet';
import { routeSheet } from './sheets/routeSheet';
import { startSheet } from './sheets/startSheet';
import { verdictsSheet } from './sheets/verdictsSheet';
import { workedExamplesSheet } from './sheets/workedExamplesSheet';
import { SAMPLE_SURVEYS } from './sampleSurveys';
import type { Survey } from './survey';

/**
 * Describes the workbook of the sample month, sheet by sheet in the order of its tabs.
 * @param surveys those to lay out: all of the month when left out
 */
export function describeSampleWorkbook(surveys: readonly Survey[] = SAMPLE_SURVEYS): WorkbookWriter {
  const book = createWorkbook();
  for (const sheet of [
    startSheet,
    monthSheet,
    measureAgainSheet,
    ordersSheet,
    routeSheet,
    piecesSheet,
    verdictsSheet,
    otherBuildsSheet,
    quoteSheet,
    jobSheet,
    crewSheet,
    floorsSheet,
    workedExamplesSheet,
  ]) {
    sheet(book, surveys);
  }
  return book;
}

/** The workbook of the sample month as bytes, its results still to be computed. */
export const sampleWorkbook = (surveys: readonly Survey[] = SAMPLE_SURVEYS): Promise<Uint8Array> =>
  writeWorkbook(describeSampleWorkbook(surveys));
