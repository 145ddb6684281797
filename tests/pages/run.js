// Opens the report page of every example, of rigs written to break it, and the other commands' pages (pages.js) in
// the system's browser, and checks what people would see, hear, press and print. Ends with `pages: N passed, N failed`; pictures and prints are kept for
// people to look at.
//
// usage: run.js GANTLINE FOLDER [NAME...]   FOLDER takes what is made; NAMEs: only these rigs and pages, and pictures of them
'use strict';
const fs = require('node:fs');
const path = require('node:path');
const { pathToFileURL } = require('node:url');
const { launch, open } = require('./browser.js');
const { expect, expectPage, run } = require('./expected.js');
const { widths, access, pictures } = require('./screen.js');
const { quiet, words, choice, drawings, figures } = require('./content.js');
const { print } = require('./print.js');
const { steps } = require('./steps.js');
const { faults } = require('./faults.js');
const { pages } = require('./pages.js');

const RIGS = ['docs/examples', 'tests/pages/rigs'];
const AT_ONCE = 2; // pages; the browser itself works on several processors
const CHECKS = { words, drawings, figures, widths, access, choice, print, steps, pictures, quiet };
const OF_RIGS = ['words', 'drawings', 'widths', 'access', 'choice', 'print', 'pictures', 'quiet'];
const OF_PAGES = ['words', 'figures', 'widths', 'access', 'print', 'pictures', 'quiet'];

const count = { passed: 0, failed: 0 };

function tally(what, problems) {
    if (problems.length === 0) count.passed++;
    else {
        count.failed++;
        console.log(`not ok ${what}: ${problems.join('; ').replace(/\s+/g, ' ')}`);
    }
}

// Open a page and put it to some of the checks; each of their findings is told.
async function check(browser, lab, names, tell) {
    const opened = await open(browser, lab.url, { script: true });
    try {
        for (const name of names) await CHECKS[name]({ browser, ...opened, ...lab, tell });
    } finally {
        await opened.close();
    }
}

// Have a command write a page and open it.
async function checkMade({ browser, command, folder, pictured }, expected, words, names, form = ['--as', 'html']) {
    const file = path.join(folder, expected.name);
    const made = await run(command, [...words, ...form, '-o', `${file}.html`]);
    const tell = (what, problems) => tally(`${expected.name}: ${what}`, problems);
    tell('page written', made.status === expected.status ? [] : [`status ${made.status}: ${made.complaint}`]);
    if (!fs.existsSync(`${file}.html`)) return;
    const lab = { command, file, expected, url: pathToFileURL(`${file}.html`).href, html: fs.readFileSync(`${file}.html`, 'utf8') };
    await check(browser, lab, names.filter((name) => name !== 'pictures' || pictured), tell);
}

async function checkRig(shared, rig) {
    await checkMade(shared, await expect(shared.command, rig), ['report', rig], OF_RIGS);
}

async function checkPage(shared, page) {
    const names = page.steps ? [...OF_PAGES, 'steps'] : OF_PAGES;
    await checkMade(shared, await expectPage(shared.command, page), page.args, names, page.headings ? [] : undefined);
}

// A check that cannot fail is none: a page with a fault planted in it has to be found fault with, and for that fault.
async function checkFault({ browser, command, folder }, fault) {
    const expected = await expect(command, fault.rig);
    const sound = (await run(command, ['report', '--as', 'html', fault.rig])).output;
    const html = fault.plant(sound);
    const file = path.join(folder, 'planted', fault.name.replaceAll(' ', '-'));
    const found = [];
    fs.writeFileSync(`${file}.html`, html);
    const lab = { file, expected, url: pathToFileURL(`${file}.html`).href, html };
    if (html !== sound) await check(browser, lab, [fault.check], (what, problems) => found.push(...problems));
    const seen = found.some((problem) => fault.finds.test(problem));
    tally(`planted: ${fault.name}`, seen ? [] : [html === sound ? 'could not be planted' : `not found; but: ${found.join('; ')}`]);
}

async function main([command, folder, ...only]) {
    const rigs = RIGS.flatMap((from) => fs.readdirSync(from).filter((name) => name.endsWith('.ini')).map((name) => path.join(from, name)));
    const wanted = (name) => only.length === 0 || only.includes(name);
    fs.mkdirSync(path.join(folder, 'planted'), { recursive: true });
    const browser = await launch();
    const shared = { browser, command, folder: path.resolve(folder), pictured: only.length > 0 };
    const jobs = [
        ...rigs.map((rig) => ({ name: path.basename(rig, '.ini'), work: () => checkRig(shared, rig) })),
        ...pages.map((page) => ({ name: page.name, work: () => checkPage(shared, page) })),
        ...faults.map((fault) => ({ name: `planted ${fault.name}`, work: () => checkFault(shared, fault) })),
    ].filter((job) => wanted(job.name));
    const worker = async () => {
        for (let job = jobs.shift(); job; job = jobs.shift()) await job.work().catch((error) => tally(job.name, [error.message]));
    };
    await Promise.all(Array.from({ length: AT_ONCE }, worker));
    await browser.close();
    console.log(`pages: ${count.passed} passed, ${count.failed} failed`);
    process.exitCode = count.failed === 0 ? 0 : 1;
}

main(process.argv.slice(2)).catch((error) => {
    console.log(`not ok pages: ${error.message}`);
    console.log(`pages: ${count.passed} passed, ${count.failed + 1} failed`);
    process.exitCode = 1;
});
