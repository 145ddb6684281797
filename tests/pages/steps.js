// Steps of a worked solution: they fold and open by keyboard, without script, and on paper all are told.
'use strict';
const { open } = require('./browser.js');
const { run, squash } = require('./expected.js');
const { structure } = require('./print.js');

const STEPS = 'details.step';
const MOST_TABS = 200;

const opened = (page) => page.$$eval(STEPS, (all) => all.map((one) => one.open));

// Which step's summary has the focus, -1: none.
const focused = (page) => page.$$eval(`${STEPS} > summary`, (all) => all.indexOf(document.activeElement));

// Fold every step by Enter or Space, in turn, as Tab comes to it.
async function foldAll(page, faults) {
    const count = (await opened(page)).length;
    const reached = new Set();
    for (let presses = 0; presses < MOST_TABS + 4 * count && reached.size < count; presses++) {
        await page.keyboard.press('Tab');
        const at = await focused(page);
        if (at < 0 || reached.has(at)) continue;
        reached.add(at);
        await page.keyboard.press(at % 2 ? 'Space' : 'Enter');
        if ((await opened(page))[at]) faults.push(`step ${at + 1} does not fold`);
    }
    if (reached.size < count) faults.push(`Tab comes to ${reached.size} of ${count} steps`);
}

async function openFirst(page, faults) {
    await page.focus(`${STEPS} > summary`);
    for (const [key, wanted] of [['Enter', true], ['Space', false]]) {
        await page.keyboard.press(key);
        if ((await opened(page))[0] !== wanted) faults.push(`${key} leaves the first step ${wanted ? 'folded' : 'open'}`);
    }
}

// What stands in steps, piece by piece.
const told = (page) => page.$$eval(`${STEPS} :is(h3, p, li, dt, dd, th, td, svg text)`, (all) => all.map((one) => one.textContent));

async function steps({ browser, url, file, expected, tell }) {
    const { page, close } = await open(browser, url, { script: false });
    const faults = [];
    const titles = await page.$$eval(`${STEPS} h3`, (all) => all.map((one) => one.textContent));
    // In the text form a long heading goes on in a second line.
    const lacking = expected.steps.filter((one) => !titles.some((title) => squash(title).startsWith(squash(one)))).map((one) => `lacks "${one}"`);
    tell('every step has its heading', titles.length === expected.steps.length ? lacking : [`${titles.length} of ${expected.steps.length} steps`]);
    tell('steps are open at first', (await opened(page)).every(Boolean) ? [] : ['one is folded']);
    const words = await told(page);
    await foldAll(page, faults);
    await openFirst(page, faults);
    tell('steps fold and open by keyboard, without script', faults);
    const pdf = `${file}-folded.pdf`;
    await page.pdf({ path: pdf, format: 'A4', tagged: true });
    const [text, tagged] = await Promise.all([run('pdftotext', [pdf, '-']), run('pdfinfo', ['-struct-text', pdf])]);
    const printed = structure(tagged.output).all + squash(text.output);
    tell('folded steps are printed', words.filter((one) => !printed.includes(squash(one))).slice(0, 3).map((one) => `lacks "${one.slice(0, 60)}"`));
    await close();
}

module.exports = { steps };
