// Figures and short sentences of the map, for the tooltip, the tree and the gutters.

import { Flag } from './data.js';

/** @typedef {import('./data.js').Project} Project */
/** @typedef {import('./layout.js').Layout} Layout */
/** @typedef {import('./scene.js').Shown} Shown */

/** Between thousands, and between a figure and its unit. */
const NARROW = '\u202f';
const SPACE = '\u00a0';

/** @param {number} count */
export function countText(count) {
    return String(Math.round(count)).replace(/\B(?=(\d{3})+$)/g, NARROW);
}

/** Less than any share of a project that somebody plans: what sums of fractions leave. */
const NOTHING = 1e-9;

/** With one decimal; 100 % is said only of the whole, 0 % only of nothing. @param {number} share 0 to 1 */
export function shareText(share) {
    if (share <= NOTHING || share >= 1 - NOTHING) {
        return `${share <= NOTHING ? 0 : 100}${SPACE}%`;
    }
    if (share < 0.0005) {
        return `under 0.1${SPACE}%`;
    }
    return `${Math.min(99.9, share * 100).toFixed(1)}${SPACE}%`;
}

/** @param {number} percent @param {number} decimals */
export function tickText(percent, decimals) {
    return `${percent.toFixed(decimals)}${SPACE}%`;
}

/**
 * Millions with one decimal; below a tenth of a million whole units.
 * @param {Project} project @param {number} minor minor units of its currency
 */
export function moneyText(project, minor) {
    const amount = Math.abs(minor) / 10 ** project.minorDigits;
    const sign = minor < 0 ? '−' : '';
    const figure = amount >= 100_000 ? `${(amount / 1e6).toFixed(1)} million` : countText(amount);
    return `${sign}${symbolOf(project.currency)}${SPACE}${figure}`;
}

/** @param {string} currency ISO 4217 letters */
function symbolOf(currency) {
    try {
        const parts = new Intl.NumberFormat('en', { style: 'currency', currency }).formatToParts(0);
        return parts.find((part) => part.type === 'currency')?.value ?? currency;
    } catch (error) {
        if (error instanceof RangeError) {
            return currency;
        }
        throw error;
    }
}

/** What an element is. @param {Project} project @param {number} index */
export function kindText(project, index) {
    const flags = project.flags[index];
    if ((flags & Flag.planning) !== 0) {
        return 'Planning package';
    }
    return (flags & Flag.package) !== 0 ? 'Work package' : project.levelNames[project.level[index] - 1];
}

/** "03.2 RO train B". @param {Project} project @param {number} index */
export function titleOf(project, index) {
    return `${project.codes.at(index)} ${project.names.at(index)}`.trim();
}

/** The element's size in the measure of the map. @param {Layout} layout @param {number} index */
export function sizeText({ project, positions }, index) {
    if (positions.measure === 'count') {
        const packages = packagesBelow(project, index);
        return `${countText(packages)} work package${packages === 1 ? '' : 's'}`;
    }
    return positions.measure === 'hours'
        ? `${countText(project.hours[index])} hours`
        : `Budget ${moneyText(project, project.budget[index])}`;
}

/** Packages in an element, itself included; linear in the elements below. @param {Project} project @param {number} index */
function packagesBelow(project, index) {
    let packages = 0;
    for (let i = index; i < project.end[index]; i++) {
        packages += (project.flags[i] & Flag.package) === 0 ? 0 : 1;
    }
    return packages;
}

/** Share of the whole that an element takes. @param {Layout} layout @param {number} index */
export function shareOfWhole({ positions }, index) {
    return positions.right[index] - positions.left[index];
}

/** "12.8 % of Reverse osmosis, 2.9 % of the project". @param {Layout} layout @param {number} index */
export function sharesText(layout, index) {
    const { project } = layout;
    const above = project.parent[index];
    const own = shareOfWhole(layout, index);
    if (above < 0) {
        return 'the whole project';
    }
    const whole = `${shareText(own)} of the project`;
    const room = shareOfWhole(layout, above);
    return above === 0 || room === 0
        ? whole
        : `${shareText(own / room)} of ${project.names.at(above)}, ${whole}`;
}

/** What the lens says of an element, in the words of the legend. @param {Shown} shown @param {number} index */
export function lensText({ lens, weights }, index) {
    const { shares, classes, classOf, whole } = weights;
    if (shares === null) {
        return lens.classes[classOf[index]].word;
    }
    const parts = lens.classes
        .map(({ word }, c) => ({ word, share: shares[index * classes + c] / whole }))
        .filter(({ share }) => share > 0);
    return parts.length === 1
        ? parts[0].word
        : parts.map(({ word, share }) => `${word} ${shareText(share)}`).join(', ');
}

/** What is missing below an element, or too much; empty if its parts are all of it. @param {Layout} layout @param {number} index */
export function missingText(layout, index) {
    const { project, positions } = layout;
    const gap = layout.gapOf.get(index);
    if ((project.flags[index] & Flag.notSplit) !== 0) {
        return gap?.unknown === true ? 'Not broken down, size unknown' : 'Not broken down';
    }
    if (gap !== undefined) {
        const share = (gap.right - gap.left) / shareOfWhole(layout, index);
        return gap.unknown
            ? 'Something belongs to no part, size unknown'
            : `${shareText(share)} of it belongs to no part`;
    }
    const { measure } = positions;
    const excess = measure === 'hours' ? -project.gapHours[index] : -project.gapBudget[index];
    if (measure !== 'count' && excess > 0) {
        const amount = measure === 'hours' ? `${countText(excess)} hours` : moneyText(project, excess);
        return `Its parts come to ${amount} more than the whole`;
    }
    return '';
}

/** Elements from the root to the parent. @param {Project} project @param {number} index */
export function pathOf(project, index) {
    /** @type {number[]} */
    const path = [];
    for (let at = project.parent[index]; at >= 0; at = project.parent[at]) {
        path.unshift(at);
    }
    return path;
}

/**
 * Everything the tooltip says, a line each, empty lines left out.
 * @param {Layout} layout @param {Shown} shown @param {number} index @param {string} value the lens value in figures, or empty
 */
export function describe(layout, shown, index, value) {
    const { project } = layout;
    const account = project.account[index];
    const lens = [shown.lens.name, value || lensText(shown, index)].filter((text) => text !== '').join(': ');
    return {
        path: pathOf(project, index).map((at) => project.names.at(at)).join(' / '),
        title: titleOf(project, index),
        lines: [
            kindText(project, index) + (account < 0 ? '' : `, control account ${project.accountCodes.at(account)}`),
            `${sizeText(layout, index)}, ${sharesText(layout, index)}`,
            lens,
            missingText(layout, index),
        ].filter((text) => text !== ''),
    };
}
