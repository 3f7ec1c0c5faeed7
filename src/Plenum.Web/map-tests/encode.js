// Writes the documents of the map as README.md defines them, for tests and the demonstration page.

import { Flag } from '../wwwroot/map/data.js';

/**
 * @typedef {object} Element
 * @property {number} level root = 1
 * @property {string} code
 * @property {string} name
 * @property {number} [budget] minor units; of a branch the sum of its packages, which is made here
 * @property {number} [hours]
 * @property {number} [gapBudget] NaN for an unknown size
 * @property {number} [gapHours]
 * @property {number} [account]
 * @property {number} [flags]
 */

/** Collects columns, each beginning at a multiple of 8 bytes. */
class Writer {
    constructor() {
        /** @type {Uint8Array[]} */
        this.parts = [];
        this.length = 0;
    }

    /** @param {Uint8Array} bytes */
    bytes(bytes) {
        this.parts.push(bytes);
        this.length += bytes.length;
    }

    /** @param {ArrayBufferView} column */
    column(column) {
        this.bytes(new Uint8Array((8 - (this.length % 8)) % 8));
        this.bytes(new Uint8Array(column.buffer, column.byteOffset, column.byteLength));
    }

    /** @param {string[]} texts */
    texts(texts) {
        const encoder = new TextEncoder();
        const encoded = texts.map((text) => encoder.encode(text));
        const offsets = new Uint32Array(texts.length + 1);
        encoded.forEach((bytes, i) => {
            offsets[i + 1] = offsets[i] + bytes.length;
        });
        const blob = new Uint8Array(offsets[texts.length]);
        encoded.forEach((bytes, i) => blob.set(bytes, offsets[i]));
        this.column(offsets);
        this.column(blob);
    }

    /** @returns {ArrayBuffer} */
    buffer() {
        const all = new Uint8Array(this.length);
        let at = 0;
        for (const part of this.parts) {
            all.set(part, at);
            at += part.length;
        }
        return all.buffer;
    }
}

/** @param {string} magic @param {number} a @param {number} b @param {number} revision @param {number} count */
function head(magic, a, b, revision, count) {
    const bytes = new Uint8Array(20);
    bytes.set(new TextEncoder().encode(magic));
    const view = new DataView(bytes.buffer);
    view.setUint16(4, 1, true);
    view.setUint8(6, a);
    view.setUint8(7, b);
    view.setBigInt64(8, BigInt(revision), true);
    view.setUint32(16, count, true);
    return bytes;
}

/**
 * @param {Element[]} elements in depth-first order
 * @param {{ levelNames: string[], accounts?: string[], revision?: number, currency?: string }} project
 */
export function encodeProject(elements, { levelNames, accounts = [], revision = 1, currency = 'EUR' }) {
    const writer = new Writer();
    const encoder = new TextEncoder();
    writer.bytes(head('PLMP', levelNames.length, 2, revision, elements.length));
    writer.bytes(new Uint8Array(Uint32Array.of(accounts.length).buffer));
    writer.bytes(encoder.encode(currency));
    writer.bytes(Uint8Array.of(0));
    for (const name of levelNames) {
        const bytes = encoder.encode(name);
        writer.bytes(new Uint8Array(Uint16Array.of(bytes.length).buffer));
        writer.bytes(bytes);
    }
    writer.column(rolledUp(elements, (element) => element.budget ?? 0));
    writer.column(rolledUp(elements, (element) => element.hours ?? 0));
    writer.column(Float64Array.from(elements, (element) => element.gapBudget ?? 0));
    writer.column(Float64Array.from(elements, (element) => element.gapHours ?? 0));
    writer.column(Int32Array.from(elements, (element) => element.account ?? -1));
    writer.column(Uint8Array.from(elements, (element) => element.level));
    writer.column(Uint8Array.from(elements, (element) => element.flags ?? 0));
    writer.texts(elements.map((element) => element.code));
    writer.texts(elements.map((element) => element.name));
    writer.texts(accounts);
    return writer.buffer();
}

/** Sums of the packages below. @param {Element[]} elements @param {(element: Element) => number} own */
function rolledUp(elements, own) {
    const sums = new Float64Array(elements.length);
    const below = new Float64Array(256);
    for (let i = elements.length - 1; i >= 0; i--) {
        const { level, flags = 0 } = elements[i];
        sums[i] = (flags & Flag.package) !== 0 ? own(elements[i]) : below[level + 1];
        below[level + 1] = 0;
        below[level] += sums[i];
    }
    return sums;
}

/**
 * @param {ArrayLike<number>} classOf @param {number} classCount
 * @param {{ mix?: boolean, shares?: ArrayLike<number>, revision?: number }} [lens]
 */
export function encodeLens(classOf, classCount, { mix = false, shares, revision = 1 } = {}) {
    const writer = new Writer();
    const bits = (mix ? 1 : 0) | (shares === undefined ? 0 : 2);
    writer.bytes(head('PLLN', classCount, bits, revision, classOf.length));
    writer.column(Uint8Array.from(classOf));
    if (shares !== undefined) {
        writer.column(Uint16Array.from(shares));
    }
    return writer.buffer();
}
