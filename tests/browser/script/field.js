// Puts the cursor into the field of this name, with what stands in it selected.
const field = [...document.querySelectorAll(`[name='${arguments[0]}']:not([type=hidden])`)].find((one) => one.checkVisibility());
if (!field) return false;
field.scrollIntoView({ block: "center", behavior: "instant" });
field.focus();
field.select();
return true;
