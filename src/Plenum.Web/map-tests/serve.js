// Serves this project's files on the loopback address: node serve.js [PORT]

import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import { extname, resolve, sep } from 'node:path';
import { argv, stdout } from 'node:process';
import { fileURLToPath } from 'node:url';

const ROOT = resolve(fileURLToPath(new URL('..', import.meta.url)));
const TYPES = new Map([
    ['.html', 'text/html; charset=utf-8'],
    ['.js', 'text/javascript; charset=utf-8'],
    ['.css', 'text/css; charset=utf-8'],
    ['.woff2', 'font/woff2'],
]);

/** @param {number} port 0: any that is free @returns {Promise<{ port: number, close: () => void }>} */
export function serve(port) {
    const server = createServer(async (request, response) => {
        const path = decodeURIComponent(new URL(request.url ?? '/', 'http://localhost').pathname);
        const file = resolve(ROOT, `.${path}`);
        if (!file.startsWith(ROOT + sep)) {
            response.writeHead(403).end();
            return;
        }
        try {
            const content = await readFile(file);
            const type = TYPES.get(extname(file)) ?? 'application/octet-stream';
            response.writeHead(200, { 'content-type': type }).end(content);
        } catch {
            response.writeHead(404).end();
        }
    });
    return new Promise((done) => {
        server.listen(port, '127.0.0.1', () => {
            const address = server.address();
            const actual = typeof address === 'object' && address !== null ? address.port : port;
            done({ port: actual, close: () => server.close() });
        });
    });
}

if (argv[1] === fileURLToPath(import.meta.url)) {
    const { port } = await serve(Number(argv[2] ?? 8321));
    stdout.write(`http://127.0.0.1:${port}/map-tests/demo.html\n`);
}
