// A form that is looked at while it is filled in: soon after the last stroke its page is asked for anew, and what is
// said of the form follows. What was typed is never touched. `request` gives what to fetch, `show` puts the fresh page's
// parts into place; only the answer to the latest question is shown.
function followForm(form, summary, request, show, pauses = { change: 100, input: 700 }) {
  let timer = 0;
  let latest = 0;
  const say = (text) => {
    if (summary.textContent !== text) summary.textContent = text;
  };
  const ask = async () => {
    const turn = ++latest;
    const [address, options] = request(new URLSearchParams(new FormData(form)));
    try {
      const answer = await fetch(address, options);
      if (!answer.ok) throw new Error(answer.statusText);
      const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
      if (turn !== latest) return;
      show(fresh, address);
      say(fresh.getElementById(summary.id).textContent);
    } catch {
      if (turn === latest)
        say("No answer from the shop's computer. What stands below is from before; what you typed is still here.");
    }
  };
  for (const [event, pause] of Object.entries(pauses)) {
    form.addEventListener(event, () => {
      clearTimeout(timer);
      timer = setTimeout(ask, pause);
    });
  }
}
