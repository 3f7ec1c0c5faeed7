// The demonstration page. Address: ?size=plant|large&lens=accounts|breakdown|status&theme=light|dark&measure=…
// &focus=CODE&zoom=CODE&keys=KEY,KEY,…&hover=X,Y&compact&wait
// `wait` shows nothing until start() is called

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
        outlines: false,
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

window.addEventListener('error', (event) => fail(event.message));
window.addEventListener('unhandledrejection', (event) => fail(String(event.reason)));

/** @param {string} message */
function fail(message) {
    document.documentElement.dataset.ready = message;
}

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
function start() {
    map.setData(data);
    colour();
}

function colour() {
    map.setLens(lens, colours);
}

let isHours = false;

function swap() {
    isHours = !isHours;
    map.setMeasure(isHours ? 'hours' : 'budget');
}

const frame = () => new Promise((done) => requestAnimationFrame(done));
Object.assign(window, { map, drawn, frame, start, colour, swap });
if (!asked.has('wait')) {
    await show();
}
document.documentElement.dataset.ready = 'yes';

async function show() {
    start();
    const { elements } = await drawn();
    byId('timing').textContent = `${elements} elements in view`;
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
        const move = new PointerEvent('pointermove', { clientX, clientY, bubbles: true });
        byId('map').firstElementChild?.dispatchEvent(move);
        await pause(500);
    }
}
