// Takes this value from the menu of this name, as the browser's own list does; false when there is no such menu.
const menu = document.querySelector(`select[name='${arguments[0]}']`);
if (!menu?.checkVisibility()) return false;
menu.value = arguments[1];
menu.dispatchEvent(new Event("input", { bubbles: true }));
menu.dispatchEvent(new Event("change", { bubbles: true }));
return menu.value === arguments[1];
