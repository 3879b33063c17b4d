import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { chromium, type Browser, type BrowserServer, type LaunchOptions } from 'playwright-core';

const MODULES = path.resolve(__dirname, '../../node_modules');
const INSTALLED = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const ARGUMENTS = ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage', '--font-render-hinting=none'];

/**
 * Starts a real browser: the one that the npm package carries, with its own libraries, so that no test
 * downloads one and a bare machine will do; where that one does not start, a Chromium that is installed.
 */
export const launchBrowser = (): Promise<Browser> => started((options) => chromium.launch(options));

/** The same for several processes to connect to. */
export const launchBrowserServer = (): Promise<BrowserServer> =>
  started((options) => chromium.launchServer(options));

async function started<T>(launch: (options: LaunchOptions) => Promise<T>): Promise<T> {
  try {
    const folder = packedBrowser();
    return await launch({
      executablePath: path.join(folder, 'chromium'),
      args: ARGUMENTS,
      env: {
        ...definedEnvironment(),
        LD_LIBRARY_PATH: path.join(folder, 'al2023', 'lib'),
        FONTCONFIG_PATH: ownFonts(folder),
      },
    });
  } catch (error) {
    const installed = INSTALLED.find(existsSync);
    if (!installed) throw error;
    return launch({ executablePath: installed, args: ARGUMENTS });
  }
}

/** Where the fonts of the package are looked for: it names folders of another machine, and without any font a field crashes. */
function ownFonts(folder: string): string {
  const settings = path.join(folder, 'own-fonts');
  mkdirSync(settings, { recursive: true });
  const text = `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>${path.join(folder, 'fonts')}</dir>
  <cachedir>${path.join(settings, 'cache')}</cachedir>
</fontconfig>
`;
  const file = path.join(settings, 'fonts.conf');
  if (!existsSync(file) || readFileSync(file, 'utf8') !== text) writeFileSync(file, text);
  return settings;
}

/** The folder of the unpacked browser; unpacked once, aside, and then moved, since test files run side by side. */
function packedBrowser(): string {
  const { version } = JSON.parse(
    readFileSync(path.join(MODULES, '@sparticuz/chromium/package.json'), 'utf8'),
  ) as { version: string };
  const cache = path.join(MODULES, '.cache', 'test-browser');
  const folder = path.join(cache, version);
  if (existsSync(folder)) return folder;
  mkdirSync(cache, { recursive: true });
  const aside = mkdtempSync(path.join(cache, 'unpacking-'));
  execFileSync(process.execPath, [path.join(__dirname, 'unpackBrowser.mjs')], {
    // The package unpacks its libraries only where it believes to be on this platform.
    env: { ...definedEnvironment(), TMPDIR: aside, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' },
  });
  try {
    renameSync(aside, folder);
  } catch (error) {
    // Another test file was first.
    rmSync(aside, { recursive: true, force: true });
    if (!existsSync(folder)) throw error;
  }
  return folder;
}

const definedEnvironment = (): Record<string, string> =>
  Object.fromEntries(Object.entries(process.env).filter((e): e is [string, string] => e[1] !== undefined));

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
};

export interface Served {
  readonly origin: string;
  close(): Promise<void>;
}

/**
 * Serves files on this machine only, at a free port.
 * @param files what each address gives: a path of a file, or its text
 */
export async function serveFiles(
  files: Readonly<Record<string, { readonly file: string } | { readonly text: string }>>,
): Promise<Served> {
  const server: Server = createServer((request, response) => {
    const address = new URL(request.url ?? '/', 'http://localhost').pathname;
    const found = files[address];
    if (!found) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, { 'content-type': TYPES[path.extname(address)] ?? 'text/plain' });
    response.end('file' in found ? readFileSync(found.file) : found.text);
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: () =>
      new Promise((closed) => {
        server.closeAllConnections();
        server.close(() => closed());
      }),
  };
}
