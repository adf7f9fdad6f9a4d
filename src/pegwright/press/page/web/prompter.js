"use strict";
(() => {
  const one = (at) => document.querySelector(at);
  const lines = [...document.querySelectorAll("main p[data-start]")];
  const main = one("main"), start = one("#start"), pace = one("#pace"), mirror = one("#mirror");
  const set = Number(main.dataset.wpm);
  let wpm = set, size = 3, now = 0, last = 0, running = false;
  const say = () => { pace.textContent = pace.dataset.words.replace("{wpm}", wpm); };
  const place = () => {
    let k = lines.findIndex((line) => Number(line.dataset.end) > now);
    if (k < 0) k = lines.length - 1;
    const line = lines[k], from = Number(line.dataset.start), to = Number(line.dataset.end);
    const share = Math.min(1, Math.max(0, (now - from) / (to - from)));
    lines.forEach((each, i) => each.classList.toggle("now", i === k));
    window.scrollTo(0, line.offsetTop + share * line.offsetHeight - window.innerHeight * 0.35);
    if (now >= Number(lines[lines.length - 1].dataset.end)) run(false);
  };
  const tick = (time) => {
    if (!running) return;
    now += ((time - last) / 1000) * (wpm / set);
    last = time;
    place();
    requestAnimationFrame(tick);
  };
  const run = (on) => {
    if (on === running) return;
    running = on;
    start.textContent = on ? start.dataset.stop : start.dataset.start;
    if (on) { last = performance.now(); requestAnimationFrame(tick); }
  };
  const faster = (by) => { wpm = Math.min(180, Math.max(80, wpm + by)); say(); };
  const larger = (by) => { size = Math.min(8, Math.max(1.5, size + by)); document.documentElement.style.setProperty("--size", size + "rem"); place(); };
  start.addEventListener("click", () => run(!running));
  one("#again").addEventListener("click", () => { now = 0; place(); });
  one("#slower").addEventListener("click", () => faster(-5));
  one("#faster").addEventListener("click", () => faster(5));
  one("#smaller").addEventListener("click", () => larger(-0.5));
  one("#larger").addEventListener("click", () => larger(0.5));
  mirror.addEventListener("click", () => mirror.setAttribute("aria-pressed", String(main.classList.toggle("mirror"))));
  document.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const acts = { ArrowUp: () => faster(5), ArrowDown: () => faster(-5), "+": () => larger(0.5), "-": () => larger(-0.5), Home: () => { now = 0; place(); } };
    if (event.key === " " && !event.target.closest("button")) acts[" "] = () => run(!running);
    const act = acts[event.key];
    if (act) { event.preventDefault(); act(); }
  });
  for (const line of lines) line.addEventListener("click", () => { now = Number(line.dataset.start); place(); });
  say();
  place();
})();
