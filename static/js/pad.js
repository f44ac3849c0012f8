// A number pad under the reading that is being typed, for a hand in a glove. Without this script, and beside it, the
// tablet's own keys do the same.
{
  const fields = [...document.querySelectorAll("input[data-pad]")];
  const keys = ["1", "2", "3", "/", "4", "5", "6", "-", "7", "8", "9", "thou", ".", "0", "mm", "\u232b"];
  const names = { "/": "over", "-": "minus", ".": "point", "\u232b": "take the last sign away" };
  let pad;
  let field;
  const press = (key) => {
    if (key === "\u232b") field.value = field.value.trimEnd().slice(0, -1).trimEnd();
    else field.value += key.length > 1 ? ` ${key}` : key;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const make = () => {
    pad = document.createElement("div");
    pad.className = "pad";
    pad.setAttribute("role", "group");
    pad.setAttribute("aria-label", "Number pad");
    for (const key of keys) {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "button button-quiet";
      button.textContent = key;
      if (names[key]) button.setAttribute("aria-label", names[key]);
      button.addEventListener("click", () => press(key));
      pad.append(button);
    }
  };
  for (const one of fields) {
    one.addEventListener("focus", () => {
      if (!pad) make();
      field = one;
      one.closest(".measure").after(pad);
    });
  }
}
