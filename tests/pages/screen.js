// The page on screens: as wide as they are, legible, and usable by everybody.
'use strict';
const fs = require('node:fs');
const { eachCase } = require('./browser.js');
const axe = fs.readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

const WIDTHS = [360, 768, 1280];
const PHONE = 360;
const LEAST_TEXT = 16; // CSS px, on a phone
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

// Runs in the page: what makes it wider than the window, and what is cut off where it does not scroll.
function sideways() {
    const faults = [];
    const root = document.documentElement;
    const named = (one) => `<${one.localName}> "${one.textContent.trim().slice(0, 30)}"`;
    const turns = (one) => ['auto', 'scroll'].includes(getComputedStyle(one).overflowX);
    const cuts = (one) => ['hidden', 'clip'].includes(getComputedStyle(one).overflowX);
    const contained = (one) => one && (turns(one) || contained(one.parentElement));
    if (root.scrollWidth > innerWidth) faults.push(`the page is ${root.scrollWidth} px wide`);
    for (const one of document.body.querySelectorAll(':not(svg *)')) {
        const box = one.getBoundingClientRect();
        // What is 1 px small is for screen readers only.
        if (box.width <= 1 || !one.checkVisibility({ visibilityProperty: true })) continue;
        if (box.right > innerWidth + 0.5 && !contained(one.parentElement))
            faults.push(`${named(one)} ends at ${Math.round(box.right)} px`);
        if (one.localName !== 'svg' && cuts(one) && one.scrollWidth > one.clientWidth + 1) faults.push(`${named(one)} is cut`);
    }
    return faults.slice(0, 3);
}

// Runs in the page: texts that are shown smaller than `least`; in a drawing the size is the one on the screen.
function smallTexts(least) {
    const faults = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) {
        const text = texts.currentNode.data.trim();
        const one = texts.currentNode.parentElement;
        if (text === '' || one.closest('svg > title, svg > desc, style')) continue;
        if (!one.checkVisibility({ visibilityProperty: true })) continue;
        let size = parseFloat(getComputedStyle(one).fontSize);
        if (one instanceof SVGElement) {
            const scale = one.getScreenCTM();
            size *= Math.sqrt(Math.abs(scale.a * scale.d - scale.b * scale.c));
        }
        if (size < least - 0.05) faults.push(`"${text.slice(0, 30)}" is ${size.toFixed(1)} px`);
    }
    return faults.slice(0, 3);
}

async function widths({ page, expected, tell }) {
    for (const width of WIDTHS) {
        await page.setViewportSize({ width, height: 800 });
        await eachCase(page, expected.cases, async (name) => {
            tell(`${width} px, ${name}: not wider than the window`, await page.evaluate(sideways));
            if (width !== PHONE) return;
            tell(`${width} px, ${name}: text of ${LEAST_TEXT} px or more`, await page.evaluate(smallTexts, LEAST_TEXT));
        });
    }
}

// Rules for everybody's access that are broken in a part of the page, each with the first element that breaks it.
async function broken(page, where = ':root') {
    const found = await page.evaluate(
        ([part, rules]) => axe.run(part, { runOnly: rules, resultTypes: ['violations'], preload: false, iframes: false }),
        [where, RULES],
    );
    return found.violations.map((rule) => {
        const where = rule.nodes[0];
        const why = where.failureSummary.split('\n').slice(1, 2).join('').trim();
        return `${rule.id} at ${where.target.join(' ')}: ${why} (${rule.nodes.length} in all)`;
    });
}

async function access({ page, expected, tell }) {
    await page.setViewportSize({ width: 1280, height: 800 });
    await page.evaluate(axe);
    // Another case is another drawing: the rest of the page was looked at with the first.
    let where;
    await eachCase(page, expected.cases, async (name) => {
        tell(`light, ${name}: WCAG 2.2 A and AA`, await broken(page, where));
        where = '.case';
    });
    // Drawings keep their colours in the dark: of the rest one case shows all.
    await page.emulateMedia({ colorScheme: 'dark' });
    tell('dark: WCAG 2.2 A and AA', await broken(page));
    await page.emulateMedia({ colorScheme: null });
}

// For people to look at; nothing is compared with them.
async function pictures({ page, file }) {
    const views = [
        ['phone', 360, 'light'],
        ['desk', 1280, 'light'],
        ['dark', 1280, 'dark'],
    ];
    for (const [name, width, colorScheme] of views) {
        await page.setViewportSize({ width, height: 800 });
        await page.emulateMedia({ colorScheme });
        await page.screenshot({ path: `${file}-${name}.png`, fullPage: true });
    }
    await page.emulateMedia({ colorScheme: null });
}

module.exports = { widths, access, pictures };
