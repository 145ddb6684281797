// What a page has to say: taken from the other forms of the same report, which tests of their own hold to account.
'use strict';
const { execFile } = require('node:child_process');
const fs = require('node:fs');
const path = require('node:path');

// Run a program to its end. Only what stops it from running at all is an error: a status may be a verdict.
function run(program, words) {
    return new Promise((resolve, reject) => {
        execFile(program, words, { maxBuffer: 1 << 26 }, (error, output, complaint) => {
            if (error && typeof error.code !== 'number') reject(error);
            else resolve({ status: error ? error.code : 0, output, complaint });
        });
    });
}

// Text without its blanks and hyphens, so that line breaks and what is made of them make no difference: a hyphen at
// the end of a line counts as put there to break a word.
function squash(text) {
    return text.normalize('NFKC').replace(/[-\s\u00AD]+/gu, '');
}

// The pairs that the text report begins with: a label in the first column, its words in lines that are set in.
function head(lines) {
    const pairs = {};
    let label = '';
    for (const line of lines.slice(2)) {
        if (line === '') break;
        const pair = /^(\S.*?)\s{2,}(\S.*)$/.exec(line);
        if (pair) label = pair[1];
        if (pair) pairs[label] = pair[2];
        else if (label && line.startsWith('  ')) pairs[label] += ' ' + line.trim();
    }
    return pairs;
}

// What stands over a line of dashes.
function headings(lines) {
    return lines.filter((line, at) => line !== '' && /^-{3,}$/.test(lines[at + 1] ?? ''));
}

// Everything that the text report says, word by word; lines drawn under headings and shortened words left out.
function wordsOf(lines) {
    const words = lines.join('\n').split(/\s+/u);
    return [...new Set(words.filter((word) => /[^-=]/.test(word) && !word.endsWith('...')))];
}

async function expect(command, rig) {
    const [text, json] = await Promise.all([run(command, ['report', rig]), run(command, ['report', '--as', 'json', rig])]);
    if (text.output === '' || json.output === '') throw new Error(`no report of ${rig}: ${text.complaint}`);
    const data = JSON.parse(json.output);
    const lines = text.output.split('\n');
    const pairs = head(lines);
    return {
        name: path.basename(rig, '.ini'),
        rig,
        status: text.status,
        source: fs.readFileSync(rig, 'utf8'),
        says: [pairs.Verdict, pairs.Cautions, ...data.cautions],
        headings: headings(lines),
        words: wordsOf(lines),
        cases: data.cases.map((one) => one.case),
    };
}

// Of a page in the list of pages.js: the text form has its headings and its words; of a command without one the list
// has them.
async function expectPage(command, { name, args, says, headings: own }) {
    if (own) return { name, status: 0, says, headings: own, steps: [], words: [], cases: [''] };
    const text = await run(command, args);
    if (text.output === '') throw new Error(`no text of ${name}: ${text.complaint}`);
    const lines = text.output.split('\n');
    const steps = lines.filter((line) => /^\d+\. /.test(line));
    return { name, status: text.status, says, headings: headings(lines), steps, words: wordsOf(lines), cases: [''] };
}

module.exports = { expect, expectPage, run, squash };
