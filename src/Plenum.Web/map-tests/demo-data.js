// An invented plant for the demonstration page: systems, subsystems, components and work packages with accounts,
// gaps, findings and cost variances that partly cancel inside an account. The same seed makes the same plant.

import { Flag } from '../wwwroot/map/data.js';

/** @typedef {import('./encode.js').Element} Element */

const SYSTEMS = [
    { name: 'Intake', share: 11.1, parts: ['Offshore intake structure', 'Intake pipelines', 'Intake pumping station', 'Shock chlorination', 'Seawater transfer main'] },
    { name: 'Pre-treatment', share: 12.3, parts: ['Coagulation', 'Flotation', 'Dual-media filters', 'Ultrafiltration', 'Cartridge filters', 'Backwash and sludge'] },
    { name: 'Reverse osmosis', share: 22.7, parts: ['RO train A', 'RO train B', 'RO train C', 'RO train D', 'RO train E', 'RO train F', 'Second pass', 'Cleaning in place', 'Flushing and permeate headers'] },
    { name: 'Energy recovery', share: 5.9, parts: ['Exchanger rack 1', 'Exchanger rack 2', 'Exchanger rack 3', 'Booster pumps'] },
    { name: 'Post-treatment', share: 5.5, parts: ['Limestone contactors', 'Carbon dioxide', 'Disinfection', 'Fluoride dosing'] },
    { name: 'Product-water transfer', share: 7.1, parts: ['Product pumping station', 'Transfer main', 'Surge vessels', 'Product-water tanks'] },
    { name: 'Outfall', share: 6.6, parts: ['Brine collection', 'Outfall pipelines', 'Diffuser field', 'Marking and buoys'] },
    { name: 'Electrical', share: 10.0, parts: ['Grid connection', 'Main substation', 'Variable-speed drives', 'Low-voltage distribution', 'Emergency power', 'Cabling and earthing'] },
    { name: 'Control and instruments', share: 5.0, parts: ['Control system', 'Field instruments', 'Fibre network', 'Control room', 'Laboratory'] },
    { name: 'Buildings and civil', share: 9.2, parts: ['RO hall', 'Pre-treatment building', 'Chemical building', 'Administration and laboratory', 'Roads and paving', 'Workshops'] },
    { name: 'Site', share: 4.6, parts: ['Earthworks', 'Drainage and utilities', 'Fences and gates', 'Temporary facilities', 'Dune strip'] },
];
const UNITS = ['MEC', 'PIP', 'ELE', 'CIV', 'INS'];
const COMPONENTS = ['Pumps', 'Motors', 'Vessels', 'Racks', 'Pipework', 'Valves', 'Supports', 'Panels', 'Cables', 'Foundations', 'Instruments'];
const PHASES = ['design', 'order', 'manufacture', 'works test', 'transport', 'foundations', 'erection', 'connection', 'inspection', 'cold test', 'hand-over'];

/** Numbers from 0 to 1, the same for the same seed: the steps of "mulberry32". @param {number} seed */
export function numbersFrom(seed) {
    let state = seed >>> 0;
    return () => {
        state = (state + 0x6d2b79f5) >>> 0;
        let mixed = Math.imul(state ^ (state >>> 15), state | 1);
        mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
        return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
    };
}

/**
 * @param {{ copies: number, components: number, packages: number, seed?: number }} size subsystems per part listed,
 *   components per subsystem, packages per component
 */
export function makePlant({ copies, components, packages, seed = 7 }) {
    const random = numbersFrom(seed);
    /** @type {Element[]} */
    const elements = [{ level: 1, code: '', name: 'Kestrel Bay seawater desalination plant' }];
    /** @type {string[]} */
    const accounts = [];
    /** Cost variance as a share of earned value, NaN where nothing has started. @type {number[]} */
    const variance = [NaN];
    /** @param {Element} element @param {number} [share] */
    const add = (element, share = NaN) => {
        elements.push(element);
        variance.push(share);
    };
    /** @param {number} mean */
    const around = (mean) => mean * (0.45 + 1.1 * random());
    SYSTEMS.forEach((system, s) => {
        const code = String(s + 1).padStart(2, '0');
        add({ level: 2, code, name: system.name });
        const mood = (random() - 0.56) * 0.12;
        const subsystems = system.parts.flatMap((name) =>
            Array.from({ length: copies }, (_, copy) => (copies === 1 ? name : `${name}, area ${copy + 1}`)),
        );
        const weights = subsystems.map(() => around(1));
        const all = weights.reduce((sum, weight) => sum + weight, 0);
        subsystems.forEach((name, i) => {
            const money = (485.1e6 * 100 * system.share * weights[i]) / (100 * all);
            addSubsystem({ code: `${code}.${i + 1}`, name, money, mood: mood + (random() - 0.5) * 0.2 });
        });
    });

    /** @param {{ code: string, name: string, money: number, mood: number }} subsystem */
    function addSubsystem({ code, name, money, mood }) {
        if (/buoys(, area 1)?$|Dune strip(, area 1)?$/.test(name)) {
            add({ level: 3, code, name, flags: Flag.notSplit, gapBudget: money * 0.4, gapHours: NaN });
            return;
        }
        const finding = random() < 0.1 ? Flag.finding : 0;
        const hasGap = random() < 0.08;
        add({
            level: 3,
            code,
            name,
            flags: finding,
            gapBudget: name === 'Cartridge filters' ? -Math.round(money * 0.03) : hasGap ? Math.round(money * 0.07) : 0,
            gapHours: hasGap ? NaN : 0,
        });
        const count = Math.max(2, Math.round(around(components)));
        const units = 1 + Math.floor(random() * Math.min(Math.max(3, components / 11), count / 2));
        const firstUnit = Math.floor(random() * UNITS.length);
        let unit = -1;
        let offset = 0;
        for (let c = 0; c < count; c++) {
            const wanted = Math.floor((c * units) / count);
            if (wanted !== unit) {
                unit = wanted;
                offset = random() < 0.3 ? 0.25 : 0.05;
                accounts.push(`${code}-${UNITS[(firstUnit + unit) % UNITS.length]}`);
            }
            addComponent(`${code}.${c + 1}`, `${COMPONENTS[c % COMPONENTS.length]} ${Math.floor(c / COMPONENTS.length) + 1}`, money / count, mood, offset);
        }
    }

    /** @param {string} code @param {string} name @param {number} mean @param {number} mood @param {number} offset */
    function addComponent(code, name, mean, mood, offset) {
        const account = accounts.length - 1;
        const money = around(mean);
        if (random() < 0.02) {
            add({ level: 4, code, name, account, flags: Flag.package, budget: Math.round(money), hours: Math.round(money / 9000) }, mood);
            return;
        }
        const own = mood + (random() - 0.5) * offset * 1.6;
        const isMissingSize = random() < 0.004;
        add({ level: 4, code, name, account, gapBudget: isMissingSize ? NaN : 0, gapHours: isMissingSize ? NaN : 0 });
        const count = Math.max(2, Math.round(around(packages)));
        const started = Math.ceil(count * Math.min(1, 0.35 + 0.8 * random()));
        for (let p = 0; p < count; p++) {
            const budget = Math.round(around(money / count));
            add(
                {
                    level: 5,
                    code: `${code}.${p + 1}`,
                    name: `${name}, ${PHASES[p % PHASES.length]}`,
                    account,
                    budget,
                    hours: Math.round((budget / 9000) * (0.6 + 0.8 * random())),
                    flags: Flag.package | (random() < 0.02 ? Flag.finding : 0) | (p > count - 3 && random() < 0.3 ? Flag.planning : 0),
                },
                p < started ? own + (random() - 0.5) * offset * 1.2 : NaN,
            );
        }
    }

    return {
        elements,
        accounts,
        levelNames: ['Project', 'System', 'Subsystem', 'Component', 'Work package'],
        variance: rolledUpVariance(elements, variance),
    };
}

/** Variance of a branch: that of its started packages, weighted by budget. @param {Element[]} elements @param {number[]} own */
function rolledUpVariance(elements, own) {
    const variance = Float64Array.from(own);
    const earned = new Float64Array(8);
    const gained = new Float64Array(8);
    for (let i = elements.length - 1; i >= 0; i--) {
        const { level, flags = 0, budget = 0 } = elements[i];
        const isPackage = (flags & Flag.package) !== 0;
        const base = isPackage ? (Number.isNaN(variance[i]) ? 0 : budget) : earned[level + 1];
        const gain = isPackage ? (base === 0 ? 0 : budget * variance[i]) : gained[level + 1];
        earned[level + 1] = gained[level + 1] = 0;
        variance[i] = base === 0 ? NaN : gain / base;
        earned[level] += base;
        gained[level] += gain;
    }
    return variance;
}

/** @typedef {ReturnType<typeof makePlant>} Plant */

/** The lenses of the demonstration: the page's legend, and the class of every element. @param {Plant} plant */
export function makeLenses(plant) {
    const random = numbersFrom(11);
    const { elements, variance } = plant;
    /** @param {number} share */
    const step = (share) =>
        Number.isNaN(share) ? 5 : share > 0.1 ? 0 : share > 0.03 ? 1 : share >= -0.03 ? 2 : share >= -0.1 ? 3 : 4;
    /** @param {Element} element */
    const split = ({ level, flags = 0 }) => {
        if (level === 5 || (flags & Flag.package) !== 0) {
            return 4;
        }
        if (level === 4) {
            return random() < 0.06 ? 2 : 1;
        }
        return level > 1 && random() < 0.12 ? (random() < 0.5 ? 2 : 3) : 0;
    };
    const status = elements.map((_, i) => (Number.isNaN(variance[i]) ? 3 : [0, 0, 0, 0, 1, 1, 2][Math.floor(random() * 7)]));
    return {
        accounts: { classOf: variance.map(step), classCount: 6, mix: false },
        breakdown: { classOf: elements.map(split), classCount: 5, mix: false },
        status: { classOf: status, classCount: 4, mix: true },
    };
}

/** Sizes of the two plants. */
export const PLANTS = {
    plant: { copies: 1, components: 4.6, packages: 10.2 },
    large: { copies: 3, components: 72, packages: 25 },
};
