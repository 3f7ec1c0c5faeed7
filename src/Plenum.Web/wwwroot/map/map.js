// The map of a project: one strip per level, root on top, children exactly filling their parent.

import { readLens, readProject, MapDataError } from './data.js';
import { frameOf } from './frame.js';
import { listen } from './input.js';
import { layOut } from './layout.js';
import { isStill, move } from './motion.js';
import { holderOf, nextGap, stepFrom, WHOLE, windowOf } from './moves.js';
import { paintMarks } from './overlay.js';
import { paintSheet } from './paint.js';
import { elementAt, makeStyle, noLens, showLens } from './scene.js';
import { MEASURES } from './sizes.js';
import { fitLayer, makeSurface } from './surface.js';
import { printTokens, readTokens } from './tokens.js';
import { makeTooltip } from './tooltip.js';
import { makeTree } from './tree.js';
import { watchPage } from './watch.js';
import { describe } from './words.js';

export { drawSwatch } from './patterns.js';
export { MapDataError } from './data.js';
export { printTokens, readTokens } from './tokens.js';

/** @typedef {import('./data.js').LensData} LensData */
/** @typedef {import('./data.js').Project} Project */
/** @typedef {import('./layout.js').Layout} Layout */
/** @typedef {import('./layout.js').Window} Window */
/** @typedef {import('./moves.js').Action} Action */
/** @typedef {import('./scene.js').Lens} Lens */
/** @typedef {import('./scene.js').Scene} Scene */
/** @typedef {import('./scene.js').Shown} Shown */
/** @typedef {import('./scene.js').Style} Style */
/** @typedef {import('./sizes.js').Measure} Measure */

/**
 * @typedef {object} MapOptions
 * @property {Measure} [measure] `budget` unless said otherwise
 * @property {boolean} [compact] lower strips, for screens that need the room
 * @property {boolean} [letters] false switches the keys G and M off
 * @property {string} [tokenPrefix] what stands before the name of a token in custom properties; `--`
 * @property {string} [font] font families of the labels
 * @property {(index: number) => string} [valueText] lens value of an element in figures, for the tooltip
 */

/** Device pixels per CSS pixel on paper. */
const PAPER_SCALE = 3;

/**
 * Events, with `detail`: `focus` and `open` { code, index }, `measure` { measure }, `zoom` { code, index },
 * `drawn` { milliseconds, elements }. All but `drawn` tell what the reader did, not what the page asked for.
 */
export class PlenumMap extends EventTarget {
    /** @param {HTMLElement} host @param {MapOptions} [options] */
    constructor(host, options = {}) {
        super();
        this.options = options;
        this.letters = options.letters ?? true;
        this.compact = options.compact ?? false;
        this.prefix = options.tokenPrefix ?? '--';
        this.family = options.font ?? '"IBM Plex Sans Variable", "IBM Plex Sans", sans-serif';
        /** @type {Measure} */
        this.measure = options.measure ?? 'budget';
        /** @type {Map<Measure, Layout>} */
        this.layouts = new Map();
        /** @type {Project | null} */
        this.project = null;
        /** @type {{ lens: Lens, data: LensData } | null} */
        this.lens = null;
        /** @type {Shown | null} */
        this.shown = null;
        /** @type {Style | null} */
        this.style = null;
        /** @type {Scene | null} */
        this.scene = null;
        /** @type {Window} */
        this.view = WHOLE;
        /** Element that fills the map. */
        this.zoomed = 0;
        this.focused = -1;
        this.hovered = -1;
        this.gap = -1;
        /** @type {{ left: number, right: number } | null} */
        this.workArea = null;
        this.onPaper = false;
        this.pending = 0;
        /** @type {() => void} */
        this.stopMoving = () => {};
        this.sheetIsStale = true;

        this.root = document.createElement('div');
        this.root.className = 'plenum-map';
        this.root.style.setProperty('--map-font', this.family);
        host.append(this.root);
        this.surface = makeSurface(this.root);
        this.tree = makeTree((element) => this.#moveTo(element), this.prefix);
        this.root.append(this.tree.root);
        this.tooltip = makeTooltip(this.root, this.prefix);
        this.stopListening = listen(this.root, this.tree.root, this.#handlers(), () => this.letters);
        this.stopWatching = watchPage(this.root, {
            resized: () => this.redraw(),
            restyled: () => this.refresh(),
            printing: (onPaper) => {
                this.onPaper = onPaper;
                this.style = null;
                this.#drawNow(true);
            },
        });
    }

    /**
     * Shows a project. Focus and zoom stay on the same codes where they still exist; the lens has to be set again.
     * @param {ArrayBuffer} buffer the project document
     * @throws {MapDataError}
     */
    setData(buffer) {
        const before = this.project;
        const project = readProject(buffer);
        /** @param {number} index */
        const again = (index) =>
            before === null || index < 0 ? -1 : project.codes.indexOf(before.codes.at(index));
        const [focused, zoomed] = [again(this.focused), again(this.zoomed)];
        this.project = project;
        this.layouts.clear();
        this.lens = null;
        this.shown = null;
        this.style = null;
        this.focused = focused;
        this.zoomed = Math.max(0, zoomed);
        this.gap = -1;
        this.hovered = -1;
        this.#jump(this.#windowOf(this.zoomed));
    }

    /**
     * Colours the map. The classes are the page's legend, in the order of the document's classes.
     * @param {Lens} lens @param {ArrayBuffer} buffer the lens document
     * @throws {MapDataError} if it does not belong to the elements that are shown
     */
    setLens(lens, buffer) {
        const data = readLens(buffer);
        if (this.project === null || data.count !== this.project.count) {
            const expected = this.project === null ? 'a project first' : `${this.project.count}`;
            throw new MapDataError(`lens document: ${data.count} elements found, ${expected} expected`);
        }
        if (data.classCount !== lens.classes.length) {
            throw new MapDataError(
                `lens document: ${data.classCount} classes found, ${lens.classes.length} of the legend expected`,
            );
        }
        this.lens = { lens, data };
        this.shown = null;
        this.style = null;
        this.redraw();
    }

    /** @param {Measure} measure */
    setMeasure(measure) {
        if (!MEASURES.includes(measure)) {
            throw new RangeError(`measure "${measure}" found, one of ${MEASURES.join(', ')} expected`);
        }
        this.measure = measure;
        this.shown = null;
        this.gap = -1;
        this.#jump(this.#windowOf(this.zoomed));
    }

    /** Puts an element in focus; null takes the focus away. False if there is no such code. @param {string | null} code */
    focus(code) {
        const index = code === null ? -1 : (this.project?.codes.indexOf(code) ?? -1);
        if (code !== null && index < 0) {
            return false;
        }
        this.#setFocus(index);
        return true;
    }

    /** Fills the map with an element; null shows the whole project. False if there is no such code. @param {string | null} code */
    zoomTo(code) {
        const index = code === null ? 0 : (this.project?.codes.indexOf(code) ?? -1);
        if (index < 0) {
            return false;
        }
        this.#zoom(index);
        return true;
    }

    /** Puts the owner of the next gap in focus, as the key G does. False if there is no gap. */
    nextGap() {
        const layout = this.#layout();
        const next = layout === null ? -1 : nextGap(layout, this.focused, this.gap);
        if (layout === null || next < 0) {
            return false;
        }
        this.#moveTo(layout.gaps[next].owner);
        this.gap = next;
        return true;
    }

    /** Where the detail of the focus stands below the map, CSS pixels of the host; null: all of it. @param {{ left: number, right: number } | null} area */
    setWorkArea(area) {
        this.workArea = area;
        this.#drawSoon(false);
    }

    /** @param {boolean} letters false switches the keys G and M off */
    setLetters(letters) {
        this.letters = letters;
    }

    /** Moves the keyboard to the map. */
    takeKeys() {
        this.tree.root.focus();
    }

    /** Reads the colours, the text size and the fonts again and draws. Called by itself when the theme changes. */
    refresh() {
        this.style = null;
        this.redraw();
    }

    /** Takes the map off the page. */
    destroy() {
        cancelAnimationFrame(this.pending);
        this.stopMoving();
        this.stopListening();
        this.stopWatching();
        this.root.remove();
    }

    redraw() {
        this.#drawSoon(true);
    }

    /** @returns {Layout | null} */
    #layout() {
        if (this.project === null) {
            return null;
        }
        let layout = this.layouts.get(this.measure);
        if (layout === undefined) {
            layout = layOut(this.project, this.measure);
            this.layouts.set(this.measure, layout);
        }
        return layout;
    }

    /** @param {number} index @returns {Window} */
    #windowOf(index) {
        const layout = this.#layout();
        return layout === null ? WHOLE : windowOf(layout, index);
    }

    /** @param {number} index */
    #setFocus(index) {
        this.focused = index;
        const goal = this.#windowOf(this.zoomed);
        const positions = this.#layout()?.positions;
        if (positions !== undefined && index >= 0) {
            const isOut = positions.right[index] <= goal.from || positions.left[index] >= goal.to;
            if (isOut) {
                this.#zoom(this.project?.parent[index] ?? 0);
            }
        }
        this.#speak();
        this.#drawSoon(false);
    }

    #speak() {
        const layout = this.#layout();
        if (layout !== null) {
            this.shown ??= this.#show(layout);
            this.tree.update(layout, this.shown, this.focused);
        }
    }

    /** What the reader did. @param {number} index */
    #moveTo(index) {
        this.#setFocus(index);
        this.#tell('focus', index);
    }

    /** @param {string} type @param {number} index */
    #tell(type, index) {
        const code = this.project === null || index < 0 ? '' : this.project.codes.at(index);
        this.dispatchEvent(new CustomEvent(type, { detail: { code, index } }));
    }

    /** @param {number} index */
    #zoom(index) {
        this.zoomed = Math.max(0, index);
        this.tooltip.hide();
        const goal = this.#windowOf(this.zoomed);
        if (isStill()) {
            this.#jump(goal);
            return;
        }
        this.stopMoving();
        this.stopMoving = move(this.view, goal, (view) => {
            this.view = view;
            this.#drawNow(true);
        });
    }

    /** @param {Window} view */
    #jump(view) {
        this.stopMoving();
        this.view = view;
        this.redraw();
    }

    /** @param {boolean} sheet true: the sheet too; false: only the marks */
    #drawSoon(sheet) {
        this.sheetIsStale ||= sheet;
        if (this.pending === 0) {
            this.pending = requestAnimationFrame(() => this.#drawNow(this.sheetIsStale));
        }
    }

    /** @param {boolean} sheet */
    #drawNow(sheet) {
        cancelAnimationFrame(this.pending);
        this.pending = 0;
        const began = performance.now();
        const layout = this.#layout();
        if (layout === null || this.root.clientWidth === 0) {
            return;
        }
        const isNew = this.shown === null;
        if (sheet || this.scene === null) {
            this.scene = this.#makeScene(layout);
            const { frame, style } = this.scene;
            fitLayer(this.surface.sheet, frame, style.scale, this.onPaper);
            fitLayer(this.surface.marks, frame, style.scale, this.onPaper);
            const elements = paintSheet(this.surface.sheet.pen, this.scene);
            this.tree.place(frame, this.onPaper);
            this.sheetIsStale = false;
            this.#paintMarks();
            const milliseconds = performance.now() - began;
            this.dispatchEvent(new CustomEvent('drawn', { detail: { milliseconds, elements } }));
        } else {
            this.#paintMarks();
            this.dispatchEvent(new CustomEvent('marked', { detail: { milliseconds: performance.now() - began } }));
        }
        if (isNew) {
            this.#speak();
        }
    }

    /** On paper sheet and marks are one picture: layers would be printed one by one, and not quite alike. */
    #paintMarks() {
        if (this.scene !== null) {
            const { sheet, marks } = this.surface;
            marks.canvas.style.visibility = this.onPaper ? 'hidden' : 'visible';
            paintMarks(this.onPaper ? sheet.pen : marks.pen, this.scene, {
                focus: this.focused,
                hover: this.onPaper ? -1 : this.hovered,
                workArea: this.workArea,
                onSheet: this.onPaper,
            });
        }
    }

    /** @param {Layout} layout @returns {Scene} */
    #makeScene(layout) {
        this.shown ??= this.#show(layout);
        this.style ??= this.#makeStyle(this.shown.lens);
        const { project } = layout;
        const frame = frameOf({
            width: this.root.clientWidth,
            levels: project.levelNames.length,
            atLevel: project.level[this.zoomed],
            zoomed: this.view.from > 0 || this.view.to < 1,
            compact: this.compact,
            unit: this.style.unit,
        });
        return { layout, shown: this.shown, style: this.style, frame, view: this.view };
    }

    /** @param {Layout} layout */
    #show(layout) {
        const { lens, data } = this.lens ?? noLens(layout.project);
        return showLens(layout, lens, data);
    }

    /** @param {Lens} lens */
    #makeStyle(lens) {
        const tokens = this.onPaper ? printTokens() : readTokens(this.root, this.prefix);
        const scale = this.onPaper ? PAPER_SCALE : window.devicePixelRatio || 1;
        const unit = parseFloat(getComputedStyle(document.documentElement).fontSize) / 16 || 1;
        return makeStyle(this.surface.sheet.pen, tokens, lens, { scale, unit, family: this.family });
    }

    /** @param {number} x @param {number} y CSS pixels on the sheet; −1 if there is no element */
    #elementAt(x, y) {
        return this.scene === null ? -1 : elementAt(this.scene, x, y);
    }

    /** @returns {import('./input.js').Handlers} */
    #handlers() {
        return {
            act: (action) => this.#act(action),
            hover: (x, y) => {
                this.tooltip.hide();
                this.#setHover(this.#elementAt(x, y));
            },
            rest: (x, y) => this.#explain(this.#elementAt(x, y), x, y),
            leave: () => {
                this.tooltip.hide();
                this.#setHover(-1);
            },
            click: (x, y) => this.#click(x, y),
            doubleClick: (x, y) => {
                const element = this.#elementAt(x, y);
                if (element >= 0) {
                    this.#zoomByReader(element);
                    this.#tell('open', element);
                }
            },
            pan: (pixels) => this.#pan(pixels),
        };
    }

    /** @param {number} element */
    #setHover(element) {
        if (this.hovered !== element) {
            this.hovered = element;
            this.#drawSoon(false);
        }
    }

    /** @param {number} element @param {number} x @param {number} y */
    #explain(element, x, y) {
        if (element >= 0 && this.scene !== null) {
            const value = this.lens === null ? '' : (this.options.valueText?.(element) ?? '');
            this.tooltip.show(describe(this.scene.layout, this.scene.shown, element, value), x, y);
        }
    }

    /** @param {number} x @param {number} y */
    #click(x, y) {
        this.tree.root.focus({ preventScroll: true });
        const element = this.#elementAt(x, y);
        const frame = this.scene?.frame;
        if (element >= 0) {
            this.gap = -1;
            this.#moveTo(element);
        } else if (frame?.overview === true && y < frame.rulerTop && x >= frame.left && x < frame.right) {
            const half = (this.view.to - this.view.from) / 2;
            this.#panTo((x - frame.left) / (frame.right - frame.left) - half);
        }
    }

    /** @param {number} pixels @returns {boolean} */
    #pan(pixels) {
        const frame = this.scene?.frame;
        const width = this.view.to - this.view.from;
        if (frame === undefined || width >= 1) {
            return false;
        }
        this.#panTo(this.view.from + (pixels * width) / (frame.right - frame.left));
        return true;
    }

    /** @param {number} from */
    #panTo(from) {
        const width = this.view.to - this.view.from;
        const start = Math.max(0, Math.min(1 - width, from));
        this.#jump({ from: start, to: start + width });
        const layout = this.#layout();
        this.zoomed = layout === null ? 0 : holderOf(layout, this.zoomed, this.view);
    }

    /** @param {number} element */
    #zoomByReader(element) {
        this.#zoom(element);
        this.#tell('zoom', this.zoomed);
    }

    /** @param {Action} action @returns {boolean} */
    #act(action) {
        const project = this.project;
        if (project === null) {
            return false;
        }
        const focused = Math.max(0, this.focused);
        switch (action) {
            case 'open':
                if (this.focused < 0) {
                    this.#moveTo(focused);
                }
                this.#tell('open', focused);
                return true;
            case 'zoomIn':
                this.#zoomByReader(focused);
                return true;
            case 'zoomOut':
                this.#zoomByReader(Math.max(0, project.parent[this.zoomed]));
                return true;
            case 'whole':
                this.#zoomByReader(0);
                return true;
            case 'gap':
                return this.nextGap();
            case 'measure': {
                const next = MEASURES[(MEASURES.indexOf(this.measure) + 1) % MEASURES.length];
                this.setMeasure(next);
                this.dispatchEvent(new CustomEvent('measure', { detail: { measure: next } }));
                return true;
            }
            case 'dismiss': {
                const wasShown = this.tooltip.isShown();
                this.tooltip.hide();
                return wasShown;
            }
            default:
                this.gap = -1;
                this.#moveTo(this.focused < 0 ? 0 : stepFrom(project, focused, action));
                return true;
        }
    }
}

/** @param {HTMLElement} canvasHost @param {MapOptions} [options] */
export function createMap(canvasHost, options) {
    return new PlenumMap(canvasHost, options);
}
