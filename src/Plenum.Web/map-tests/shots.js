// Takes pictures of the demonstration page: node shots.js FOLDER [NAME …]
// Needs the documents of make-demo.js and a Chromium, from the variable CHROMIUM or by the name chromium.

import { Buffer } from 'node:buffer';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { argv, stdout } from 'node:process';
import { withPage } from './browser.js';
import { serve } from './serve.js';

const SHOTS = {
    'whole-light': 'focus=03.2.1',
    'whole-dark': 'theme=dark&focus=03.2.1',
    'zoom-1-light': 'focus=03.2&zoom=03',
    'zoom-1-dark': 'theme=dark&focus=03.2&zoom=03',
    'zoom-2-light': 'focus=03.2.1&zoom=03.2',
    'zoom-2-dark': 'theme=dark&focus=03.2.1&zoom=03.2',
    'breakdown-light': 'lens=breakdown&focus=03.4',
    'breakdown-dark': 'lens=breakdown&focus=03.4&theme=dark',
    'status-light': 'lens=status',
    'status-dark': 'lens=status&theme=dark',
    'compact-light': 'compact&focus=03.2.1&zoom=03.2',
    'hours-light': 'measure=hours',
    'count-light': 'measure=count',
    'hover-light': 'focus=03.2&hover=620,140',
    'keys-light': 'keys=ArrowDown,ArrowRight,ArrowRight,ArrowDown,ArrowRight,%2B,g,End',
    'large-whole-light': 'size=large',
    'large-whole-dark': 'size=large&theme=dark',
    'large-zoom-1-light': 'size=large&zoom=02.4&focus=02.4.3',
    'large-zoom-2-light': 'size=large&zoom=02.4.3&focus=02.4.3.2',
};

const [folder = 'out', ...names] = argv.slice(2);
await mkdir(folder, { recursive: true });
const { port, close } = await serve(0);
await withPage(async ({ open, send }) => {
    for (const [name, query] of Object.entries(SHOTS)) {
        if (names.length === 0 || names.includes(name)) {
            await open(`http://127.0.0.1:${port}/map-tests/demo.html?${query}`);
            const { data } = await send('Page.captureScreenshot', { format: 'png' });
            await writeFile(join(folder, `${name}.png`), Buffer.from(/** @type {string} */ (data), 'base64'));
            stdout.write(`${name}\n`);
        }
    }
});
close();
