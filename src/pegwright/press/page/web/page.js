"use strict";
(() => {
  const one = (at, from = document) => from.querySelector(at);
  const all = (at, from = document) => [...from.querySelectorAll(at)];
  const root = document.documentElement;
  const editions = all(".edition");
  const named = "pegwright " + one("main").dataset.mark;
  let kept = { at: 0, edition: 0, large: false, ticks: {} };
  try { kept = { ...kept, ...JSON.parse(localStorage.getItem(named) || "{}") }; } catch { /* a first visit */ }
  const keep = () => { try { localStorage.setItem(named, JSON.stringify(kept)); } catch { /* nothing is kept */ } };
  const voice = "speechSynthesis" in window ? window.speechSynthesis : null;
  const [back, next] = [one("#back"), one("#next")];
  const goto = one("#goto"), progress = one("#progress");
  const left = one("#left"), large = one("#large"), read = one("#read");
  const leaves = () => all(".leaf", editions[kept.edition]);

  const make = (name, kind, text) => {
    const part = document.createElement(name);
    if (kind) part.className = kind;
    if (text !== undefined) part.textContent = text;
    return part;
  };
  const asked = JSON.parse(one("#asked").textContent);
  const again = (whole) => {
    const button = make("button", "", whole.dataset.again);
    button.type = "button";
    button.addEventListener("click", () => {
      for (const reply of all(".reply", whole)) reply.open = false;
      one("summary", whole).focus();
    });
    return button;
  };
  const list = (texts) => {
    const whole = make("ul");
    whole.append(...texts.map((text) => make("li", "", asked.texts[text])));
    return whole;
  };
  const found = (whole, [text, guesses]) => {
    const part = make("div", "found");
    part.append(make("p", "", asked.texts[text]));
    for (const [slips, back] of guesses) {
      const guess = make("div", "guess");
      guess.append(...slips.map((slip) => make("p", "slip", asked.texts[slip])));
      if (back.length) guess.append(make("p", "", whole.dataset.back + ":"), list(back));
      part.append(guess);
    }
    part.append(again(whole));
    return [part];
  };
  // What comes of each answer is folded up under it; of answers to one question one is open.
  const fork = (whole, number, name) => {
    const entry = asked.entries[number];
    if (entry.length > 2) return found(whole, entry);
    const [ask, replies] = entry;
    return [make("p", "ask", asked.texts[ask]), ...replies.map(([text, then], at) => {
      const reply = make("details", "reply");
      reply.name = name;
      reply.append(make("summary", "", asked.texts[text]), ...fork(whole, then, name + "-" + at));
      return reply;
    })];
  };
  const ask = (whole) => {
    if (!whole || whole.dataset.ready) return;
    whole.dataset.ready = "1";
    one("p", whole).replaceWith(...fork(whole, Number(whole.dataset.asked), "a" + kept.edition + "-" + kept.at));
  };
  const hush = () => { if (voice) voice.cancel(); read.setAttribute("aria-pressed", "false"); read.textContent = read.dataset.read; };
  const show = (focus) => {
    hush();
    kept.edition = Math.min(Math.max(0, kept.edition | 0), editions.length - 1);
    const row = leaves();
    kept.at = Math.min(Math.max(0, kept.at | 0), row.length - 1);
    for (const edition of editions) edition.hidden = edition !== editions[kept.edition];
    row.forEach((leaf, i) => { leaf.hidden = i !== kept.at; });
    ask(one(".wrong", row[kept.at]));
    back.disabled = kept.at === 0;
    next.disabled = kept.at === row.length - 1;
    progress.textContent = progress.dataset.words.replace("{n}", kept.at + 1).replace("{count}", row.length);
    goto.replaceChildren(...row.map((leaf, i) => new Option(leaf.dataset.name, i, false, i === kept.at)));
    left.setAttribute("aria-pressed", String(kept.edition === 1));
    root.classList.toggle("large", Boolean(kept.large));
    large.setAttribute("aria-pressed", String(Boolean(kept.large)));
    if (focus) { window.scrollTo(0, 0); one("h2", row[kept.at]).focus({ preventScroll: true }); }
  };
  const go = (to) => { kept.at = to; show(true); keep(); };
  const move = (by) => { if (kept.at + by >= 0 && kept.at + by < leaves().length) go(kept.at + by); };

  back.addEventListener("click", () => move(-1));
  next.addEventListener("click", () => move(1));
  one("#first").addEventListener("click", () => go(0));
  goto.addEventListener("change", () => go(Number(goto.value)));
  left.addEventListener("click", () => { kept.edition = 1 - kept.edition; show(false); keep(); });
  large.addEventListener("click", () => { kept.large = !kept.large; show(false); keep(); });
  read.addEventListener("click", () => {
    if (read.getAttribute("aria-pressed") === "true") { hush(); return; }
    const said = new SpeechSynthesisUtterance(all("[data-say]", leaves()[kept.at]).map((x) => x.textContent).join(" "));
    said.lang = root.lang;
    said.rate = 0.85;
    said.onend = hush;
    read.setAttribute("aria-pressed", "true");
    read.textContent = read.dataset.stop;
    voice.speak(said);
  });
  document.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey || event.target.closest("select, input")) return;
    const by = { ArrowRight: 1, PageDown: 1, ArrowLeft: -1, PageUp: -1 }[event.key];
    if (by) { event.preventDefault(); move(by); }
    if (event.key === "Home") { event.preventDefault(); go(0); }
    if (event.key === "End") { event.preventDefault(); go(leaves().length - 1); }
  });
  let from = null;
  document.addEventListener("touchstart", (event) => { from = event.touches.length === 1 ? event.touches[0] : null; }, { passive: true });
  document.addEventListener("touchend", (event) => {
    if (!from) return;
    const to = event.changedTouches[0], dx = to.clientX - from.clientX, dy = to.clientY - from.clientY;
    from = null;
    if (Math.abs(dx) > 60 && Math.abs(dx) > 2 * Math.abs(dy)) move(dx < 0 ? 1 : -1);
  }, { passive: true });
  for (const box of all(".ticks input")) {
    box.checked = Boolean(kept.ticks[box.name]);
    box.addEventListener("change", () => {
      for (const same of all(".ticks input")) if (same.name === box.name) same.checked = box.checked;
      kept.ticks[box.name] = box.checked;
      keep();
    });
  }
  root.classList.add("told");
  for (const part of all(".desk, .bar, .keys")) part.hidden = false;
  left.hidden = editions.length < 2;
  read.hidden = !voice;
  show(false);
})();
