// Pointer and keys, turned into what the map does.

import { actionOf } from './moves.js';

/** @typedef {import('./moves.js').Action} Action */

/** Time that the pointer rests before the tooltip shows, milliseconds. */
const REST = 300;

/** CSS pixels that one line of a wheel counts. */
const WHEEL_LINE = 16;

/**
 * @typedef {object} Handlers
 * @property {(action: Action) => boolean} act true if the key did something here
 * @property {(x: number, y: number) => void} hover CSS pixels on the sheet
 * @property {(x: number, y: number) => void} rest
 * @property {() => void} leave
 * @property {(x: number, y: number) => void} click
 * @property {(x: number, y: number) => void} doubleClick
 * @property {(pixels: number) => boolean} pan true if the map could move
 */

/**
 * @param {HTMLElement} root of the map @param {HTMLElement} keys what takes the keyboard focus
 * @param {Handlers} handlers @param {() => boolean} letters
 * @returns {() => void} takes the listeners away again
 */
export function listen(root, keys, handlers, letters) {
    const stop = new AbortController();
    const { signal } = stop;
    let timer = 0;
    /** @param {MouseEvent} event */
    const place = (event) => {
        const box = root.getBoundingClientRect();
        return /** @type {const} */ ([event.clientX - box.left, event.clientY - box.top]);
    };
    root.addEventListener(
        'pointermove',
        (event) => {
            const [x, y] = place(event);
            handlers.hover(x, y);
            clearTimeout(timer);
            timer = window.setTimeout(() => handlers.rest(x, y), REST);
        },
        { signal },
    );
    root.addEventListener(
        'pointerleave',
        () => {
            clearTimeout(timer);
            handlers.leave();
        },
        { signal },
    );
    root.addEventListener('click', (event) => handlers.click(...place(event)), { signal });
    root.addEventListener('dblclick', (event) => handlers.doubleClick(...place(event)), { signal });
    root.addEventListener(
        'wheel',
        (event) => {
            const across = event.shiftKey && event.deltaX === 0 ? event.deltaY : event.deltaX;
            const pixels = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? across * WHEEL_LINE : across;
            if (pixels !== 0 && !event.ctrlKey && handlers.pan(pixels)) {
                event.preventDefault();
            }
        },
        { signal, passive: false },
    );
    keys.addEventListener(
        'keydown',
        (event) => {
            const action = actionOf(event, letters());
            if (action !== null && handlers.act(action)) {
                event.preventDefault();
                event.stopPropagation();
            }
        },
        { signal },
    );
    return () => {
        clearTimeout(timer);
        stop.abort();
    };
}
