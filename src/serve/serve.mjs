// Serves a built folder on this machine with the headers a host should send. No dependency, no cache, GET and HEAD only.
import { createReadStream, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.map': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
};

/** The policy the build wrote into its page, read back so that header and page say the same. */
function policyOf(folder) {
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  const found = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(page);
  if (!found) throw new Error(`${join(folder, 'index.html')} carries no content policy: build first.`);
  return `${found[1].replaceAll('&#39;', "'")}; frame-ancestors 'none'`;
}

/**
 * @param {string} folder the built files
 * @param {{ port?: number, base?: string }} [options] port 0 takes a free one; base is the path the files lie under
 * @returns {Promise<{ url: string, close: () => Promise<void> }>}
 */
export function serve(folder, { port = 0, base = '/' } = {}) {
  const policy = policyOf(folder);
  const server = createServer((request, response) => {
    const headers = {
      'content-security-policy': policy,
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'permissions-policy': 'camera=(self), geolocation=(), microphone=()',
      'cache-control': 'no-cache',
    };
    const end = (status, text) => {
      response.writeHead(status, { ...headers, 'content-type': 'text/plain; charset=utf-8' });
      response.end(text);
    };
    if (request.method !== 'GET' && request.method !== 'HEAD') return end(405, 'GET only.');
    let path;
    try {
      path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
    } catch {
      return end(400, 'Not an address.');
    }
    if (!path.startsWith(base)) return end(404, 'Not here.');
    const name = path.slice(base.length) || 'index.html';
    const file = normalize(join(folder, name));
    if (!file.startsWith(folder.endsWith(sep) ? folder : folder + sep)) return end(403, 'Not outside.');
    let size;
    try {
      const stat = statSync(file);
      if (!stat.isFile()) return end(404, 'Not here.');
      size = stat.size;
    } catch {
      return end(404, 'Not here.');
    }
    const type = TYPES[extname(file)] ?? 'application/octet-stream';
    response.writeHead(200, { ...headers, 'content-type': type, 'content-length': size });
    if (request.method === 'HEAD') return response.end();
    return createReadStream(file).pipe(response);
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      const { port: taken } = server.address();
      resolve({
        url: `http://localhost:${taken}${base}`,
        close: () =>
          new Promise((done) => {
            server.close(() => done());
            server.closeAllConnections();
          }),
      });
    });
  });
}

export const distFolder = fileURLToPath(new URL('../../dist', import.meta.url));
