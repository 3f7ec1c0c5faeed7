import assert from 'node:assert/strict';
import { test } from 'node:test';
import { cutToFit, fitLabel, LEAST_CUT, ownPart, PAD } from '../wwwroot/map/labels.js';

/** Six pixels a letter. @param {string} text */
const measure = (text) => 6 * [...text].length;
const TRAIN = { name: 'RO train B', code: '03.2', parentCode: '03', level: 3 };
const SKID = { name: 'Membrane skid 12', code: '02.4.1.12', parentCode: '02.4.1', level: 4 };

/** Room for so many letters. @param {number} letters */
const room = (letters) => 6 * letters + PAD.before + PAD.after;

test('The_name_stands_where_it_fits', () => {
    assert.equal(fitLabel({ ...TRAIN, width: room(10) }, measure), 'RO train B');
});

test('On_the_first_three_levels_a_name_is_cut_from_44_pixels', () => {
    assert.equal(fitLabel({ ...TRAIN, width: room(9) }, measure), 'RO train…');
    assert.equal(fitLabel({ ...TRAIN, width: LEAST_CUT }, measure), 'RO tr…');
    assert.equal(fitLabel({ ...TRAIN, width: LEAST_CUT - 1 }, measure), '03.2');
});

test('Below_them_a_code_stands_instead_as_what_it_adds_to_the_parent', () => {
    assert.equal(fitLabel({ ...SKID, width: room(15) }, measure), '.12');
    assert.equal(fitLabel({ ...SKID, width: room(3) }, measure), '.12');
});

test('Nothing_stands_where_nothing_fits', () => {
    assert.equal(fitLabel({ ...SKID, width: room(2) }, measure), '');
    assert.equal(fitLabel({ ...TRAIN, width: room(3) }, measure), '');
    assert.equal(fitLabel({ ...TRAIN, width: 0 }, measure), '');
});

test('A_label_never_is_wider_than_its_room', () => {
    for (const block of [TRAIN, SKID]) {
        for (let width = 0; width < 130; width += 0.5) {
            assert(measure(fitLabel({ ...block, width }, measure)) <= Math.max(0, width - PAD.before - PAD.after));
        }
    }
});

test('A_cut_name_is_the_longest_that_fits', () => {
    for (let space = 24; space < 60; space++) {
        const cut = cutToFit('Product-water', space, measure);
        assert(cut.endsWith('…') && measure(cut) <= space && measure(cut) + 6 > space);
    }
    assert.equal(cutToFit('Product-water', 23, measure), '');
});

test('A_cut_does_not_end_in_a_space_and_does_not_split_a_letter', () => {
    assert.equal(cutToFit('RO train', 24, measure), 'RO…');
    assert.equal(cutToFit('🜁🜂🜃🜄🜁', 24, measure), '🜁🜂🜃…');
});

test('A_code_that_does_not_begin_with_its_parents_is_given_whole', () => {
    assert.equal(ownPart('03.2', '03'), '.2');
    assert.equal(ownPart('B-7', '03'), 'B-7');
    assert.equal(ownPart('03', ''), '03');
});
