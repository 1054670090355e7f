import { createServer } from "node:net";

/**
 * Can a server listen there? A port is taken when something holds it on this address.
 *
 * @param {number} port
 * @param {string} host
 * @returns {Promise<boolean>}
 */
export async function isPortFree(port, host) {
  return (await listen(port, host)) !== null;
}

/**
 * A port nothing listens on at this moment.
 *
 * @param {string} host
 * @returns {Promise<number>}
 */
export async function findFreePort(host) {
  const port = await listen(0, host);
  if (port === null) throw new Error(`no free port on ${host}`);
  return port;
}

/**
 * @param {number} port
 * @param {string} host
 * @returns {Promise<number | null>} the port listened on for a moment, or null when it is taken
 */
function listen(port, host) {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once("error", (error) => {
      if ("code" in error && (error.code === "EADDRINUSE" || error.code === "EACCES")) resolve(null);
      else reject(error);
    });
    server.listen({ port, host, exclusive: true }, () => {
      const address = server.address();
      const taken = typeof address === "object" && address !== null ? address.port : port;
      server.close(() => resolve(taken));
    });
  });
}
