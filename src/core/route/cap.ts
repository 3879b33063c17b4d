import type { StageCap } from '../stages/stageKind';

/** Why a step of a route is at best tight, whatever the piece. */
export type Cap = Extract<StageCap, { readonly kind: 'winding treads' }>;

/** The caps of a step in words that continue a sentence. */
export const capWords = (caps: readonly Cap[]): string => caps.map(wordsOf).join('; ');

function wordsOf(cap: Cap): string {
  switch (cap.kind) {
    case 'winding treads':
      return 'on winding treads a template goes first';
  }
}
