import { Workbook } from 'exceljs';
import { openWorkbook } from '../../src/sheetHost/excelts/openWorkbook';
import { readParts, writeParts } from '../../src/sheetHost/excelts/packageParts';
import { unpacksBeyond } from '../../src/sheetHost/excelts/unpackedSize';
import { createWorkbook } from '../../src/sheetHost/workbookWriter';
import { writeWorkbook } from '../../src/sheetHost/excelts/writeWorkbook';
import { testBundle } from '../sheetHost/fixtures/bundle';
import { excelPackage } from '../sheetHost/fixtures/excelPackage';
import { opened } from '../sheetHost/fixtures/sheetWith';
import { deflated, deflatedZeros, packedByHand } from '../support/packedByHand';
import { seeded } from '../support/parkMiller';

jest.setTimeout(60_000);

// Workbooks that went wrong on their way, or were made to do harm: each is refused in words, or opened and right.

const answerOf = async (bytes: Uint8Array): Promise<string> => {
  const result = await openWorkbook(bytes);
  return result.ok ? 'opened' : result.reason;
};

let good: Uint8Array;
beforeAll(async () => {
  good = await excelPackage();
});

test('cut anywhere it is refused as damaged', async () => {
  for (let part = 1; part < 40; part++) {
    expect(await answerOf(good.slice(0, Math.floor((good.length * part) / 40)))).toMatch(/damaged|no \.xlsx/);
  }
});

/** Tries what `change` makes, and counts the answers: each has to be one that people can read. */
async function tried(
  count: number,
  change: (next: () => number) => Promise<Uint8Array>,
): Promise<Map<string, number>> {
  const next = seeded(170);
  const answers = new Map<string, number>();
  for (let n = 0; n < count; n++) {
    const answer = (await answerOf(await change(next))).replace(/:.*/s, '');
    expect(answer).toMatch(/^(opened$|the (file|workbook) )/);
    answers.set(answer, (answers.get(answer) ?? 0) + 1);
  }
  return answers;
}

test('with bytes changed by chance it is opened, or refused with a reason, and there is never a fault', async () => {
  const answers = await tried(200, async (next) => {
    const changed = good.slice();
    for (let k = 0; k < 1 + 8 * next(); k++)
      changed[Math.floor(next() * changed.length)] = Math.floor(256 * next());
    return changed;
  });
  // Every part has its checksum: mostly it shows.
  expect(answers.get('opened') ?? 0).toBeLessThan(100);
});

test('with parts cut, doubled and mixed up inside it is opened, or refused with a reason', async () => {
  const parts = await readParts(good);
  const names = [...parts.keys()];
  const answers = await tried(150, async (next) => {
    const changed = new Map(parts);
    const name = names[Math.floor(next() * names.length)] ?? '';
    const part = parts.get(name) ?? new Uint8Array();
    const from = Math.floor(next() * part.length);
    const to = from + Math.floor(next() * (part.length - from));
    const kind = next();
    if (kind < 0.2) changed.delete(name);
    else if (kind < 0.5) changed.set(name, part.slice(0, from));
    else if (kind < 0.8) changed.set(name, new Uint8Array([...part.slice(0, from), ...part.slice(to)]));
    else changed.set(name, new Uint8Array([...part.slice(0, to), ...part.slice(from)]));
    return writeParts(changed);
  });
  expect(answers.size).toBeGreaterThan(2);
});

describe('what unpacks to more than a workbook may hold', () => {
  const name = 'xl/workbook.xml';

  test('is refused, whatever it says of its size, and is never held unpacked', async () => {
    const zeros = await deflatedZeros(250);
    expect(zeros.length).toBeLessThan(1_000_000);
    for (const says of [250_000_000, 10]) {
      const bomb = packedByHand([{ name, deflated: zeros, says }]);
      const before = process.memoryUsage().arrayBuffers;
      expect(await answerOf(bomb)).toBe('the workbook is too large when unpacked');
      expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(100_000_000);
    }
  });
  test('is found where it is spread over many entries', async () => {
    const zeros = await deflatedZeros(1);
    const entries = Array.from({ length: 10 }, (_, i) => ({
      name: `xl/part${i}.xml`,
      deflated: zeros,
      says: 1_000_000,
    }));
    expect(await unpacksBeyond(packedByHand(entries), 9_900_000)).toBe(true);
    expect(await unpacksBeyond(packedByHand(entries), 10_000_000)).toBe(false);
  });
  test('a workbook is not', async () => {
    expect(await unpacksBeyond(good, 200_000_000)).toBe(false);
    // Looked at entry by entry, too: 100 is far below what it unpacks to.
    expect(await unpacksBeyond(good, 100)).toBe(true);
    const unpacked = [...(await readParts(good)).values()].reduce((sum, part) => sum + part.length, 0);
    expect(await unpacksBeyond(good, unpacked)).toBe(false);
    expect(await unpacksBeyond(good, unpacked - 1)).toBe(true);
  });
});

test('entries under a password, and a workbook of the old format or under one, are refused', async () => {
  const locked = packedByHand([
    { name: 'xl/workbook.xml', deflated: deflated('<workbook/>'), says: 11, encrypted: true },
  ]);
  expect(await answerOf(locked)).toMatch(/damaged|password/);
  expect(await answerOf(new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1]))).toContain('under a password');
});

test('macros are not run, and what is saved says that it has none of them', async () => {
  const parts = await readParts(good);
  parts.set('xl/vbaProject.bin', new Uint8Array([0xd0, 0xcf, 0x11, 0xe0]));
  const host = await opened(await writeParts(parts));
  host.register(testBundle());
  host.recalculate();
  expect((await host.save()).lost).toContain('xl/vbaProject.bin');
});

test('cells of a wrong type are read as something or refused, and never take another cell with them', async () => {
  const parts = await readParts(good);
  const sheet = 'xl/worksheets/sheet1.xml';
  const xml = new TextDecoder().decode(parts.get(sheet));
  for (const cell of [
    '<c r="A1" t="n"><v>seven</v></c>',
    '<c r="A1" t="s"><v>99999</v></c>',
    '<c r="A1" t="s"><v>-1</v></c>',
    '<c r="A1" t="b"><v>perhaps</v></c>',
    '<c r="A1" t="e"><v>#NOTHING!</v></c>',
    '<c r="A1" t="d"><v>2026-13-45</v></c>',
    '<c r="A1" t="zzz"><v>1</v></c>',
    '<c r="A1" s="999"><v>1</v></c>',
    '<c r="A1"><v>1e999</v></c>',
    '<c r="A1"><f>SUM(</f><v>1</v></c>',
    '<c r="A1"><f>A1</f></c>',
    '<c r="A1" t="inlineStr"/>',
    '<c><v>4</v></c>',
    '<c r="ZZZZ9999999"><v>4</v></c>',
  ]) {
    parts.set(sheet, new TextEncoder().encode(xml.replace('<c r="A1" s="1"><v>12.5</v></c>', () => cell)));
    const result = await openWorkbook(await writeParts(parts));
    if (!result.ok) {
      expect(result.reason).toMatch(/^the workbook (is damaged|has no)/);
      continue;
    }
    result.host.register(testBundle());
    result.host.recalculate();
    // Row 4 of the sheet as it was written: 760 and twice that.
    expect([cell, result.host.value('Survey', 3, 0), result.host.value('Survey', 3, 1)]).toEqual([
      cell,
      760,
      1520,
    ]);
  }
});

test('text that another program would take for a formula is saved as text', async () => {
  const texts = [
    '=1+1',
    '=cmd|" /C calc"!A0',
    '+1',
    '-1',
    '@SUM(1)',
    '\t=1',
    '<b>x</b>',
    '&amp;',
    ']]>',
    "'quoted",
  ];
  const book = createWorkbook();
  const sheet = book.sheet('A');
  texts.forEach((text, i) => sheet.cell(`A${i + 1}`, text).cell(`B${i + 1}`, { formula: `A${i + 1}` }));
  const host = await opened(await writeWorkbook(book));
  host.register(testBundle());
  host.recalculate();
  const saved = await host.save();
  const again = new Workbook();
  await again.xlsx.load(saved.bytes as never);
  texts.forEach((text, i) => {
    // Read by a program of others: a value, and the result of the formula beside it, in which that program reads what
    // stands for a sign twice.
    expect(again.getWorksheet('A')!.getCell(`A${i + 1}`).value).toBe(text);
    if (text !== '&amp;') expect(again.getWorksheet('A')!.getCell(`B${i + 1}`).result).toBe(text);
  });
});
