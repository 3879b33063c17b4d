import { doorPassage, type DoorPlan } from '../../src/core/geometry/doorIntoPassage';
import { passageBracket, type PassageBracket } from '../../src/core/geometry/planar/passageBracket';

/**
 * Brackets by the planner of what `doorIntoPassage` answers in closed form.
 * @param p side that comes lengthwise [mm]
 * @param q the other side [mm]
 * @returns paddings [mm a side]: one that passes, and one that is shown not to
 */
export function doorPassageBracket(
  p: number,
  q: number,
  plan: DoorPlan,
  options: { readonly tolerance?: number; readonly guess?: number; readonly workLimit?: number } = {},
): PassageBracket {
  return passageBracket(
    (x, y) => doorPassage(x, y, plan),
    p,
    q,
    Math.min((plan.door - q) / 2, (plan.passage - q) / 2),
    options,
  );
}
