// Everything axe-core finds fault with, a line for each element.
const done = arguments[arguments.length - 1];
const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
axe
  .run(document, { runOnly: tags, resultTypes: ["violations"] })
  .then((all) => done(all.violations.flatMap((one) => one.nodes.map((at) => `${one.id}: ${at.target.join(" ")} ${at.failureSummary}`))))
  .catch((error) => done([`axe failed: ${error}`]));
