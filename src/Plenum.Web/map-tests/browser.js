// Drives a headless Chromium over its debugging pipe, for pictures and for the time that drawing takes.

import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { env } from 'node:process';

/** @typedef {Record<string, unknown>} Answer */

/**
 * @typedef {object} Page
 * @property {(method: string, params?: object) => Promise<Answer>} send a command of the debugging protocol
 * @property {(expression: string) => Promise<unknown>} evaluate value of an expression, promises awaited
 * @property {(method: string, params?: object, session?: string) => Promise<Answer>} whole the same for the whole browser or another page
 * @property {(address: string) => Promise<void>} open goes to the address and waits until the page says that it is ready
 */

/** Longest that a page may take to be ready, milliseconds. */
const PATIENCE = 120_000;

/** @param {(page: Page) => Promise<void>} work */
export async function withPage(work) {
    const profile = await mkdtemp(join(tmpdir(), 'map-browser-'));
    const args = [
        '--headless',
        '--no-sandbox',
        '--disable-gpu',
        '--disable-dev-shm-usage',
        '--disable-background-networking',
        '--disable-component-update',
        '--no-first-run',
        '--hide-scrollbars',
        '--remote-debugging-pipe',
        `--user-data-dir=${profile}`,
        '--window-size=1600,1000',
        'about:blank',
    ];
    const browser = spawn(env.CHROMIUM ?? 'chromium', args, {
        stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'],
    });
    const ended = new Promise((done) => browser.on('exit', done));
    try {
        await work(await attach(browser));
    } finally {
        browser.kill();
        await ended;
        // Parts of the browser may still be writing when it has gone.
        await rm(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 });
    }
}

/** @param {import('node:child_process').Child} browser @returns {Promise<Page>} */
async function attach(browser) {
    const [, , , input, output] = browser.stdio;
    /** @type {Map<number, { done: (answer: Answer) => void, fail: (error: Error) => void }>} */
    const waiting = new Map();
    let rest = '';
    let asked = 0;
    output.on('data', (chunk) => {
        const messages = (rest + chunk.toString()).split('\0');
        rest = messages.pop() ?? '';
        for (const message of messages) {
            const { id, result, error } = JSON.parse(message);
            const call = waiting.get(id);
            waiting.delete(id);
            if (error === undefined) {
                call?.done(result);
            } else {
                call?.fail(new Error(error.message));
            }
        }
    });
    /** @param {string} method @param {object} params @param {string} [sessionId] @returns {Promise<Answer>} */
    const call = (method, params, sessionId) =>
        new Promise((done, fail) => {
            waiting.set(++asked, { done, fail });
            input.write(`${JSON.stringify({ id: asked, method, params, sessionId })}\0`);
        });
    const { targetInfos } = await call('Target.getTargets', {});
    const [page] = /** @type {{ type: string, targetId: string }[]} */ (targetInfos).filter(({ type }) => type === 'page');
    const { sessionId } = await call('Target.attachToTarget', { targetId: page.targetId, flatten: true });
    /** @param {string} method @param {object} [params] */
    const send = (method, params = {}) => call(method, params, /** @type {string} */ (sessionId));
    /** @param {string} expression */
    const evaluate = async (expression) => {
        const answer = await send('Runtime.evaluate', { expression, awaitPromise: true, returnByValue: true });
        if (answer.exceptionDetails !== undefined) {
            throw new Error(JSON.stringify(answer.exceptionDetails));
        }
        return /** @type {{ value: unknown }} */ (answer.result).value;
    };
    await send('Emulation.setDeviceMetricsOverride', { width: 1600, height: 1000, deviceScaleFactor: 1, mobile: false });
    return { send, evaluate, whole: (method, params = {}, session = undefined) => call(method, params, session), open: (address) => open(send, evaluate, address) };
}

/** @param {Page['send']} send @param {Page['evaluate']} evaluate @param {string} address */
async function open(send, evaluate, address) {
    await send('Page.navigate', { url: address });
    const state = `location.href === ${JSON.stringify(address)} ? (document.documentElement?.dataset.ready ?? '') : ''`;
    const until = Date.now() + PATIENCE;
    while (Date.now() < until) {
        const found = await evaluate(state);
        if (found === 'yes') {
            return;
        }
        if (found !== '') {
            throw new Error(`${address}: ${found}`);
        }
        await new Promise((done) => setTimeout(done, 100));
    }
    throw new Error(`${address}: not ready after ${PATIENCE} ms`);
}
