// How fast the screen is at full size, beside its floor: node bench/screen/time.js PROJECT [CIRCUITS]. See README.md.

import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import { argv, env, exit, stdout } from 'node:process';
import { fileURLToPath } from 'node:url';
import { withPage } from '../../src/Plenum.Web/map-tests/browser.js';

const ROUNDS = Number(env.ROUNDS ?? 50);
const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');
const file = argv[2];
const circuits = Number(argv[3] ?? 20);
if (file === undefined) {
    stdout.write('node bench/screen/time.js PROJECT [CIRCUITS]\n');
    exit(2);
}

const key = basename(file, '.plenum').toLowerCase().replace(/[^a-z0-9]/g, '-').replace(/^-+|-+$/g, '');
const server = spawn('dotnet', [resolve(root, 'src/Plenum.Cli/bin/Release/net10.0/plenum.dll'), 'serve', resolve(file), '--port', '0'], {
    stdio: ['ignore', 'pipe', 'inherit'],
});
const address = await new Promise((done, fail) => {
    let said = '';
    server.stdout.on('data', (chunk) => {
        said += chunk;
        const found = /http:\/\/[^\s/]+/.exec(said);
        if (found !== null) {
            done(found[0]);
        }
    });
    server.on('exit', () => fail(new Error(`the program ended: ${said}`)));
});
server.removeAllListeners('exit');

/** Resident memory of a process, MB. @param {number | undefined} pid */
const memory = (pid) => {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    return Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? NaN) / 1024;
};

/** @param {string} what @param {string} value */
const say = (what, value) => stdout.write(`${what.padEnd(52)} ${value}\n`);

/** @param {number[]} times */
const spread = (times) => {
    const sorted = [...times].sort((a, b) => a - b);
    return `${sorted[sorted.length >> 1].toFixed(0).padStart(5)} ms, longest ${sorted[sorted.length - 1].toFixed(0)} ms of ${times.length}`;
};

// what the page notes by itself: when the map was first drawn and the table had its first row
const WATCH = `
    window.first = {};
    addEventListener('plenum-drawn', (event) => { first.map ??= performance.now(); }, true);
    new MutationObserver(() => {
        if (first.table === undefined && document.querySelector('#accounts tbody tr[data-row]') !== null) {
            first.table = performance.now();
        }
    }).observe(document, { childList: true, subtree: true });
`;

// both times once the map is fetched, drawn and shows what the address asks for; empty before
const BOTH = `
    window.first?.map !== undefined && first.table !== undefined && document.querySelector('.maphost[data-shows]') !== null
        ? JSON.stringify(first)
        : ''`;

// the sentence and the table's sums are there; a page in the background draws no rows, and its timers are slow
const ANSWERED = `new Promise((done) => {
    const look = () => document.querySelector('#accounts tfoot tr.total') !== null;
    if (look()) {
        done('shown');
    }
    new MutationObserver(() => look() && done('shown')).observe(document, { childList: true, subtree: true });
})`;

/** Steps the status date and waits for the new sentence. @param {number} round */
const answeredAfter = (round) => `(async () => {
    const before = document.querySelector('#reading').innerText;
    const begun = performance.now();
    document.querySelector('[aria-label="One period ${round % 2 ? 'on' : 'back'}"]').click();
    while (document.querySelector('#reading').innerText === before) {
        await new Promise((next) => setTimeout(next, 2));
    }
    return performance.now() - begun;
})()`;

/** Presses or clicks something and waits for the next drawing of the map that ends what it set off. */
const drawnAfter = (/** @type {string} */ action, event = 'plenum-drawn') => `(async () => {
    const host = document.querySelector('.maphost');
    const begun = performance.now();
    const drawn = new Promise((done, fail) => {
        host.addEventListener('${event}', () => done(performance.now()), { once: true });
        setTimeout(() => fail(new Error('not drawn after 30 s')), 30_000);
    });
    ${action};
    return (await drawn) - begun;
})()`;

try {
    await withPage(async ({ send, evaluate, whole }) => {
        await send('Page.enable');
        await send('Network.enable');
        await send('Performance.enable');
        await send('Page.addScriptToEvaluateOnNewDocument', { source: WATCH });
        await send('Emulation.setEmulatedMedia', { features: [{ name: 'prefers-reduced-motion', value: 'reduce' }] });
        const sheet = `${address}/p/${key}/accounts`;
        for (const turn of ['cold', 'warm', 'warm again']) {
            if (turn !== 'cold') {
                await send('Network.clearBrowserCache');
            }
            await send('Page.navigate', { url: sheet });
            let said = '';
            for (let wait = 0; said === '' && wait < 2400; wait++) {
                await new Promise((next) => setTimeout(next, 50));
                said = String(await evaluate(BOTH));
            }
            const first = JSON.parse(said);
            say(`${turn}: first drawing of the map`, `${first.map.toFixed(0)} ms`);
            say(`${turn}: first rows of the table`, `${first.table.toFixed(0)} ms`);
        }
        await new Promise((next) => setTimeout(next, 2000));

        const sizes = JSON.parse(String(await evaluate(`JSON.stringify(performance.getEntriesByType('resource').map((entry) => [entry.name.replace(location.origin, ''), entry.transferSize, entry.decodedBodySize]))`)));
        const documents = sizes.filter((/** @type {[string]} */ [name]) => name.startsWith('/projects/'));
        for (const [name, sent, plain] of documents) {
            say(`sent: ${name.split('?')[0]}`, `${(sent / 1e6).toFixed(2)} MB of ${(plain / 1e6).toFixed(2)} MB`);
        }
        const rest = sizes.filter((/** @type {[string]} */ [name]) => !name.startsWith('/projects/'));
        say('sent: page, scripts, styles, font', `${(rest.reduce((/** @type {number} */ sum, /** @type {[string, number]} */ [, sent]) => sum + sent, 0) / 1e6).toFixed(2)} MB`);

        const press = (/** @type {string} */ key) =>
            `document.querySelector('#map').dispatchEvent(new CustomEvent('plenum-take-keys')); document.activeElement.dispatchEvent(new KeyboardEvent('keydown', { key: '${key}', bubbles: true, cancelable: true }))`;
        // to the first part of the project, which has a sister
        for (let level = 0; level < 2; level++) {
            await evaluate(press('ArrowDown'));
            await new Promise((next) => setTimeout(next, 1000));
        }
        /** @type {[string, (round: number) => string, string?][]} */
        const steps = [
            ['focus by key', (round) => press(round % 2 ? 'ArrowLeft' : 'ArrowRight'), 'plenum-marked'],
            ['zoom in and out', (round) => press(round % 2 ? '0' : '+')],
            ['width by another measure', (round) => `document.querySelector('input[name=measure][value=${round % 2 ? 'budget' : 'hours'}]').click()`],
            ['another lens', (round) => `const lens = document.querySelector('#lens'); lens.value = '${round % 2 ? 'cost' : 'schedule'}'; lens.dispatchEvent(new Event('change', { bubbles: true }))`],
        ];
        for (const [what, action, event] of steps) {
            const times = [];
            for (let round = 0; round < ROUNDS; round++) {
                times.push(Number(await evaluate(drawnAfter(action(round), event))));
                await new Promise((next) => setTimeout(next, 60));
            }
            say(`${what}, until drawn`, spread(times));
        }

        // the floor
        const addresses = JSON.stringify(documents.map((/** @type {[string]} */ [name]) => name));
        const fetched = [];
        for (let round = 0; round < 7; round++) {
            fetched.push(Number(await evaluate(`(async () => { const t = performance.now(); await Promise.all(${addresses}.map(async (name) => (await fetch(name, { cache: 'no-store' })).arrayBuffer())); return performance.now() - t; })()`)));
        }
        say('floor: the same documents fetched', spread(fetched));
        const elements = Number(String(await evaluate(`(async () => new DataView(await (await fetch(${addresses}.find((name) => name.includes('/map')))).arrayBuffer()).getUint32(16, true))()`)));
        const filled = [];
        for (let round = 0; round < 7; round++) {
            filled.push(Number(await evaluate(`(() => {
                const canvas = document.createElement('canvas'); canvas.width = 1400; canvas.height = 200;
                const context = canvas.getContext('2d');
                const t = performance.now();
                for (let i = 0; i < ${elements}; i++) {
                    context.fillStyle = (i & 1) ? '#3b8392' : '#be7424';
                    context.fillRect((i * 1400) / ${elements}, (i & 3) * 50, 1, 49);
                }
                context.getImageData(0, 0, 1, 1);
                return performance.now() - t;
            })()`)));
        }
        say(`floor: ${elements} rectangles filled one by one`, spread(filled));

        const { metrics } = await send('Performance.getMetrics');
        const heap = /** @type {{ name: string, value: number }[]} */ (metrics).find(({ name }) => name === 'JSHeapUsedSize');
        say('memory of the page (script)', `${((heap?.value ?? NaN) / 1e6).toFixed(0)} MB`);
        say('memory of the program, one reader', `${memory(server.pid).toFixed(0)} MB`);

        // more readers: each in a page of their own that stays open
        const begun = Date.now();
        const arrived = [];
        for (let reader = 1; reader < circuits; reader++) {
            const { targetId } = await whole('Target.createTarget', { url: 'about:blank' });
            const { sessionId } = await whole('Target.attachToTarget', { targetId, flatten: true });
            const session = String(sessionId);
            await whole('Page.enable', {}, session);
            await whole('Page.addScriptToEvaluateOnNewDocument', { source: WATCH }, session);
            await whole('Page.navigate', { url: sheet }, session);
            arrived.push(whole('Runtime.evaluate', { expression: ANSWERED, awaitPromise: true, returnByValue: true }, session));
        }
        const answers = await Promise.all(arrived);
        const shown = answers.filter((answer) => /** @type {any} */ (answer.result).value === 'shown').length + 1;
        say(`${shown} readers at once, until the last has its table`, `${Date.now() - begun} ms`);
        say('memory of the program, all of them', `${memory(server.pid).toFixed(0)} MB`);
        const times = [];
        for (let round = 0; round < ROUNDS; round++) {
            times.push(Number(await evaluate(answeredAfter(round))));
            await new Promise((next) => setTimeout(next, 60));
        }
        say('status date stepped by one of them, until answered', spread(times));
    });
} finally {
    server.kill('SIGINT');
}
