// Takes pictures of the demonstration page: node shots.js FOLDER [NAME …]
// Needs the documents of make-demo.js and a Chromium, from the variable CHROMIUM or by the name chromium.

import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { argv, env, stdout } from 'node:process';
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
    'large-whole-light': 'size=large&time',
    'large-whole-dark': 'size=large&theme=dark',
    'large-zoom-1-light': 'size=large&zoom=02.4&focus=02.4.3',
    'large-zoom-2-light': 'size=large&zoom=02.4.3&focus=02.4.3.2',
};

const [folder = 'out', ...names] = argv.slice(2);
await mkdir(folder, { recursive: true });
const { port, close } = await serve(0);
const profile = await mkdtemp(join(tmpdir(), 'map-shots-'));
for (const [name, query] of Object.entries(SHOTS)) {
    if (names.length === 0 || names.includes(name)) {
        await shoot(`http://127.0.0.1:${port}/map-tests/demo.html?${query}`, join(folder, `${name}.png`));
        stdout.write(`${name}\n`);
    }
}
close();
await rm(profile, { recursive: true, force: true });

/** @param {string} address @param {string} file @returns {Promise<void>} */
function shoot(address, file) {
    const args = [
        '--headless',
        '--no-sandbox',
        '--disable-gpu',
        '--disable-dev-shm-usage',
        '--disable-background-networking',
        '--hide-scrollbars',
        `--user-data-dir=${profile}`,
        '--window-size=1600,1000',
        '--timeout=8000',
        `--screenshot=${file}`,
        address,
    ];
    return new Promise((done, fail) => {
        execFile(env.CHROMIUM ?? 'chromium', args, { timeout: 60_000 }, (error, _, messages) =>
            error === null ? done() : fail(new Error(`${error.message}\n${messages}`)),
        );
    });
}
