import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { closed, listening } from './listening';

const HOST = '127.0.0.1';

/** All that is served of the folder of built files; nothing else can be asked for. */
const BUILT = new Map(
  Object.entries({
    'sheetPage.html': 'text/html; charset=utf-8',
    'sheetPage.js': 'text/javascript; charset=utf-8',
    'sheetPage.css': 'text/css; charset=utf-8',
    'taskpane.css': 'text/css; charset=utf-8',
    'callWorker.js': 'text/javascript; charset=utf-8',
    'functions.js': 'text/javascript; charset=utf-8',
    'functions.json': 'application/json; charset=utf-8',
    'icon-32.png': 'image/png',
  }),
);

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

const HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy':
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; " +
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
  'cache-control': 'no-store',
};

export interface SheetServer {
  readonly origin: string;
  close(): Promise<void>;
}

/**
 * Serves the sheet page to this machine only.
 * @param dist the folder of the built files
 * @param sample the bytes of the workbook that the page opens with
 * @param port 0: any that is free
 */
export async function startSheetServer(dist: string, sample: Uint8Array, port: number): Promise<SheetServer> {
  let origin = '';
  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const refuse = (status: number) => response.writeHead(status, HEADERS).end();
    // A page of elsewhere can have its own name point to this machine; then the name gives it away.
    const name = request.headers.host?.replace(/^localhost(?=:|$)/, HOST);
    if (`http://${name}` !== origin) return void refuse(403);
    if (request.method !== 'GET' && request.method !== 'HEAD') return void refuse(405);
    const asked = new URL(request.url ?? '/', origin).pathname.slice(1) || 'sheetPage.html';
    const give = (type: string, content: Uint8Array) =>
      response
        .writeHead(200, { ...HEADERS, 'content-type': type })
        .end(request.method === 'HEAD' ? '' : content);
    if (asked === 'sample.xlsx') return void give(XLSX, sample);
    const type = BUILT.get(asked);
    if (type === undefined) return void refuse(404);
    give(type, await readFile(path.join(dist, asked)));
  };
  const server = createServer((request, response) => {
    answer(request, response).catch((error: unknown) => {
      console.error(error);
      response.writeHead(500, HEADERS).end();
    });
  });
  await listening(server, port, HOST);
  origin = `http://${HOST}:${(server.address() as AddressInfo).port}`;
  return {
    origin,
    close: () => closed(server),
  };
}
