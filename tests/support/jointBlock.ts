import type { JointBlock, JointRow } from '../../src/core/joint/jointRow';

/** Rows that stand close, with straight arms at both ends unless said otherwise. */
export const block = (rows: readonly JointRow[], ends: Partial<JointBlock> = {}): JointBlock => ({
  rows,
  before: 'straight',
  after: 'straight',
  ...ends,
});
