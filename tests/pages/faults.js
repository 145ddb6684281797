// Faults to be planted in a sound page: each names the check that has to see it, and what that check has to say.
'use strict';

const DEMO = 'docs/examples/flown-piece.ini';
const FIRST_ROW = /(<tbody>[\s\S]*?<tr[\s\S]*?<td[^>]*>)/;

const atEnd = (markup) => (html) => html.replace('</body>', () => `${markup}</body>`);
const style = (rules) => atEnd(`<style>${rules}</style>`);
const instead = (pattern, text) => (html) => html.replace(pattern, text);

const faults = [
    ['a picture from outside', 'quiet', /asks for https:/, atEnd('<img src="https://example.invalid/a.png" alt="">')],
    ['a picture beside the page', 'quiet', /asks for file:/, atEnd('<img src="beside.png" alt="">')],
    ['a script', 'quiet', /holds <script>/, atEnd('<script>console.log(1)</script>')],
    ['a handler', 'quiet', /holds <p>/, atEnd('<p onclick="alert(1)">x</p>')],
    ['a font from outside', 'quiet', /asks for|console/, style('@font-face{font-family:f;src:url(https://example.invalid/f)}p{font-family:f}')],
    ['a wide table', 'widths', /the page is 1\d\d\d px wide/, atEnd('<table style="width:1500px"><tr><td>wide</td></tr></table>')],
    ['a wide table, cut off', 'widths', /is cut/, atEnd('<div style="overflow:hidden"><p style="width:1500px">wide</p></div>')],
    ['small text', 'widths', /"small" is 12\.0 px/, atEnd('<p style="font-size:12px">small</p>')],
    [
        'small text in a drawing',
        'widths',
        /"tiny" is 8\.0 px/,
        atEnd('<svg viewBox="0 0 200 40" width="100" height="20"><text y="20" font-size="16">tiny</text></svg>'),
    ],
    ['faint text', 'access', /color-contrast/, atEnd('<p style="color:#999;background:#fff">faint</p>')],
    [
        'text that is faint in the dark',
        'access',
        /color-contrast/,
        atEnd('<style>@media(prefers-color-scheme:dark){#x{color:#333;background:#111}}</style><p id="x">faint</p>'),
    ],
    ['a picture without words', 'access', /image-alt/, atEnd('<img src="data:image/gif;base64,R0lGODlhAQABAAAAACw=">')],
    ['no language', 'access', /html-has-lang/, instead(/ lang="[a-z]*"/, '')],
    ['a caution left out', 'words', /lacks "Local law and codes come first\."/, instead(/Local law and codes come first\./g, '')],
    ['a section without heading', 'words', /lacks "Cases"/, instead(/(<h2[^>]*>)Cases</, '$1')],
    ['another rig file', 'words', /no <pre>/, instead(/\[rig\]/g, '[Rig]')],
    ['an id twice', 'drawings', /id \S+ twice/, instead(/ id="([^"]*)"/, ' id="$1"><i id="$1"></i')],
    ['a drawing that is not well-formed', 'drawings', /not well-formed/, instead('</desc>', '</desc><g>')],
    ['a drawing of another case', 'drawings', /names no case/, instead(/raise/g, 'razed')],
    ['all drawings shown', 'choice', /drawings 1,2,3 shown/, style('svg,:has(svg){display:block!important}')],
    ['a choice out of reach', 'choice', /do not come to the choice/, instead(/type="radio"/g, 'type="radio" tabindex="-1"')],
    ['a choice without effect', 'choice', /case \d chosen/, instead(/:checked/g, ':default')],
    ['a case that is not printed', 'print', /lacks/, style('@media print{svg:has(>desc){display:none!important}}')],
    ['a section that is not printed', 'print', /lacks "Cases"/, style('@media print{h2{display:none!important}}')],
    ['a table cut on paper', 'print', /lacks|reaches/, instead(FIRST_ROW, '$1<span style="margin-right:3000px"> </span>')],
    ['no page numbers', 'print', /page 1 of \d+ is not told/, instead(/counter\(pages\)/g, '""')],
    ['cautions on a later page', 'print', /lacks "Arithmetic/, style('main{break-before:page}h1{break-after:page}')],
];

module.exports = {
    faults: faults.map(([name, check, finds, plant]) => ({ name, check, finds, plant, rig: DEMO })),
};
