// What the page says and shows: the words of the report, the rig file, the drawing of the case that is chosen.
'use strict';
const fs = require('node:fs');
const { open, visibleDrawings, DRAWINGS, CHOICES } = require('./browser.js');
const { run, squash } = require('./expected.js');

// Nothing but the page's own file, no word in the console, and nothing in it that could run.
async function quiet({ page, heard, tell }) {
    const running = await page.evaluate(() =>
        [...document.querySelectorAll('*')]
            .filter(
                (one) =>
                    ['script', 'iframe', 'object', 'embed', 'link', 'base', 'form'].includes(one.localName) ||
                    one.getAttributeNames().some((name) => name.startsWith('on')),
            )
            .map((one) => `holds <${one.localName}>`),
    );
    tell('opened from a file: nothing is loaded, run or complained of', [...new Set([...heard, ...running])]);
}

// All that the text report says; and the rig file to the letter, so that whoever gets the page can run it again.
async function words({ page, expected, tell }) {
    const texts = await page.evaluate(() => {
        const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
        const found = [];
        while (walker.nextNode()) found.push(walker.currentNode.data);
        return found;
    });
    const whole = squash(texts.join(''));
    const single = new Set(texts.join(' ').split(/\s+/u));
    const missing = (all) => all.filter((one) => !whole.includes(squash(one))).map((one) => `lacks "${one}"`);
    tell('verdict and cautions', missing(expected.says));
    tell('every word of the text report', missing(expected.words.filter((word) => !single.has(word))).slice(0, 5));
    const titles = await page.$$eval('h1, h2, h3', (all) => all.map((one) => one.textContent));
    const have = new Set(titles.map(squash));
    tell('every section has its heading', expected.headings.filter((one) => !have.has(squash(one))).map((one) => `lacks "${one}"`));
    if (expected.source === undefined) return;
    // A byte-order mark and the kind of line ends make no difference to whoever reads the file.
    const plain = (text) => text.replace(/^\uFEFF/, '').replaceAll('\r\n', '\n').trimEnd();
    const kept = (await page.$$eval('pre', (all) => all.map((one) => one.textContent))).map(plain);
    tell('the rig file as it was read', kept.includes(plain(expected.source)) ? [] : ['no <pre> holds it to the letter']);
}

// The case is chosen by keyboard alone, without script: the drawing that is seen is the chosen case's.
async function choice({ browser, url, expected, tell }) {
    const { page, close } = await open(browser, url, { script: false });
    const faults = [];
    const chosen = () => page.$$eval(CHOICES, (all) => all.findIndex((one) => one.checked));
    const focused = () => page.$$eval(CHOICES, (all) => all.includes(document.activeElement));
    const buttons = (await page.$$(CHOICES)).length;
    if (buttons !== expected.cases.length && expected.cases.length > 1) faults.push(`${buttons} buttons`);
    for (let presses = 0; buttons > 0 && !(await focused()); presses++) {
        if (presses === 60) {
            faults.push('60 presses of Tab do not come to the choice');
            break;
        }
        await page.keyboard.press('Tab');
    }
    const seen = new Set();
    for (let presses = 0; presses < Math.max(buttons, 1); presses++) {
        if (buttons > 1) await page.keyboard.press('ArrowDown');
        const wanted = Math.max(await chosen(), 0);
        const shown = await visibleDrawings(page);
        if (shown.join() !== String(wanted)) faults.push(`case ${wanted + 1} chosen, drawings ${shown.map((at) => at + 1)} shown`);
        seen.add(wanted);
    }
    if (seen.size !== expected.cases.length) faults.push(`${seen.size} of ${expected.cases.length} cases can be chosen`);
    tell('the case is chosen by keyboard, without script', faults);
    await close();
}

// Runs in the page: what is wrong with a drawing as a file of its own.
function faultsOfDrawing({ markup, name }) {
    const faults = [];
    const drawing = new DOMParser().parseFromString(markup, 'image/svg+xml');
    const error = drawing.querySelector('parsererror');
    if (error) return [`not well-formed: ${error.textContent.slice(0, 120)}`];
    const ids = [...drawing.querySelectorAll('[id]')].map((one) => one.id);
    const twice = ids.find((id, at) => ids.indexOf(id) !== at);
    const label = (drawing.documentElement.getAttribute('aria-labelledby') ?? '').split(' ');
    const texts = [...drawing.querySelectorAll('text')].map((one) => one.textContent);
    if (drawing.documentElement.namespaceURI !== 'http://www.w3.org/2000/svg') faults.push('no SVG');
    if (twice) faults.push(`id ${twice} twice`);
    if (texts.join('').trim() === '') faults.push('no text in it');
    if (!texts.some((one) => one.toLowerCase().includes(name))) faults.push(`names no case "${name}"`);
    if (!label.every((id) => ids.includes(id))) faults.push('aria-labelledby names nothing');
    if (/NaN|Infinity|\bnan\b|\binf\b/.test([...drawing.querySelectorAll('*')].flatMap((one) => one.getAttributeNames().filter((attribute) => !attribute.startsWith('aria')).map((attribute) => one.getAttribute(attribute))).join(' '))) faults.push('a place that is no number');
    return faults;
}

function drawingsIn(html) {
    return html.match(/<svg\b[\s\S]*?<\/svg>/g)?.filter((one) => one.includes('<desc')) ?? [];
}

async function idsTwice(page) {
    const ids = await page.$$eval('[id]', (all) => all.map((one) => one.id));
    const twice = ids.filter((id, at) => ids.indexOf(id) !== at);
    return twice.slice(0, 3).map((id) => `id ${id} twice`);
}

// Figures that are no case of a rig: each whole by itself.
async function figures({ page, html, tell }) {
    tell('ids stand once', await idsTwice(page));
    for (const [at, markup] of drawingsIn(html).entries())
        tell(`figure ${at + 1}`, await page.evaluate(faultsOfDrawing, { markup, name: '' }));
}

// The drawings of the page, and the same as files of their own.
async function drawings({ command, page, html, file, expected, tell }) {
    const inPage = drawingsIn(html);
    tell('ids stand once', await idsTwice(page));
    const count = (await page.$$(DRAWINGS)).length;
    const wrong = count !== expected.cases.length || inPage.length !== count;
    tell('one drawing a case', wrong ? [`${count} drawings, ${expected.cases.length} cases`] : []);
    for (const [at, name] of expected.cases.entries()) {
        tell(`${name}: drawing`, await page.evaluate(faultsOfDrawing, { markup: inPage[at] ?? '', name }));
        if (!command) continue;
        const alone = await run(command, ['report', '--as', 'svg', '--case', name, expected.rig]);
        fs.writeFileSync(`${file}-${name.replaceAll(' ', '-')}.svg`, alone.output);
        tell(`${name}: drawing as a file`, await page.evaluate(faultsOfDrawing, { markup: alone.output, name }));
    }
}

module.exports = { quiet, words, choice, drawings, figures };
