// Files on their way in and out: dropped, chosen, walked through, sent one after another; and fetched.

/** What holds tables. Anything else in a folder is passed over, as the command line does. */
const TABLES = /\.(csv|tsv|xlsx)$/i;

/** How many names and messages are told to the page: a message to it has a limit of size. */
const TOLD = 5;

const TOKEN = '/projects/token';

/**
 * @typedef {object} Found
 * @property {string} name with the folder in which it was found, if in one
 * @property {File} file
 */

/**
 * @typedef {object} Walk
 * @property {Found[]} found
 * @property {string[]} passedOver
 */

/**
 * Takes files that are dropped on an area or chosen, and sends them to where the page says.
 * @param {HTMLElement | null} element holds the area (data-drop) and the fields (data-choose)
 * @param {any} page object of the page with the methods OnChosen, OnBrought
 */
export function takeFiles(element, page) {
    if (element === null) {
        return null; // the reader has gone on already
    }
    const host = element;
    let batch = 0;
    /** @type {AbortController | null} */
    let stop = null;
    let gone = false;

    const area = () => host.querySelector('[data-drop]');

    /** @param {Walk} walk */
    async function bring(walk) {
        if (stop !== null || gone || (walk.found.length === 0 && walk.passedOver.length === 0)) {
            return;
        }
        stop = new AbortController();
        batch++;
        const { signal } = stop;
        /** @type {string[]} */
        const troubles = [];
        let troubled = 0;
        try {
            const bytes = walk.found.reduce((sum, { file }) => sum + file.size, 0);
            const address = await page.invokeMethodAsync(
                'OnChosen',
                walk.found.length,
                bytes,
                walk.passedOver.slice(0, TOLD).map((name) => name.slice(0, 200)),
                walk.passedOver.length,
            );
            if (address === null) {
                return;
            }
            for (const { name, file } of walk.found) {
                const trouble = await send(address, name, file, batch, signal);
                if (signal.aborted) {
                    break;
                }
                if (trouble !== null) {
                    troubled++;
                    if (troubles.length < TOLD) {
                        troubles.push(trouble.slice(0, 500));
                    }
                }
            }
        } finally {
            const stopped = signal.aborted;
            stop = null;
            if (!gone) {
                await page.invokeMethodAsync('OnBrought', troubles, troubled, stopped);
            }
        }
    }

    /** @param {DragEvent} event */
    const holdsFiles = (event) => event.dataTransfer?.types.includes('Files') ?? false;

    /** @param {DragEvent} event */
    function onOver(event) {
        if (holdsFiles(event)) {
            event.preventDefault();
            area()?.classList.add('over');
        }
    }

    /** @param {DragEvent} event */
    function onLeave(event) {
        if (!(event.relatedTarget instanceof Node) || !host.contains(event.relatedTarget)) {
            area()?.classList.remove('over');
        }
    }

    /** @param {DragEvent} event */
    function onDrop(event) {
        if (!holdsFiles(event) || event.dataTransfer === null) {
            return;
        }
        event.preventDefault();
        area()?.classList.remove('over');
        // they must be taken now: the list is empty once this function has returned
        const dropped = [...event.dataTransfer.items]
            .filter((item) => item.kind === 'file')
            .map((item) => item.webkitGetAsEntry() ?? item.getAsFile())
            .filter((one) => one !== null);
        void walkThrough(dropped).then(bring);
    }

    /** @param {Event} event */
    function onChange(event) {
        const field = event.target;
        if (field instanceof HTMLInputElement && field.matches('[data-choose]')) {
            const walk = sort([...(field.files ?? [])].map((file) => ({ name: file.webkitRelativePath || file.name, file })));
            // the same file can be chosen again after it was mended
            field.value = '';
            void bring(walk);
        }
    }

    host.addEventListener('dragover', onOver);
    host.addEventListener('dragleave', onLeave);
    host.addEventListener('drop', onDrop);
    host.addEventListener('change', onChange);
    host.dataset.takesFiles = 'yes';

    return {
        stop: () => stop?.abort(),
        destroy() {
            gone = true;
            stop?.abort();
            host.removeEventListener('dragover', onOver);
            host.removeEventListener('dragleave', onLeave);
            host.removeEventListener('drop', onDrop);
            host.removeEventListener('change', onChange);
        },
    };
}

/** Fetches a file into the person's downloads. @param {string} address */
export function fetchFile(address) {
    const link = document.createElement('a');
    link.href = address;
    link.download = '';
    document.body.append(link);
    link.click();
    link.remove();
}

/**
 * Parts what is taken from what is passed over and named: of a folder the tables directly in it are taken, without
 * hidden ones; of single files those that can hold tables.
 * @param {Found[]} all
 * @returns {Walk}
 */
function sort(all) {
    /** @type {Walk} */
    const walk = { found: [], passedOver: [] };
    for (const one of all) {
        const steps = one.name.split('/');
        const last = steps[steps.length - 1];
        const taken =
            steps.length === 1
                ? TABLES.test(last)
                : steps.length === 2 && TABLES.test(last) && !last.startsWith('.') && !last.startsWith('~$');
        if (taken) {
            walk.found.push(one);
        } else {
            walk.passedOver.push(one.name);
        }
    }
    walk.found.sort((a, b) => (a.name < b.name ? -1 : 1));
    return walk;
}

/**
 * Walks through what was dropped: files, and folders with the files directly in them.
 * @param {(FileSystemEntry | File)[]} dropped
 */
async function walkThrough(dropped) {
    /** @type {Found[]} */
    const all = [];
    /** @type {string[]} */
    const unread = [];
    for (const one of dropped) {
        try {
            if (one instanceof File) {
                all.push({ name: one.name, file: one });
            } else if (one.isFile) {
                all.push({ name: one.name, file: await fileOf(one) });
            } else {
                for (const inside of await entriesOf(one)) {
                    const name = `${one.name}/${inside.name}`;
                    if (inside.isFile) {
                        all.push({ name, file: await fileOf(inside) });
                    } else {
                        unread.push(`${name}/`);
                    }
                }
            }
        } catch {
            // moved or taken away in the meantime
            unread.push(one.name);
        }
    }
    const walk = sort(all);
    walk.passedOver.push(...unread);
    return walk;
}

/** @param {FileSystemEntry} entry @returns {Promise<File>} */
const fileOf = (entry) =>
    new Promise((resolve, reject) => /** @type {FileSystemFileEntry} */ (entry).file(resolve, reject));

/** A folder tells its entries in portions until there are none. @param {FileSystemEntry} folder */
async function entriesOf(folder) {
    const reader = /** @type {FileSystemDirectoryEntry} */ (folder).createReader();
    /** @type {FileSystemEntry[]} */
    const all = [];
    for (;;) {
        /** @type {FileSystemEntry[]} */
        const portion = await new Promise((resolve, reject) => reader.readEntries(resolve, reject));
        if (portion.length === 0) {
            return all;
        }
        all.push(...portion);
    }
}

/** @type {string | null} */
let token = null;

/**
 * Sends one file. Answers with what was wrong, or null.
 * @param {string} address
 * @param {string} name
 * @param {File} file
 * @param {number} batch
 * @param {AbortSignal} signal
 */
async function send(address, name, file, batch, signal) {
    try {
        for (let attempt = 0; ; attempt++) {
            token ??= await (await fetch(TOKEN, { signal })).text();
            const answer = await fetch(`${address}?name=${encodeURIComponent(name)}&batch=${batch}`, {
                method: 'PUT',
                body: file,
                headers: { RequestVerificationToken: token, 'Content-Type': 'application/octet-stream' },
                signal,
            });
            if (answer.ok) {
                return null;
            }
            const words = await answer.text();
            if (answer.status !== 400 || attempt > 0) {
                return words;
            }
            // the program was started anew, or another one on this machine gave a token of its own
            token = null;
        }
    } catch {
        return signal.aborted ? null : `${name} did not arrive. Was it changed or moved since it was chosen? Choose it again.`;
    }
}
