import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fillBlock, fillStack, makeFill, patternOf } from '../wwwroot/map/patterns.js';
import { contrast, hexToRgb, tokensFrom } from '../wwwroot/map/tokens.js';

const TOKENS = tokensFrom(() => '', hexToRgb);
/** @param {number} width @param {number} height */
const sheet = (width, height) => ({ width, height, pixels: new Uint32Array(width * height) });

test('Favourable_is_plain_and_unfavourable_is_ruled', () => {
    assert.equal(patternOf({ word: '', fill: 'fav4' }).kind, 'plain');
    assert.deepEqual(patternOf({ word: '', fill: 'unf1' }), { kind: 'ruled', mark: 'unf2', pitch: 5 });
    assert.deepEqual(patternOf({ word: '', fill: 'unf2' }), { kind: 'ruled', mark: 'unf4', pitch: 3 });
    assert.equal(patternOf({ word: '', fill: 'c1', pattern: 'dotted' }).kind, 'dotted');
});

test('Rules_run_through_from_one_block_to_the_next', () => {
    const raster = sheet(20, 30);
    const fill = makeFill({ word: '', fill: 'unf1' }, TOKENS, 1);
    fillBlock(raster, fill, { left: 0, right: 7, top: 3, bottom: 30 });
    fillBlock(raster, fill, { left: 7, right: 20, top: 11, bottom: 30 });
    for (let y = 11; y < 30; y++) {
        assert.equal(raster.pixels[y * 20 + 3], raster.pixels[y * 20 + 12]);
        assert.equal(raster.pixels[y * 20 + 3], TOKENS.pixel(y % 5 === 0 ? 'unf2' : 'unf1'));
    }
});

test('Closer_rules_are_worse_and_rules_keep_their_distance_at_any_scale', () => {
    for (const scale of [1, 1.25, 2, 3]) {
        const mild = makeFill({ word: '', fill: 'unf1' }, TOKENS, scale);
        const strong = makeFill({ word: '', fill: 'unf2' }, TOKENS, scale);
        assert.equal(mild.rows, Math.round(5 * scale));
        assert(strong.rows < mild.rows);
    }
});

test('A_stack_fills_its_column_from_the_top_in_legend_order', () => {
    const raster = sheet(3, 10);
    const fills = ['fav4', 'neu', 'none'].map((fill) => makeFill({ word: '', fill }, TOKENS, 1));
    fillStack(raster, fills, { left: 1, right: 2, top: 0, bottom: 10 }, [9, 3, 2, 5], 1);
    const column = Array.from({ length: 10 }, (_, y) => raster.pixels[y * 3 + 1]);
    assert.deepEqual(column, ['fav4', 'fav4', 'fav4', 'neu', 'neu', 'none', 'none', 'none', 'none', 'none'].map(TOKENS.pixel));
    assert.equal(raster.pixels[0], 0);
});

test('A_stack_of_any_amounts_leaves_no_pixel_empty', () => {
    const fills = ['fav4', 'neu', 'none', 'ink'].map((fill) => makeFill({ word: '', fill }, TOKENS, 1));
    for (let a = 0; a < 40; a++) {
        const raster = sheet(1, 44);
        fillStack(raster, fills, { left: 0, right: 1, top: 0, bottom: 44 }, [a * 0.37, 1 / (a + 1), (a % 3) * 0.1, 0.001], 0);
        assert(raster.pixels.every((pixel) => pixel !== 0));
    }
});

test('A_column_that_holds_nothing_stays_sheet', () => {
    const raster = sheet(1, 4);
    fillStack(raster, [makeFill({ word: '', fill: 'ink' }, TOKENS, 1)], { left: 0, right: 1, top: 0, bottom: 4 }, [0], 0);
    assert(raster.pixels.every((pixel) => pixel === 0));
});

test('A_label_reads_on_every_fill', () => {
    for (const fill of ['fav4', 'fav3', 'fav2', 'fav1', 'neu', 'none', 'unf1', 'unf2', 'ink', 'ink2', 'c1', 'c7']) {
        const { base, text } = makeFill({ word: '', fill }, TOKENS, 1);
        assert(contrast(hexToRgb(base), hexToRgb(text)) >= 4.0, fill);
    }
});

test('Contrast_of_black_on_white_is_21', () => {
    // Source: Web Content Accessibility Guidelines 2.2, definition of contrast ratio: "can range from 1 to 21".
    assert(Math.abs(contrast([0, 0, 0], [255, 255, 255]) - 21) < 1e-9);
    assert.equal(contrast([9, 9, 9], [9, 9, 9]), 1);
});

test('A_token_that_does_not_exist_is_named', () => {
    assert.throws(() => TOKENS.css('teal'), /token "teal" found/);
});
