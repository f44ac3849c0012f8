// What has the focus: what it is, whether that can be seen, whether it is on the screen.
const element = document.activeElement;
if (!element || element === document.body) return null;
const own = getComputedStyle(element);
const label = element.closest("label");
const around = label ? getComputedStyle(label) : own;
const drawn = (style) => (style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2) || style.boxShadow !== "none";
const area = element.getBoundingClientRect();
const name = element.id || element.name || element.innerText || element.getAttribute("href") || "";
return {
  what: `${element.tagName.toLowerCase()} ${name.trim().slice(0, 50)}`,
  id: element.id,
  name: element.name ?? "",
  words: (element.innerText ?? "").trim(),
  seen: drawn(own) || drawn(around),
  onScreen: area.bottom > 0 && area.top < innerHeight && area.right > 0 && area.left < innerWidth,
  at: [...document.querySelectorAll("*")].indexOf(element),
};
