import type { SceneBox } from '../../space/motion';
import type { Frame } from './frame';
import type { Solid } from './solid';

/** What is open in a plane across the way [mm]: so wide, and so high above the frame's floor. */
export interface Section {
  readonly width: number;
  readonly height: number;
}

/**
 * One row as it is built, in coordinates of its own: its faces but for those in the planes where it begins and ends,
 * which depend on the rows beside it.
 */
export interface BuiltRow {
  /** Where the way comes in and leaves, in the row's own coordinates. */
  readonly entry: Frame;
  readonly exit: Frame;
  readonly entrySection: Section;
  /** Undefined where the way ends in the row. */
  readonly exitSection: Section | undefined;
  readonly solids: readonly Solid[];
  /** Boxes in its free space, enough to tell what stands in it. */
  readonly open: readonly SceneBox[];
  /** Boxes that hold all of it, where `open` leaves some of it out. */
  readonly openAtMost?: readonly SceneBox[];
}

/** A row walked the other way. */
export function walkedBack(row: BuiltRow): BuiltRow {
  const { entry, exit, entrySection, exitSection } = row;
  if (!exitSection) return row;
  return {
    ...row,
    entry: { at: exit.at, heading: exit.heading + Math.PI },
    exit: { at: entry.at, heading: entry.heading + Math.PI },
    entrySection: exitSection,
    exitSection: entrySection,
  };
}
