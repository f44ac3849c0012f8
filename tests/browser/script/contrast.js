// Each text whose ink stands out from its ground by less than the ratio asked for (arguments[0]).
const least = arguments[0];
const numbers = (color) => (color.match(/[\d.]+/g) ?? []).map(Number);
const part = (value) => (value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4);
const light = ([r, g, b]) => 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
const over = ([r, g, b, a = 1], below) => [r, g, b].map((value, at) => value * a + below[at] * (1 - a));

// An option is drawn by a list's own window; a choice's words lie over a box of their own.
function ground(element) {
  const choice = element.closest(".choice");
  const from = choice ? choice.querySelector("input") : element;
  const layers = [];
  for (let at = from; at; at = at.parentElement) {
    layers.push(numbers(getComputedStyle(at).backgroundColor));
  }
  return layers.reverse().reduce((below, layer) => over(layer, below), [255, 255, 255]);
}

const found = [];
const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
const seen = new Set();
while (walker.nextNode()) {
  const element = walker.currentNode.parentElement;
  if (!walker.currentNode.textContent.trim() || seen.has(element)) continue;
  seen.add(element);
  if (!element.checkVisibility() || element.closest("option, script, style")) continue;
  const below = ground(element);
  const ink = over(numbers(getComputedStyle(element).color), below);
  const [high, low] = [light(ink), light(below)].sort((a, b) => b - a);
  const ratio = (high + 0.05) / (low + 0.05);
  if (ratio < least) found.push(`${ratio.toFixed(2)} to 1: “${walker.currentNode.textContent.trim().slice(0, 60)}”`);
}
return found;
