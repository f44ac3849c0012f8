// What makes the page wider than its screen; a table may scroll inside a frame of its own.
const wide = document.documentElement.clientWidth;
if (document.documentElement.scrollWidth <= wide && document.body.scrollWidth <= wide) return [];
const framed = (element) => element.closest(".scroll") !== null;
return [
  `the page is ${Math.max(document.documentElement.scrollWidth, document.body.scrollWidth)} wide on a screen of ${wide}`,
  ...[...document.querySelectorAll("body *")]
    .filter((element) => !framed(element) && element.getBoundingClientRect().right > wide + 0.5)
    .slice(0, 5)
    .map((element) => `${element.tagName.toLowerCase()}.${element.className} “${element.textContent.trim().slice(0, 40)}”`),
];
