// Who works in this browser: kept here, so that the next page knows it too.

const PERSON = 'plenum.person';

export const isNamed = () => localStorage.getItem(PERSON) !== null;

export const person = () => localStorage.getItem(PERSON) ?? '';

/** @param {string} name */
export function remember(name) {
    localStorage.setItem(PERSON, name);
}
