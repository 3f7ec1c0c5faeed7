// The move from one window to another.

/** @typedef {import('./layout.js').Window} Window */

/** Length of a move, milliseconds. */
export const MOVE = 180;

/**
 * The window at a moment of a move. Widths change by the same factor in the same time, so that a deep zoom is not all
 * over in its first step.
 * @param {Window} start @param {Window} goal @param {number} time 0 to 1
 * @returns {Window}
 */
export function between(start, goal, time) {
    if (time <= 0) {
        return start;
    }
    if (time >= 1) {
        return goal;
    }
    const eased = 1 - (1 - time) ** 3;
    const w0 = start.to - start.from;
    const w1 = goal.to - goal.from;
    const width = w0 * (w1 / w0) ** eased;
    const part = w0 === w1 ? eased : (width - w0) / (w1 - w0);
    const from = start.from + (goal.from - start.from) * part;
    return { from, to: from + width };
}

/**
 * Moves, drawing a window in every frame.
 * @param {Window} start @param {Window} goal @param {(view: Window) => void} draw
 * @returns {() => void} stops where it is
 */
export function move(start, goal, draw) {
    const began = performance.now();
    /** @param {number} now */
    const step = (now) => {
        const time = Math.max(0, Math.min(1, (now - began) / MOVE));
        if (time < 1) {
            pending = requestAnimationFrame(step);
        }
        draw(between(start, goal, time));
    };
    let pending = requestAnimationFrame(step);
    return () => cancelAnimationFrame(pending);
}

/** True if the reader asked for less motion. */
export function isStill() {
    return window.matchMedia('(prefers-reduced-motion: reduce)').matches;
}
