import { checkPieces } from '../../src/core/survey/checks/checkPieces';
import { BUILD_NAMES, BUILT_TABLES, SAMPLE_PIECES, type SamplePiece } from '../../src/sample/pieces';

const MM3_PER_M3 = 1e9;
const density = (p: (typeof SAMPLE_PIECES)[number]): number =>
  (p.mass * MM3_PER_M3) / (p.length * p.breadth * p.thickness);
const isSlate = (piece: SamplePiece): boolean => piece.piece.startsWith('slate');
const slates = SAMPLE_PIECES.filter(isSlate);
const of = (build: string) => SAMPLE_PIECES.filter((p) => p.build === build);

test('there are at least seven builds, each with a slate, legs, a cabinet and cushions', () => {
  expect(BUILD_NAMES.length).toBeGreaterThanOrEqual(7);
  expect(new Set(SAMPLE_PIECES.map((p) => p.build))).toEqual(new Set(BUILD_NAMES));
  for (const build of BUILD_NAMES) {
    const names = of(build).map((p) => p.piece);
    for (const part of [/^slate/, /^leg$/, /cabinet|panel/, /^cushion/]) {
      expect([build, part, names.some((name) => part.test(name))]).toEqual([build, part, true]);
    }
  }
});

// Density of slate 2700-2950 kg/m3: Cardarelli, Materials Handbook.
test.each(slates.map((p) => [p.build, p] as const))('the slate of %s weighs what its sizes make', (_, p) => {
  expect(density(p)).toBeGreaterThanOrEqual(2700);
  expect(density(p)).toBeLessThanOrEqual(2950);
});

// Common practice, no source: a one-piece slate of a 6-7 ft table weighs 110-130 kg, is just over 5 ft or about 6 ft long.
test.each([
  ['6 ft', 1524, 1676],
  ['7 ft', 1753, 1905],
])('the slate in one of a %s table is as long and as heavy as such slates are', (size, least, most) => {
  const inOne = slates.filter((p) => p.build.startsWith(size) && p.piece === 'slate in one');
  expect(inOne.length).toBeGreaterThan(0);
  for (const p of inOne) {
    expect(p.mass).toBeGreaterThanOrEqual(110);
    expect(p.mass).toBeLessThanOrEqual(130);
    expect(p.length).toBeGreaterThan(least);
    expect(p.length).toBeLessThan(most);
  }
});

// Slate of a tournament table: at least 1 in, three equal pieces: WPA tournament table and equipment specification.
test('the 9 ft slate is three equal pieces of at least an inch, and covers the playing surface', () => {
  const [slate, ...others] = slates.filter((p) => p.build.startsWith('9 ft'));
  expect(others).toEqual([]);
  expect(slate!.count).toBe(3);
  expect(slate!.thickness).toBeGreaterThanOrEqual(25.4);
  expect(slate!.length).toBeGreaterThanOrEqual(50 * 25.4);
  expect(slate!.breadth * 3).toBeGreaterThanOrEqual(100 * 25.4);
});

// From light softwood to dense board [kg/m3]: common practice, no source.
test('wooden panels, beams, legs and rails weigh what wood weighs, and hollow pieces less', () => {
  const wood = SAMPLE_PIECES.filter((p) => /panel|beam|leg|rail/.test(p.piece));
  expect(wood.length).toBeGreaterThan(20);
  for (const p of wood) expect([p.piece, density(p) > 400 && density(p) < 800]).toEqual([p.piece, true]);
  const hollow = SAMPLE_PIECES.filter((p) => /cabinet|frame/.test(p.piece));
  expect(hollow.length).toBeGreaterThan(5);
  for (const p of hollow) expect([p.piece, density(p) < 200]).toEqual([p.piece, true]);
});

test('the pieces check finds nothing to say', () => {
  const table = [
    ['Build', 'Piece', 'Length', 'Breadth', 'Thickness', 'Mass', 'Count'],
    ...SAMPLE_PIECES.map((p) => [p.build, p.piece, p.length, p.breadth, p.thickness, p.mass, p.count]),
  ];
  expect(checkPieces(table)).toEqual([]);
});

test('a built table is longer than its slate and its playing area, and stands on as many feet as it has legs', () => {
  for (const table of BUILT_TABLES) {
    const slate = of(table.build).find(isSlate)!;
    const slateLength = slate.count === 3 ? Math.max(slate.breadth * 3, slate.length) : slate.length;
    expect(table.outsideLength).toBeGreaterThan(slateLength);
    expect(table.outsideWidth).toBeGreaterThan(slate.count === 3 ? slate.length : slate.breadth);
    expect(table.outsideLength).toBeGreaterThan(table.playLength);
    expect(of(table.build).find((p) => p.piece === 'leg')!.count).toBe(table.feet);
  }
});
