// Arrow keys walk through the marks of a picture; without this script Tab does.
for (const picture of document.querySelectorAll("svg.picture")) {
  const marks = [...picture.querySelectorAll("[data-row]")];
  marks.forEach((mark, i) => mark.setAttribute("tabindex", i ? "-1" : "0"));
  picture.addEventListener("keydown", (event) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    const here = marks.indexOf(document.activeElement);
    let next = event.key === "Home" ? 0 : event.key === "End" ? marks.length - 1 : here + step;
    if (here < 0 || Number.isNaN(next)) return;
    next = Math.min(Math.max(next, 0), marks.length - 1);
    marks[here].setAttribute("tabindex", "-1");
    marks[next].setAttribute("tabindex", "0");
    marks[next].focus();
    event.preventDefault();
  });
}
