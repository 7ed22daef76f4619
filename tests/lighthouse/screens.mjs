/**
 * @file Runs Lighthouse over the main screens of the served page, as they are
 * with the sample engine on the bench, and prints the figures for accessibility
 * and best practices with what is to be mended. `cargo xtask report` calls it:
 *
 *     node screens.mjs FOLDER-OF-LIGHTHOUSE ADDRESS [--enforce]
 *
 * Every screen is loaded afresh, as from a bookmark. With --enforce less than
 * 100 anywhere fails.
 */
// @ts-check

import { join } from "node:path";
import { pathToFileURL } from "node:url";

const [folder, address, enforce] = process.argv.slice(2);

/** @param {string} path a module of the folder that npm has filled */
const fromFolder = (path) =>
  import(pathToFileURL(join(folder, "node_modules", path)).href);

const { default: lighthouse } = await fromFolder("lighthouse/core/index.js");
const { default: puppeteer } = await fromFolder(
  "puppeteer-core/lib/esm/puppeteer/puppeteer-core.js",
);

/** The screens, as what stands behind the `#`; `BUILD` is the sample engine. */
const SCREENS = [
  "/",
  "/quick/running-clearance",
  "BUILD/map",
  "BUILD/mains/1",
  "BUILD/tighten",
  "BUILD/oil/pressure",
];

const CATEGORIES = ["accessibility", "best-practices"];

const browser = await puppeteer.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--headless=new", "--no-sandbox"],
});
const page = await browser.newPage();
let short = 0;
try {
  const build = await bringInTheSample();
  console.log("Lighthouse, accessibility and best practices");
  for (const screen of SCREENS) {
    const url = `${address}#${screen.replace("BUILD", build)}`;
    for (const theme of ["light", "dark"]) await look(screen, url, theme);
  }
} finally {
  await browser.close();
}
process.exitCode = short > 0 && enforce === "--enforce" ? 1 : 0;

/** Puts the sample engine on the bench, and gives the address of its build. */
async function bringInTheSample() {
  await page.goto(address);
  const button = await page.waitForSelector("[data-test=sample]");
  await button.click();
  await page.waitForSelector("[data-test=sample-says]");
  const hash = await page.evaluate(() => location.hash);
  return hash.slice(1).split("/").slice(0, 3).join("/");
}

/**
 * Loads a screen and prints its figures.
 * @param {string} screen
 * @param {string} url
 * @param {string} theme
 */
async function look(screen, url, theme) {
  await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: theme }]);
  const flags = {
    onlyCategories: CATEGORIES,
    disableStorageReset: true,
    logLevel: "error",
  };
  const result = await lighthouse(url, flags, undefined, page);
  if (!result || result.lhr.runtimeError) {
    throw new Error(`${screen}: ${result?.lhr.runtimeError?.message ?? "no answer"}`);
  }
  const { categories, audits } = result.lhr;
  const figures = CATEGORIES.map((id) => Math.round(categories[id].score * 100));
  console.log(`  ${figures.map((one) => String(one).padStart(3)).join("  ")}  ${theme.padEnd(5)}  ${screen}`);
  for (const id of CATEGORIES) {
    for (const { id: audit, weight } of categories[id].auditRefs) {
      const { score, title, details } = audits[audit];
      if (weight === 0 || score === null || score === 1) continue;
      short += 1;
      console.log(`           ${title}`);
      for (const item of details?.items ?? []) {
        const what = item.node?.snippet ?? item.description ?? item.url ?? "";
        console.log(`             ${what}`);
      }
    }
  }
}
