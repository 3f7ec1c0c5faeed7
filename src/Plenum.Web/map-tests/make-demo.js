// Writes the documents of the demonstration page into a folder: node make-demo.js FOLDER

import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { argv, stdout } from 'node:process';
import { makeLenses, makePlant, PLANTS } from './demo-data.js';
import { encodeLens, encodeProject } from './encode.js';

const folder = argv[2] ?? 'out';
await mkdir(folder, { recursive: true });
for (const [name, size] of Object.entries(PLANTS)) {
    const plant = makePlant(size);
    await writeFile(join(folder, `${name}.map`), new Uint8Array(encodeProject(plant.elements, plant)));
    for (const [lens, { classOf, classCount, mix }] of Object.entries(makeLenses(plant))) {
        await writeFile(join(folder, `${name}-${lens}.lens`), new Uint8Array(encodeLens(classOf, classCount, { mix })));
    }
    stdout.write(`${name}: ${plant.elements.length} elements, ${plant.accounts.length} control accounts\n`);
}
