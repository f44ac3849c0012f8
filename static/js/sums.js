// One sum: while its numbers are typed, the answer follows, and the address carries them. Without this script
// "Work it out" does the same.
for (const form of document.querySelectorAll("form[data-sum]")) {
  const answer = document.getElementById("sum-answer");

  const show = (fresh, address) => {
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
    history.replaceState(null, "", address);
  };
  const request = (typed) => [`${form.dataset.sum}?${typed}`];
  followForm(form, document.getElementById("sum-summary"), request, show, { change: 50, input: 250 });
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
