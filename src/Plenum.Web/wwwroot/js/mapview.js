// The map on a sheet: fetches its documents, draws the legend, tells the page what the reader did.

import { createMap, drawSwatch, readTokens } from '../map/map.js';
import { printTokens } from '../map/tokens.js';
import { lettersAct } from './keys.js';

/** What is asked for belongs to a revision that is no longer the newest. */
const OVERTAKEN = new ArrayBuffer(0);

/**
 * @typedef {object} Lens
 * @property {string} name
 * @property {object[]} classes
 * @property {boolean} findings
 * @property {boolean} outlines
 */

/**
 * @typedef {object} View
 * @property {string} project address of the project document
 * @property {string} lens address of the lens document
 * @property {Lens} legend
 * @property {'budget' | 'hours' | 'count'} measure
 * @property {string | null} focus
 */

/**
 * Puts the map on a sheet.
 * @param {HTMLElement | null} element
 * @param {any} page object of the page with the methods OnFocus, OnOpen, OnMeasure, OnTrouble
 */
export function putMap(element, page) {
    if (element === null) {
        return null; // the reader has gone on already
    }
    const host = element;
    const map = createMap(host, { measure: 'budget', letters: lettersAct() });
    /** @type {View | null} */
    let shown = null;
    /** @type {View | null} */
    let wanted = null;
    let busy = false;

    /** @param {string} name @param {(detail: any) => void} tell */
    const on = (name, tell) =>
        map.addEventListener(name, (event) => tell(/** @type {CustomEvent} */ (event).detail));
    on('focus', ({ code }) => page.invokeMethodAsync('OnFocus', code));
    on('open', ({ code }) => page.invokeMethodAsync('OnOpen', code));
    on('measure', ({ measure }) => page.invokeMethodAsync('OnMeasure', measure));
    on('drawn', (detail) => {
        host.dataset.drawn = String(detail.milliseconds);
        host.dispatchEvent(new CustomEvent('plenum-drawn', { detail, bubbles: true }));
    });
    on('marked', (detail) => host.dispatchEvent(new CustomEvent('plenum-marked', { detail, bubbles: true })));

    const section = /** @type {HTMLElement} */ (host.closest('#map'));
    const takeKeys = () => map.takeKeys();
    section.addEventListener('plenum-take-keys', takeKeys);
    const setLetters = (/** @type {Event} */ event) => map.setLetters(/** @type {CustomEvent} */ (event).detail);
    document.addEventListener('plenum-letters', setLetters);

    const legend = () => section.parentElement?.querySelector('.legend') ?? null;
    const swatches = (/** @type {boolean} */ onPaper) => {
        if (shown === null) {
            return;
        }
        const tokens = onPaper ? printTokens() : readTokens(document.documentElement, '--');
        for (const canvas of legend()?.querySelectorAll('canvas') ?? []) {
            const which = canvas.dataset.swatch ?? '';
            drawSwatch(canvas, which === 'missing' ? 'missing' : /** @type {any} */ (shown.legend.classes[Number(which)]), tokens);
        }
    };
    const themes = new MutationObserver(() => swatches(false));
    themes.observe(document.documentElement, { attributeFilter: ['data-theme', 'class', 'style'] });
    const scheme = matchMedia('(prefers-color-scheme: dark)');
    const onScheme = () => swatches(false);
    scheme.addEventListener('change', onScheme);
    const onPaper = () => swatches(true);
    const onScreen = () => swatches(false);
    window.addEventListener('beforeprint', onPaper);
    window.addEventListener('afterprint', onScreen);

    const placeArea = () => {
        const area = document.querySelector('[data-maparea]');
        if (area === null) {
            map.setWorkArea(null);
            return;
        }
        const own = host.getBoundingClientRect();
        const box = area.getBoundingClientRect();
        map.setWorkArea({ left: box.left - own.left, right: box.right - own.left });
    };
    const areas = new ResizeObserver(placeArea);
    areas.observe(host);

    async function bring() {
        if (busy) {
            return;
        }
        busy = true;
        try {
            while (wanted !== null && wanted !== shown) {
                const view = wanted;
                const isNewProject = shown === null || shown.project !== view.project;
                const isNewLens = isNewProject || shown === null || shown.lens !== view.lens;
                const [project, lens] = await Promise.all([
                    isNewProject ? fetchBytes(view.project) : null,
                    isNewLens ? fetchBytes(view.lens) : null,
                ]);
                if (view !== wanted) {
                    continue;
                }
                if (project === OVERTAKEN || lens === OVERTAKEN) {
                    wanted = shown; // the page asks again for the newer revision
                    continue;
                }
                if (project !== null) {
                    map.setData(project);
                }
                if (lens !== null) {
                    map.setLens(/** @type {any} */ (view.legend), lens);
                }
                map.setMeasure(view.measure);
                map.focus(view.focus);
                shown = view;
                swatches(false);
                placeArea();
                host.dataset.shows = view.lens;
            }
        } catch (fault) {
            wanted = shown;
            await page.invokeMethodAsync('OnTrouble', fault instanceof Error ? fault.message : String(fault));
        } finally {
            busy = false;
        }
    }

    return {
        /** @param {View} view */
        show(view) {
            wanted = view;
            void bring();
        },
        /** @param {string | null} code */
        focus(code) {
            if (wanted !== null) {
                const same = shown === wanted;
                wanted = { ...wanted, focus: code };
                if (same) {
                    shown = wanted;
                    map.focus(code);
                }
            }
            placeArea();
        },
        placeArea,
        swatches: () => swatches(false),
        nextGap: () => map.nextGap(),
        /** @param {string | null} code */
        zoomTo: (code) => map.zoomTo(code),
        destroy() {
            areas.disconnect();
            themes.disconnect();
            scheme.removeEventListener('change', onScheme);
            window.removeEventListener('beforeprint', onPaper);
            window.removeEventListener('afterprint', onScreen);
            section.removeEventListener('plenum-take-keys', takeKeys);
            document.removeEventListener('plenum-letters', setLetters);
            map.destroy();
        },
    };
}

/** @param {string} address */
async function fetchBytes(address) {
    const answer = await fetch(address);
    if (answer.status === 204) {
        return OVERTAKEN;
    }
    if (!answer.ok) {
        throw new Error(await answer.text());
    }
    return answer.arrayBuffer();
}
