// A form marked data-quick="ID" answers while one writes: its page is asked for as the button
// would ask, and the part of that id, with the faults, is put in the place of the old one.
// Without this script the button does the same.
const asking = "X-Suffice-Part"; // the server then tells faults in the part, with no status of their own
for (const form of document.querySelectorAll("form[data-quick]")) {
  let waiting = 0;
  let asked = 0;
  const answer = async () => {
    const mine = ++asked;
    const url = new URL(form.action || location.href);
    url.search = new URLSearchParams(new FormData(form)).toString();
    let page;
    try {
      const got = await fetch(url, { headers: { [asking]: form.dataset.quick } });
      page = new DOMParser().parseFromString(await got.text(), "text/html");
    } catch {
      return; // the program has ended: the button will say so
    }
    if (mine !== asked) return; // a later letter has been asked for since
    for (const id of [form.dataset.quick, "faults"]) {
      const [old, next] = [document.getElementById(id), page.getElementById(id)];
      if (old && next) old.replaceWith(next);
    }
    walk(); // new pictures have come: a page with such a form has no others
  };
  form.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(answer, 250);
  });
}

// What the pointer or the keyboard's focus stands on in a picture is written below it. Those who hear
// the page are told by the mark itself.
for (const kind of ["pointerover", "focusin"]) {
  document.addEventListener(kind, (event) => {
    const mark = event.target.closest("figure.pictured [data-row]");
    if (mark) mark.closest("figure").querySelector(".pointed").textContent = mark.getAttribute("aria-label");
  });
}
