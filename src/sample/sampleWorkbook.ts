import { writeWorkbook } from '../sheetHost/excelts/writeWorkbook';
import { createWorkbook, type WorkbookWriter } from '../sheetHost/workbookWriter';
import { everyBuildSheet } from './sheets/everyBuildSheet';
import { floorsSheet } from './sheets/floorsSheet';
import { jobSheet } from './sheets/jobSheet';
import { monthSheet } from './sheets/monthSheet';
import { ordersSheet } from './sheets/ordersSheet';
import { piecesSheet } from './sheets/piecesSheet';
import { quoteSheet } from './sheets/quoteSheet';
import { routeSheet } from './sheets/routeSheet';
import { startSheet } from './sheets/startSheet';
import { workedExamplesSheet } from './sheets/workedExamplesSheet';

/** Describes the workbook of the sample month, sheet by sheet in the order of its tabs. */
export function describeSampleWorkbook(): WorkbookWriter {
  const book = createWorkbook();
  for (const sheet of [
    startSheet,
    monthSheet,
    ordersSheet,
    routeSheet,
    piecesSheet,
    everyBuildSheet,
    quoteSheet,
    jobSheet,
    floorsSheet,
    workedExamplesSheet,
  ]) {
    sheet(book);
  }
  return book;
}

/** The workbook of the sample month as bytes, its results still to be computed. */
export const sampleWorkbook = (): Promise<Uint8Array> => writeWorkbook(describeSampleWorkbook());
