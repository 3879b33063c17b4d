import { LUMBER_GRADES, type LumberGrade } from './lumberGrades';
import { GRADES, type Grade } from './strengthClasses';

/** What a joist may be graded as: a strength class of EN 338, or a grade of North American lumber. */
export type JoistGrade = Grade | LumberGrade;

/** Every grade that a joist may have here. */
export const JOIST_GRADES: readonly JoistGrade[] = [...GRADES, ...LUMBER_GRADES];
