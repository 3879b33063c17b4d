import { callsBoard } from '../worksheet/calls/callsBoard';
import { mountPane } from './mountPane';
import { officeSheetAccess } from './officeSheetAccess';

// For oldEngine.js, which comes after this and says so where this could not be read.
Object.assign(window, { carryPaneRan: true });

void Office.onReady(async ({ host }) => {
  const root = document.getElementById('pane');
  if (!root) return;
  if (host === Office.HostType.Excel) await mountPane(root, officeSheetAccess(), callsBoard());
  else root.textContent = 'This page is the pane of an Excel add-in: open it from the Home tab of Excel.';
});
