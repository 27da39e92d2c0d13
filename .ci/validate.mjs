// Validate checks pages by html-validate, all rules it recommends, and prints where they
// are broken. It calls the library, whose command asks for a later Node than most have.
//
//	node validate.mjs FOLDER-OF-NODE-MODULES PAGE.html...
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";

const [modules, ...pages] = process.argv.slice(2);
const found = createRequire(pathToFileURL(modules + "/")).resolve("html-validate");
const { HtmlValidate, StaticConfigLoader } = await import(pathToFileURL(found));
const validator = new HtmlValidate(new StaticConfigLoader({ root: true, extends: ["html-validate:recommended"] }));

let broken = 0;
for (const page of pages) {
  const { results } = await validator.validateFile(page);
  for (const { messages } of results) {
    broken += messages.length;
    for (const m of messages.slice(0, 10)) console.log(`${page}:${m.line}:${m.column}: ${m.ruleId}: ${m.message}`);
  }
}
console.log(`html-validate read ${pages.length} pages: ${broken} rules broken`);
process.exit(broken > 0 || pages.length === 0 ? 1 : 0);
