import { readFile } from 'node:fs/promises';
import { createServer, type ServerOptions } from 'node:https';
import type { AddressInfo } from 'node:net';
import path from 'node:path';
import { closed, listening } from './listening';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.png': 'image/png',
};

// In the browser the workbook's page, which is of another origin, reads functions.json.
const HEADERS = {
  'access-control-allow-origin': '*',
  'x-content-type-options': 'nosniff',
  'cache-control': 'no-store',
};

/**
 * Serves the built add-in over https to this machine, as Excel asks for it.
 * @param dist the folder of the built files
 * @param port 0: any that is free
 * @param certificate what https is served with
 */
export async function startAddInServer(
  dist: string,
  port: number,
  certificate: ServerOptions,
): Promise<{ readonly origin: string; close(): Promise<void> }> {
  const server = createServer(certificate, (request, response) => {
    const refuse = (status: number): void => void response.writeHead(status, HEADERS).end();
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405);
    const asked = decoded(new URL(request.url ?? '/', 'https://localhost').pathname);
    const file = asked === undefined ? undefined : path.join(dist, asked);
    const type = file === undefined ? undefined : TYPES[path.extname(file)];
    if (file === undefined || type === undefined || !file.startsWith(dist + path.sep)) return refuse(404);
    readFile(file).then(
      (content) =>
        response
          .writeHead(200, { ...HEADERS, 'content-type': type })
          .end(request.method === 'HEAD' ? undefined : content),
      () => refuse(404),
    );
  });
  await listening(server, port, 'localhost');
  return {
    origin: `https://localhost:${(server.address() as AddressInfo).port}`,
    close: () => closed(server),
  };
}

function decoded(address: string): string | undefined {
  try {
    return decodeURIComponent(address);
  } catch {
    return undefined;
  }
}
