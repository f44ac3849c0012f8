// A sheet of facts: while it is filled in, the findings beside it change. What was typed is never touched; without
// this script "Check so far" does the same.
for (const form of document.querySelectorAll("form[data-look]")) {
  const look = document.getElementById("look");
  const summary = document.getElementById("sheet-summary");
  form.querySelector("button[value=look]").hidden = true;
  let timer = 0;
  let latest = 0;

  const name = (details) => details.closest("[id]").id + details.className;
  const say = (text) => {
    if (summary.textContent !== text) summary.textContent = text;
  };
  const show = (fresh) => {
    const open = new Set([...look.querySelectorAll("details[open]")].map(name));
    look.replaceChildren(...fresh.getElementById("look").childNodes);
    for (const details of look.querySelectorAll("details")) details.open = open.has(name(details));
    say(fresh.getElementById("sheet-summary").textContent);
  };
  const ask = async () => {
    const turn = ++latest;
    try {
      const answer = await fetch(form.dataset.look, { method: "POST", body: new URLSearchParams(new FormData(form)) });
      if (!answer.ok) throw new Error(answer.statusText);
      const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
      if (turn === latest) show(fresh);
    } catch {
      if (turn === latest)
        say("No answer from the shop's computer. What stands below is from before; what you typed is still here.");
    }
  };
  const soon = (pause) => {
    clearTimeout(timer);
    timer = setTimeout(ask, pause);
  };
  form.addEventListener("change", () => soon(100));
  form.addEventListener("input", () => soon(700));
}
