import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { generateCertificates } from 'office-addin-dev-certs';
import { startAddInServer } from '../../src/commands/addInServer';
import { readExcelOrder } from '../../src/commands/excelArguments';
import { platformTool } from '../../src/commands/platformTools';

/*
 * What stands before Excel: arguments, refusals, the https server. Sideloading itself is not tried: there is no Excel
 * where the tests run. The words of the host's commands were read in office-addin-debugging 7.0.0 (lib/cli.js).
 */
const ROOT = path.resolve(__dirname, '../..');
const TSX = path.join(ROOT, 'node_modules/.bin/tsx');
const folder = mkdtempSync(path.join(tmpdir(), 'carry-'));
afterAll(() => rmSync(folder, { recursive: true }));

test('what it is asked for is read, and what cannot be is refused with what can', () => {
  expect(readExcelOrder([], 'win32')).toEqual({ act: 'start', place: 'desktop' });
  expect(readExcelOrder(['desktop'], 'darwin')).toEqual({ act: 'start', place: 'desktop' });
  expect(readExcelOrder(['stop'], 'linux')).toEqual({ act: 'stop' });
  const document = 'https://sheets.example/month.xlsx';
  expect(readExcelOrder(['web', '--document', document], 'linux')).toEqual({
    act: 'start',
    place: 'web',
    document,
  });
  expect(() => readExcelOrder([], 'linux')).toThrow(/not on linux: only Windows and Mac/);
  expect(() => readExcelOrder(['web'], 'win32')).toThrow(/--document https/);
  expect(() => readExcelOrder(['web', '--document', 'month.xlsx'], 'win32')).toThrow(
    /document is "month.xlsx"/,
  );
  expect(() => readExcelOrder(['stop', 'now'], 'win32')).toThrow(/"stop now" is not known/);
  expect(() => readExcelOrder(['--help'], 'win32')).toThrow(/npm run excel -- stop/);
});

test('a tool of the platform is called in the version that is pinned, through a shell on Windows only', () => {
  expect(platformTool('office-addin-debugging', ['stop', 'a b.xml'], 'darwin')).toEqual({
    command: 'npm',
    words: [
      'exec',
      '--yes',
      '--ignore-scripts=false',
      expect.stringMatching(/^--package=office-addin-debugging@\d+\.\d+\.\d+$/),
      '--',
      'office-addin-debugging',
      'stop',
      'a b.xml',
    ],
    shell: false,
  });
  const { words, shell } = platformTool('office-addin-manifest', ['validate', 'a b.xml'], 'win32');
  expect(shell).toBe(true);
  expect(words.at(-1)).toBe('"a b.xml"');
});

test('the built files are served over https, and nothing beside them', async () => {
  const [ca, cert, key] = ['ca.crt', 'localhost.crt', 'localhost.key'].map((name) => path.join(folder, name));
  await generateCertificates(ca, cert, key);
  writeFileSync(path.join(folder, 'functions.json'), '{}');
  writeFileSync(path.join(folder, 'taskpane.html'), 'pane');
  const server = await startAddInServer(folder, 0, {
    ca: readFileSync(ca!),
    cert: readFileSync(cert!),
    key: readFileSync(key!),
  });
  const get = (asked: string, method = 'GET') =>
    new Promise<{ status: number; type: string; origin: string; text: string }>((answered, failed) => {
      const { port } = new URL(server.origin);
      request({ host: 'localhost', port, path: asked, method, ca: readFileSync(ca!) }, (answer) => {
        let text = '';
        answer.on('data', (part) => (text += String(part)));
        answer.on('end', () =>
          answered({
            status: answer.statusCode!,
            type: answer.headers['content-type'] ?? '',
            origin: answer.headers['access-control-allow-origin'] ?? '',
            text,
          }),
        );
      })
        .on('error', failed)
        .end();
    });
  expect(await get('/taskpane.html?_host_Info=Excel$Win32$16.01$en-US')).toMatchObject({
    status: 200,
    text: 'pane',
  });
  expect(await get('/functions.json')).toMatchObject({
    status: 200,
    origin: '*',
    text: '{}',
    type: expect.stringContaining('json'),
  });
  // The key itself is in that folder here: no type that is served.
  for (const asked of ['/localhost.key', '/missing.js', '/..%2f..%2fetc%2fpasswd.js', '/%E0%A4%A', '/'])
    expect((await get(asked)).status).toBe(404);
  expect((await get('/taskpane.html', 'POST')).status).toBe(405);
  await server.close();
}, 60_000);

const run = (command: string, ...words: string[]) =>
  spawnSync(TSX, [path.join(ROOT, 'src/commands', command), ...words], { encoding: 'utf8', cwd: ROOT });

test('npm run validate says what is wrong with a manifest and ends so that a script notices', () => {
  const file = path.join(folder, 'manifest.xml');
  writeFileSync(
    file,
    readFileSync(path.join(ROOT, 'manifest.xml'), 'utf8').replace('TaskPaneApp"', 'MailApp"'),
  );
  const bad = run('validate.ts', file);
  expect([bad.status, bad.stdout]).toEqual([1, expect.stringContaining('- OfficeApp is not of the type')]);
  const good = run('validate.ts');
  expect([good.status, good.stdout]).toEqual([0, expect.stringContaining('meets the rules')]);
  expect(run('validate.ts', '--fast').stderr).toMatch(/"--fast" is not known/);
  expect(run('validate.ts', 'nowhere.xml').stderr).toMatch(/nowhere\.xml/);
}, 60_000);

test('a deployed build is refused an address that is not https', () => {
  const built = (baseUrl: string): string =>
    execFileSync(
      process.execPath,
      [
        '-e',
        `console.log(require('./webpack.config.js')({baseUrl:${JSON.stringify(baseUrl)}}).entry.taskpane)`,
      ],
      { cwd: ROOT, encoding: 'utf8', stdio: 'pipe' },
    );
  expect(built('https://your.server/carry/')).toContain('taskpane');
  for (const wrong of [
    'http://your.server/carry',
    'your.server/carry',
    'https://your.server/carry?a=1',
    'https://',
    'https://u@your.server',
  ])
    expect(() => built(wrong)).toThrow(/baseUrl is/);
}, 60_000);
