import type { StageCap } from '../stages/stageKind';

/** Why a step of a route is at best tight, whatever the piece. */
export type Cap = StageCap | { readonly kind: 'straight not measured'; readonly afterStep: number };

/** The caps of a step in words that continue a sentence. */
export const capWords = (caps: readonly Cap[]): string => caps.map(wordsOf).join('; ');

function wordsOf(cap: Cap): string {
  switch (cap.kind) {
    case 'stair ends not measured':
      return 'foot or head not measured';
    case 'winding treads':
      return 'on winding treads a template goes first';
    case 'straight not measured':
      return `the straight after step ${cap.afterStep} is not measured`;
  }
}
