// The whole record as a picture that one can look into. Without this script the table says it.
const figure = document.getElementById("record");

// load brings the chart's program, which hangs its one name on the window.
const load = (src) => new Promise((done, failed) => {
  const script = document.createElement("script");
  script.src = src;
  script.onload = done;
  script.onerror = failed;
  document.head.append(script);
});

const ink = (name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim();

// dateOf writes a day as the page does.
const dateOf = (seconds) => {
  const day = new Date(seconds * 1000);
  return figure.dataset.date.replace("{day}", day.getUTCDate())
    .replace("{month}", figure.dataset.months.split(",")[day.getUTCMonth()]).replace("{year}", day.getUTCFullYear());
};

// keyOf names the lines, each beside a piece of it.
function keyOf(record) {
  const key = document.createElement("p");
  key.className = "key";
  for (const row of record.series) {
    const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
    svg.setAttribute("width", "36");
    svg.setAttribute("height", "10");
    svg.setAttribute("aria-hidden", "true");
    const line = document.createElementNS("http://www.w3.org/2000/svg", "path");
    line.setAttribute("d", "M0 5h36");
    line.setAttribute("stroke", `var(${row.ink})`);
    line.setAttribute("stroke-width", "2");
    if (row.dash.length) line.setAttribute("stroke-dasharray", row.dash.join(" "));
    svg.append(line);
    const name = document.createElement("span");
    name.append(svg, row.name);
    key.append(name);
  }
  return key;
}

function draw(record) {
  const box = document.createElement("div");
  box.className = "chart";
  box.tabIndex = 0;
  box.setAttribute("role", "group");
  box.setAttribute("aria-label", figure.querySelector("strong").textContent);
  const help = document.createElement("p");
  help.className = "quiet";
  help.id = "record-help";
  help.textContent = figure.dataset.help;
  box.setAttribute("aria-describedby", help.id);
  const spoken = document.createElement("p");
  spoken.className = "spoken";
  spoken.setAttribute("aria-live", "polite");
  const whole = document.createElement("button");
  whole.type = "button";
  whole.textContent = figure.dataset.whole;
  figure.querySelector("figcaption").after(keyOf(record), box, spoken, help, whole);

  const data = [record.days, ...record.series.map((row) => row.values)];
  const axis = () => ({ stroke: ink("--quiet"), grid: { stroke: ink("--grid"), width: 1 }, ticks: { stroke: ink("--grid"), width: 1 } });
  const options = () => ({
    width: box.clientWidth, height: 300,
    tzDate: (seconds) => uPlot.tzDate(new Date(seconds * 1000), "UTC"),
    legend: { show: false },
    cursor: { y: false, points: { size: 9 } },
    scales: { y: { range: [0, 100] } },
    axes: [axis(), { ...axis(), label: figure.dataset.unit, labelSize: 22 }],
    series: [{}, ...record.series.map((row) => ({ label: row.name, stroke: ink(row.ink), width: 1.25, dash: row.dash, points: { show: false } }))],
  });
  let chart = new uPlot(options(), data, box);
  let at = record.days.length - 1;
  // On a phone the whole record is too dense to be read at first: begin with its last years.
  if (box.clientWidth < 600) chart.setScale("x", { min: Math.max(record.days[0], record.days[at] - 4 * 366 * 86400), max: record.days[at] });

  const say = () => {
    const values = record.series.map((row) => `${row.name} ${Math.round(row.values[at])} %`).join(", ");
    spoken.textContent = figure.dataset.value.replace("{date}", dateOf(record.days[at])).replace("{values}", values);
  };
  const point = () => {
    const seconds = record.days[at];
    const { min, max } = chart.scales.x;
    if (seconds < min || seconds > max) {
      const half = (max - min) / 2;
      chart.setScale("x", { min: seconds - half, max: seconds + half });
    }
    chart.setCursor({ left: chart.valToPos(seconds, "x"), top: 10 });
    say();
  };
  const zoom = (factor) => {
    const { min, max } = chart.scales.x;
    const half = Math.min(Math.max((max - min) * factor, 7 * 86400), record.days.at(-1) - record.days[0]) / 2;
    chart.setScale("x", { min: record.days[at] - half, max: record.days[at] + half });
  };
  box.addEventListener("keydown", (event) => {
    const step = { ArrowLeft: -1, ArrowRight: 1, PageUp: -30, PageDown: 30, Home: -record.days.length, End: record.days.length }[event.key];
    const factor = { "+": 0.5, "=": 0.5, "-": 2 }[event.key];
    if (step) at = Math.min(Math.max(at + step, 0), record.days.length - 1);
    else if (factor) zoom(factor);
    else return;
    event.preventDefault();
    point();
  });
  box.addEventListener("pointermove", () => {
    if (chart.cursor.idx == null) return;
    at = chart.cursor.idx;
    say();
  });
  whole.addEventListener("click", () => chart.setData(data));
  const again = () => { chart.destroy(); chart = new uPlot(options(), data, box); };
  let width = box.clientWidth;
  new ResizeObserver(() => {
    if (box.clientWidth !== width) chart.setSize({ width: (width = box.clientWidth), height: 300 });
  }).observe(box);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", again);
}

if (figure) {
  try {
    const [got] = await Promise.all([fetch(figure.dataset.days), load(figure.dataset.chart)]);
    draw(await got.json());
  } catch (fault) {
    console.warn(fault); // the table below says the same
  }
}
