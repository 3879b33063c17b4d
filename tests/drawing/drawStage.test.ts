import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { drawStage } from '../../src/drawing/drawStage';
import { stageNeeds, STAGE_NAMES, type StageName } from '../../src/core/stages/kinds';
import type { StageMeasures } from '../../src/core/stages/measures';

const MEASURES: Readonly<Record<StageName, StageMeasures>> = {
  door: { width: 762, height: 1981 },
  'side door': { width: 762, height: 1981, wall: 110, widthOut: 900, ceiling: 2300, depth: 650 },
  passage: { width: 900, height: 2300, length: 3000 },
  steps: { width: 1010, rise: 165, going: 310, risers: 3, height: 2320 },
  ramp: { width: 960, length: 2450, rise: 410, height: 2330 },
  corner: { width: 800, widthOut: 760, height: 2310, turn: 75 },
  flight: {
    width: 860,
    height: 2050,
    rise: 190,
    going: 240,
    risers: 12,
    footCeiling: 2405,
    footSpace: 1210,
    headCeiling: 2395,
    headSpace: 1015,
  },
  'quarter landing': { width: 850, widthOut: 870, height: 2100, rise: 190, going: 240, overRail: 900 },
  'half landing': { width: 800, well: 120, depth: 850, height: 2000, rise: 190, going: 240, ceiling: 2410 },
  winder: { width: 850, height: 2010, turn: 90, rise: 190, going: 240 },
  lift: { width: 800, height: 2005, widthOut: 1100, depth: 1400, ceiling: 2210 },
  room: { length: 5400, width: 4200, height: 2350 },
};

describe.each(STAGE_NAMES)('the drawing of a %s', (stage) => {
  const drawings = [
    drawStage(stage, MEASURES[stage])!,
    drawStage(stage, MEASURES[stage], { notes: ['No way shown: the place alone'] })!,
  ];

  test('is well-formed and holds only finite numbers', () => {
    for (const { svg } of drawings) {
      expect(XMLValidator.validate(svg)).toBe(true);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    }
  });

  test('is an image with a title and a description that are there', () => {
    for (const { svg, text } of drawings) {
      const parsed = new XMLParser({ ignoreAttributes: false, processEntities: true }).parse(svg).svg;
      expect(parsed['@_role']).toBe('img');
      expect(parsed['@_aria-labelledby']).toBe(parsed.title['@_id']);
      expect(parsed['@_aria-describedby']).toBe(parsed.desc['@_id']);
      expect(parsed.desc['#text']).toBe(text);
      expect(parsed.title['#text'].length).toBeGreaterThan(10);
    }
  });

  test('needs no inline style, so that a strict policy may forbid it', () => {
    for (const { svg } of drawings) expect(svg).not.toMatch(/<style|\sstyle=|<script|\son\w+=/i);
  });

  test('says in words every dimension that it draws', () => {
    for (const { svg, text } of drawings) {
      const numbers = [...svg.matchAll(/<text[^>]*>(\d[\d.]*)<\/text>/g)].map((m) => m[1]!);
      expect(numbers.length).toBeGreaterThan(1);
      // Rise and going of each step stand for themselves in the drawing.
      const worded = numbers.filter((n) => !(stage === 'flight' && ['190', '240'].includes(n)));
      for (const n of worded) expect(text).toMatch(new RegExp(`(^|\\D)${n.replace('.', '\\.')}(\\D|$)`));
    }
  });

  test('draws or says every measure that the stage needs', () => {
    const { svg, text } = drawings[0]!;
    for (const name of stageNeeds(stage).needs) {
      expect(svg.replace(/<desc[\s\S]*?<\/desc>/, '')).toContain(String(MEASURES[stage][name]));
      expect(text).toContain(String(MEASURES[stage][name]));
    }
  });

  test.each(stageNeeds(stage).needs)('is not made without %s', (name) => {
    const fewer = { ...MEASURES[stage] };
    delete fewer[name];
    expect(drawStage(stage, fewer)).toBeUndefined();
  });

  test('holds no piece, and says what it is told to', () => {
    expect(drawings[1]!.svg).not.toContain('class="piece"');
    expect(drawings[1]!.text).toContain('No way shown: the place alone.');
  });
});

test('text from cells never becomes markup', () => {
  const note = `</desc><script>alert("1")</script>'&\u0000\ud800`;
  const { svg } = drawStage('door', MEASURES.door, { notes: [note] })!;
  expect(XMLValidator.validate(svg)).toBe(true);
  expect(svg).not.toContain('<script');
  expect(svg).toContain('&lt;script&gt;');
  expect(svg).not.toContain('\u0000');
  expect(svg).not.toContain('\ud800');
});

test('whole pairs of surrogates stay', () => {
  expect(drawStage('door', MEASURES.door, { notes: ['Slate \u{1f9f1}'] })!.svg).toContain('Slate \u{1f9f1}');
});

test('two drawings on one page keep their ids apart', () => {
  const ids = ['a', 'b'].map((id) => {
    const { svg } = drawStage('corner', MEASURES.corner, { id })!;
    return [...svg.matchAll(/\bid="([^"]+)"/g)].map((m) => m[1]);
  });
  expect(ids[0]!.length).toBeGreaterThan(2);
  expect(ids[0]!.filter((id) => ids[1]!.includes(id))).toEqual([]);
});

test('a drawing is to scale, the same both ways', () => {
  const { svg } = drawStage('door', { width: 600, height: 1800 }, { height: 300 })!;
  // The opening's face goes up one side, across and down the other.
  const face = /class="face" d="M([^"]+)"/
    .exec(svg)![1]!
    .split('L')
    .map((p) => p.split(' ').map(Number));
  const [a, b, c] = face as [number[], number[], number[]];
  const up = Math.hypot(b[0]! - a[0]!, b[1]! - a[1]!);
  const across = Math.hypot(c[0]! - b[0]!, c[1]! - b[1]!);
  expect(up / across).toBeCloseTo(3, 2);
});

describe('a winder that turns far', () => {
  const winder = (turn: number) => drawStage('winder', { ...MEASURES.winder, width: 800, turn })!;

  test.each([121, 135, 150, 171, 180])('is drawn at %d degrees', (turn) => {
    const { svg, text } = winder(turn);
    expect(XMLValidator.validate(svg)).toBe(true);
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    expect(text).toContain(`Turn ${turn} degrees`);
  });

  test('at 180 degrees is two flights wide, with a wall one width beyond the inner corner', () => {
    const faces = [...winder(180).svg.matchAll(/class="face" d="M([^"]+)"/g)].map((m) =>
      m[1]!.split('L').map((p) => p.split(' ').map(Number)),
    );
    const [outer, inner] = faces as [number[][], number[][]];
    const [, left, right] = outer as [number[], number[], number[]];
    const wide = right[0]! - left[0]!;
    // The page's y runs downwards.
    const beyond = inner[1]![1]! - left[1]!;
    expect(wide / beyond).toBeCloseTo(2, 2);
    expect((inner[1]![0]! - left[0]!) / wide).toBeCloseTo(0.5, 2);
  });
});

test('a drawing keeps to the width it is given', () => {
  for (const stage of STAGE_NAMES) {
    const { svg } = drawStage(stage, MEASURES[stage], { width: 296 })!;
    const width = Number(/ width="([\d.]+)"/.exec(svg)![1]);
    expect(width).toBeLessThanOrEqual(300);
  }
});
