// The system's browser, with the network off, and an ear for everything that a page does beyond being shown.
'use strict';
const { chromium } = require('playwright-core');

function launch() {
    return chromium.launch({ executablePath: process.env.CHROMIUM || '/usr/bin/chromium' });
}

// Open a page from a file. `heard` fills with all that is not to be: messages, errors, requests, dialogs, windows.
async function open(browser, url, { script }) {
    const context = await browser.newContext({ javaScriptEnabled: script, offline: true });
    const heard = [];
    await context.route('**/*', (route) => (route.request().url() === url ? route.continue() : route.abort()));
    const page = await context.newPage();
    page.setDefaultTimeout(20000);
    let asked = 0;
    page.on('request', (request) => {
        if (request.url() !== url || ++asked > 1) heard.push(`asks for ${request.url().slice(0, 200)}`);
    });
    page.on('console', (message) => heard.push(`console: ${message.text()}`));
    page.on('pageerror', (error) => heard.push(`error: ${error.message}`));
    page.on('popup', () => heard.push('opens a window'));
    page.on('download', () => heard.push('downloads'));
    page.on('dialog', (dialog) => {
        heard.push(`dialog: ${dialog.message()}`);
        dialog.dismiss().catch(() => {});
    });
    await page.goto(url, { waitUntil: 'load' });
    return { page, heard, close: () => context.close() };
}

// A drawing of a case: told in words, which no other figure of the page is.
const DRAWINGS = 'svg:has(> desc)';
const CHOICES = 'input[type=radio]';

// Which of the page's drawings can be seen, by their place among them.
function visibleDrawings(page) {
    return page.$$eval(DRAWINGS, (all) =>
        all.flatMap((one, at) =>
            one.checkVisibility({ visibilityProperty: true, opacityProperty: true }) &&
            one.getBoundingClientRect().width > 0
                ? [at]
                : [],
        ),
    );
}

// Show each case in turn, as a click on its button does; a rig of one case needs no button.
async function eachCase(page, cases, visit) {
    const choices = await page.$$(CHOICES);
    for (const [at, name] of cases.entries()) {
        if (choices[at]) await choices[at].evaluate((button) => button.click());
        await visit(name, at);
    }
}

module.exports = { launch, open, visibleDrawings, eachCase, DRAWINGS, CHOICES };
