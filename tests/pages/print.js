// The page on paper: all of it, in order for screen readers too, and nothing cut.
'use strict';
const { run, squash } = require('./expected.js');
const { DRAWINGS } = require('./browser.js');

const PAPERS = ['A4', 'Letter'];
// A print gives back other scripts in an order, and with marks, of its own: such lines are looked for on the page only.
const OTHER_SCRIPT = /[^\u0000-\u024F\u2000-\u206F]/u;
const LEAST_MARGIN = 14; // points, 5 mm: nearer to the edge no printer prints

// Runs in the page, set for print: rows of tables, and texts of drawings, that are there to be printed. The heads of
// tables stand apart: where a table goes on over the page, the browser repeats its head and takes it out of the order.
function printable(drawings) {
    const seen = (one) => one.checkVisibility({ visibilityProperty: true });
    return {
        rows: [...document.querySelectorAll('tbody tr')].filter(seen).map((row) => row.textContent),
        heads: [...document.querySelectorAll('thead th')].filter(seen).flatMap((head) => head.textContent.trim().split(/\s+/u)),
        drawn: [...document.querySelectorAll(`:is(${drawings}) text`)].map((one) => one.textContent),
    };
}

// The structure of a tagged file, as pdfinfo tells it: its texts, and those of each row of a table.
function structure(told) {
    const texts = [];
    const rows = [];
    let depth = Infinity;
    for (const line of told.split('\n')) {
        const at = line.search(/\S/);
        const text = /^\s*"(.*)"$/.exec(line);
        if (/^\s*TR\b/.test(line)) {
            depth = at;
            rows.push('');
        } else if (at >= 0 && at <= depth) depth = Infinity;
        if (text) texts.push(text[1]);
        if (text && depth !== Infinity) rows[rows.length - 1] += text[1];
    }
    return { all: squash(texts.join('')), rows: rows.map(squash) };
}

// Rows that the page has and the paper has not, or not as often, or not whole.
function lostRows(wanted, printed) {
    const left = [...printed];
    return wanted.filter((row) => {
        const at = left.indexOf(squash(row));
        if (at >= 0) left.splice(at, 1);
        return at < 0;
    });
}

// Words nearer to the edge of their page than a printer reaches, or over it.
function outside(boxes) {
    const faults = [];
    let width = 0;
    for (const [, page, left, right, word] of boxes.matchAll(/<page width="([\d.]+)"|<word xMin="(-?[\d.]+)" yMin="[^"]*" xMax="(-?[\d.]+)"[^>]*>(.*?)<\/word>/g)) {
        if (page) width = Number(page);
        else if (Number(left) < LEAST_MARGIN || Number(right) > width - LEAST_MARGIN) faults.push(`"${word}" reaches the edge`);
    }
    return faults;
}

function unnumbered(text) {
    const pages = text.split('\f').slice(0, -1);
    return pages.flatMap((page, at) =>
        new RegExp(`\\b${at + 1} of ${pages.length}\\b`, 'i').test(page) ? [] : [`page ${at + 1} of ${pages.length} is not told`],
    );
}

async function onPaper({ page, file, expected, tell }, format, there) {
    const pdf = `${file}-${format.toLowerCase()}.pdf`;
    await page.pdf({ path: pdf, format, tagged: true, outline: true });
    const [facts, told, text, first, boxes] = await Promise.all([
        run('pdfinfo', [pdf]),
        run('pdfinfo', ['-struct-text', pdf]),
        run('pdftotext', [pdf, '-']),
        run('pdftotext', ['-l', '1', pdf, '-']),
        run('pdftotext', ['-bbox', pdf, '-']),
    ]);
    const paper = structure(told.output);
    const lacks = (all, where) => all.filter((one) => !where.includes(squash(one))).map((one) => `lacks "${one.slice(0, 60)}"`);
    tell(`${format}: tagged`, /^Tagged: +yes$/m.test(facts.output) ? [] : ['is not']);
    tell(`${format}: verdict and cautions on the first page`, lacks(expected.says, squash(first.output)));
    tell(`${format}: every section`, lacks(expected.headings, paper.all));
    const drawn = there.drawn.filter((one) => !OTHER_SCRIPT.test(one));
    const printed = paper.all + squash(text.output);
    tell(`${format}: every case`, lacks([...drawn, ...expected.cases], printed).slice(0, 5));
    const words = new Set(text.output.split(/\s+/u));
    tell(`${format}: heads of tables are whole`, there.heads.filter((word) => !words.has(word)).slice(0, 3).map((word) => `lacks "${word}"`));
    tell(`${format}: rows of tables are whole`, lostRows(there.rows, paper.rows).slice(0, 3).map((row) => `lacks "${row}"`));
    tell(`${format}: nothing reaches the edge`, outside(boxes.output).slice(0, 3));
    tell(`${format}: pages are numbered`, unnumbered(text.output));
}

// Every page is printed on A4, every second one on Letter too.
let printed = 0;

async function print(lab) {
    await lab.page.emulateMedia({ media: 'print' });
    const there = await lab.page.evaluate(printable, DRAWINGS);
    const papers = printed++ % 2 === 0 ? PAPERS : PAPERS.slice(0, 1);
    for (const format of papers) await onPaper(lab, format, there);
    await lab.page.emulateMedia({ media: null });
}

module.exports = { print, structure };
