// The demonstration page. Address: ?size=plant|large&lens=accounts|breakdown|status&theme=light|dark&measure=…
// &focus=CODE&zoom=CODE&keys=KEY,KEY,…&hover=X,Y&compact&time

import { createMap, drawSwatch, readTokens } from '../wwwroot/map/map.js';

const LENSES = {
    accounts: {
        name: 'Cost variance',
        about: 'Cost variance as a share of earned value',
        classes: [
            { word: 'better than +10 %', fill: 'fav4' },
            { word: '+3 to +10 %', fill: 'fav2' },
            { word: 'within ±3 %', fill: 'neu' },
            { word: '−3 to −10 %', fill: 'unf1' },
            { word: 'worse than −10 %', fill: 'unf2' },
            { word: 'not started', fill: 'none' },
        ],
    },
    breakdown: {
        name: 'Split',
        about: 'How each element is split, and what the audit found',
        findings: true,
        classes: [
            { word: 'physical part', fill: 'c1', glyph: /** @type {const} */ ('part') },
            { word: 'phase', fill: 'c3', glyph: /** @type {const} */ ('phase') },
            { word: 'place', fill: 'c4', glyph: /** @type {const} */ ('place') },
            { word: 'function', fill: 'c2', glyph: /** @type {const} */ ('function') },
            { word: 'package', fill: 'none' },
        ],
    },
    status: {
        name: 'Status',
        about: 'Reporting in this period, as a mix',
        classes: [
            { word: 'reported', fill: 'ink2' },
            { word: 'due', fill: 'c1', pattern: /** @type {const} */ ('dotted') },
            { word: 'late', fill: 'unf2' },
            { word: 'not open', fill: 'none' },
        ],
    },
};

const asked = new URLSearchParams(location.search);
/** @param {string} id */
const byId = (id) => /** @type {HTMLElement} */ (document.getElementById(id));
/** @param {string} file */
const load = async (file) => (await fetch(`out/${file}`)).arrayBuffer();

const size = asked.get('size') ?? 'plant';
const chosen = /** @type {keyof typeof LENSES} */ (asked.get('lens') ?? 'accounts');
const lens = LENSES[chosen];
document.documentElement.dataset.theme = asked.get('theme') ?? 'light';
byId('lens').textContent = `${lens.name} lens`;
byId('about').textContent = lens.about;

const [data, colours] = await Promise.all([load(`${size}.map`), load(`${size}-${chosen}.lens`)]);
await Promise.all(['400 12px', '600 12px'].map((font) => document.fonts.load(`${font} "IBM Plex Sans Variable"`)));

const map = createMap(byId('map'), {
    measure: /** @type {'budget' | 'hours' | 'count'} */ (asked.get('measure') ?? 'budget'),
    compact: asked.has('compact'),
});
for (const lensClass of [...lens.classes, /** @type {const} */ ('missing')]) {
    const entry = document.createElement('span');
    const swatch = document.createElement('canvas');
    entry.append(swatch, lensClass === 'missing' ? 'not broken down' : lensClass.word);
    byId('legend').append(entry);
    drawSwatch(swatch, lensClass, readTokens(document.documentElement, '--'));
}

/** The next drawing of the sheet. @returns {Promise<{ milliseconds: number, elements: number }>} */
const drawn = () =>
    new Promise((done) =>
        map.addEventListener('drawn', (event) => done(/** @type {CustomEvent} */ (event).detail), { once: true }),
    );
/** @param {number} milliseconds */
const pause = (milliseconds) => new Promise((done) => setTimeout(done, milliseconds));
/** @type {string[]} */
const notes = [];
/** @param {string} text @param {number} milliseconds */
const note = (text, milliseconds) => notes.push(`${text}: ${milliseconds.toFixed(1)} ms`);

const began = performance.now();
map.setData(data);
note('data decoded', performance.now() - began);
map.setLens(lens, colours);
const first = await drawn();
note(`first drawing, laid out and summed, ${first.elements} elements in view`, first.milliseconds);
note('from the bytes to the first drawing', performance.now() - began);

map.addEventListener('focus', (event) => {
    byId('path').textContent = /** @type {CustomEvent} */ (event).detail.code;
});
const focus = asked.get('focus');
if (focus !== null) {
    map.focus(focus);
    byId('path').textContent = focus;
}
const zoom = asked.get('zoom');
if (zoom !== null) {
    map.zoomTo(zoom);
    await pause(400);
}
for (const key of asked.get('keys')?.split(',') ?? []) {
    const tree = /** @type {HTMLElement} */ (document.querySelector('[role=tree]'));
    tree.focus();
    tree.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    await pause(300);
}
const hover = asked.get('hover')?.split(',').map(Number);
if (hover !== undefined) {
    const [clientX, clientY] = hover;
    byId('map').firstElementChild?.dispatchEvent(new PointerEvent('pointermove', { clientX, clientY, bubbles: true }));
    await pause(500);
}
if (asked.has('time')) {
    await timeRedraws();
}
byId('timing').textContent = notes.join('\n');
document.documentElement.dataset.ready = 'yes';

/** Medians of nine. */
async function timeRedraws() {
    /** @param {string} text @param {() => void} change */
    const time = async (text, change) => {
        const times = [];
        for (let round = 0; round < 9; round++) {
            const start = performance.now();
            const ready = drawn();
            change();
            await ready;
            times.push(performance.now() - start);
        }
        note(text, times.sort((a, b) => a - b)[4]);
    };
    await time('the same again, waiting for the frame included', () => map.redraw());
    await time('lens set', () => map.setLens(lens, colours));
    let isHours = false;
    await time('measure changed', () => map.setMeasure((isHours = !isHours) ? 'hours' : 'budget'));
    /** @type {number[]} */
    const steps = [];
    /** @param {Event} event */
    const listener = (event) => steps.push(/** @type {CustomEvent} */ (event).detail.milliseconds);
    map.addEventListener('drawn', listener);
    for (const code of ['03', '03.2', null, '07', null]) {
        map.zoomTo(code);
        await pause(350);
    }
    map.removeEventListener('drawn', listener);
    steps.sort((a, b) => a - b);
    note(`steps of a zoom, ${steps.length}, median`, steps[steps.length >> 1]);
    note('steps of a zoom, longest', steps[steps.length - 1]);
}
