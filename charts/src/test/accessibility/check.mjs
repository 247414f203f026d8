// Checks reports with axe-core in headless Chromium: light and dark, phone and desktop; then prints them to PDF.
// Usage: npm install; node check.mjs REPORT.html ...      CHROMIUM names the browser if it is not /usr/bin/chromium.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import puppeteer from 'puppeteer-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const reports = process.argv.slice(2);
if (reports.length === 0) {
  console.error('usage: node check.mjs REPORT.html ...');
  process.exit(2);
}
const browser = await puppeteer.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
let problems = 0;
const fail = (where, what) => {
  problems++;
  console.log(`${where}: ${what}`);
};

async function check(report, scheme, width) {
  const where = `${report} ${scheme} ${width} px`;
  const page = await browser.newPage();
  page.on('console', message => message.type() === 'error' && fail(where, message.text()));
  page.on('request', request => /^(file|data):/.test(request.url()) || fail(where, `fetches ${request.url()}`));
  await page.setViewport({ width, height: 900 });
  await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
  await page.goto(pathToFileURL(resolve(report)));
  await page.evaluate(() => document.querySelectorAll('details').forEach(part => (part.open = true)));
  const scroll = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  if (scroll > 0) fail(where, `the page scrolls sideways by ${scroll} px`);
  await page.evaluate(axe);
  const result = await page.evaluate(() =>
    window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice'] }));
  for (const violation of result.violations) {
    fail(where, `${violation.id} (${violation.impact}): ${violation.help}`);
    violation.nodes.slice(0, 3).forEach(node => console.log(`    ${node.html.slice(0, 160)}`));
  }
  console.log(`${where}: ${result.passes.length} rules passed, ${result.violations.length} violated, ` +
    `${result.incomplete.map(rule => rule.id).join(', ') || 'none'} undecided`);
  await page.close();
}

async function sorting(report) {
  const page = await browser.newPage();
  await page.goto(pathToFileURL(resolve(report)));
  const sorted = await page.evaluate(() => {
    const table = [...document.querySelectorAll('table')].find(one => one.querySelector('th button'));
    if (!table) return 'no table sorts';
    const cells = () => [...table.tBodies[0].rows].map(row => row.cells[0].textContent);
    const before = cells();
    const button = table.querySelector('th button');
    button.click();
    button.click();
    const after = cells();
    return after.join() === before.join() || after.length !== before.length ? 'a table did not turn round' : '';
  });
  if (sorted) fail(report, sorted);
  await page.close();
}

async function print(report) {
  const page = await browser.newPage();
  await page.goto(pathToFileURL(resolve(report)));
  const file = resolve(report).replace(/\.html$/, '-printed.pdf');
  await page.pdf({ path: file, preferCSSPageSize: true, printBackground: true });
  console.log(`${report}: printed to ${file}`);
  await page.close();
}

for (const report of reports) {
  for (const scheme of ['light', 'dark']) {
    for (const width of [390, 1280]) await check(report, scheme, width);
  }
  await sorting(report);
  await print(report);
}
await browser.close();
console.log(problems === 0 ? 'no problems' : `${problems} problems`);
process.exit(problems === 0 ? 0 : 1);
