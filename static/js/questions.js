// The counter set: while it is filled in, the questions that apply now appear and the findings beside them change.
// Nothing that was typed is touched; without this script "Check so far" does the same.
for (const form of document.querySelectorAll("form[data-questions]")) {
  const show = (fresh) => {
    const newerHint = (question, newer) => question.querySelector(".hint").replaceWith(newer.querySelector(".hint"));
    const newerQuestions = (section, newer) => bringUpToDate(section, newer, "question", newerHint);
    const list = ".questions-list";
    bringUpToDate(form.querySelector(list), fresh.querySelector(list), "section", newerQuestions);
    // The ticks stay under the hand as long as the same is asked.
    const doubts = document.getElementById("doubts");
    const newer = fresh.getElementById("doubts");
    if (doubts.textContent !== newer.textContent) doubts.replaceChildren(...newer.childNodes);
    document.getElementById("look").replaceChildren(...fresh.getElementById("look").childNodes);
  };
  const request = (body) => [form.dataset.questions, { method: "POST", body }];
  followForm(form, document.getElementById("look-summary"), request, show);
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
