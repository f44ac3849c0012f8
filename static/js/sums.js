// One sum: while its numbers are typed, the answer follows, and the address carries them. Without this script
// "Work it out" does the same.
for (const form of document.querySelectorAll("form[data-sum]")) {
  const summary = document.getElementById("sum-summary");
  const answer = document.getElementById("sum-answer");
  let timer = 0;
  let latest = 0;

  const say = (text) => {
    if (summary.textContent !== text) summary.textContent = text;
  };
  const show = (fresh) => {
    for (const said of form.querySelectorAll(".said")) {
      const field = said.closest(".field");
      const newer = fresh.getElementById(said.id);
      said.replaceChildren(...newer.childNodes);
      field.classList.toggle("field-wrong", said.childElementCount > 0);
      const input = field.querySelector("input, select, textarea");
      if (said.childElementCount > 0) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    }
    // The job's number is typed into the answer's own form, which is about to be another one.
    const ticket = document.getElementById("ticket")?.value;
    answer.replaceChildren(...fresh.getElementById("sum-answer").childNodes);
    const next = document.getElementById("ticket");
    if (next && ticket) next.value = ticket;
    offerCopies(answer);
    say(fresh.getElementById("sum-summary").textContent);
  };
  const ask = async () => {
    const turn = ++latest;
    const address = `${form.dataset.sum}?${new URLSearchParams(new FormData(form))}`;
    try {
      const reply = await fetch(address);
      if (!reply.ok) throw new Error(reply.statusText);
      const fresh = new DOMParser().parseFromString(await reply.text(), "text/html");
      if (turn !== latest) return;
      show(fresh);
      history.replaceState(null, "", address);
    } catch {
      if (turn === latest)
        say("No answer from the shop's computer. What stands below is from before; what you typed is still here.");
    }
  };
  const soon = (pause) => {
    clearTimeout(timer);
    timer = setTimeout(ask, pause);
  };
  form.addEventListener("change", () => soon(50));
  form.addEventListener("input", () => soon(250));
}

// Copying by a button; where the browser has no leave to, the text is marked instead, ready to be copied.
function offerCopies(part) {
  for (const button of part.querySelectorAll("button[data-copy]")) {
    button.hidden = false;
    button.addEventListener("click", async () => {
      const words = button.textContent;
      try {
        await navigator.clipboard.writeText(button.dataset.copy);
        button.textContent = "Copied";
      } catch {
        getSelection().selectAllChildren(document.getElementById(words.includes("link") ? "sum-link" : "result-heading"));
        button.textContent = "Marked: copy it now";
      }
      setTimeout(() => (button.textContent = words), 2000);
    });
  }
}
offerCopies(document);
