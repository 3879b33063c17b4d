import { readFileSync } from 'node:fs';
import path from 'node:path';

const ROOT = path.resolve(__dirname, '../..');
const read = (file: string): string => readFileSync(path.join(ROOT, file), 'utf8');

interface Built {
  readonly entry: Record<string, string>;
}
type Configure = (env: { baseUrl?: string }) => Built;

test('a deployed build has no try-out page; the one for this computer has', () => {
  const configure = jest.requireActual<Configure>('../../webpack.config.js');
  expect(Object.keys(configure({ baseUrl: 'https://carry.example/add-in' }).entry)).toEqual([
    'functions',
    'callWorker',
    'taskpane',
  ]);
  expect(Object.keys(configure({}).entry)).toContain('sheetPage');
});

interface Bill {
  readonly bomFormat: string;
  readonly components: readonly {
    readonly name: string;
    readonly version: string;
    readonly group?: string;
  }[];
}
interface Package {
  readonly version: string;
  readonly scripts: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
}

test('the build names the packages of others that are in it, with the versions that are pinned', () => {
  const { devDependencies } = JSON.parse(read('package.json')) as Package;
  const bill = JSON.parse(read('dist/bom.json')) as Bill;
  expect(bill.bomFormat).toBe('CycloneDX');
  const bundled = bill.components.map(({ group, name, version }) => [
    `${group ? `${group}/` : ''}${name}`,
    version,
  ]);
  expect(bundled).toContainEqual(['@cj-tech-master/excelts', devDependencies['@cj-tech-master/excelts']]);
  const licences = read('dist/licences.txt');
  for (const [name, version] of bundled) expect(licences).toContain(`${name} ${version}\n`);
  expect(licences).toContain('@microsoft/office-js ');
});

test('the workflow runs the test command of README, and looks packages up apart from it', () => {
  const workflow = read('.github/workflows/test.yml');
  const command = /^(npm ci && npm test)\b/m.exec(read('README.md'))?.[1];
  expect(command).toBeDefined();
  expect(workflow).toContain(`run: ${command}\n`);
  expect(workflow).toContain('run: npm run audit\n');
  const { scripts } = JSON.parse(read('package.json')) as Package;
  expect(scripts['test']).not.toContain('audit');
  expect(scripts['audit']).toContain('npm audit');
});

test('the changes have a place for what comes next, and the version that is pinned has its own or none yet', () => {
  const changes = read('CHANGELOG.md');
  expect(changes).toContain('\n## Unreleased\n');
  const released = [...changes.matchAll(/^## (\d+\.\d+\.\d+)( \(\d{4}-\d{2}-\d{2}\))?$/gm)].map((m) => m[1]);
  const headings = [...changes.matchAll(/^## (.*)$/gm)].map((m) => m[1]);
  expect(headings.length).toBe(released.length + 1);
  const { version } = JSON.parse(read('package.json')) as Package;
  expect(released[0]).toBe(version);
});
