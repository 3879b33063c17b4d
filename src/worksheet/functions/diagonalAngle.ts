import { degrees } from '../../core/measures/angle';
import { refused } from '../../core/measures/problem';
import { faceThroughOpening } from '../../core/stages/opening/diagonal';
import { faceTooShort, PIECE_LENGTH_RANGE } from '../arguments';
import { numberFunction } from '../namedArguments';
import { diagonal } from './diagonal';

export const diagonalAngle = numberFunction({
  id: 'DIAGONALANGLE',
  group: 'Clearance',
  summary: 'Best turn of a face in an opening',
  arguments: diagonal.arguments,
  result: { meaning: "angle of the face's long side to the opening's long side, 0 to 90", unit: 'degrees' },
  source: diagonal.source,
  example: {
    // Equal rooms on both sides: cos t - sin t = (1000 - 800)/(1200 - 200) = 0.2, t = 36.8699 degrees (3-4-5).
    arguments: [800, 1000, 1200, 200],
    result: 36.86989764584402,
    within: 1e-9,
    source: 'the 3-4-5 triangle: cos t - sin t = 4/5 - 3/5',
  },
  compute: ({ openingWidth: width, openingHeight: height, faceLength, faceWidth }, working) => {
    const longest = Math.max(faceLength, faceWidth);
    if (longest < PIECE_LENGTH_RANGE.least) return refused(faceTooShort(longest));
    const { angle } = faceThroughOpening({ width, height, faceLength, faceWidth }, working);
    working?.({
      what: "Angle between the face's long side and the opening's long side",
      formula: 'cos t - sin t = (a - b)/(p - q), or 0 square on',
      value: degrees(angle),
      unit: 'degrees',
      source: diagonal.source,
    });
    return degrees(angle);
  },
});
