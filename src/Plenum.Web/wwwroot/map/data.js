// The documents of the map: the elements of a project as columns in depth-first order, and a lens as one class for
// every element. README.md defines both byte by byte.

/** Bits of `Project.flags`. */
export const Flag = Object.freeze({
    /** A work package or planning package: a leaf that is finished being split. */
    package: 1,
    /** A branch without children: it should be split and is not. All of it is a gap. */
    notSplit: 2,
    /** The audit has a finding here. */
    finding: 4,
    /** A planning package; `package` is set too. */
    planning: 8,
});

/** Greatest number of levels that a document may have. */
export const MAX_LEVELS = 64;

/** Greatest number of classes that a lens may have. */
export const MAX_CLASSES = 32;

/** A document that is not what README.md says; the message names the place and what was expected. */
export class MapDataError extends Error {
    /** @param {string} message */
    constructor(message) {
        super(message);
        this.name = 'MapDataError';
    }
}

/**
 * A column of UTF-8 texts, decoded one at a time when asked for.
 * @typedef {{ length: number, at: (index: number) => string, indexOf: (text: string) => number }} Texts
 */

/**
 * The elements in depth-first order, root first. Money is in minor units, hours in hours.
 * @typedef {object} Project
 * @property {number} revision revision of the project that the figures belong to
 * @property {number} count number of elements
 * @property {string} currency ISO 4217 letters
 * @property {number} minorDigits decimals of the currency
 * @property {string[]} levelNames name of each level, root first
 * @property {Uint8Array} level level of each element, root = 1
 * @property {Uint8Array} flags bits of `Flag`
 * @property {Int32Array} parent position of the parent, −1 for the root
 * @property {Int32Array} end position after the last element of the subtree
 * @property {Float64Array} budget sum of the packages' budgets
 * @property {Float64Array} hours sum of the packages' hours
 * @property {Float64Array} gapBudget missing (> 0), more than the whole (< 0), 0, or NaN where a size is unknown
 * @property {Float64Array} gapHours the same in hours
 * @property {Int32Array} account position of the control account that holds all of the element, or −1
 * @property {Uint32Array} levelCounts number of elements of each level
 * @property {Uint32Array} packageCounts number of packages of each level
 * @property {Texts} codes
 * @property {Texts} names
 * @property {Texts} accountCodes
 */

/**
 * What a lens says of every element.
 * @typedef {object} LensData
 * @property {number} revision
 * @property {number} count
 * @property {number} classCount
 * @property {boolean} mix true: an element with children shows the mix of what is below; false: a value of its own
 * @property {Uint8Array} classOf class of each element
 * @property {Uint16Array | null} shares classCount per element, 65 535 together; null where the map sums them itself
 */

/** Walks through a document from column to column. */
class Reader {
    /** @param {ArrayBuffer} buffer @param {string} magic @param {string} what */
    constructor(buffer, magic, what) {
        this.buffer = buffer;
        this.view = new DataView(buffer);
        this.what = what;
        this.at = 0;
        const found = buffer.byteLength < 16 ? '' : this.ascii(4);
        if (found !== magic) {
            throw new MapDataError(`${what}: "${found}" found at the beginning, ${magic} expected`);
        }
        const version = this.u16();
        if (version !== 1) {
            throw new MapDataError(`${what}: version ${version} found, version 1 expected`);
        }
    }

    /** @param {number} bytes */
    need(bytes) {
        if (this.at + bytes > this.buffer.byteLength) {
            throw new MapDataError(
                `${this.what}: ends after ${this.buffer.byteLength} bytes, at least ${this.at + bytes} expected`,
            );
        }
    }

    /** @param {number} length */
    ascii(length) {
        return String.fromCharCode(...this.bytes(length));
    }

    /** @param {number} length */
    bytes(length) {
        this.need(length);
        const bytes = new Uint8Array(this.buffer, this.at, length);
        this.at += length;
        return bytes;
    }

    u8() {
        return this.bytes(1)[0];
    }

    u16() {
        this.need(2);
        this.at += 2;
        return this.view.getUint16(this.at - 2, true);
    }

    u32() {
        this.need(4);
        this.at += 4;
        return this.view.getUint32(this.at - 4, true);
    }

    i64() {
        this.need(8);
        this.at += 8;
        return Number(this.view.getBigInt64(this.at - 8, true));
    }

    /** Goes on to the next multiple of 8, where columns begin. */
    align() {
        this.at = Math.ceil(this.at / 8) * 8;
    }

    /**
     * A column as a view on the document, without a copy.
     * @template T
     * @param {{ new (buffer: ArrayBuffer, at: number, length: number): T, BYTES_PER_ELEMENT: number }} Type
     * @param {number} length
     * @returns {T}
     */
    column(Type, length) {
        this.align();
        this.need(length * Type.BYTES_PER_ELEMENT);
        const column = new Type(this.buffer, this.at, length);
        this.at += length * Type.BYTES_PER_ELEMENT;
        return column;
    }

    /** @param {number} count @param {string} name @returns {Texts} */
    texts(count, name) {
        const offsets = this.column(Uint32Array, count + 1);
        for (let i = 0; i < count; i++) {
            if (offsets[i] > offsets[i + 1]) {
                throw new MapDataError(`${this.what}, ${name} ${i}: ends before it begins`);
            }
        }
        const blob = this.column(Uint8Array, offsets[count]);
        const decoder = new TextDecoder();
        return {
            length: count,
            at: (index) => decoder.decode(blob.subarray(offsets[index], offsets[index + 1])),
            indexOf: (text) => indexOfText(offsets, blob, text),
        };
    }

    finish() {
        if (this.at !== this.buffer.byteLength) {
            throw new MapDataError(
                `${this.what}: ${this.buffer.byteLength} bytes found, ${this.at} expected`,
            );
        }
    }
}

/**
 * Position of the first text that is the same byte for byte, −1 if there is none. Linear, and decodes nothing.
 * @param {Uint32Array} offsets @param {Uint8Array} blob @param {string} text
 */
function indexOfText(offsets, blob, text) {
    const wanted = new TextEncoder().encode(text);
    for (let i = 0; i + 1 < offsets.length; i++) {
        const from = offsets[i];
        if (offsets[i + 1] - from === wanted.length && wanted.every((byte, at) => blob[from + at] === byte)) {
            return i;
        }
    }
    return -1;
}

/**
 * Reads a project document. Typed arrays are read in the machine's byte order, which is little-endian wherever
 * browsers run.
 * @param {ArrayBuffer} buffer
 * @returns {Project}
 * @throws {MapDataError} if the document breaks the contract
 */
export function readProject(buffer) {
    const reader = new Reader(buffer, 'PLMP', 'project document');
    const levels = reader.u8();
    const minorDigits = reader.u8();
    const revision = reader.i64();
    const count = reader.u32();
    const accounts = reader.u32();
    const currency = reader.ascii(3);
    reader.u8();
    if (levels < 1 || levels > MAX_LEVELS) {
        throw new MapDataError(`project document: ${levels} levels found, 1 to ${MAX_LEVELS} expected`);
    }
    const decoder = new TextDecoder();
    const levelNames = Array.from({ length: levels }, () => decoder.decode(reader.bytes(reader.u16())));
    const budget = reader.column(Float64Array, count);
    const hours = reader.column(Float64Array, count);
    const gapBudget = reader.column(Float64Array, count);
    const gapHours = reader.column(Float64Array, count);
    const account = reader.column(Int32Array, count);
    const level = reader.column(Uint8Array, count);
    const flags = reader.column(Uint8Array, count);
    const codes = reader.texts(count, 'code');
    const names = reader.texts(count, 'name');
    const accountCodes = reader.texts(accounts, 'account');
    reader.finish();
    const figures = { budget, hours, gapBudget, gapHours };
    const tree = readTree(level, flags, levels);
    checkFigures(figures, account, accounts, flags, tree.end);
    return {
        revision,
        count,
        currency,
        minorDigits,
        levelNames,
        level,
        flags,
        account,
        ...figures,
        ...tree,
        codes,
        names,
        accountCodes,
    };
}

/**
 * Parents and subtree ends from the levels in depth-first order: one pass, linear.
 * @param {Uint8Array} level @param {Uint8Array} flags @param {number} levels
 */
function readTree(level, flags, levels) {
    const count = level.length;
    const parent = new Int32Array(count);
    const end = new Int32Array(count);
    const levelCounts = new Uint32Array(levels);
    const packageCounts = new Uint32Array(levels);
    const open = new Int32Array(levels + 2);
    let above = 0;
    for (let i = 0; i < count; i++) {
        const own = level[i];
        const most = Math.min(above + 1, levels);
        if (own < 1 || own > most || (own === 1 && i > 0)) {
            throw new MapDataError(
                `project document, element ${i}: level ${own} found, ${i === 0 ? 1 : `2 to ${most}`} expected`,
            );
        }
        for (let l = own; l <= above; l++) {
            end[open[l]] = i;
        }
        parent[i] = own === 1 ? -1 : open[own - 1];
        open[own] = i;
        levelCounts[own - 1]++;
        packageCounts[own - 1] += flags[i] & Flag.package;
        above = own;
    }
    if (count === 0) {
        throw new MapDataError('project document: no element found, a root expected');
    }
    for (let l = 1; l <= above; l++) {
        end[open[l]] = count;
    }
    return { parent, end, levelCounts, packageCounts };
}

/**
 * @param {{ budget: Float64Array, hours: Float64Array, gapBudget: Float64Array, gapHours: Float64Array }} figures
 * @param {Int32Array} account @param {number} accounts @param {Uint8Array} flags @param {Int32Array} end
 */
function checkFigures(figures, account, accounts, flags, end) {
    const { budget, hours, gapBudget, gapHours } = figures;
    for (let i = 0; i < account.length; i++) {
        if (!Number.isFinite(budget[i]) || !Number.isFinite(hours[i])) {
            throw new MapDataError(`project document, element ${i}: budget and hours must be numbers`);
        }
        if (account[i] < -1 || account[i] >= accounts) {
            throw new MapDataError(
                `project document, element ${i}: account ${account[i]} found, −1 to ${accounts - 1} expected`,
            );
        }
        const isLeaf = end[i] === i + 1;
        const leafBits = flags[i] & (Flag.package | Flag.notSplit);
        if (isLeaf && leafBits !== Flag.package && leafBits !== Flag.notSplit) {
            throw new MapDataError(
                `project document, element ${i}: has no children, so it is either a package or not split`,
            );
        }
        if (!isLeaf && leafBits !== 0) {
            throw new MapDataError(`project document, element ${i}: has children, so it is neither a package nor not split`);
        }
        if ((flags[i] & Flag.package) !== 0 && (gapBudget[i] !== 0 || gapHours[i] !== 0)) {
            throw new MapDataError(`project document, element ${i}: a package has no gap, 0 expected`);
        }
    }
}

/**
 * Reads a lens document.
 * @param {ArrayBuffer} buffer
 * @returns {LensData}
 * @throws {MapDataError} if the document breaks the contract
 */
export function readLens(buffer) {
    const reader = new Reader(buffer, 'PLLN', 'lens document');
    const classCount = reader.u8();
    const bits = reader.u8();
    const revision = reader.i64();
    const count = reader.u32();
    if (classCount < 1 || classCount > MAX_CLASSES) {
        throw new MapDataError(`lens document: ${classCount} classes found, 1 to ${MAX_CLASSES} expected`);
    }
    const classOf = reader.column(Uint8Array, count);
    const shares = (bits & 2) === 0 ? null : reader.column(Uint16Array, count * classCount);
    reader.finish();
    for (let i = 0; i < count; i++) {
        if (classOf[i] >= classCount) {
            throw new MapDataError(
                `lens document, element ${i}: class ${classOf[i]} found, 0 to ${classCount - 1} expected`,
            );
        }
    }
    return { revision, count, classCount, mix: (bits & 1) !== 0, classOf, shares };
}

/** True if the element has children. @param {Project} project @param {number} index */
export function hasChildren(project, index) {
    return project.end[index] > index + 1;
}
