import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { Flag, hasChildren, readLens, readProject } from '../wwwroot/map/data.js';

// Documents of a small project as the workbench writes them, and what they say. The workbench's own tests prove that
// they are still what it writes.
const FOLDER = fileURLToPath(new URL('./written', import.meta.url));

/** @param {string} name */
async function document(name) {
    const bytes = await readFile(join(FOLDER, name));
    return /** @type {ArrayBuffer} */ (bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
}

const said = JSON.parse(new TextDecoder().decode(await readFile(join(FOLDER, 'pump-house.json'))));

/** What an element is. @param {import('../wwwroot/map/data.js').Project} project @param {number} index */
function kindOf(project, index) {
    const flags = project.flags[index];
    if ((flags & Flag.package) !== 0) {
        return (flags & Flag.planning) === 0 ? 'work package' : 'planning package';
    }
    assert.equal((flags & Flag.notSplit) !== 0, !hasChildren(project, index));
    return hasChildren(project, index) ? 'split' : 'not split';
}

test('The_map_reads_the_project_document_that_the_workbench_writes', async () => {
    const project = readProject(await document('pump-house.plmp'));
    const elements = Array.from({ length: project.count }, (_, i) => ({
        code: project.codes.at(i),
        name: project.names.at(i),
        level: project.level[i],
        kind: kindOf(project, i),
        budget: project.budget[i],
        hours: project.hours[i],
        gap: Number.isNaN(project.gapBudget[i]) ? null : project.gapBudget[i],
        hasFinding: (project.flags[i] & Flag.finding) !== 0,
    }));
    assert.deepEqual(elements, said.elements);
    assert.equal(project.revision, said.revision);
    assert.equal(project.currency, said.currency);
    assert.equal(project.minorDigits, said.minorDigits);
    assert.deepEqual(project.levelNames, said.levelNames);
    assert.deepEqual(
        said.accounts.map((/** @type {string} */ _, /** @type {number} */ i) => project.accountCodes.at(i)),
        said.accounts,
    );
});

test('The_map_reads_every_lens_document_that_the_workbench_writes', async () => {
    const words = Object.keys(said.lenses);
    assert(words.length >= 6);
    for (const word of words) {
        const lens = readLens(await document(`${word}.plln`));
        assert.equal(lens.revision, said.revision);
        assert.deepEqual(
            { isMix: lens.mix, classes: lens.classCount, classOf: [...lens.classOf] },
            said.lenses[word],
            word,
        );
    }
});
