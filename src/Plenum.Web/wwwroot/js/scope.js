// The scope sheet under the keys and the pointer: from item to item, marked words, and the lines from phrases to parts.

import { keepOneStop } from './roving.js';

const SVG = 'http://www.w3.org/2000/svg';

/**
 * @param {HTMLElement | null} root the sheet
 * @param {any} page object of the page with the method Mark
 */
export function putScope(root, page) {
    if (root === null) {
        return null; // the reader has gone on already
    }
    const sheet = root;
    /** @type {Element | null} */
    let listed = null;
    let shown = '';
    let waiting = 0;

    const list = () => sheet.querySelector('#statement');
    const later = () => {
        cancelAnimationFrame(waiting);
        waiting = requestAnimationFrame(drawLines);
    };
    const sizes = new ResizeObserver(later);
    sizes.observe(sheet);
    sheet.addEventListener('scroll', later, true);
    sheet.addEventListener('keydown', onKey);
    document.addEventListener('selectionchange', onSelection);

    /** @param {KeyboardEvent} event */
    function onKey(event) {
        if (event.target instanceof HTMLTextAreaElement && event.target.dataset.words !== undefined) {
            markWords(event, event.target);
            return;
        }
        const here = event.target instanceof Element ? event.target.closest('[data-item]') : null;
        if (here === null || event.ctrlKey || event.altKey || event.metaKey) {
            return;
        }
        const all = [...sheet.querySelectorAll('[data-item]')];
        const at = all.indexOf(here);
        const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: all.length - 1, PageDown: at + 10, PageUp: at - 10 }[event.key];
        if (to !== undefined) {
            event.preventDefault();
            const next = all[Math.max(0, Math.min(all.length - 1, to))];
            if (next instanceof HTMLElement) {
                next.focus();
            }
        }
    }

    let first = -1;
    let last = -1;
    /** Arrows mark the word after or before, with Shift one word more or less. @param {KeyboardEvent} event @param {HTMLTextAreaElement} field */
    function markWords(event, field) {
        const words = [...field.value.matchAll(/[^\s.,;:()]\S*/g)].map((found) => ({
            start: found.index,
            end: found.index + found[0].replace(/[.,;:)]+$/, '').length,
        }));
        const to = { ArrowRight: last + 1, ArrowLeft: last < 0 ? words.length - 1 : last - 1, Home: 0, End: words.length - 1 }[event.key];
        if (to === undefined || event.ctrlKey || event.altKey || event.metaKey || words.length === 0) {
            return;
        }
        event.preventDefault();
        last = Math.max(0, Math.min(words.length - 1, to));
        first = event.shiftKey && first >= 0 ? first : last;
        const [from, until] = first <= last ? [first, last] : [last, first];
        field.setSelectionRange(words[from].start, words[until].end);
        tell(field.value.slice(words[from].start, words[until].end));
    }

    /** Words are marked in the field of the form, or in the picked item itself. */
    function onSelection() {
        const field = document.activeElement;
        if (field instanceof HTMLTextAreaElement && field.dataset.words !== undefined) {
            if (field.selectionEnd > field.selectionStart) {
                tell(field.value.slice(field.selectionStart, field.selectionEnd));
            }
            return;
        }
        const selection = getSelection();
        const text = sheet.querySelector('.item.picked .itemtext');
        if (selection !== null && !selection.isCollapsed && text !== null && text.contains(selection.anchorNode) && text.contains(selection.focusNode)) {
            tell(selection.toString().replace(/\s+/g, ' '));
        }
    }

    let told = '';
    let telling = 0;
    /** @param {string} words */
    function tell(words) {
        clearTimeout(telling);
        telling = setTimeout(() => {
            if (words !== told) {
                told = words;
                void page.invokeMethodAsync('Mark', words).catch(() => undefined);
            }
        }, 120);
    }

    function drawLines() {
        const svg = /** @type {SVGSVGElement | null} */ (sheet.querySelector('svg.links'));
        const item = sheet.querySelector('.item.picked');
        const box = list();
        if (svg === null) {
            return;
        }
        svg.replaceChildren();
        const frame = svg.getBoundingClientRect();
        if (item === null || box === null || frame.width < 8) {
            return;
        }
        const view = box.getBoundingClientRect();
        const parts = sheet.querySelector('.partspart')?.getBoundingClientRect();
        if (parts === undefined) {
            return; // a form stands in its place
        }
        for (const card of sheet.querySelectorAll('[data-answers]')) {
            const to = card.getBoundingClientRect();
            const y = to.top + Math.min(to.height / 2, 28);
            if (y < parts.top || y > parts.bottom) {
                continue;
            }
            const phrases = /** @type {string[]} */ (JSON.parse(/** @type {HTMLElement} */ (card).dataset.answers ?? '[]'));
            const isOpen = card.classList.contains('open');
            const marks = phrases.map((phrase) => item.querySelector(`mark[data-phrase="${CSS.escape(phrase)}"]`)).filter((mark) => mark !== null);
            const starts = marks.length > 0 ? marks.map(bottomOf) : [middleOf(item)];
            for (const start of starts) {
                const from = Math.max(view.top, Math.min(view.bottom, start));
                line(svg, frame, from, y, isOpen);
            }
        }
    }

    /** @param {Element} mark */
    function bottomOf(mark) {
        const lines = [...mark.getClientRects()];
        return lines[lines.length - 1].bottom - 1;
    }

    /** @param {Element} element */
    function middleOf(element) {
        const box = element.getBoundingClientRect();
        return box.top + box.height / 2;
    }

    /**
     * @param {SVGSVGElement} svg @param {DOMRect} frame
     * @param {number} from @param {number} to heights on the page
     * @param {boolean} isOpen
     */
    function line(svg, frame, from, to, isOpen) {
        const [y1, y2, end] = [from - frame.top, to - frame.top, frame.width - 4];
        const path = document.createElementNS(SVG, 'path');
        path.setAttribute('d', `M0 ${y1}C${end * 0.55} ${y1} ${end * 0.45} ${y2} ${end - 3} ${y2}`);
        path.setAttribute('class', isOpen ? 'open' : 'answered');
        const dot = document.createElementNS(SVG, 'circle');
        dot.setAttribute('cx', String(end));
        dot.setAttribute('cy', String(y2));
        dot.setAttribute('r', '3');
        dot.setAttribute('class', isOpen ? 'open' : 'answered');
        svg.append(path, dot);
    }

    return {
        /** @param {string | null} item the picked item */
        draw(item) {
            const now = list();
            if (now !== listed) {
                listed = now;
                keepOneStop(/** @type {HTMLElement | null} */ (now), '[data-item]');
            }
            if (item !== null && item !== shown) {
                const row = sheet.querySelector(`[data-itemrow="${CSS.escape(item)}"]`);
                row?.scrollIntoView({ block: 'nearest' });
            }
            if (item !== shown || sheet.querySelector('[data-words]') === null) {
                told = '';
                first = last = -1;
            }
            shown = item ?? '';
            later();
        },
        /** @param {string | null} item */
        toItem(item) {
            const button = item === null ? list() : sheet.querySelector(`[data-item="${CSS.escape(item)}"]`);
            if (button instanceof HTMLElement) {
                button.focus();
            }
        },
        destroy() {
            sizes.disconnect();
            cancelAnimationFrame(waiting);
            document.removeEventListener('selectionchange', onSelection);
        },
    };
}

/**
 * Tells a form when the text of its field has changed; the text goes over in pieces.
 * @param {HTMLTextAreaElement | null} field
 * @param {any} form object of the form with the method TextChanged
 */
export function watchText(field, form) {
    if (field === null) {
        return; // the reader has gone on already
    }
    let waiting = 0;
    const tell = () => {
        const text = new TextEncoder().encode(field.value.length > 0 ? field.value : ' ');
        void form.invokeMethodAsync('TextChanged', /** @type {any} */ (globalThis).DotNet.createJSStreamReference(text)).catch(() => undefined);
    };
    field.addEventListener('input', () => {
        clearTimeout(waiting);
        waiting = setTimeout(tell, 250);
    });
    if (field.value.length > 0) {
        tell(); // somebody was faster than this script
    }
}
