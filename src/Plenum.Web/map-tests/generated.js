// Breakdowns from a seed, with everything that may be odd: gaps of known and unknown size, elements that are not split,
// packages without budget, parts that are more than the whole, leaves on all levels.

import { Flag, readProject } from '../wwwroot/map/data.js';
import { numbersFrom } from './demo-data.js';
import { encodeProject } from './encode.js';

/** @typedef {import('./encode.js').Element} Element */

const LEVELS = 6;

/** @param {number} seed @returns {Element[]} */
export function makeElements(seed) {
    const random = numbersFrom(seed);
    /** @type {Element[]} */
    const elements = [];
    /** @param {number} level @param {string} code */
    const add = (level, code) => {
        const children = level === LEVELS ? 0 : level === 1 ? 1 + Math.floor(random() * 5) : Math.floor(random() * 5);
        if (children > 0) {
            const kind = random();
            const gap = kind < 0.15 ? Math.ceil(random() * 500) : kind < 0.25 ? NaN : kind < 0.3 ? -50 : 0;
            elements.push({ level, code, name: `Part ${code}`, gapBudget: gap, gapHours: kind < 0.2 ? gap / 2 : 0 });
            for (let child = 1; child <= children; child++) {
                add(level + 1, `${code}.${child}`);
            }
        } else if (random() < 0.12) {
            elements.push({
                level,
                code,
                name: `Part ${code}`,
                flags: Flag.notSplit,
                gapBudget: random() < 0.5 ? NaN : Math.ceil(random() * 300),
                gapHours: NaN,
            });
        } else {
            elements.push({
                level,
                code,
                name: `Package ${code}`,
                flags: Flag.package | (random() < 0.1 ? Flag.finding : 0),
                budget: random() < 0.1 ? 0 : Math.ceil(random() * 1000),
                hours: random() < 0.2 ? 0 : Math.ceil(random() * 80),
            });
        }
    };
    add(1, '1');
    return elements;
}

const LEVEL_NAMES = ['Project', 'System', 'Subsystem', 'Component', 'Part', 'Work package'];

/** @param {Element[]} elements @param {string[]} [accounts] */
export function projectOf(elements, accounts = []) {
    return readProject(encodeProject(elements, { levelNames: LEVEL_NAMES, accounts }));
}

/** Seeds of the laws. */
export const SEEDS = Array.from({ length: 120 }, (_, seed) => seed + 1);

/** A package for examples. @param {number} level @param {string} code @param {number} budget @param {Partial<Element>} [more] @returns {Element} */
export function pack(level, code, budget, more = {}) {
    return { level, code, name: `Package ${code}`, budget, hours: budget / 10, flags: Flag.package, ...more };
}

/** A branch for examples. @param {number} level @param {string} code @param {Partial<Element>} [more] @returns {Element} */
export function branch(level, code, more = {}) {
    return { level, code, name: `Part ${code}`, ...more };
}
