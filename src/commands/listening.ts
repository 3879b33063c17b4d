import type { Server } from 'node:http';

/** Waits until a server listens; a port that is taken is refused. */
export const listening = (server: Server, port: number, host: string): Promise<void> =>
  new Promise((ready, failed) => {
    server.once('error', failed);
    server.listen(port, host, ready);
  });

/** Ends a server and what is connected to it. */
export const closed = (server: Server): Promise<void> =>
  new Promise((ended) => {
    server.closeAllConnections();
    server.close(() => ended());
  });
