// Where to tap what a selector finds or, among that, what says these words; a sentence when it cannot be tapped.
const [selector, words] = arguments;
const said = (element) => (element.innerText ?? "").trim().replace(/\s+/g, " ");
const shown = [...document.querySelectorAll(selector)].filter((element) => element.checkVisibility());
const found = words
  ? (shown.find((element) => said(element) === words || element.getAttribute("aria-label") === words) ??
    shown.find((element) => said(element).startsWith(`${words} `)))
  : shown[0];
if (!found) return "it is not on the page";
found.scrollIntoView({ block: "center", behavior: "instant" });
const area = found.getClientRects()[0];
const [x, y] = [area.left + area.width / 2, area.top + area.height / 2];
const hit = document.elementFromPoint(x, y);
if (!hit || (!found.contains(hit) && !(hit.tagName === "LABEL" && hit.contains(found)))) {
  return `it is covered by ${hit?.outerHTML.slice(0, 120)}`;
}
return { x, y };
