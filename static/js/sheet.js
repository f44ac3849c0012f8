// A sheet of facts: while it is filled in, the findings beside it change. Without this script "Check so far" does the
// same.
for (const form of document.querySelectorAll("form[data-look]")) {
  const look = document.getElementById("look");
  form.querySelector("button[value=look]").hidden = true;

  const name = (details) => details.closest("[id]").id + details.className;
  const show = (fresh) => {
    const open = new Set([...look.querySelectorAll("details[open]")].map(name));
    look.replaceChildren(...fresh.getElementById("look").childNodes);
    for (const details of look.querySelectorAll("details")) details.open = open.has(name(details));
  };
  const request = (body) => [form.dataset.look, { method: "POST", body }];
  followForm(form, document.getElementById("sheet-summary"), request, show);
}
