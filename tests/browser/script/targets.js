// Everything that is tapped and is smaller than a finger needs, or nearer to the next thing than it may be.
// arguments: the least size of a button that moves a job, the least size of everything else, the least gap.
const [status, other, gap] = arguments;
const everything = "a[href], button, input:not([type=hidden]), select, textarea, summary";
const name = (element) =>
  `${element.tagName.toLowerCase()}${element.name ? `[${element.name}]` : ""} “${(element.getAttribute("aria-label") ?? element.innerText ?? "").trim().replace(/\s+/g, " ").slice(0, 40)}”`;

// Words inside a sentence are read, not aimed at.
function inText(element) {
  if (element.tagName !== "A" || getComputedStyle(element).display !== "inline") return false;
  const around = element.parentElement.innerText.replace(element.innerText, "");
  return /\p{L}/u.test(around);
}

// A tick is tapped by its words as well.
function area(element) {
  const label = element.matches("[type=checkbox], [type=radio]") ? element.closest("label") : null;
  return (label ?? element).getBoundingClientRect();
}

// What is scrolled or pinned together is compared with its own kind only.
function plane(element) {
  for (let at = element.parentElement; at; at = at.parentElement) {
    const style = getComputedStyle(at);
    if (style.position === "sticky" || style.position === "absolute" || /auto|scroll/.test(style.overflowY)) return at;
  }
  return document;
}

const moves = (element) =>
  element.matches(".button-stage") || (element.matches("button") && /\/(stage|waits)$/.test(element.form?.getAttribute("action") ?? ""));
const tapped = [...document.querySelectorAll(everything)]
  .filter((element) => element.checkVisibility({ visibilityProperty: true }) && !element.matches("[tabindex='-1']"))
  .filter((element) => !inText(element))
  .map((element) => ({ element, area: area(element), plane: plane(element) }))
  .filter(({ area }) => area.width > 0 && area.right > 0);

const found = [];
for (const { element, area } of tapped) {
  const least = moves(element) ? status : other;
  const size = `${area.width.toFixed(0)} x ${area.height.toFixed(0)}`;
  if (area.width < least - 0.5 || area.height < least - 0.5) found.push(`${name(element)} is ${size}, not ${least}`);
}
for (let i = 0; i < tapped.length; i++) {
  for (let j = i + 1; j < tapped.length; j++) {
    const [one, two] = [tapped[i], tapped[j]];
    if (one.plane !== two.plane || one.element.contains(two.element) || two.element.contains(one.element)) continue;
    const across = Math.max(one.area.left, two.area.left) - Math.min(one.area.right, two.area.right);
    const down = Math.max(one.area.top, two.area.top) - Math.min(one.area.bottom, two.area.bottom);
    const apart = Math.max(across, down);
    if (apart < gap - 0.5) found.push(`${name(one.element)} and ${name(two.element)} are ${apart.toFixed(0)} apart`);
  }
}
return found;
