// The counter set: while it is filled in, the questions that apply now appear and the findings beside them change.
// Nothing that was typed is touched; without this script "Check so far" does the same.
function watchQuestions(form) {
  const summary = document.getElementById("look-summary");
  let timer = 0;
  let latest = 0;

  async function look() {
    const turn = ++latest;
    try {
      const body = new URLSearchParams(new FormData(form));
      const answer = await fetch(form.dataset.questions, { method: "POST", body });
      if (!answer.ok) throw new Error(answer.statusText);
      const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
      if (turn === latest) show(fresh);
    } catch {
      if (turn === latest) {
        summary.textContent =
          "No answer from the shop's computer. What stands below is from before; what you typed is still here.";
      }
    }
  }

  function show(fresh) {
    const newerHint = (question, newer) => question.querySelector(".hint").replaceWith(newer.querySelector(".hint"));
    const newerQuestions = (section, newer) => bringUpToDate(section, newer, "question", newerHint);
    const list = ".questions-list";
    bringUpToDate(form.querySelector(list), fresh.querySelector(list), "section", newerQuestions);
    // The ticks stay under the hand as long as the same is asked.
    const doubts = document.getElementById("doubts");
    const newer = fresh.getElementById("doubts");
    if (doubts.textContent !== newer.textContent) doubts.replaceChildren(...newer.childNodes);
    document.getElementById("look").replaceChildren(...fresh.getElementById("look").childNodes);
    const said = fresh.getElementById("look-summary").textContent;
    if (summary.textContent !== said) summary.textContent = said;
  }

  const soon = (pause) => {
    clearTimeout(timer);
    timer = setTimeout(look, pause);
  };
  form.addEventListener("change", () => soon(100));
  form.addEventListener("input", () => soon(700));
}

// Makes the children named by `kind` those of `fresh`, in its order; the ones that stay are the same ones.
function bringUpToDate(old, fresh, kind, inside) {
  const children = (parent) => [...parent.children].filter((child) => kind in child.dataset);
  const wanted = new Map(children(fresh).map((child) => [child.dataset[kind], child]));
  for (const child of children(old)) {
    if (!wanted.has(child.dataset[kind]) && !child.contains(document.activeElement)) child.remove();
  }
  let before = null;
  for (const [name, newer] of wanted) {
    let own = children(old).find((child) => child.dataset[kind] === name);
    if (own) {
      inside(own, newer);
    } else {
      own = document.importNode(newer, true);
      if (before) before.after(own);
      else old.insertBefore(own, children(old)[0] ?? null);
    }
    before = own;
  }
}

for (const form of document.querySelectorAll("form[data-questions]")) watchQuestions(form);
