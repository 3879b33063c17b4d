/**
 * The builds that the firm of the sample month supplies, as pieces: example values, common practice, no source,
 * in the firm's order of preference: the largest first, and the plainest build of each size.
 *
 * Slates weigh what their sizes make at 2800 kg/m3, within the 2700-2950 kg/m3 of Cardarelli, Materials Handbook;
 * pockets and bolt holes are not taken off. A 7 ft table's slate in one is about 6 ft long, a 6 ft table's just
 * over 5 ft, both of 110-130 kg: common practice, no source. Wooden pieces lie between softwood and dense board.
 */
export interface SamplePiece {
  readonly build: BuildName;
  readonly piece: string;
  /** [mm] */
  readonly length: number;
  /** [mm] */
  readonly breadth: number;
  /** [mm] */
  readonly thickness: number;
  /** Of one [kg]. */
  readonly mass: number;
  readonly count: number;
}

export const BUILD_NAMES = [
  '9 ft, slate in 3, knocked down',
  '8 ft, slate in 1, built up',
  '8 ft, slate in 3, built up',
  '8 ft, slate in 3, knocked down',
  '7 ft, slate in 1, built up',
  '7 ft, slate in 1, knocked down',
  '7 ft, slate in 3, knocked down',
  '6 ft, slate in 1, built up',
  '6 ft, slate in 1, knocked down',
] as const;

export type BuildName = (typeof BUILD_NAMES)[number];

type PieceRow = readonly [
  piece: string,
  length: number,
  breadth: number,
  thickness: number,
  mass: number,
  count: number,
];

const build = (name: BuildName, rows: readonly PieceRow[]): SamplePiece[] =>
  rows.map(([piece, length, breadth, thickness, mass, count]) => ({
    build: name,
    piece,
    length,
    breadth,
    thickness,
    mass,
    count,
  }));

const FITTINGS: PieceRow = ['box of bolts, cloth and tools', 600, 300, 120, 18, 1];

/** Every piece of every build, build by build. */
export const SAMPLE_PIECES: readonly SamplePiece[] = [
  ...build('9 ft, slate in 3, knocked down', [
    ['slate, one of three', 1430, 900, 26, 94, 3],
    ['long side panel', 2640, 320, 40, 22, 2],
    ['end panel', 1380, 320, 40, 11, 2],
    ['cross beam', 1300, 160, 50, 6, 3],
    ['leg', 720, 160, 160, 11, 4],
    ['cushion rail', 1330, 140, 60, 7, 6],
    FITTINGS,
  ]),
  ...build('8 ft, slate in 1, built up', [
    ['slate in one', 2330, 1210, 25, 197, 1],
    ['cabinet, built up', 2480, 1360, 340, 92, 1],
    ['leg', 700, 150, 150, 9, 4],
    ['cushion frame', 2500, 1380, 80, 34, 1],
    FITTINGS,
  ]),
  ...build('8 ft, slate in 3, built up', [
    ['slate, one of three', 1270, 800, 26, 74, 3],
    ['cabinet, built up', 2480, 1360, 340, 92, 1],
    ['leg', 700, 150, 150, 9, 4],
    ['cushion rail', 1190, 140, 60, 6, 6],
    FITTINGS,
  ]),
  ...build('8 ft, slate in 3, knocked down', [
    ['slate, one of three', 1270, 800, 26, 74, 3],
    ['long side panel', 2400, 320, 40, 20, 2],
    ['end panel', 1280, 320, 40, 10, 2],
    ['cross beam', 1200, 160, 50, 6, 2],
    ['leg', 700, 150, 150, 9, 4],
    ['cushion rail', 1190, 140, 60, 6, 6],
    FITTINGS,
  ]),
  ...build('7 ft, slate in 1, built up', [
    ['slate in one', 1830, 930, 26, 124, 1],
    ['cabinet, built up', 2060, 1150, 330, 68, 1],
    ['leg', 700, 130, 130, 7, 4],
    ['cushion frame', 2080, 1170, 80, 27, 1],
    FITTINGS,
  ]),
  ...build('7 ft, slate in 1, knocked down', [
    ['slate in one', 1830, 930, 26, 124, 1],
    ['long side panel', 1990, 300, 38, 15, 2],
    ['end panel', 1080, 300, 38, 8, 2],
    ['cross beam', 1010, 150, 45, 4, 2],
    ['leg', 700, 130, 130, 7, 4],
    ['cushion rail', 1000, 130, 55, 5, 6],
    FITTINGS,
  ]),
  ...build('7 ft, slate in 3, knocked down', [
    ['slate, one of three', 930, 610, 26, 41, 3],
    ['long side panel', 1990, 300, 38, 15, 2],
    ['end panel', 1080, 300, 38, 8, 2],
    ['cross beam', 1010, 150, 45, 4, 2],
    ['leg', 700, 130, 130, 7, 4],
    ['cushion rail', 1000, 130, 55, 5, 6],
    FITTINGS,
  ]),
  ...build('6 ft, slate in 1, built up', [
    ['slate in one', 1570, 840, 30, 111, 1],
    ['cabinet, built up', 1810, 1030, 320, 56, 1],
    ['leg', 690, 120, 120, 6, 4],
    ['cushion frame', 1830, 1050, 80, 23, 1],
    FITTINGS,
  ]),
  ...build('6 ft, slate in 1, knocked down', [
    ['slate in one', 1570, 840, 30, 111, 1],
    ['long side panel', 1740, 290, 36, 12, 2],
    ['end panel', 970, 290, 36, 7, 2],
    ['cross beam', 900, 150, 45, 4, 2],
    ['leg', 690, 120, 120, 6, 4],
    ['cushion rail', 860, 120, 55, 4, 6],
    FITTINGS,
  ]),
];

/** What a build takes up when it stands, and where it is played [mm]: example values, common practice, no source. */
export interface BuiltTable {
  readonly build: BuildName;
  readonly outsideLength: number;
  readonly outsideWidth: number;
  readonly playLength: number;
  readonly playWidth: number;
  readonly feet: number;
}

/** 9 ft: 100 x 50 in, WPA equipment specification; 8 ft 88 x 44 and 7 ft 78 x 39 in: common practice, no source. */
export const BUILT_TABLES: readonly BuiltTable[] = BUILD_NAMES.map((name) => {
  const sizes = {
    '9': [2720, 1450, 2540, 1270],
    '8': [2500, 1380, 2235, 1118],
    '7': [2080, 1170, 1981, 991],
    // A 6 ft table's playing area: common practice, no source.
    '6': [1830, 1050, 1650, 825],
  } as const;
  const [outsideLength, outsideWidth, playLength, playWidth] = sizes[name[0] as keyof typeof sizes];
  return { build: name, outsideLength, outsideWidth, playLength, playWidth, feet: 4 };
});
